package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ortet.choice.ForecastBand;
import ortet.choice.ForecastBehind;
import ortet.choice.ForecastLuck;
import ortet.choice.ForecastQuestion;
import ortet.choice.ForecastRow;
import ortet.choice.ForecastSales;
import ortet.choice.ForecastStage;
import ortet.choice.ForecastTable;
import ortet.entry.Words;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows a forecast. */
final class ForecastView {
    /** How many columns a line of bands has. */
    static final int LINE = 24;

    private static final int HUNDRED = 100;
    private static final double LEANS = 0.3;
    private static final double TOLD = 0.005;

    private ForecastView() {}

    static void show(ForecastTable table, boolean explain, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(table, explain, screen);
            case CSV -> screen.show(rows(table), format);
            case JSON -> screen.json(json -> json(table, json));
        }
    }

    // ---- for people ----

    private static void words(ForecastTable table, boolean explain, Screen screen) {
        ForecastQuestion question = table.question();
        screen.headed("", "trees becoming saleable", "  ", asked(question));
        screen.println();
        if (table.isEmpty()) {
            screen.prose(nothing(table));
            return;
        }
        screen.prose(Counts.grouped(table.pending()) + " pending, " + Counts.grouped(table.growing()) + " growing on, "
                + Counts.grouped(table.total().get(0).now()) + " standing saleable now.");
        screen.println();
        screen.show(months(table), OutputFormat.TABLE);
        screen.println();
        screen.show(cultivars(table), OutputFormat.TABLE);
        screen.println();
        notes(table).forEach(note -> screen.hanging("", "  ", note));
        if (explain) {
            screen.println();
            explanations(table).forEach(line -> screen.hanging("- ", "  ", line));
        }
    }

    static String asked(ForecastQuestion question) {
        return ", as of " + question.asOf()
                + question.cultivar().map(name -> ", only " + name).orElse("")
                + question.size().map(size -> ", only " + size).orElse("");
    }

    private static String nothing(ForecastTable table) {
        if (table.saleable() == 0) {
            return "Nothing to go by: no tree that was raised here has become saleable yet (graded, or sold), so nobody"
                    + " can tell how long that takes. "
                    + Counts.of(table.pending(), "unit is", "units are") + " pending, "
                    + Counts.of(table.growing(), "tree is", "trees are") + " growing on.";
        }
        return "Nothing is pending, growing on or standing saleable of what was asked for.";
    }

    private static Sheet months(ForecastTable table) {
        ForecastRow all = table.total().get(0);
        int most = all.becoming().stream().mapToInt(ForecastBand::upper90).max().orElse(0);
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("month", "month"),
                Column.whole("median", "about"),
                Column.text("half", "1 in 2"),
                Column.text("nine", "9 in 10"),
                Column.text("line", "0 to " + most),
                Column.text("standing", "standing at the end"));
        for (int month = 0; month < table.months().size(); month++) {
            ForecastBand band = all.becoming().get(month);
            ForecastBand standing = all.standing().get(month);
            sheet.row(
                    table.months().get(month).toString(),
                    band.median(),
                    range(band.lower50(), band.upper50()),
                    range(band.lower90(), band.upper90()),
                    line(band, most),
                    standing.median() + " (" + range(standing.lower90(), standing.upper90()) + ")");
        }
        return sheet.build();
    }

    /** Draw where a number may lie: thin for 9 in 10, thick for 1 in 2, a mark at the median. */
    static String line(ForecastBand band, int most) {
        StringBuilder line = new StringBuilder();
        for (int at = 0; at < LINE; at++) {
            line.append(
                    at == place(band.median(), most)
                            ? '┃'
                            : isWithin(at, band.lower50(), band.upper50(), most)
                                    ? '━'
                                    : isWithin(at, band.lower90(), band.upper90(), most) ? '─' : ' ');
        }
        return line.toString().stripTrailing();
    }

    private static boolean isWithin(int at, int lower, int upper, int most) {
        return place(lower, most) <= at && at <= place(upper, most);
    }

    private static int place(int number, int most) {
        return most == 0 ? 0 : (int) Math.round((double) number * (LINE - 1) / most);
    }

    static String range(int lower, int upper) {
        return lower == upper ? Integer.toString(lower) : lower + "–" + upper;
    }

    private static Sheet cultivars(ForecastTable table) {
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("size", "in " + table.months().size() + " months"),
                Column.whole("now", "now"),
                Column.whole("median", "about"),
                Column.text("half", "1 in 2"),
                Column.text("nine", "9 in 10"),
                Column.text("standing", "standing at the end"));
        Optional<String> section = Optional.empty();
        List<ForecastRow> rows =
                table.rows().stream().filter(ForecastView::isAny).toList();
        for (ForecastRow row : rows) {
            if (!row.cultivar().equals(section)) {
                section = row.cultivar();
                sheet.section(name(row.cultivar().orElse("")));
            }
            add(sheet, row);
        }
        if (rows.stream().map(ForecastRow::cultivar).distinct().count() > 1) {
            sheet.section("all together");
            table.total().stream().filter(ForecastView::isAny).forEach(row -> add(sheet, row));
        }
        return sheet.build();
    }

    /** Tell whether any tree of a row stands, or may come. */
    private static boolean isAny(ForecastRow row) {
        return row.now() > 0
                || row.inAll().upper90() > 0
                || row.standing().stream().anyMatch(band -> band.upper90() > 0);
    }

    private static void add(Sheet.Builder sheet, ForecastRow row) {
        ForecastBand standing = row.standing().get(row.standing().size() - 1);
        sheet.row(
                row.size().map(ForecastView::size).orElse("any size"),
                row.now(),
                row.inAll().median(),
                range(row.inAll().lower50(), row.inAll().upper50()),
                range(row.inAll().lower90(), row.inAll().upper90()),
                standing.median() + " (" + range(standing.lower90(), standing.upper90()) + ")");
    }

    static String name(String cultivar) {
        return cultivar.isEmpty() ? "cultivar not known" : cultivar;
    }

    static String size(String size) {
        return size.isEmpty() ? "ungraded" : size;
    }

    private static List<String> notes(ForecastTable table) {
        ForecastQuestion question = table.question();
        List<String> notes = new ArrayList<>();
        notes.add(
                "About: so many become saleable in that month, graded fit for sale for the first time or sold ungraded; it is the"
                        + " middle of " + question.simulations() + " simulations (seed " + question.seed()
                        + "). Half of them lie within the band of 1 in 2, nine tenths within that of 9 in 10, which is also the one in"
                        + " brackets. The first month is what is left of it.");
        if (!table.rows().stream().allMatch(ForecastView::isAny)) {
            notes.add(
                    "Size classes of which none stands, and hardly any may come, are left out; csv and json have them.");
        }
        notes.add(
                question.sales() == ForecastSales.NONE
                        ? "Sales: none. What becomes saleable stands until it is lost; --sales as-before sells as large a share"
                                + " of what stands as in the last three years, month by month of the year."
                        : "Sales: of what stands, as large a share as in the last three years, month by month of the year;"
                                + " what is sold ungraded leaves as it becomes saleable.");
        notes.add(
                "Only what is in the book is counted: nothing that is still to be set. As it has been here before: the"
                        + " same ways of working, the same grading.");
        if (table.tooOld() > 0) {
            notes.add(Counts.of(table.tooOld(), "pending unit is", "pending units are")
                    + " older than any of their like that took: none of them is forecast to.");
        }
        if (table.tooOldGrowing() > 0) {
            notes.add(Counts.of(table.tooOldGrowing(), "tree growing on is", "trees growing on are")
                    + " older than any of their like that was graded or sold: nothing is forecast of them.");
        }
        if (table.boughtIn() > 0 && question.cultivar().isEmpty()) {
            notes.add(Counts.of(table.boughtIn(), "plant that was", "plants that were")
                    + " bought in or kept from the beginning, not as stock, and never graded: in no row.");
        }
        long leaning = table.behind().stream()
                .filter(one -> one.waiting() > 0 && one.lean() > LEANS)
                .count();
        if (leaning > 0) {
            notes.add("Of " + leaning + " of "
                    + Counts.of(
                            table.behind().stream()
                                    .filter(one -> one.waiting() > 0)
                                    .count(),
                            "stretch",
                            "stretches")
                    + " (cultivar, method and stage) little is known; what is said leans on their taxon or method. --explain"
                    + " tells which, and how many stand behind.");
        }
        return notes;
    }

    // ---- the reasons ----

    private static List<String> explanations(ForecastTable table) {
        List<String> lines = new ArrayList<>();
        table.behind().stream()
                .filter(one -> one.waiting() > 0 && one.chance() >= TOLD)
                .map(ForecastView::explanation)
                .forEach(lines::add);
        table.luck().forEach(luck -> lines.add(luck(luck)));
        lines.add(
                "Shares and times: cumulative incidence (Aalen & Johansen 1978) on a clock that runs as fast as things"
                        + " happen in each month of the year; drawn anew for each simulation by the Bayesian bootstrap (Rubin 1981)."
                        + " Shared luck: one-factor normal scores (Vasicek 2002). docs/methods/forecast.md");
        return lines;
    }

    private static String explanation(ForecastBehind behind) {
        boolean taking = behind.stage() == ForecastStage.TAKING;
        String wider = switch (behind.wider()) {
            case TAXON -> "its taxon by the same method";
            case METHOD -> "all by the same method";
            case ALL -> "all by all methods";
        };
        return name(behind.cultivar()) + ", " + Words.of(behind.method()) + ", "
                + Counts.of(
                        behind.waiting(),
                        taking ? "unit pending" : "tree growing on",
                        taking ? "units pending" : "trees growing on")
                + ": " + Math.round(HUNDRED * behind.chance()) + " of 100 "
                + (taking ? "take" : behind.stage() == ForecastStage.GRADING ? "are graded" : "are sold ungraded")
                + (behind.months() < 0
                        ? ""
                        : ", half of these within " + String.format(Locale.ROOT, "%.1f", behind.months()) + " months")
                + " (" + behind.good() + " did, " + behind.bad() + " did not, " + behind.open() + " are not known, in "
                + Counts.of(behind.clusters(), "tray or mother's season", "trays or mothers' seasons")
                + "); " + Math.round(HUNDRED * behind.lean()) + " % of it leans on " + wider + " ("
                + behind.widerKnown()
                + " known)";
    }

    private static String luck(ForecastLuck luck) {
        return switch (luck.stage()) {
                    case TAKING -> "Taking";
                    case GRADING -> "Being graded";
                    case SELLING -> "Being sold ungraded";
                }
                + ": units of one season share " + percent(luck.fateOfSeason()) + " of their luck and "
                + percent(luck.timeOfSeason()) + " of their timing, those of one tray, or mother and season, "
                + percent(luck.fateOfCluster()) + " and " + percent(luck.timeOfCluster()) + " more (told from "
                + Counts.of(luck.seasons(), "season", "seasons") + " by method)"
                + (luck.stage() == ForecastStage.GRADING
                        ? "; " + percent(luck.own()) + " of their timing is their own, the rest rounds that people make"
                        : "")
                + (luck.stage() == ForecastStage.TAKING
                        ? ""
                        : "; of one tray, or mother and season, " + percent(luck.together())
                                + " go together in one month, beyond what the season makes all do");
    }

    private static String percent(double share) {
        return Math.round(HUNDRED * share) + " %";
    }

    // ---- for programs ----

    private static Sheet rows(ForecastTable table) {
        Sheet.Builder sheet = Sheet.titled(
                "forecast" + asked(table.question()),
                Column.text("cultivar", "cultivar"),
                Column.text("size", "size"),
                Column.text("month", "month"),
                Column.number("become_mean", "mean", 1),
                Column.whole("become_median", "median"),
                Column.whole("become_50_lower", "from"),
                Column.whole("become_50_upper", "to"),
                Column.whole("become_90_lower", "from"),
                Column.whole("become_90_upper", "to"),
                Column.number("standing_mean", "mean", 1),
                Column.whole("standing_median", "median"),
                Column.whole("standing_50_lower", "from"),
                Column.whole("standing_50_upper", "to"),
                Column.whole("standing_90_lower", "from"),
                Column.whole("standing_90_upper", "to"));
        List<ForecastRow> all = new ArrayList<>(table.rows());
        all.addAll(table.total());
        for (ForecastRow row : all) {
            for (int month = 0; month < table.months().size(); month++) {
                List<Object> cells = new ArrayList<>();
                cells.add(row.cultivar().map(ForecastView::name).orElse("all"));
                cells.add(row.size().map(ForecastView::size).orElse("any"));
                cells.add(table.months().get(month).toString());
                add(cells, row.becoming().get(month));
                add(cells, row.standing().get(month));
                sheet.row(cells.toArray());
            }
        }
        if (table.isEmpty()) {
            sheet.warning(nothing(table));
        } else {
            notes(table).forEach(sheet::note);
        }
        return sheet.build();
    }

    private static void add(List<Object> cells, ForecastBand band) {
        cells.add(band.mean());
        cells.add(band.median());
        cells.add(band.lower50());
        cells.add(band.upper50());
        cells.add(band.lower90());
        cells.add(band.upper90());
    }

    private static void json(ForecastTable table, Json json) {
        ForecastQuestion question = table.question();
        json.object(document -> {
            question(question, document);
            document.field("months", question.months());
            document.field("sales", Words.of(question.sales()));
            document.field("pending", table.pending());
            document.field("growing", table.growing());
            document.field("too_old", table.tooOld());
            document.field("too_old_growing", table.tooOldGrowing());
            document.field("bought_in", table.boughtIn());
            document.fieldIfAny("nothing", table.isEmpty() ? Optional.of(nothing(table)) : Optional.empty());
            document.array("forecasts", rows -> {
                table.rows().forEach(row -> json(table, row, rows));
                table.total().forEach(row -> json(table, row, rows));
            });
            document.array("behind", behind -> table.behind().forEach(one -> behind.object(of -> json(one, of))));
            document.array(
                    "shared_luck",
                    luck -> table.luck()
                            .forEach(one -> luck.object(of -> of.field("stage", Words.of(one.stage()))
                                    .field("fate_of_season", one.fateOfSeason())
                                    .field("fate_of_cluster", one.fateOfCluster())
                                    .field("time_of_season", one.timeOfSeason())
                                    .field("time_of_cluster", one.timeOfCluster())
                                    .field("seasons", one.seasons())
                                    .field("own_time", one.own())
                                    .field("together", one.together()))));
        });
    }

    static void question(ForecastQuestion question, Json document) {
        document.field("as_of", question.asOf());
        document.object("filter", filter -> {
            filter.fieldIfAny("cultivar", question.cultivar());
            filter.fieldIfAny("size", question.size());
        });
        document.field("simulations", question.simulations());
        document.field("seed", question.seed());
    }

    private static void json(ForecastTable table, ForecastRow row, Json rows) {
        rows.object(one -> {
            one.field("all_cultivars", row.cultivar().isEmpty());
            one.field("cultivar", row.cultivar().filter(name -> !name.isEmpty()));
            one.field("any_size", row.size().isEmpty());
            one.field("size", row.size().filter(size -> !size.isEmpty()));
            one.field("now", row.now());
            one.object("become_in_all", band -> band(row.inAll(), band));
            one.array("by_month", months -> {
                for (int month = 0; month < table.months().size(); month++) {
                    int at = month;
                    months.object(of -> {
                        of.field("month", table.months().get(at).toString());
                        of.object("become", band -> band(row.becoming().get(at), band));
                        of.object("standing", band -> band(row.standing().get(at), band));
                    });
                }
            });
        });
    }

    static void band(ForecastBand band, Json json) {
        json.field("mean", band.mean())
                .field("median", band.median())
                .field("lower_50", band.lower50())
                .field("upper_50", band.upper50())
                .field("lower_90", band.lower90())
                .field("upper_90", band.upper90());
    }

    private static void json(ForecastBehind behind, Json json) {
        json.field("cultivar", Optional.of(behind.cultivar()).filter(name -> !name.isEmpty()))
                .field("method", Words.of(behind.method()))
                .field("stage", Words.of(behind.stage()))
                .field("waiting", behind.waiting())
                .field("came_through", behind.good())
                .field("did_not", behind.bad())
                .field("not_known", behind.open())
                .field("clusters", behind.clusters())
                .field("leans", behind.lean())
                .field("leans_on", Words.of(behind.wider()))
                .field("wider_known", behind.widerKnown())
                .field("chance", behind.chance())
                .field("median_months", Optional.of(behind.months()).filter(months -> months >= 0));
    }
}
