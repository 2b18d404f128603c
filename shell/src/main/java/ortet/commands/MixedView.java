package ortet.commands;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ortet.figures.Count;
import ortet.figures.Estimate;
import ortet.figures.GroupEffect;
import ortet.figures.GroupRate;
import ortet.figures.Interval;
import ortet.figures.MixedFit;
import ortet.figures.Ranking;
import ortet.screen.Column;
import ortet.screen.Sheet;

/** Shows a mixed model: fixed effects, how much groups differ, and every group. */
final class MixedView {
    private final MixedFit fit;
    private final List<String> groupings;
    private final double confidence;
    private final int nodes;
    private final List<String> explained = new ArrayList<>();
    private Optional<Ranking> ranking = Optional.empty();

    MixedView(MixedFit fit, List<String> groupings, double confidence, int nodes) {
        this.fit = fit;
        this.groupings = List.copyOf(groupings);
        this.confidence = confidence;
        this.nodes = nodes;
    }

    void rank(Optional<Ranking> found) {
        ranking = found;
    }

    void explain(Path file, int rows) {
        explained.add("What went in: " + file + ", " + rows + " rows, " + fit.count() + ".");
        explained.add("Method: binomial mixed model on the scale of log odds, fitted by greatest likelihood, the random"
                + " intercepts integrated out by "
                + (nodes > 1 ? "adaptive Gauss-Hermite quadrature with " + nodes + " nodes" : "Laplace's approximation")
                + "; standard errors from the information in all parameters together; intervals of rates include the"
                + " uncertainty of the fixed effects and of the standard deviations.");
        explained.add("Source: Breslow & Clayton 1993, J. Am. Stat. Assoc. 88:9; Pinheiro & Bates 1995, J. Comput."
                + " Graph. Stat. 4:12; Kass & Steffey 1989, J. Am. Stat. Assoc. 84:717. See docs/methods/mixed.md.");
    }

    Sheet sheet() {
        String percent = String.format(Locale.ROOT, "%.4g", 100 * confidence).replaceAll("\\.?0+$", "");
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("part", "part").forPrograms(),
                Column.text("grouping", "grouping").forPrograms(),
                Column.text("name", "name"),
                Column.whole("successes", "successes"),
                Column.whole("trials", "trials"),
                Column.number("estimate", "log odds", 3),
                Column.number("standard_error", "s.e.", 3),
                Column.text("rate_shown", "rate % (interval)").forPeople(),
                Column.share("rate", "rate", 0).forPrograms(),
                Column.share("lower", "lower", 0).forPrograms(),
                Column.share("upper", "upper", 0).forPrograms()));
        ranking.ifPresent(known -> {
            columns.add(
                    Column.text("best_shown", "% among best " + known.best()).forPeople());
            columns.add(Column.share("best_probability", "among the best", 0).forPrograms());
            columns.add(Column.share("best_standard_error", "of that, s.e.", 1).forPrograms());
        });
        Sheet.Builder sheet = Sheet.titled(fit.count() + ", by a mixed model", columns.toArray(Column[]::new));
        sheet.section("fixed effects");
        for (MixedFit.Fixed fixed : fit.fixed()) {
            add(
                    sheet,
                    "fixed",
                    Optional.empty(),
                    fixed.name() + (fixed.isPenalized() ? " (held)" : ""),
                    Optional.empty(),
                    fixed.estimate().map(Estimate::value),
                    fixed.estimate().map(Estimate::standardError),
                    Optional.empty(),
                    Optional.empty());
        }
        sheet.section("standard deviation of groups");
        for (MixedFit.Deviation deviation : fit.deviations()) {
            add(
                    sheet,
                    "deviation",
                    Optional.of(deviation.grouping()),
                    deviation.grouping(),
                    Optional.empty(),
                    deviation.sd(),
                    deviation.standardError(),
                    Optional.empty(),
                    Optional.empty());
        }
        for (String grouping : groupings) {
            groups(sheet, grouping);
        }
        fit.logLikelihood()
                .ifPresent(value -> sheet.note(String.format(
                        Locale.ROOT,
                        "Log-likelihood %.4f, binomial coefficients included; the fit is %s.",
                        value,
                        fit.convergence().title())));
        sheet.note("Rates are pooled, at the average of the fixed columns, with intervals of " + percent + " %.");
        ranking.ifPresent(known -> sheet.note("Among the best: by " + known.draws() + " draws, seed " + known.seed()
                + String.format(
                        Locale.ROOT,
                        "; their number alone leaves a standard error of at most %.1f points.",
                        50 / Math.sqrt(known.draws()))));
        explained.forEach(sheet::note);
        fit.remarks().forEach(sheet::warning);
        return sheet.build();
    }

    private void groups(Sheet.Builder sheet, String grouping) {
        List<GroupRate> rates = fit.rates(grouping, confidence);
        List<GroupEffect> effects = fit.effects(grouping);
        Map<String, Ranking.Standing> standings = new HashMap<>();
        ranking.filter(known -> known.grouping().equals(grouping))
                .ifPresent(known -> known.standings().forEach(standing -> standings.put(standing.label(), standing)));
        if (!rates.isEmpty()) {
            sheet.section(grouping);
        }
        for (int at = 0; at < rates.size(); at++) {
            GroupEffect effect = effects.get(at);
            add(
                    sheet,
                    "group",
                    Optional.of(grouping),
                    effect.label(),
                    Optional.of(effect.count()),
                    Optional.of(effect.mode()),
                    Optional.of(effect.fullSd()),
                    Optional.of(rates.get(at)),
                    Optional.ofNullable(standings.get(effect.label())));
        }
    }

    private void add(
            Sheet.Builder sheet,
            String part,
            Optional<String> grouping,
            String name,
            Optional<Count> count,
            Optional<Double> estimate,
            Optional<Double> standardError,
            Optional<GroupRate> rate,
            Optional<Ranking.Standing> standing) {
        List<Object> cells = new ArrayList<>(List.of(
                part,
                grouping,
                name,
                count.map(Count::successes),
                count.map(Count::trials),
                estimate,
                standardError,
                rate.map(MixedView::shown).orElse(""),
                rate.map(GroupRate::rate),
                rate.map(GroupRate::interval).map(Interval::lower),
                rate.map(GroupRate::interval).map(Interval::upper)));
        if (ranking.isPresent()) {
            cells.add(standing.map(Ranking.Standing::probability)
                    .map(MixedView::percent)
                    .orElse(""));
            cells.add(standing.map(Ranking.Standing::probability));
            cells.add(standing.map(Ranking.Standing::standardError));
        }
        sheet.row(cells.toArray());
    }

    private static String shown(GroupRate rate) {
        return percent(rate.rate()) + " (" + percent(rate.interval().lower()) + "–"
                + percent(rate.interval().upper()) + ")";
    }

    private static String percent(double share) {
        return share < 0.005 ? "<1" : share >= 0.995 ? ">99" : Long.toString(Math.round(100 * share));
    }
}
