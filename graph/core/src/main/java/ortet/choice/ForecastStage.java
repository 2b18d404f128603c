package ortet.choice;

/** The two stretches of a young tree's way to being fit for sale. */
public enum ForecastStage {
    /** From being set, struck, worked or sown until it has taken; or failed. */
    TAKING,
    /** From having taken until it is fit for sale; or lost, or culled. */
    GROWING
}
