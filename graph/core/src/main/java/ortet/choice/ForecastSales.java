package ortet.choice;

/** What is assumed of sales. */
public enum ForecastSales {
    /** Nothing is sold: what becomes saleable stands until it is lost. */
    NONE,
    /** Of what stands saleable as large a share is sold in each month of the year as in the last three years. */
    AS_BEFORE
}
