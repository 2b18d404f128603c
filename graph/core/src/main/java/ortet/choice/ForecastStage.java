package ortet.choice;

/** The stretches of a young tree's way to being fit for sale. */
public enum ForecastStage {
    /** From being set, struck, worked or sown until it has taken; or failed. */
    TAKING,
    /** From having taken until it is graded fit for sale; or sold ungraded, lost or culled. */
    GRADING,
    /** From having taken until it is sold ungraded; or graded, lost or culled. */
    SELLING;

    /** Return the stage whose episodes tell of it: what grows on is graded or sold, whichever comes first. */
    ForecastStage told() {
        return this == SELLING ? GRADING : this;
    }
}
