package ortet.choice;

/** How a stage ended. */
enum ForecastEnd {
    /** It took; it became saleable. */
    GOOD,
    /** It failed; it was lost or culled. */
    BAD,
    /** It left otherwise, or nobody will know: followed as long as it was there. */
    OUT,
    /** It is still in the stage. */
    STILL
}
