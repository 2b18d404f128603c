package ortet.choice;

/**
 * How graded trees left.
 *
 * @param lost how many were lost or culled
 * @param lostMonths months that graded trees stood, over all of them
 * @param sold how many graded trees were sold in the last three years, by month of the year
 * @param soldMonths months that graded trees stood in the last three years, by month of the year
 */
record ForecastLeaving(double lost, double lostMonths, double[] sold, double[] soldMonths) {
    static final int MONTHS = 12;

    /** Nothing ever left. */
    static final ForecastLeaving NONE = new ForecastLeaving(0, 0, new double[MONTHS], new double[MONTHS]);
}
