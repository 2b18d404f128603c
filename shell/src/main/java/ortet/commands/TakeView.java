package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Words;
import ortet.figures.GroupRate;
import ortet.figures.Interval;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.yield.Bounds;
import ortet.yield.Group;
import ortet.yield.PooledTake;
import ortet.yield.TakeBy;
import ortet.yield.TakeFilter;
import ortet.yield.TakeQuestion;
import ortet.yield.TakeRate;
import ortet.yield.TakeRow;
import ortet.yield.TakeTable;
import ortet.yield.WeighedSowing;

/** Shows take as a table, with all that keeps a rate honest. */
final class TakeView {
    private TakeView() {}

    static void show(TakeTable table, OutputFormat format, Screen screen) {
        show(
                new PooledTake(
                        table,
                        table.rows().stream()
                                .map(row -> new PooledTake.Row(row, Optional.empty()))
                                .toList(),
                        List.of(),
                        false),
                false,
                format,
                screen);
    }

    static void show(PooledTake answer, boolean explain, OutputFormat format, Screen screen) {
        TakeTable table = answer.table();
        TakeQuestion question = table.question();
        boolean pools = !answer.pooled().isEmpty();
        List<Column> columns = new ArrayList<>();
        boolean sections = question.by().size() > 1;
        for (TakeBy by : question.by()) {
            Column column = Column.text(by.word(), by.word());
            columns.add(sections && by == question.by().get(0) ? column.forPrograms() : column);
        }
        if (question.by().isEmpty()) {
            columns.add(Column.text("what", "what"));
        }
        columns.add(Column.whole("set", "set"));
        columns.add(Column.whole("taken", "taken"));
        columns.add(Column.whole("failed", "failed"));
        columns.add(Column.whole("withdrawn", "withdrawn").forPrograms());
        columns.add(Column.whole("pending", "pend."));
        columns.add(Column.whole("unaccounted", "unacc."));
        columns.add(Column.text("rate_shown", "rate % (interval)").forPeople());
        if (pools) {
            columns.add(Column.text("pooled_shown", "pooled %").forPeople());
        }
        columns.add(Column.share("rate", "take rate", 0).forPrograms());
        columns.add(Column.share("lower", "lower", 0).forPrograms());
        columns.add(Column.share("upper", "upper", 0).forPrograms());
        if (pools) {
            columns.add(Column.share("pooled_rate", "pooled rate", 0).forPrograms());
            columns.add(Column.share("pooled_lower", "pooled lower", 0).forPrograms());
            columns.add(Column.share("pooled_upper", "pooled upper", 0).forPrograms());
        }
        columns.add(Column.share("rate_if_unaccounted_failed", "if unaccounted failed", 0)
                .forPrograms());
        columns.add(Column.share("rate_if_unaccounted_taken", "if unaccounted took", 0)
                .forPrograms());
        boolean stood = !pools || table.total().stood().batches() > 0;
        if (stood) {
            columns.add(Column.text("stood", "stood").forPeople());
        }
        columns.add(Column.whole("batches", "batches").forPrograms());
        columns.add(Column.whole("singles", "singles").forPrograms());
        columns.add(Column.whole("mothers", "mothers").forPrograms());
        Sheet.Builder sheet = Sheet.titled(title(question), columns.toArray(new Column[0]));
        String section = "";
        for (PooledTake.Row told : answer.rows()) {
            TakeRow row = told.row();
            List<String> groups = row.groups().stream().map(Group::shown).toList();
            if (sections && !groups.get(0).equals(section)) {
                section = groups.get(0);
                sheet.section(section);
            }
            add(sheet, row, groups, pools, stood, told.pooled());
        }
        if (table.rows().size() != 1) {
            if (sections) {
                sheet.section("all together");
            }
            List<String> all = new ArrayList<>();
            question.by().forEach(by -> all.add("all"));
            add(sheet, table.total(), all.isEmpty() ? List.of("all") : all, pools, stood, Optional.empty());
        }
        notes(table).forEach(sheet::note);
        if (pools) {
            sheet.note(PooledView.note(answer.pooled()));
            sheet.note("mothers stand in the order of the lower limits of their pooled rates");
        }
        if (answer.mixesMethods()) {
            sheet.note(
                    "rows have several methods, so that nothing is pooled; ask --by mother,method, or for one --method");
        }
        answer.pooled().forEach(one -> PooledView.remarks(one).forEach(sheet::note));
        if (explain) {
            explanations(answer).forEach(sheet::note);
        }
        table.warnings().forEach(warning -> sheet.warning(warning.text()));
        screen.show(sheet.build(), format);
    }

