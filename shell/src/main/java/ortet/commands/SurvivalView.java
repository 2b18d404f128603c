package ortet.commands;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ortet.figures.Count;
import ortet.figures.Followed;
import ortet.figures.Incidence;
import ortet.figures.KaplanMeier;
import ortet.figures.Lasting;
import ortet.figures.LogRank;
import ortet.figures.Range;
import ortet.figures.Turnbull;
import ortet.figures.Within;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;

/** Shows how long things take, group by group. */
final class SurvivalView {
    private static final String PRODUCT_LIMIT = "Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457";
    private static final String RATES = "Mantel 1966, Cancer Chemotherapy Reports 50:163";
    private static final String COMPETING = "Aalen & Johansen 1978, Scand. J. Stat. 5:141";
    private static final String BETWEEN_LOOKS =
            "Peto 1973, Applied Statistics 22:86; Turnbull 1976, J. R. Stat. Soc. B 38:290";
    private static final String LAWS =
            "Kalbfleisch & Prentice 2002, The Statistical Analysis of Failure Time Data, chapter 3";
    private static final List<Double> SHARES = List.of(0.1, 0.5, 0.9);

    private final double confidence;
    private final List<Double> times;
    private final FigureSheet sheet;

    SurvivalView(String title, double confidence, List<Double> times) {
        this.confidence = confidence;
        this.times = times;
        this.sheet = new FigureSheet(title, Math.round(confidence * 100));
    }

    /** Tell of times followed to an end that is the same for all. */
    SurvivalView followed(Map<String, List<Followed>> groups) {
        groups.forEach((group, followed) -> {
            KaplanMeier curve = KaplanMeier.of(followed, confidence);
            Count count = new Count(curve.events(), curve.followed());
            sheet.figure("median", group)
                    .outOf(count, Optional.empty())
                    .by("Kaplan-Meier estimate", PRODUCT_LIMIT)
                    .value(curve.median(), curve.medianInterval(), FigureSheet.Manner.TIME)
                    .add();
            for (double time : times) {
                Optional<KaplanMeier.Step> step = curve.at(time);
                sheet.figure("not yet by " + FigureSheet.plain(time), group)
                        .out(step.map(one -> one.atRisk() + " still followed").orElse("past the end"))
                        .by("Kaplan-Meier estimate", PRODUCT_LIMIT)
                        .value(
                                step.map(KaplanMeier.Step::survival),
                                step.flatMap(KaplanMeier.Step::interval),
                                FigureSheet.Manner.PERCENT)
                        .add();
            }
        });
        if (groups.size() > 1) {
            LogRank test = LogRank.of(groups);
            sheet.figure("the same in all groups", String.join(", ", groups.keySet()))
                    .test(test.test())
                    .by("log-rank test", RATES)
                    .add();
            if (!test.silent().isEmpty()) {
                sheet.note("not in the log-rank test, since nothing could have happened in them: "
                        + String.join(", ", test.silent()));
            }
        }
        Map<String, List<Within>> seen = new LinkedHashMap<>();
        groups.forEach((group, followed) -> seen.put(
                group,
                followed.stream()
                        .filter(one -> one.time() > 0)
                        .map(one -> one.hasHappened() ? Within.exactly(one.time()) : Within.after(one.time()))
                        .toList()));
        long atOnce = groups.values().stream()
                .flatMap(List::stream)
                .filter(one -> one.time() == 0)
                .count();
        if (atOnce > 0) {
            sheet.warning(Counts.of(atOnce, "time of 0 is", "times of 0 are")
                    + " left out of the fitted laws, which know no such time");
        }
        fits(seen);
        return this;
    }

    /** Tell of one end among others that keep it from happening. */
    SurvivalView competing(Map<String, List<Followed>> groups, String cause, int number) {
        groups.forEach((group, followed) -> {
            Incidence incidence = Incidence.of(followed, number, confidence);
            sheet.figure("time by which half are " + cause, group)
                    .outOf(new Count(incidence.events(), incidence.followed()), Optional.empty())
                    .by("Aalen-Johansen estimate", COMPETING)
                    .value(incidence.quantile(0.5), Optional.empty(), FigureSheet.Manner.TIME)
                    .add();
            List<Double> told = times;
            if (told.isEmpty()) {
                List<Incidence.Step> steps = incidence.steps();
                told = steps.isEmpty()
                        ? List.of()
                        : List.of(steps.get(steps.size() - 1).time());
            }
            for (double time : told) {
                Optional<Incidence.Step> step = incidence.at(time);
                sheet.figure(cause + " by " + FigureSheet.plain(time), group)
                        .out(step.map(one -> one.atRisk() + " still followed").orElse("past the end"))
                        .by("Aalen-Johansen estimate", COMPETING)
                        .value(
                                step.map(Incidence.Step::share),
                                step.flatMap(Incidence.Step::interval),
                                FigureSheet.Manner.PERCENT)
                        .add();
            }
        });
        sheet.note(
                "whatever else happens first keeps it from ever happening: the share is of all, not of those that are left");
        return this;
    }

