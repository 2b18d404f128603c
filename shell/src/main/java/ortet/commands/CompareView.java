package ortet.commands;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ortet.figures.Clustered;
import ortet.figures.Comparison;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.MantelHaenszel;
import ortet.figures.Needed;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;

/** Shows rates, what they differ by, and what would settle it. */
final class CompareView {
    private static final String FISHER = "Fisher 1935, J. R. Stat. Soc. 98:39";
    private static final String CMH = "Mantel & Haenszel 1959, J. Natl. Cancer Inst. 22:719";
    private static final String TARONE =
            "Breslow & Day 1980, Statistical Methods in Cancer Research I, 4.30; Tarone 1985, Biometrika 72:91";

    private final Comparison comparison;
    private final double confidence;
    private final FigureSheet sheet;

    private CompareView(Comparison comparison, double confidence, String title) {
        this.comparison = comparison;
        this.confidence = confidence;
        this.sheet = new FigureSheet(title, Math.round(confidence * 100));
    }

    static void show(
            Comparison comparison,
            double confidence,
            String title,
            boolean explain,
            List<String> inputs,
            OutputFormat format,
            Screen screen) {
        CompareView view = new CompareView(comparison, confidence, title);
        view.fill();
        view.sheet.show(explain, inputs, format, screen);
    }

    private void fill() {
        for (Comparison.Rate rate : comparison.rates()) {
            sheet.figure("rate", rate.group())
                    .outOf(rate.count(), rate.clusters().map(Clustered::clusters))
                    .value(rate.count().share(), rate.interval(), FigureSheet.Manner.PERCENT)
                    .add();
        }
        for (Comparison.Pair pair : comparison.pairs()) {
            pair(pair);
        }
        for (Comparison.Rate rate : comparison.rates()) {
            rate.clusters().ifPresent(clusters -> clusters(rate.group(), clusters));
        }
        if (comparison.clustered()) {
            sheet.note(
                    "odds ratios, tests and what is said within strata take every unit for itself, not heeding clusters");
        } else {
            sheet.note(
                    "every unit is taken for itself; where they stood in trays or came from few mothers, name the column"
                            + " with --cluster, for they say less");
        }
        if (comparison.pairs().size() > 1) {
            sheet.note(
                    "of twenty such comparisons one leaves out the truth on average; the best of many looks better than it"
                            + " is");
        }
    }

    private void clusters(String group, Clustered clusters) {
        clusters.widening()
                .ifPresentOrElse(
                        widening -> sheet.note(group + ": " + clusters.clusters() + " clusters, design effect "
                                + FigureSheet.times(widening.designEffect()) + " ("
                                + widening.basis().title() + "), effective count "
                                + FigureSheet.plain(Math.round(widening.effective() * 10) / 10.0)),
                        () -> sheet.warning(group + ": " + Counts.of(clusters.clusters(), "cluster", "clusters")
                                + ", so nobody can tell how much clusters differ; its interval takes every unit for"
                                + " itself and is too narrow"));
    }

    private void pair(Comparison.Pair pair) {
        String both = pair.group() + " against " + pair.against();
        sheet.section(both);
        sheet.figure("difference", both)
                .under("difference, points")
                .value(pair.difference(), pair.differenceInterval(), FigureSheet.Manner.POINTS)
                .add();
        sheet.figure("odds ratio", both)
                .under("odds ratio")
                .ratio(pair.odds().ratio(), Optional.of(pair.odds().interval()))
                .p(pair.p(), "Fisher's exact test, two-sided", FISHER)
                .add();
        pair.within().ifPresent(within -> within(pair, within, both));
        verdict(pair);
    }

