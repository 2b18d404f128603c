package ortet.choice;

/** What is to be thought of forecasts for an earlier day. */
public enum ForecastVerdict {
    /** What came lay within the bands as often as they said. */
    HELD,
    /** More came, over the whole time, than nineteen in twenty simulations had. */
    TOO_LOW,
    /** Less came, over the whole time, than nineteen in twenty simulations had. */
    TOO_HIGH,
    /** What came lay outside the bands more often than they said. */
    TOO_SURE,
    /** What came lay within the narrow bands more often than they said. */
    TOO_CAREFUL,
    /** There are too few months and cultivars to tell. */
    TOO_FEW
}