    /** Tell of times between looks. */
    SurvivalView between(Map<String, List<Within>> groups, long seed) {
        groups.forEach((group, seen) -> {
            Optional<Turnbull> fit = Turnbull.of(seen);
            long happened = seen.stream().filter(Within::hasHappened).count();
            FigureSheet.Figure median = sheet.figure("median", group)
                    .outOf(new Count(happened, seen.size()), Optional.empty())
                    .by("Turnbull estimate", BETWEEN_LOOKS);
            fit.filter(Turnbull::hasConverged).ifPresent(one -> {
                Range range = one.median();
                median.value(
                                Optional.empty(),
                                Optional.of(one.medianInterval(confidence, Turnbull.REPEATS, seed)),
                                FigureSheet.Manner.TIME)
                        .between(range.lower(), range.upper());
            });
            median.add();
            fit.filter(one -> !one.hasConverged())
                    .ifPresent(one -> sheet.warning(group + ": the estimate was not found; nothing is told of it"));
            for (double time : times) {
                FigureSheet.Figure left = sheet.figure("not yet by " + FigureSheet.plain(time), group)
                        .by("Turnbull estimate", BETWEEN_LOOKS);
                fit.filter(Turnbull::hasConverged).ifPresent(one -> {
                    Range range = one.survival(time);
                    if (range.lower() == range.upper()) {
                        left.value(Optional.of(range.lower()), Optional.empty(), FigureSheet.Manner.PERCENT);
                    } else {
                        left.out("between " + FigureSheet.percent(range.lower()) + " and "
                                + FigureSheet.percent(range.upper()));
                    }
                });
                left.add();
            }
        });
        sheet.note("a median between looks is told as the stretch in which it lies, with an interval by the bootstrap ("
                + Turnbull.REPEATS + " samples, seed " + seed + ")");
        fits(groups);
        return this;
    }

    /** Tell what both laws say, with the group as what speeds up or slows down. */
    private void fits(Map<String, List<Within>> groups) {
        List<String> names = List.copyOf(groups.keySet());
        List<String> covariates = names.subList(Math.min(1, names.size()), names.size());
        List<Lasting.Subject> subjects = new ArrayList<>();
        for (int group = 0; group < names.size(); group++) {
            List<Double> its = dummies(group, covariates.size());
            groups.get(names.get(group)).forEach(seen -> subjects.add(new Lasting.Subject(seen, its)));
        }
        List<String> likelihoods = new ArrayList<>();
        for (Lasting.Law law : Lasting.Law.values()) {
            Lasting.fit(law, covariates, subjects).accept(new Lasting.Fit.Visitor<Void>() {
                @Override
                public Void fitted(Lasting.Fitted fit) {
                    tell(law, fit, names);
                    likelihoods.add(law.title() + " " + String.format(Locale.ROOT, "%.2f", fit.logLikelihood()));
                    return null;
                }

                @Override
                public Void failed(Lasting.Failed fit) {
                    sheet.note("no " + law.title() + " law fitted: " + fit.reason());
                    return null;
                }
            });
        }
        if (likelihoods.size() > 1) {
            sheet.note("log-likelihood: " + String.join(", ", likelihoods)
                    + "; the greater fits better, which does not make it right");
        }
    }

    private static List<Double> dummies(int group, int covariates) {
        List<Double> dummies = new ArrayList<>();
        for (int other = 1; other <= covariates; other++) {
            dummies.add(other == group ? 1.0 : 0.0);
        }
        return dummies;
    }

    private void tell(Lasting.Law law, Lasting.Fitted fit, List<String> names) {
        sheet.section("if times follow a " + law.title() + " law");
        for (int group = 0; group < names.size(); group++) {
            for (double share : SHARES) {
                Lasting.Quantile quantile = fit.quantile(share, dummies(group, names.size() - 1), confidence);
                sheet.figure("time of " + Math.round(100 * share) + " %", names.get(group))
                        .by(law.title() + " fit", LAWS)
                        .value(Optional.of(quantile.time()), Optional.of(quantile.interval()), FigureSheet.Manner.TIME)
                        .add();
            }
        }
    }

    void show(boolean explain, List<String> inputs, OutputFormat format, Screen screen) {
        sheet.show(explain, inputs, format, screen);
    }
}
