package ortet.choice;

import java.time.LocalDate;

/**
 * Units that entered a stage on one day and ended it alike on another.
 *
 * @param stage which
 * @param kind the place in {@link ForecastPast#kinds()}
 * @param cluster units of one tray, or of one mother and season, share a number
 * @param since the day of setting, in days since 1970
 * @param start the day on which the stage began
 * @param end the day on which it ended, or the cut-off day
 * @param how it ended
 * @param size in which size class it became saleable, as its place in {@link ForecastPast#sizes()}; after all of them for
 *     sold ungraded, and where it did not become so
 * @param count how many units, above 0
 */
record ForecastEpisode(
        ForecastStage stage,
        int kind,
        int cluster,
        int since,
        int start,
        int end,
        ForecastEnd how,
        int size,
        int count) {
    /** Return the year whose luck it shares: that of setting while it is to take, later that of taking. */
    int season() {
        return year(stage == ForecastStage.TAKING ? since : start);
    }

    /** Return the year of a day. */
    static int year(int day) {
        return LocalDate.ofEpochDay(day).getYear();
    }

    /** Return the same with another end. */
    ForecastEpisode ended(ForecastEnd otherwise) {
        return new ForecastEpisode(stage, kind, cluster, since, start, end, otherwise, size, count);
    }
}