    private static List<String> explanations(PooledTake answer) {
        List<String> lines = new ArrayList<>();
        lines.add("Wilson's score interval: Wilson 1927, J. Am. Stat. Assoc. 22:209; docs/methods/take-rate.md");
        answer.pooled().forEach(one -> lines.addAll(PooledView.explanations(one)));
        return lines;
    }

    private static void add(
            Sheet.Builder sheet,
            TakeRow row,
            List<String> groups,
            boolean pools,
            boolean stood,
            Optional<GroupRate> pooled) {
        List<Object> cells = new ArrayList<>(groups);
        cells.add(row.tally().set());
        cells.add(row.tally().taken());
        cells.add(row.tally().failed());
        cells.add(row.tally().withdrawn());
        cells.add(row.tally().pending());
        cells.add(row.tally().unaccounted());
        cells.add(row.rate().map(TakeView::rate).orElse("–"));
        if (pools) {
            cells.add(pooled.map(PooledView::rate).orElse("–"));
        }
        cells.add(row.rate().map(TakeRate::share));
        cells.add(row.rate().map(TakeRate::interval).map(Interval::lower));
        cells.add(row.rate().map(TakeRate::interval).map(Interval::upper));
        if (pools) {
            cells.add(pooled.map(GroupRate::rate));
            cells.add(pooled.map(rate -> rate.interval().lower()));
            cells.add(pooled.map(rate -> rate.interval().upper()));
        }
        cells.add(row.bounds().map(Bounds::lower));
        cells.add(row.bounds().map(Bounds::upper));
        if (stood) {
            cells.add(row.stood().toString());
        }
        cells.add(row.stood().batches());
        cells.add(row.stood().singles());
        cells.add(row.stood().mothers());
        sheet.row(cells.toArray());
    }

    private static String rate(TakeRate rate) {
        return percent(rate.share()) + " (" + percent(rate.interval().lower()) + "–"
                + percent(rate.interval().upper()) + ")";
    }

    static String percent(double share) {
        long rounded = Math.round(share * 100);
        boolean notQuite = rounded == 0 && share > 0 || rounded == 100 && share < 1;
        return notQuite ? (rounded == 0 ? "<1" : ">99") : Long.toString(rounded);
    }

    private static String title(TakeQuestion question) {
        String by = question.by().isEmpty()
                ? ""
                : " by "
                        + String.join(
                                " and ",
                                question.by().stream().map(TakeBy::word).toList());
        return "take" + by + ", as of " + question.asOf() + filter(question.filter());
    }

    static String filter(TakeFilter filter) {
        StringBuilder text = new StringBuilder();
        filter.cultivar().ifPresent(name -> text.append(", only ").append(name));
        filter.mother().ifPresent(tag -> text.append(", only from ").append(tag));
        filter.method().ifPresent(method -> text.append(", only by ").append(Words.of(method)));
        filter.fromYear().ifPresent(year -> text.append(", from ").append(year));
        filter.toYear().ifPresent(year -> text.append(", to ").append(year));
        filter.operator().ifPresent(name -> text.append(", only by ").append(name));
        return text.toString();
    }

    private static List<String> notes(TakeTable table) {
        List<String> notes = new ArrayList<>();
        String confidence = Confidence.percent(table.question().confidence());
        notes.add("take rate: taken of those known (taken and failed), with the " + confidence
                + " % interval (Wilson) as if every unit stood for itself; units of one tray or one mother share their"
                + " luck, so few of either say less");
        if (table.total().tally().unaccounted() > 0) {
            notes.add("unacc.: unaccounted, pending and should be known by now; "
                    + table.total().bounds().map(Bounds::toString).orElse(""));
        }
        if (table.shared() > 0) {
            notes.add(Counts.of(table.shared(), "unit", "units")
                    + " left out: in batches from several mothers, nobody knows which are from this one");
        }
        if (!table.weighed().isEmpty()) {
            int seedlings =
                    table.weighed().stream().mapToInt(WeighedSowing::taken).sum();
            notes.add(Counts.of(table.weighed().size(), "sowing", "sowings") + " by weight in no row ("
                    + String.join(
                            ", ",
                            table.weighed().stream()
                                    .map(WeighedSowing::tag)
                                    .map(Tag::text)
                                    .toList())
                    + "): " + Counts.of(seedlings, "seedling", "seedlings") + ", of nobody knows how many seeds");
        }
        return notes;
    }
}
