package ortet.figures;

/** How a fit ended. */
public enum Convergence {
    /** At a maximum inside the range of every parameter. */
    CONVERGED("at a maximum"),
    /** At a maximum where some variance is 0. */
    BOUNDARY("at a maximum where some variance is zero"),
    /** At a maximum, with some part of the model left out because the data cannot tell it. */
    REDUCED("at a maximum, with a part of the model left out"),
    /** At a maximum of the likelihood with a weak penalty, because without it there is none. */
    PENALIZED("at a maximum with a weak penalty, for want of a finite one"),
    /** There was nothing to fit. */
    NO_DATA("there is nothing to fit"),
    /** No maximum was found, and there are no estimates. */
    FAILED("no maximum was found");

    private final String title;

    Convergence(String title) {
        this.title = title;
    }

    /** Return what to call it. */
    public String title() {
        return title;
    }

    /** Tell whether there are estimates. */
    public boolean hasEstimates() {
        return this != NO_DATA && this != FAILED;
    }
}