    private void within(Comparison.Pair pair, MantelHaenszel within, String both) {
        sheet.section(both + ", within strata");
        sheet.figure("difference within strata", both)
                .under("difference, points")
                .out(Counts.of(within.informing(), "stratum", "strata"))
                .value(
                        within.difference().map(MantelHaenszel.Difference::value),
                        within.difference().flatMap(MantelHaenszel.Difference::interval),
                        FigureSheet.Manner.POINTS)
                .add();
        FigureSheet.Figure odds = sheet.figure("odds ratio within strata", both)
                .under("odds ratio")
                .out(Counts.of(within.informing(), "stratum", "strata"))
                .ratio(within.oddsRatio(), within.oddsRatioInterval());
        within.test().ifPresent(test -> odds.p(test.p()));
        odds.add();
        pair.exactWithin()
                .ifPresent(exact -> sheet.figure("exact odds ratio within strata", both)
                        .under("the same, exact")
                        .out(Counts.of(within.informing(), "stratum", "strata"))
                        .ratio(exact.ratio(), Optional.of(exact.interval()))
                        .add());
        sheet.figure("no difference in any stratum", both)
                .under("no difference in any")
                .test(within.test())
                .by("Cochran-Mantel-Haenszel test", CMH)
                .add();
        sheet.figure("the same odds ratio in all strata", both)
                .under("the same in all")
                .test(within.tarone())
                .by("Breslow-Day test with Tarone's correction", TARONE)
                .add();
        if (!within.silent().isEmpty()) {
            sheet.note(Counts.of(within.silent().size(), "stratum says", "strata say")
                    + " nothing of the odds ratio of " + both + ": "
                    + within.silent().stream()
                            .map(silent -> silent.label() + " (" + silent.why().title() + ")")
                            .collect(Collectors.joining(", ")));
        }
        within.tarone()
                .filter(test -> test.p() < 0.05)
                .ifPresent(test -> sheet.warning(both
                        + ": the odds ratio is not the same in all strata (p " + FigureSheet.probability(test.p())
                        + "); one figure for all hides that, look at each"));
    }

    private void verdict(Comparison.Pair pair) {
        if (pair.differenceInterval().isEmpty()) {
            sheet.note(pair.group() + " against " + pair.against() + ": nothing is known of one side");
            return;
        }
        if (pair.claimsNothing()) {
            sheet.warning("no verdict on " + pair.group() + " against " + pair.against()
                    + ": it takes two clusters or more on either side");
            return;
        }
        Optional<Interval> adjusted = comparison.clustered()
                ? Optional.empty()
                : pair.within().flatMap(MantelHaenszel::difference).flatMap(MantelHaenszel.Difference::interval);
        Interval interval = adjusted.orElse(pair.differenceInterval().get());
        String within = adjusted.isPresent() ? ", within strata" : "";
        String both = pair.group() + " and " + pair.against();
        if (interval.lower() > 0) {
            sheet.note(pair.group() + " does better than " + pair.against() + ", by "
                    + between(interval.lower(), interval.upper()) + within);
        } else if (interval.upper() < 0) {
            sheet.note(pair.group() + " does worse than " + pair.against() + ", by "
                    + between(-interval.upper(), -interval.lower()) + within);
        } else {
            sheet.note("these figures do not tell " + both + " apart (" + between(interval.lower(), interval.upper())
                    + ")" + settling(pair));
        }
    }

    private static String between(double lower, double upper) {
        return FigureSheet.points(lower) + " to " + FigureSheet.points(upper) + " points";
    }

    /** Return what would tell the two apart, if they are as far apart as they look. */
    private String settling(Comparison.Pair pair) {
        Comparison.Rate one = rate(pair.group());
        Comparison.Rate other = rate(pair.against());
        double first = one.count().share().orElseThrow();
        double second = other.count().share().orElseThrow();
        if (Math.abs(first - second) < 0.001) {
            return "";
        }
        Optional<Double> correlation = one.clusters()
                .flatMap(Clustered::correlation)
                .flatMap(rho -> other.clusters().flatMap(Clustered::correlation).map(their -> Math.max(rho, their)));
        String ifSo = "; if they are as far apart as they look, it takes about ";
        if (correlation.isPresent()) {
            Count both = one.count().plus(other.count());
            int clusters = one.clusters().orElseThrow().clusters()
                    + other.clusters().orElseThrow().clusters();
            int size = (int) Math.max(1, Math.round((double) both.trials() / clusters));
            Needed needed = Needed.clustered(first, second, size, correlation.get(), confidence, Needed.POWER);
            return ifSo + Counts.grouped(needed.clusters().orElseThrow()) + " clusters of " + size
                    + " on either side to tell them apart four times in five";
        }
        if (comparison.clustered()) {
            return "";
        }
        Needed needed = Needed.independent(first, second, confidence, Needed.POWER);
        return ifSo + Counts.grouped(needed.units()) + " units on either side to tell them apart four times in five";
    }

    private Comparison.Rate rate(String group) {
        return comparison.rates().stream()
                .filter(rate -> rate.group().equals(group))
                .findAny()
                .orElseThrow();
    }
}
