package ortet.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Two groups compared within strata: one odds ratio and one difference for all, and tests.
 *
 * <p>Stratum by stratum, a of m₁ succeeded in the first group and c of m₀ in the second, b and d failed, n units in all
 * and t successes.
 *
 * <ul>
 *   <li>The <b>odds ratio</b> is ΣR / ΣS with R = ad/n and S = bc/n. Its interval is that of Robins, Breslow and
 *       Greenland: the variance of its logarithm is ΣPR/2(ΣR)² + Σ(PS + QR)/2ΣRΣS + ΣQS/2(ΣS)² with P = (a + d)/n and
 *       Q = (b + c)/n. There is none when the ratio is 0, infinite or not defined.
 *   <li>The <b>difference</b> of the shares is Σw(a/m₁ − c/m₀) / Σw with w = m₁m₀/n. Sato's variance is
 *       (difference · ΣU + ΣV) / (Σw)², U = (m₁²c − m₀²a + m₁m₀(m₀ − m₁)/2)/n², V = (a(m₀ − c) + c(m₁ − a))/2n. It holds
 *       both for few large strata and for many small ones. There is no interval where the variance comes out as 0.
 *   <li>The test of <b>Cochran, Mantel and Haenszel</b>, that the odds ratio is 1 in every stratum: (Σ(a − E))² / ΣV,
 *       E = m₁t/n, V = m₁m₀t(n − t)/n²(n − 1), on 1 degree of freedom; with continuity correction |Σ(a − E)| is less by
 *       min(½, |Σ(a − E)|).
 *   <li>The test of <b>Breslow and Day</b>, that the odds ratio is the same in every stratum: Σ(a − A)²/W, where A is what
 *       is expected in the stratum at the common odds ratio and W its variance; degrees of freedom: informing strata less
 *       1. <b>Tarone</b> subtracts (Σ(a − A))² / ΣW. Neither is trustworthy where strata are small.
 * </ul>
 *
 * <p>A stratum with an empty margin says nothing about the odds ratio: it adds nothing to the ratio and the tests, and is
 * named in {@link #silent()}. Where both groups are there it still counts for the difference.
 *
 * @see "Mantel & Haenszel 1959, Journal of the National Cancer Institute 22:719"
 * @see "Robins, Breslow & Greenland 1986, Biometrics 42:311"
 * @see "Sato 1989, Biometrics 45:1323"
 * @see "Breslow & Day 1980, Statistical Methods in Cancer Research I, equation 4.30; Tarone 1985, Biometrika 72:91"
 */
public final class MantelHaenszel {
    /**
     * A stratum that says nothing about the odds ratio.
     *
     * @param label of the stratum
     * @param why it says nothing
     */
    public record Silent(String label, Why why) {
        public Silent {
            Objects.requireNonNull(label);
            Objects.requireNonNull(why);
        }
    }

    /** Why a stratum says nothing about the odds ratio. */
    public enum Why {
        /** Nobody is in it. */
        EMPTY("nothing known"),
        /** Only one of the groups is in it, so there is nothing to compare with. */
        ONE_GROUP("one group only"),
        /** Everything succeeded in both groups. */
        ALL("all succeeded"),
        /** Nothing succeeded in either group. */
        NONE("none succeeded");

        private final String title;

        Why(String title) {
            this.title = title;
        }

        /** Return the reason in words. */
        public String title() {
            return title;
        }
    }

    /**
     * A difference of two shares, first minus second.
     *
     * @param value in [−1, 1]
     * @param interval absent where its variance comes out as 0
     */
    public record Difference(double value, Optional<Interval> interval) {
        public Difference {
            Objects.requireNonNull(interval);
        }
    }

    private final double confidence;
    private final List<Stratum> informing;
    private final List<Stratum> compared;
    private final List<Silent> silent;

    private MantelHaenszel(List<Stratum> strata, double confidence) {
        Wilson.checkConfidence(confidence);
        this.confidence = confidence;
        this.informing = strata.stream().filter(Stratum::informs).toList();
        this.compared = strata.stream()
                .filter(stratum ->
                        stratum.first().trials() > 0 && stratum.second().trials() > 0)
                .toList();
        List<Silent> without = new ArrayList<>();
        for (Stratum stratum : strata) {
            if (!stratum.informs()) {
                without.add(new Silent(stratum.label(), why(stratum)));
            }
        }
        this.silent = List.copyOf(without);
    }

    /**
     * Compare two groups within strata.
     *
     * @param strata any number, in any order, each label once
     * @param confidence of the intervals, above 0 and below 1, such as 0.95
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static MantelHaenszel of(List<Stratum> strata, double confidence) {
        return new MantelHaenszel(strata, confidence);
    }

    private static Why why(Stratum stratum) {
        Count both = stratum.both();
        if (both.trials() == 0) {
            return Why.EMPTY;
        }
        if (stratum.first().trials() == 0 || stratum.second().trials() == 0) {
            return Why.ONE_GROUP;
        }
        return both.successes() == 0 ? Why.NONE : Why.ALL;
    }

    /** Return how many strata say something about the odds ratio. */
    public int informing() {
        return informing.size();
    }

    /** Return the strata that say nothing about the odds ratio, in the given order. */
    public List<Silent> silent() {
        return silent;
    }

    /** Return the odds ratio common to all strata, first group against second. */
    public Ratio oddsRatio() {
        return Ratio.of(sum(informing, Cells::r), sum(informing, Cells::s));
    }

    /** Return the interval of the odds ratio; absent when the ratio is 0, infinite or not defined. */
    public Optional<Interval> oddsRatioInterval() {
        double r = sum(informing, Cells::r);
        double s = sum(informing, Cells::s);
        if (r == 0 || s == 0) {
            return Optional.empty();
        }
        double variance = sum(informing, cell -> cell.p() * cell.r()) / (2 * r * r)
                + sum(informing, cell -> cell.p() * cell.s() + cell.q() * cell.r()) / (2 * r * s)
                + sum(informing, cell -> cell.q() * cell.s()) / (2 * s * s);
        double reach = Wilson.quantile(confidence) * Math.sqrt(variance);
        return Optional.of(new Interval(
                r / s * Math.exp(-reach),
                r / s * Math.exp(reach),
                confidence,
                Interval.Method.ROBINS_BRESLOW_GREENLAND));
    }

    /** Return the difference of the shares, first minus second; absent when no stratum holds both groups. */
    public Optional<Difference> difference() {
        double weight = sum(compared, Cells::weight);
        if (weight == 0) {
            return Optional.empty();
        }
        double difference = sum(compared, cell -> (cell.a * cell.m0 - cell.c * cell.m1) / cell.n) / weight;
        double spread = sum(compared, Cells::v);
        double variance = (difference * sum(compared, Cells::u) + spread) / (weight * weight);
        // what is left over when the terms should cancel is rounding, no variance
        if (!(variance > 1e-12 * spread / (weight * weight))) {
            return Optional.of(new Difference(difference, Optional.empty()));
        }
        double reach = Wilson.quantile(confidence) * Math.sqrt(variance);
        return Optional.of(new Difference(
                difference,
                Optional.of(new Interval(
                        Math.max(-1, difference - reach),
                        Math.min(1, difference + reach),
                        confidence,
                        Interval.Method.SATO))));
    }

    /** Return the Cochran-Mantel-Haenszel test without continuity correction; absent without an informing stratum. */
    public Optional<ChiSquare> test() {
        return cochran(0);
    }

    /** Return the Cochran-Mantel-Haenszel test with continuity correction; absent without an informing stratum. */
    public Optional<ChiSquare> correctedTest() {
        return cochran(0.5);
    }

    private Optional<ChiSquare> cochran(double correction) {
        if (informing.isEmpty()) {
            return Optional.empty();
        }
        double away = Math.abs(sum(informing, cell -> cell.a - cell.m1 * (cell.t / cell.n)));
        double variance = sum(
                informing,
                cell -> (cell.m1 / cell.n) * (cell.m0 / cell.n) * cell.t * ((cell.n - cell.t) / (cell.n - 1)));
        double rest = away - Math.min(correction, away);
        return Optional.of(new ChiSquare(rest * rest / variance, 1));
    }

    /**
     * Return the Breslow-Day test that the odds ratio is the same in all strata; absent with fewer than two informing
     * strata, or when the odds ratio is 0 or infinite.
     */
    public Optional<ChiSquare> breslowDay() {
        return homogeneity(false);
    }

    /** Return the Breslow-Day test with Tarone's correction; absent as for {@link #breslowDay()}. */
    public Optional<ChiSquare> tarone() {
        return homogeneity(true);
    }

    private Optional<ChiSquare> homogeneity(boolean corrected) {
        Optional<Double> ratio = oddsRatio().finite().filter(value -> value > 0);
        if (ratio.isEmpty() || informing.size() < 2) {
            return Optional.empty();
        }
        double statistic = 0;
        double away = 0;
        double variance = 0;
        for (Stratum stratum : informing) {
            Cells cell = Cells.of(stratum);
            double expected = cell.expected(ratio.get());
            double spread = 1
                    / (1 / expected
                            + 1 / (cell.t - expected)
                            + 1 / (cell.m1 - expected)
                            + 1 / (cell.m0 - cell.t + expected));
            statistic += (cell.a - expected) * (cell.a - expected) / spread;
            away += cell.a - expected;
            variance += spread;
        }
        double rest = corrected ? statistic - away * away / variance : statistic;
        return Optional.of(new ChiSquare(Math.max(0, rest), informing.size() - 1));
    }

    private interface Term {
        double of(Cells cells);
    }

    private static double sum(List<Stratum> strata, Term term) {
        double sum = 0;
        for (Stratum stratum : strata) {
            sum += term.of(Cells.of(stratum));
        }
        return sum;
    }

    /** The cells and margins of one stratum, by their letters in the description of the class. */
    private record Cells(double a, double b, double c, double d, double m1, double m0, double t, double n) {
        static Cells of(Stratum stratum) {
            double a = stratum.first().successes();
            double c = stratum.second().successes();
            double m1 = stratum.first().trials();
            double m0 = stratum.second().trials();
            return new Cells(a, m1 - a, c, m0 - c, m1, m0, a + c, m1 + m0);
        }

        double r() {
            return a * d / n;
        }

        double s() {
            return b * c / n;
        }

        double p() {
            return (a + d) / n;
        }

        double q() {
            return (b + c) / n;
        }

        double weight() {
            return m1 * m0 / n;
        }

        double u() {
            return (m1 / n) * (m1 / n) * c - (m0 / n) * (m0 / n) * a + (m1 / n) * (m0 / n) * (m0 - m1) / 2;
        }

        double v() {
            return (a * (d / n) + c * (b / n)) / 2;
        }

        /** Return the number of successes of the first group that gives the odds ratio, with these margins. */
        double expected(double ratio) {
            // E (m0 − t + E) = ratio (t − E)(m1 − E); the root within the margins, in a form in which nothing cancels
            double square = 1 - ratio;
            double line = m0 - t + ratio * (m1 + t);
            double rest = ratio * m1 * t;
            double root = Math.sqrt(line * line + 4 * square * rest);
            return line >= 0 ? 2 * rest / (line + root) : (root - line) / (2 * square);
        }
    }
}
