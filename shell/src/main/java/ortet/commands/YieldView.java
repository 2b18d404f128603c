package ortet.commands;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ortet.entry.Words;
import ortet.figures.Clustered;
import ortet.figures.Interval;
import ortet.figures.MantelHaenszel;
import ortet.figures.Range;
import ortet.figures.Ratio;
import ortet.money.Cost;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.yield.CompareOn;
import ortet.yield.CompareQuestion;
import ortet.yield.Comparison;
import ortet.yield.ComparisonTable;
import ortet.yield.Imbalance;
import ortet.yield.InTheEnd;
import ortet.yield.Measure;
import ortet.yield.Raised;
import ortet.yield.Settle;
import ortet.yield.SideCost;
import ortet.yield.SideYield;
import ortet.yield.Stratified;
import ortet.yield.TakeFilter;
import ortet.yield.Verdict;
import ortet.yield.Wait;
import ortet.yield.YieldRate;

/** Shows a comparison: the figures side by side, what may be said, whether it is fair, and what would settle it. */
final class YieldView {
    private static final String DASH = "–";
    private static final int HUNDRED = 100;

    private YieldView() {}

    static void show(ComparisonTable table, boolean explain, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(table, explain, screen);
            case CSV -> screen.show(rows(table), format);
            case JSON -> screen.json(json -> json(table, json));
        }
    }

    // ---- for people ----

    private static void words(ComparisonTable table, boolean explain, Screen screen) {
        CompareQuestion question = table.question();
        screen.headed("", title(table), "  ", ", as of " + question.asOf() + filter(question.filter()));
        if (table.rows().isEmpty()) {
            screen.println();
            screen.prose("Of no cultivar were both sides set.");
        }
        if (question.by().isPresent() && !table.rows().isEmpty()) {
            screen.println();
            screen.show(each(table), OutputFormat.TABLE);
        }
        for (Comparison row : question.by().isPresent() ? List.<Comparison>of() : table.rows()) {
            screen.println();
            if (row.first().tally().set() + row.second().tally().set() == 0) {
                screen.prose("Nothing was set on either side by this day.");
                continue;
            }
            screen.show(side(question, row), OutputFormat.TABLE);
            screen.println();
            said(question, row, screen);
            if (row.firstCost().isPresent()) {
                screen.println();
                RaisedCostView.words(row, screen);
            }
        }
        screen.println();
        if (!table.oneSided().isEmpty()) {
            screen.hanging(
                    "",
                    "  ",
                    "Only one side was set of "
                            + table.oneSided().stream().map(Object::toString).collect(Collectors.joining(", ")) + ".");
        }
        if (table.shared() > 0) {
            screen.hanging(
                    "",
                    "  ",
                    Counts.of(table.shared(), "unit", "units")
                            + " left out: in batches from several mothers, nobody knows which are from this one.");
        }
        table.warnings().forEach(warning -> screen.hanging("warning: ", "  ", warning.text()));
        if (question.by().isEmpty()
                && table.rows().stream().anyMatch(row -> isMuchPending(row) || isMuchUnknown(row))) {
            screen.hanging(
                    "",
                    "  ",
                    "In the end: of more than a fifth it is not known, and failures are known first; so beside the share of"
                            + " those known stands the cumulative incidence (Aalen and Johansen), as if units were"
                            + " independent.");
        }
        RaisedCostView.none(table, screen);
        rules(question).forEach(rule -> screen.hanging("", "  ", rule));
        if (table.rows().stream().anyMatch(row -> row.firstCost().isPresent())) {
            screen.hanging("", "  ", RaisedCostView.rule());
        }
        if (explain) {
            screen.println();
            explanations(table).forEach(line -> screen.hanging("- ", "  ", line));
        }
    }

    private static String title(ComparisonTable table) {
        CompareQuestion question = table.question();
        return names(table)
                + question.by().map(by -> ", each " + by.word() + " by itself").orElse("");
    }

    private static String names(ComparisonTable table) {
        CompareQuestion question = table.question();
        return table.rows().stream()
                .findFirst()
                .map(row -> row.first().name() + " against " + row.second().name())
                .orElseGet(() ->
                        (question.on() == CompareOn.METHOD ? "" : question.on().word() + " ") + question.first()
                                + " against " + question.second());
    }

    private static String filter(TakeFilter filter) {
        StringBuilder text = new StringBuilder();
        filter.cultivar().ifPresent(name -> text.append(", only ").append(name));
        filter.mother().ifPresent(tag -> text.append(", only from ").append(tag));
        filter.method().ifPresent(method -> text.append(", only by ").append(Words.of(method)));
        filter.fromYear().ifPresent(year -> text.append(", from ").append(year));
        filter.toYear().ifPresent(year -> text.append(", to ").append(year));
        filter.operator().ifPresent(name -> text.append(", only by ").append(name));
        return text.toString();
    }

    /** Return a line for each cultivar or taxon. */
    private static Sheet each(ComparisonTable table) {
        CompareQuestion question = table.question();
        SideYield first = table.rows().get(0).first();
        SideYield second = table.rows().get(0).second();
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("group", question.by().map(by -> by.word()).orElse("")),
                Column.text("first", first.name() + " (%)"),
                Column.text("second", second.name() + " (%)"),
                Column.text("difference", "difference"),
                Column.text("per_mother_year", "saleable per mother-year"),
                Column.text("says", "says"));
        for (Comparison row : table.rows()) {
            sheet.row(
                    row.shown(),
                    rate(row.first().rate(row.measure())) + (row.measure() == Measure.TAKE ? " *" : ""),
                    rate(row.second().rate(row.measure())),
                    row.difference()
                            .map(difference -> signed(difference) + " ("
                                    + row.interval()
                                            .map(one -> signed(one.lower()) + " to " + signed(one.upper()))
                                            .orElse(DASH)
                                    + ")")
                            .orElse(DASH),
                    perMotherYear(row.first()) + "; " + perMotherYear(row.second()),
                    says(row));
        }
        sheet.note("* by take: of more than a fifth of the units nobody knows whether they have established");
        return sheet.build();
    }

    private static String perMotherYear(SideYield side) {
        return side.saleablePerMotherYear().map(number -> decimals(number, 2)).orElse(DASH);
    }

    private static String perMotherYear(SideYield side, double confidence) {
        return perMotherYear(side)
                + side.ofMothers()
                        .interval(confidence)
                        .map(limits -> " (" + decimals(limits.lower(), 2) + "–" + decimals(limits.upper(), 2) + ")")
                        .orElse(side.motherYears() > 0 ? " ?" : "");
    }

    private static String says(Comparison row) {
        String unfair = row.imbalances().stream()
                .filter(Imbalance::isMuch)
                .map(Imbalance::factor)
                .collect(Collectors.joining(", "));
        String verdict = switch (row.verdict()) {
            case FIRST_YIELDS_MORE -> "more from " + row.first().name();
            case SECOND_YIELDS_MORE -> "more from " + row.second().name();
            case NOT_TOLD_APART -> "not told apart";
            case ONE_CLUSTER -> "no verdict: one tray, or mother and season";
            case NOTHING_KNOWN -> "nothing known yet";
        };
        return row.verdict() == Verdict.NOTHING_KNOWN || unfair.isEmpty() ? verdict : verdict + "; unfair: " + unfair;
    }

    /** Return the figures side by side. */
    private static Sheet side(CompareQuestion question, Comparison row) {
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("what", "of each side"),
                Column.text("first", row.first().name()),
                Column.text("second", row.second().name()));
        line(sheet, "set", row, side -> Counts.grouped(side.tally().set()));
        line(sheet, "stood", row, side -> text(side.stood().toString()));
        line(sheet, "taken, % of known", row, side -> rate(side.takeRate()));
        line(
                sheet,
                "pending; unaccounted",
                row,
                side -> side.tally().pending() + "; " + side.tally().unaccounted());
        if (isMuchPending(row)) {
            line(sheet, "taken in the end, %", row, side -> inTheEnd(side.taking()));
        }
        line(sheet, "established, % of known", row, side -> rate(side.establishedRate()));
        if (isMuchUnknown(row)) {
            line(sheet, "established in the end, %", row, side -> inTheEnd(side.establishing()));
        }
        line(sheet, "not yet known", row, side -> open(side.established()));
        line(
                sheet,
                "saleable so far",
                row,
                side -> Counts.grouped(side.saleable().yes()));
        line(sheet, "of 100 set, at least, at most", row, side -> saleable(side.saleable()));
        line(sheet, "in size classes", row, side -> sizes(side.bySize()));
        line(sheet, "mother-years", row, side -> Counts.grouped(side.motherYears()));
        line(sheet, "saleable per mother-year", row, side -> perMotherYear(side, question.confidence()));
        line(sheet, "weeks to own roots, median", row, side -> lasting(side.toRoots(), 0));
        question.stemMm()
                .ifPresent(stem -> line(
                        sheet,
                        "years to a stem of " + stem + " mm",
                        row,
                        side -> side.toStem().map(wait -> lasting(wait, 1)).orElse(DASH)));
        return sheet.build();
    }

    private static void line(Sheet.Builder sheet, String what, Comparison row, Function<SideYield, String> figure) {
        sheet.row(what, figure.apply(row.first()), figure.apply(row.second()));
    }

    private static String text(String text) {
        return text.isEmpty() ? DASH : text;
    }

    private static String rate(Optional<YieldRate> rate) {
        return rate.map(one -> one.count().successes() + " of " + one.count().trials() + ", " + percent(one.share())
                        + " (" + percent(one.interval().lower()) + "–"
                        + percent(one.interval().upper()) + ")"
                        + (one.widening().isPresent() ? "" : " ?"))
                .orElse(DASH);
    }

    private static boolean isMuchPending(Comparison row) {
        return Stream.of(row.first(), row.second())
                .anyMatch(side -> side.tally().isMuchPending());
    }

    private static boolean isMuchUnknown(Comparison row) {
        return Stream.of(row.first(), row.second())
                .anyMatch(side -> side.established().isMuchUnknown());
    }

    private static String inTheEnd(Optional<InTheEnd> end) {
        return end.map(one -> percent(one.step().share())
                        + one.step()
                                .interval()
                                .map(interval ->
                                        " (" + percent(interval.lower()) + "–" + percent(interval.upper()) + ")")
                                .orElse("")
                        + " by week " + decimals(one.step().time(), 0))
                .orElse(DASH);
    }

    private static String lasting(Wait wait, int decimals) {
        return wait.median()
                        .map(median -> {
                            String lower = decimals(median.lower(), decimals);
                            String upper = Double.isFinite(median.upper()) ? decimals(median.upper(), decimals) : "";
                            return upper.isEmpty()
                                    ? "more than " + lower
                                    : lower.equals(upper) ? lower : lower + " to " + upper;
                        })
                        .orElse(DASH)
                + (wait.happened() + wait.open() == 0
                        ? ""
                        : " (" + wait.happened() + " did, " + wait.open() + " not yet)");
    }

    private static String open(Raised raised) {
        return raised.open()
                + (raised.unseen() == 0 ? "" : ", " + raised.unseen() + " due and unseen")
                + (raised.leftOut() == 0 ? "" : "; " + raised.leftOut() + " left out");
    }

    private static String saleable(Raised raised) {
        if (raised.counting() == 0) {
            return DASH;
        }
        double least = (double) raised.yes() / raised.counting();
        double most = (double) (raised.yes() + raised.unknown()) / raised.counting();
        return least == most ? percent(least) : percent(least) + ", " + percent(most);
    }

    private static String sizes(Map<String, Integer> bySize) {
        return bySize.isEmpty()
                ? DASH
                : bySize.entrySet().stream()
                        .map(size ->
                                (size.getKey().isEmpty() ? "sold ungraded" : size.getKey()) + " " + size.getValue())
                        .collect(Collectors.joining(", "));
    }

    private static void said(CompareQuestion question, Comparison row, Screen screen) {
        screen.headed("", verdict(question, row), "  ", "");
        if (row.verdict() == Verdict.NOTHING_KNOWN) {
            return;
        }
        if (row.measure() == Measure.TAKE) {
            screen.hanging(
                    "",
                    "  ",
                    "Compared by take: of more than a fifth of the units nobody knows whether they have established.");
        }
        row.difference().ifPresent(difference -> screen.hanging("", "  ", difference(question, row, difference)));
        row.stratified().ifPresent(strata -> screen.hanging("", "  ", stratified(question, strata)));
        if (row.first().motherYears() > 0 && row.second().motherYears() > 0) {
            screen.hanging(
                    "",
                    "  ",
                    "A mother-year gave " + perMotherYear(row.first()) + " saleable by "
                            + row.first().name() + ", "
                            + perMotherYear(row.second()) + " by "
                            + row.second().name()
                            + " so far: no verdict, for what grows on is in neither.");
        }
        fairness(row, screen);
        row.settle().ifPresent(settle -> screen.hanging("", "  ", settle(question, row, settle)));
        if (row.verdict() == Verdict.ONE_CLUSTER) {
            screen.hanging(
                    "",
                    "  ",
                    "To settle it: at least two trays a side, from different mothers or seasons; how many more, one alone"
                            + " cannot tell.");
        }
    }

    static String verdict(CompareQuestion question, Comparison row) {
        String first = row.first().name();
        String second = row.second().name();
        String what = row.measure() == Measure.TAKE ? "take" : "establish";
        return switch (row.verdict()) {
            case FIRST_YIELDS_MORE ->
                "More from " + first + ": of 100 set, " + range(row.interval().orElseThrow(), 1) + " more " + what
                        + " than of " + second + ".";
            case SECOND_YIELDS_MORE ->
                "More from " + second + ": of 100 set, " + range(row.interval().orElseThrow(), -1) + " more " + what
                        + " than of " + first + ".";
            case NOT_TOLD_APART -> {
                Interval interval = row.interval().orElseThrow();
                String strata =
                        question.within().map(within -> within.word() + "s").orElse("strata");
                yield interval.lower() > 0 || interval.upper() < 0
                        ? row.stratified()
                                .filter(found -> found.strata() > 0)
                                .map(found -> "No verdict: within " + strata + " the difference does not hold.")
                                .orElse("No verdict: of no one of the " + strata + " are both sides known.")
                        : "Not told apart: of 100 set, " + first + " may give from " + change(interval.lower()) + " to "
                                + change(interval.upper()) + " than " + second + ".";
            }
            case ONE_CLUSTER ->
                "No verdict: on a side all that is known came from one tray, or one mother in one season; that is one"
                        + " event.";
            case NOTHING_KNOWN ->
                "Nothing is known yet of " + (row.first().rate(row.measure()).isEmpty() ? first : second) + ".";
        };
    }

    private static String range(Interval interval, int sign) {
        double one = sign * interval.lower();
        double other = sign * interval.upper();
        return percent(Math.min(one, other)) + " to " + percent(Math.max(one, other));
    }

    private static String change(double difference) {
        String size = percent(Math.abs(difference));
        return difference == 0 ? "none more" : size + (difference < 0 ? " fewer" : " more");
    }

    private static String difference(CompareQuestion question, Comparison row, double difference) {
        Interval interval = row.interval().orElseThrow();
        return "Difference: " + signed(difference) + " of 100 (" + signed(interval.lower()) + " to "
                + signed(interval.upper()) + ", " + confidence(question) + " %"
                + (row.allowsForClusters() ? ", allowing for trays and mothers" : ", as if units were independent")
                + "); odds ratio " + ratio(row.odds().ratio()) + " ("
                + odds(row.odds().interval()) + ", as if units were independent).";
    }

    private static String stratified(CompareQuestion question, Stratified strata) {
        String word = strata.within().word() + "s";
        if (strata.strata() == 0) {
            return "Strata " + word + ": in none are both sides known.";
        }
        Optional<Interval> interval = strata.difference().flatMap(MantelHaenszel.Difference::interval);
        return "Strata " + word + " (" + strata.strata() + " with both sides): difference "
                + strata.difference().map(one -> signed(one.value())).orElse(DASH) + " of 100 ("
                + interval.map(one -> signed(one.lower()) + " to " + signed(one.upper()))
                        .orElse(DASH)
                + ", as if units were independent), odds ratio " + ratio(strata.oddsRatio()) + " ("
                + strata.oddsInterval().map(YieldView::odds).orElse(DASH) + "); "
                + strata.alike()
                        .map(p -> p < 1 - question.confidence()
                                ? "it differs between " + word + " (Tarone p " + p(p) + "), so one figure for all says"
                                        + " little"
                                : "nothing shows that it differs between " + word + " (Tarone p " + p(p) + ")")
                        .orElse("too few " + word + " to tell whether it differs between them")
                + (strata.leftOut() == 0 ? "" : "; " + strata.leftOut() + " units in no stratum or in several")
                + ".";
    }

    private static void fairness(Comparison row, Screen screen) {
        List<Imbalance> much =
                row.imbalances().stream().filter(Imbalance::isMuch).toList();
        screen.hanging(
                "",
                "  ",
                much.isEmpty()
                        ? "Fair, as far as the book tells: the sides differ little in "
                                + row.imbalances().stream()
                                        .filter(Imbalance::isTold)
                                        .map(Imbalance::factor)
                                        .collect(Collectors.joining(", "))
                                + "."
                        : "Unfair: the sides differ in "
                                + much.stream()
                                        .map(one -> one.factor() + " (" + percent(one.apart()) + " % apart; most: "
                                                + one.value() + ", " + percent(one.first()) + " % of "
                                                + row.first().name() + ", " + percent(one.second()) + " % of "
                                                + row.second().name() + ")")
                                        .collect(Collectors.joining(", "))
                                + ".");
        List<Imbalance> untold =
                row.imbalances().stream().filter(one -> !one.isTold()).toList();
        if (!untold.isEmpty()) {
            screen.hanging(
                    "",
                    "  ",
                    "Too seldom written down to tell: "
                            + untold.stream()
                                    .map(one -> one.factor() + " (of " + percent(one.firstTold()) + " % of "
                                            + row.first().name() + ", " + percent(one.secondTold()) + " % of "
                                            + row.second().name() + ")")
                                    .collect(Collectors.joining(", "))
                            + ".");
        }
    }

    private static String settle(CompareQuestion question, Comparison row, Settle settle) {
        return "To settle " + (settle.isObserved() ? "the difference seen" : "a difference") + " of "
                + percent(settle.difference()) + " of 100, with 80 % power at " + confidence(question) + " %: "
                + Counts.grouped(settle.needed().units()) + " known a side, in "
                + Counts.grouped(settle.needed().clusters().orElse(0L)) + " trays or mother-seasons of "
                + settle.clusterSize() + ".";
    }

    private static List<String> rules(CompareQuestion question) {
        List<String> rules = new ArrayList<>();
        rules.add(
                "Counted: what was set by the cut-off day, season by its year; every unit is followed to the plant that"
                        + " it became.");
        rules.add("Established: seen alive " + question.establishment() + " or more after severing or first potting.");
        rules.add("Saleable: graded in a size class, or sold. At least: if none that grows on becomes so; at most: if"
                + " all do.");
        rules.add("Weeks to own roots: of layers those on the mother, until severed; of others until found rooted.");
        rules.add(
                "Intervals in brackets at " + confidence(question)
                        + " % allow for trays and mothers; with ? they cannot, all came from one. Of saleable per mother-year they"
                        + " allow for how mothers differ; with ? they cannot: one mother, trays that all mothers share, or none saleable.");
        question.by().ifPresent(by -> rules.add("What a saleable tree costs is told without --by."));
        return rules;
    }

    private static List<String> explanations(ComparisonTable table) {
        CompareQuestion question = table.question();
        List<String> lines = new ArrayList<>();
        lines.add("rates: Wilson's score interval on the effective count, by clusters of trays and of mother × season"
                + " (docs/methods/yield.md)");
        lines.add("difference: Newcombe 1998, Statistics in Medicine 17:873, method 10, on the effective counts");
        lines.add("odds ratio: conditional maximum likelihood, exact interval (Cornfield 1956; Fisher)");
        question.within()
                .ifPresent(within -> lines.add("within " + within.word()
                        + "s: Mantel and Haenszel 1959; Robins, Breslow and Greenland 1986; Sato 1989; Tarone 1985"));
        lines.add("to settle: two rates at 80 % power, times the design effect 1 + (m - 1)r");
        table.rows().forEach(row -> lines.addAll(RaisedCostView.explanations(row)));
        for (Comparison row : table.rows()) {
            for (SideYield side : List.of(row.first(), row.second())) {
                side.rate(row.measure())
                        .ifPresent(rate ->
                                lines.add((row.group().isPresent() ? row.shown() + ", " : "") + side.name() + ": "
                                        + rate.count() + " in " + Counts.of(rate.clusters(), "cluster", "clusters")
                                        + rate.widening()
                                                .map(widening -> ", design effect "
                                                        + decimals(widening.designEffect(), 2) + " ("
                                                        + widening.basis().title() + "), effective count "
                                                        + decimals(widening.effective(), 1))
                                                .orElse(", design effect not known from one")));
            }
        }
        return lines;
    }

    private static String confidence(CompareQuestion question) {
        return Confidence.percent(question.confidence());
    }

    private static String percent(double share) {
        long rounded = Math.round(share * HUNDRED);
        boolean notQuite = rounded == 0 && share > 0 || rounded == HUNDRED && share < 1;
        return notQuite ? (rounded == 0 ? "<1" : ">99") : Long.toString(rounded);
    }

    private static String signed(double share) {
        String text = decimals(share * HUNDRED, 0);
        return share > 0 && !text.equals("0")
                ? "+" + text
                : text.replace("-0", "0").replace("-", "−");
    }

    private static String ratio(Ratio ratio) {
        return ratio.accept(new Ratio.Visitor<String>() {
            @Override
            public String finite(double value) {
                return decimals(value, 2);
            }

            @Override
            public String infinite() {
                return "without limit";
            }

            @Override
            public String undefined() {
                return DASH;
            }
        });
    }

    private static String odds(Interval interval) {
        return decimals(interval.lower(), 2) + " to "
                + (Double.isFinite(interval.upper()) ? decimals(interval.upper(), 2) : "without limit");
    }

    private static String p(double p) {
        return p < 0.001 ? "below 0.001" : decimals(p, 3);
    }

    private static String decimals(double number, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", number);
    }

    // ---- for programs ----

    private static Sheet rows(ComparisonTable table) {
        Sheet.Builder sheet = Sheet.titled(
                title(table),
                Column.text("group", "group"),
                Column.text("side", "side"),
                Column.whole("set", "set"),
                Column.whole("taken", "taken"),
                Column.whole("failed", "failed"),
                Column.whole("withdrawn", "withdrawn"),
                Column.whole("pending", "pending"),
                Column.whole("unaccounted", "unaccounted"),
                Column.whole("batches", "batches"),
                Column.whole("singles", "singles"),
                Column.whole("mothers", "mothers"),
                Column.share("take_rate", "take rate", 0),
                Column.share("take_lower", "lower", 0),
                Column.share("take_upper", "upper", 0),
                Column.whole("established", "established"),
                Column.whole("not_established", "not established"),
                Column.whole("establishing_not_known", "not known"),
                Column.whole("left_out", "left out"),
                Column.share("established_rate", "established", 0),
                Column.share("established_lower", "lower", 0),
                Column.share("established_upper", "upper", 0),
                Column.whole("saleable", "saleable"),
                Column.whole("not_saleable", "not saleable"),
                Column.whole("growing_on", "growing on"),
                Column.whole("mother_years", "mother-years"),
                Column.number("saleable_per_mother_year", "per mother-year", 2),
                Column.number("per_mother_year_lower", "lower", 2),
                Column.number("per_mother_year_upper", "upper", 2),
                Column.number("cost_least", "cost at least", 6),
                Column.number("cost_most", "cost at most", 6),
                Column.text("currency", "currency"),
                Column.text("compared_by", "compared by"),
                Column.number("difference", "difference", 3),
                Column.number("difference_lower", "lower", 3),
                Column.number("difference_upper", "upper", 3),
                Column.text("verdict", "verdict"));
        for (Comparison row : table.rows()) {
            for (SideYield side : List.of(row.first(), row.second())) {
                sheet.row(
                        row.group().map(Object::toString),
                        side.name(),
                        side.tally().set(),
                        side.tally().taken(),
                        side.tally().failed(),
                        side.tally().withdrawn(),
                        side.tally().pending(),
                        side.tally().unaccounted(),
                        side.stood().batches(),
                        side.stood().singles(),
                        side.stood().mothers(),
                        side.takeRate().map(YieldRate::share),
                        side.takeRate().map(YieldRate::interval).map(Interval::lower),
                        side.takeRate().map(YieldRate::interval).map(Interval::upper),
                        side.established().yes(),
                        side.established().no(),
                        side.established().open(),
                        side.established().leftOut(),
                        side.establishedRate().map(YieldRate::share),
                        side.establishedRate().map(YieldRate::interval).map(Interval::lower),
                        side.establishedRate().map(YieldRate::interval).map(Interval::upper),
                        side.saleable().yes(),
                        side.saleable().no(),
                        side.saleable().open(),
                        side.motherYears(),
                        side.saleablePerMotherYear(),
                        side.ofMothers().interval(table.question().confidence()).map(Interval::lower),
                        side.ofMothers().interval(table.question().confidence()).map(Interval::upper),
                        RaisedCostView.of(row, side).flatMap(SideCost::least).map(Cost::fine),
                        RaisedCostView.of(row, side).flatMap(SideCost::most).map(Cost::fine),
                        RaisedCostView.of(row, side).flatMap(RaisedCostView::currency),
                        row.measure().word(),
                        row.difference(),
                        row.interval().map(Interval::lower),
                        row.interval().map(Interval::upper),
                        Words.of(row.verdict()));
            }
        }
        return sheet.build();
    }

    private static void json(ComparisonTable table, Json json) {
        CompareQuestion question = table.question();
        json.object(all -> all.field("first", question.first())
                .field("second", question.second())
                .field("compared", question.on().word())
                .fieldIfAny("by", question.by().map(by -> by.word()))
                .fieldIfAny("within", question.within().map(within -> within.word()))
                .field("as_of", question.asOf())
                .field("confidence", question.confidence())
                .object(
                        "filter",
                        filter -> filter.fieldIfAny(
                                        "cultivar", question.filter().cultivar())
                                .fieldIfAny("mother", question.filter().mother().map(Object::toString))
                                .fieldIfAny("method", question.filter().method().map(Words::of))
                                .fieldIfAny("from", question.filter().fromYear())
                                .fieldIfAny("to", question.filter().toYear())
                                .fieldIfAny("operator", question.filter().operator()))
                .object(
                        "establishment",
                        rule -> rule.field("days", question.establishment().days())
                                .field(
                                        "season_from",
                                        question.establishment().from().toString())
                                .field(
                                        "season_to",
                                        question.establishment().to().toString()))
                .array(
                        "comparisons",
                        rows -> table.rows().forEach(row -> rows.object(one -> comparison(question, row, one))))
                .array("one_sided", one -> table.oneSided().forEach(group -> one.value(group.shown())))
                .field("shared", table.shared())
                .fieldIfAny("no_costs", table.noCosts())
                .array("warnings", one -> table.warnings().forEach(warning -> one.value(warning.text()))));
    }

    private static String day(MonthDay day) {
        return String.format(Locale.ROOT, "%02d-%02d", day.getMonthValue(), day.getDayOfMonth());
    }

    private static void comparison(CompareQuestion question, Comparison row, Json json) {
        json.fieldIfAny("group", row.group().flatMap(group -> group.value()))
                .field("compared_by", row.measure().word())
                .object("first", side -> sideOf(row.first(), row.firstCost(), question.confidence(), side))
                .object("second", side -> sideOf(row.second(), row.secondCost(), question.confidence(), side))
                .fieldIfAny("difference", row.difference())
                .fieldIfAny("difference_lower", row.interval().map(Interval::lower))
                .fieldIfAny("difference_upper", row.interval().map(Interval::upper))
                .fieldIfAny(
                        "difference_method",
                        row.interval().map(one -> one.method().title()))
                .field("allows_for_clusters", row.allowsForClusters())
                .fieldIfAny("odds_ratio", row.odds().ratio().finite())
                .field("odds_lower", row.odds().interval().lower())
                .fieldIfAny(
                        "odds_upper", Optional.of(row.odds().interval().upper()).filter(Double::isFinite))
                .field("verdict", Words.of(row.verdict()))
                .field("verdict_in_words", verdict(question, row))
                .field("fair", row.isFair())
                .array(
                        "imbalances",
                        all -> row.imbalances()
                                .forEach(one -> all.object(factor -> factor.field("factor", one.factor())
                                        .field("apart", one.apart())
                                        .field("most", one.value())
                                        .field("first", one.first())
                                        .field("second", one.second())
                                        .field("first_told", one.firstTold())
                                        .field("second_told", one.secondTold()))));
        row.stratified().ifPresent(strata -> json.object("within", one -> stratified(strata, one)));
        row.settle()
                .ifPresent(settle -> json.object(
                        "to_settle",
                        one -> one.field("difference", settle.difference())
                                .field("observed", settle.isObserved())
                                .field("cluster_size", settle.clusterSize())
                                .field("correlation", settle.correlation())
                                .field("units", settle.needed().units())
                                .fieldIfAny("clusters", settle.needed().clusters())
                                .field("design_effect", settle.needed().designEffect())));
    }

    private static void stratified(Stratified strata, Json json) {
        Optional<Interval> interval = strata.difference().flatMap(MantelHaenszel.Difference::interval);
        json.field("within", strata.within().word())
                .field("strata", strata.strata())
                .field("informing", strata.informing())
                .fieldIfAny("difference", strata.difference().map(MantelHaenszel.Difference::value))
                .fieldIfAny("difference_lower", interval.map(Interval::lower))
                .fieldIfAny("difference_upper", interval.map(Interval::upper))
                .fieldIfAny("odds_ratio", strata.oddsRatio().finite())
                .fieldIfAny("odds_lower", strata.oddsInterval().map(Interval::lower))
                .fieldIfAny("odds_upper", strata.oddsInterval().map(Interval::upper))
                .fieldIfAny("cochran_mantel_haenszel_p", strata.test())
                .fieldIfAny("tarone_p", strata.alike())
                .field("left_out", strata.leftOut());
    }

    private static void sideOf(SideYield side, Optional<SideCost> cost, double confidence, Json json) {
        json.field("name", side.name())
                .field("set", side.tally().set())
                .field("taken", side.tally().taken())
                .field("failed", side.tally().failed())
                .field("withdrawn", side.tally().withdrawn())
                .field("pending", side.tally().pending())
                .field("unaccounted", side.tally().unaccounted())
                .field("batches", side.stood().batches())
                .field("singles", side.stood().singles())
                .field("mothers", side.stood().mothers())
                .object("take", one -> {
                    rate(side.takeRate(), one);
                    side.taking().ifPresent(end -> one.object("in_the_end", each -> inTheEnd(end, each)));
                })
                .object("established", one -> {
                    raised(side.established(), one);
                    rate(side.establishedRate(), one);
                    side.establishing().ifPresent(end -> one.object("in_the_end", each -> inTheEnd(end, each)));
                })
                .object("saleable", one -> {
                    raised(side.saleable(), one);
                    one.array(
                            "sizes",
                            sizes -> side.bySize()
                                    .forEach((size, count) -> sizes.object(each -> each.fieldIfAny(
                                                    "size", Optional.of(size).filter(word -> !word.isEmpty()))
                                            .field("count", count))));
                })
                .field("mother_years", side.motherYears())
                .field("saleable_of_known_mothers", side.saleableOfMothers())
                .fieldIfAny("saleable_per_mother_year", side.saleablePerMotherYear())
                .fieldIfAny(
                        "per_mother_year_lower",
                        side.ofMothers().interval(confidence).map(Interval::lower))
                .fieldIfAny(
                        "per_mother_year_upper",
                        side.ofMothers().interval(confidence).map(Interval::upper))
                .object("weeks_to_own_roots", one -> lasting(side.toRoots(), one));
        cost.ifPresent(one -> json.object("costs", each -> RaisedCostView.json(one, each)));
        side.toStem().ifPresent(wait -> json.object("years_to_stem", one -> lasting(wait, one)));
    }

    private static void inTheEnd(InTheEnd end, Json json) {
        json.field("share", end.step().share())
                .fieldIfAny("lower", end.step().interval().map(Interval::lower))
                .fieldIfAny("upper", end.step().interval().map(Interval::upper))
                .field("weeks", end.step().time())
                .field("followed_so_long", end.step().atRisk())
                .field("followed", end.followed());
    }

    private static void lasting(Wait wait, Json json) {
        json.field("happened", wait.happened())
                .field("not_yet", wait.open())
                .fieldIfAny("median_from", wait.median().map(Range::lower))
                .fieldIfAny("median_to", wait.median().map(Range::upper).filter(Double::isFinite));
    }

    private static void raised(Raised raised, Json json) {
        json.field("yes", raised.yes())
                .field("no", raised.no())
                .field("left", raised.left())
                .field("withdrawn", raised.withdrawn())
                .field("not_known", raised.open())
                .field("due_and_unseen", raised.unseen())
                .field("left_out", raised.leftOut());
    }

    private static void rate(Optional<YieldRate> rate, Json json) {
        json.fieldIfAny("rate", rate.map(YieldRate::share))
                .fieldIfAny("lower", rate.map(YieldRate::interval).map(Interval::lower))
                .fieldIfAny("upper", rate.map(YieldRate::interval).map(Interval::upper))
                .fieldIfAny("clusters", rate.map(YieldRate::clusters))
                .fieldIfAny("design_effect", rate.flatMap(YieldRate::widening).map(Clustered.Widening::designEffect));
    }
}
