package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import ortet.figures.GroupRate;
import ortet.figures.Ranking;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.value.When;
import ortet.yield.MotherRow;
import ortet.yield.MothersQuestion;
import ortet.yield.MothersTable;
import ortet.yield.TakeRate;

/** Shows which mothers yield best, with all that keeps a ranking honest. */
final class MothersView {
    private static final int SHOWN = 8;
    private static final double MANY = 9.95;

    private MothersView() {}

    static void show(MothersTable table, boolean explain, OutputFormat format, Screen screen) {
        MothersQuestion question = table.question();
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("mother", "mother"));
        columns.add(Column.text("cultivar", "cultivar").forPrograms());
        columns.add(Column.whole("set", "set").forPrograms());
        columns.add(Column.whole("taken", "taken").forPrograms());
        columns.add(Column.whole("failed", "failed").forPrograms());
        columns.add(Column.whole("withdrawn", "withdrawn").forPrograms());
        columns.add(Column.text("known_shown", "took").forPeople());
        columns.add(Column.whole("pending", "pend."));
        columns.add(Column.whole("unaccounted", "unacc.").forPrograms());
        columns.add(Column.share("rate", "take rate", 0).forPrograms());
        columns.add(Column.share("lower", "lower", 0).forPrograms());
        columns.add(Column.share("upper", "upper", 0).forPrograms());
        columns.add(Column.text("pooled_shown", "pooled %").forPeople());
        columns.add(Column.share("pooled_rate", "pooled rate", 0).forPrograms());
        columns.add(Column.share("pooled_lower", "pooled lower", 0).forPrograms());
        columns.add(Column.share("pooled_upper", "pooled upper", 0).forPrograms());
        columns.add(Column.text("best_shown", "in best " + question.best()).forPeople());
        columns.add(Column.share("among_best", "among the best", 0).forPrograms());
        columns.add(
                Column.share("among_best_standard_error", "standard error", 0).forPrograms());
        columns.add(Column.whole("mother_years", "years"));
        columns.add(Column.figure("per_year_shown", "a year"));
        columns.add(Column.number("taken_per_year", "a year", 1).forPrograms());
        columns.add(Column.whole("living", "living"));
        columns.add(Column.whole("sold", "sold"));
        columns.add(Column.text("last_shown", "last").forPeople());
        columns.add(Column.text("last", "last").forPrograms());
        columns.add(Column.truth("is_there", "there").forPrograms());
        Sheet.Builder sheet = Sheet.titled(title(question), columns.toArray(new Column[0]));
        Optional<Optional<String>> section = Optional.empty();
        for (MotherRow row : table.rows()) {
            if (!section.equals(Optional.of(row.cultivar()))) {
                section = Optional.of(row.cultivar());
                sheet.section(row.cultivar().orElse("cultivar not known"));
            }
            add(sheet, row);
        }
        notes(table, explain).forEach(sheet::note);
        screen.show(sheet.build(), format);
    }

    private static void add(Sheet.Builder sheet, MotherRow row) {
        List<Object> cells = new ArrayList<>();
        cells.add(row.tag().text());
        cells.add(row.cultivar());
        cells.add(row.tally().set());
        cells.add(row.tally().taken());
        cells.add(row.tally().failed());
        cells.add(row.tally().withdrawn());
        cells.add(row.tally().known().trials() == 0 ? "–" : row.tally().known().toString());
        cells.add(row.tally().pending());
        cells.add(row.tally().unaccounted());
        cells.add(row.rate().map(TakeRate::share));
        cells.add(row.rate().map(rate -> rate.interval().lower()));
        cells.add(row.rate().map(rate -> rate.interval().upper()));
        cells.add(row.pooled().map(PooledView::rate).orElse("–"));
        cells.add(row.pooled().map(GroupRate::rate));
        cells.add(row.pooled().map(rate -> rate.interval().lower()));
        cells.add(row.pooled().map(rate -> rate.interval().upper()));
        cells.add(
                row.isThere()
                        ? row.standing()
                                .map(one -> TakeView.percent(one.probability()) + " %")
                                .orElse("–")
                        : "gone");
        cells.add(row.standing().map(Ranking.Standing::probability));
        cells.add(row.standing().map(Ranking.Standing::standardError));
        cells.add(row.years());
        cells.add(row.takenPerYear().map(MothersView::yearly).orElse("–"));
        cells.add(row.takenPerYear());
        cells.add(row.living());
        cells.add(row.sold());
        cells.add(season(row.last()));
        cells.add(row.last().toString());
        cells.add(row.isThere());
        sheet.row(cells.toArray());
    }

    /** Return the season of a day, so that the table fits a narrow screen; programs are told the day. */
    private static String season(When last) {
        return Integer.toString(last.first().getYear());
    }

    private static String yearly(double taken) {
        return String.format(Locale.ROOT, taken < MANY ? "%.1f" : "%.0f", taken);
    }

    private static String title(MothersQuestion question) {
        return "mothers by what they yield, " + PooledView.plural(question.method()) + ", as of " + question.asOf()
                + TakeView.filter(question.filter().anyMethod());
    }

    private static List<String> notes(MothersTable table, boolean explain) {
        MothersQuestion question = table.question();
        List<String> notes = new ArrayList<>();
        if (table.rows().isEmpty()) {
            notes.add("nothing was set from a mother that the book knows");
        } else {
            notes.add("took: of those whose outcome is known; pend.: not known yet");
            notes.add(PooledView.note(List.of(table.pooled())));
            notes.add(
                    "each cultivar in the order of the lower limits of the pooled rates: of two alike, the one of whom more is known first");
            notes.add("in best " + question.best() + ": chance of being among the best " + question.best()
                    + " of those that still stand, from " + question.draws() + " draws (good to "
                    + "2 percentage points, seed " + question.seed() + "); gone: no longer in the nursery");
            notes.add(
                    "years: those in which she was used, and those between in which she stood as stock and nothing was taken;"
                            + " a year: taken for each of them. living, sold: young plants of this method from her alone;"
                            + " last: the season in which she was last used");
        }
        notes.addAll(PooledView.remarks(table.pooled()));
        if (table.several() > 0) {
            notes.add(Counts.of(table.several(), "unit", "units") + " in no row: from one of several mothers");
        }
        if (table.unknown() > 0) {
            notes.add(Counts.of(table.unknown(), "unit", "units") + " in no row: their mother is not known");
        }
        if (!table.untried().isEmpty()) {
            String more =
                    table.untried().size() > SHOWN ? " and " + (table.untried().size() - SHOWN) + " more" : "";
            notes.add("never tried by this method, though kept as stock: "
                    + table.untried().stream().limit(SHOWN).map(Tag::text).collect(Collectors.joining(", ")) + more
                    + "; nothing is known of them, good or bad");
        }
        if (explain) {
            notes.addAll(PooledView.explanations(table.pooled()));
            notes.add("chance of being among the best: all mothers drawn together from the model's posterior, "
                    + question.draws() + " times; docs/methods/mothers.md");
        }
        return notes;
    }
}
