package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.figures.Interval;
import ortet.figures.Range;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.timing.TimingQuestion;
import ortet.timing.TimingRow;
import ortet.timing.TimingTable;
import ortet.timing.Waiting;

/** Shows how long rooting takes. */
final class TimingView {
    private static final double WEEK = 7;
    private static final double DAY = 1;

    private TimingView() {}

    static void show(TimingTable table, boolean explain, OutputFormat format, Screen screen) {
        TimingQuestion question = table.question();
        boolean layers = question.method() == Method.LAYER;
        boolean warm = question.climate().isPresent();
        String unit = warm ? "degree_days" : "days";
        Sheet.Builder sheet = Sheet.titled(
                title(question),
                Column.text("cultivar", "cultivar").forPrograms(),
                Column.text("what", "what").forPrograms(),
                Column.text("what_shown", "").forPeople(),
                Column.whole("set", "set").forPrograms(),
                Column.whole("failed", "failed").forPrograms(),
                Column.whole("never_looked", "never looked").forPrograms(),
                Column.whole("happened", "n"),
                Column.whole("waiting", "wait"),
                Column.text("tenth_shown", "1 in 10").forPeople(),
                Column.text("half_shown", "1 in 2 (interval)").forPeople(),
                Column.text("ninetieth_shown", "9 in 10").forPeople(),
                Column.number(unit + "_10_from", "from", 0).forPrograms(),
                Column.number(unit + "_10_to", "to", 0).forPrograms(),
                Column.number(unit + "_50_from", "from", 0).forPrograms(),
                Column.number(unit + "_50_to", "to", 0).forPrograms(),
                Column.number(unit + "_90_from", "from", 0).forPrograms(),
                Column.number(unit + "_90_to", "to", 0).forPrograms(),
                Column.number("median_lower", "lower", 0).forPrograms(),
                Column.number("median_upper", "upper", 0).forPrograms());
        table.rows().forEach(row -> add(sheet, row.cultivar().orElse("cultivar not known"), row, layers, warm));
        if (table.rows().size() != 1) {
            add(sheet, "all", table.all(), layers, warm);
        }
        notes(table, layers, explain).forEach(sheet::note);
        screen.show(sheet.build(), format);
    }

    private static void add(Sheet.Builder sheet, String name, TimingRow row, boolean layers, boolean warm) {
        sheet.section(name);
        String ready = layers ? "on the mother, " : "until lifted, ";
        if (warm) {
            add(sheet, name, row, row.firstRoots(), "first-roots", "first roots, °C days", DAY);
            add(sheet, name, row, row.ready(), "ready", ready + "°C days", DAY);
        } else {
            add(sheet, name, row, row.firstRoots(), "first-roots", "first roots, weeks", WEEK);
            add(sheet, name, row, row.ready(), "ready", ready + "days", DAY);
        }
    }

    private static void add(
            Sheet.Builder sheet, String name, TimingRow row, Waiting waiting, String what, String shown, double unit) {
        List<Object> cells = new ArrayList<>();
        cells.add(name);
        cells.add(what);
        cells.add(shown);
        cells.add(row.set());
        cells.add(row.failed());
        cells.add(row.neverLooked());
        cells.add(waiting.happened());
        cells.add(waiting.waiting());
        cells.add(waiting.tenth().map(range -> range(range, unit)).orElse("–"));
        cells.add(waiting.half().map(range -> range(range, unit)).orElse("–")
                + waiting.median()
                        .map(one -> " (" + range(new Range(one.lower(), one.upper()), unit) + ")")
                        .orElse(""));
        cells.add(waiting.ninetieth().map(range -> range(range, unit)).orElse("–"));
        for (Optional<Range> range : List.of(waiting.tenth(), waiting.half(), waiting.ninetieth())) {
            cells.add(range.map(Range::lower));
            cells.add(range.map(Range::upper).filter(Double::isFinite));
        }
        cells.add(waiting.median().map(Interval::lower));
        cells.add(waiting.median().map(Interval::upper).filter(Double::isFinite));
        sheet.row(cells.toArray());
    }

    private static String range(Range range, double unit) {
        long lower = Math.round(range.lower() / unit);
        if (Double.isInfinite(range.upper())) {
            return lower + "+";
        }
        long upper = Math.round(range.upper() / unit);
        return lower == upper ? Long.toString(upper) : lower + "–" + upper;
    }

    private static String title(TimingQuestion question) {
        return "how long rooting takes, " + PooledView.plural(question.method()) + ", as of " + question.asOf()
                + question.cultivar().map(name -> ", only " + name).orElse("")
                + question.fromYear().map(year -> ", set from " + year).orElse("")
                + question.toYear().map(year -> ", set to " + year).orElse("");
    }

    private static List<String> notes(TimingTable table, boolean layers, boolean explain) {
        List<String> notes = new ArrayList<>();
        TimingRow all = table.all();
        if (all.set() == 0) {
            notes.add("nothing was set by this method that the book can count");
            return notes;
        }
        String confidence = Confidence.percent(table.question().confidence());
        notes.add(
                "since setting, when 1 in 10, 1 in 2 and 9 in 10 had come to it, of those that do; n: seen to have come to it,"
                        + " wait: not yet; 6–9: between two looks, nobody knows when; 20+: not before, so many wait; in brackets the "
                        + confidence + " % interval of the median");
        notes.add(
                layers
                        ? "days on the mother: until the diary says severed, which is when somebody came to it, not when it was"
                                + " ready"
                        : "days until lifted: until found rooted and counted");
        table.question()
                .climate()
                .ifPresent(climate -> notes.add("°C days: degree-days above " + climate.baseC()
                        + " °C since setting, from monthly normals: a single year is warmer or colder"));
        if (all.failed() > 0) {
            notes.add("in no time: " + Counts.of(all.failed(), "unit", "units") + ", failed or withdrawn");
        }
        if (all.neverLooked() > 0) {
            notes.add("nothing of roots is told by " + Counts.of(all.neverLooked(), "unit", "units")
                    + " still on, at which nobody has looked");
        }
        if (explain) {
            notes.add(
                    "Turnbull's estimate for times known to lie between two looks (Turnbull 1976, J. R. Stat. Soc. B 38:290);"
                            + " median intervals by drawing the units anew 99 times (Efron & Tibshirani 1993, 13.3), as if units stood"
                            + " for themselves; of fewer than " + Waiting.FEW
                            + " none is told; docs/methods/timing.md");
        }
        return notes;
    }
}
