package ortet.choice;

/** What a forecast for an earlier day goes by. */
public enum ForecastKnown {
    /** What had happened by that day and had been recorded by then. */
    RECORDED_BY_THEN,
    /** What had happened by that day, though most of it was recorded later. */
    RECORDED_LATER
}
