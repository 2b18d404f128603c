package ortet.choice;

/**
 * How much of their luck units share, as correlations of the normal scores behind their fates or times.
 *
 * <p>Whether, or when, something happens to a unit is told by a normal score: √s·season + √c·cluster + √(1 − s − c)·own. It
 * happens by a time if the score is below the quantile of the share to which it does: so each unit by itself keeps its
 * chances, and those of one season and one cluster go together.
 *
 * @param season s, what units of one season share
 * @param cluster c, what units of one tray, or one mother and season, share beyond that
 * @param seasons how many seasons stand behind s
 * @see "Vasicek 2002, Risk 15:160, for the one-factor model"
 */
record ForecastShared(double season, double cluster, int seasons) {
    /** What nobody knows the correlation of: a guess of common sense. */
    static final ForecastShared GUESS = new ForecastShared(0.05, 0.1, 1);

    private static final double MOST = 0.95;

    /** Return the same where units of a cluster correlate so much in all. */
    ForecastShared within(double correlation) {
        return new ForecastShared(season, Math.max(0, Math.min(0.9 - season, correlation - season)), seasons);
    }

    double own() {
        return Math.max(1 - MOST, 1 - season - cluster);
    }
}
