package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import ortet.book.UnitFacts.Method;
import ortet.entry.Words;
import ortet.figures.GroupRate;
import ortet.figures.MixedFit;
import ortet.yield.Pooled;

/** Shows what is said of mothers with the help of each other. */
final class PooledView {
    private static final double FEW = 10;

    private PooledView() {}

    static String rate(GroupRate rate) {
        return TakeView.percent(rate.rate()) + " ("
                + TakeView.percent(rate.interval().lower()) + "–"
                + TakeView.percent(rate.interval().upper()) + ")";
    }

    /** Return what a reader must know to read pooled rates right. */
    static String note(List<Pooled> pooled) {
        return "pooled: what to expect of a mother, told with the help of the others, with the "
                + pooled.stream()
                        .map(one -> Confidence.percent(one.confidence()) + " %")
                        .distinct()
                        .collect(Collectors.joining(", "))
                + " interval; where little is known of her it leans on the others of her kind";
    }

    /** Return what must be said of how the pooling went; mostly nothing. */
    static List<String> remarks(Pooled pooled) {
        List<String> lines = new ArrayList<>();
        String who = name(pooled) + ": ";
        if (!pooled.fit().convergence().hasEstimates()) {
            lines.add(who + "nothing could be pooled; "
                    + pooled.fit().convergence().title());
        } else if (pooled.mothers() < FEW) {
            lines.add(who + "from " + Counts.of(pooled.mothers(), "mother", "mothers")
                    + " alone how much mothers differ is hardly known; read pooled rates with care");
        }
        if (pooled.leftOut() > 0) {
            lines.add(who + Counts.of(pooled.leftOut(), "unit", "units")
                    + " not pooled: from no mother known, or one of several");
        }
        return lines;
    }

    /** Return the method, its source, and what it found. */
    static List<String> explanations(Pooled pooled) {
        MixedFit fit = pooled.fit();
        List<String> lines = new ArrayList<>();
        lines.add(name(pooled) + ": binomial mixed model, log odds of taking = season + cultivar + mother + her season"
                + " + tray, the last four normal; Laplace's approximation (Breslow & Clayton 1993, J. Am. Stat. Assoc. 88:9);"
                + " docs/methods/mixed.md");
        lines.add("ended " + fit.convergence().title() + "; " + fit.count() + " took, "
                + Counts.of(pooled.mothers(), "mother", "mothers"));
        fit.deviations()
                .forEach(one -> lines.add("standard deviation of " + one.grouping() + " ("
                        + Counts.of(one.groups(), "group", "groups") + "), log odds: "
                        + one.sd().map(PooledView::decimals).orElse("–")
                        + one.standardError()
                                .map(error -> ", standard error " + decimals(error))
                                .orElse("")));
        fit.remarks().forEach(lines::add);
        return lines;
    }

    private static String name(Pooled pooled) {
        return plural(pooled.method());
    }

    /** Return what to call the units of a method. */
    static String plural(Method method) {
        return method == Method.SEED ? Words.of(method) : Words.of(method) + "s";
    }

    private static String decimals(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
