package ortet.figures;

/** A log-likelihood of fixed effects and standard deviations, with the random intercepts integrated out. */
interface Likelihood {
    /**
     * The log-likelihood at one place.
     *
     * @param theta the fixed effects, then the standard deviations; a deviation and its negative mean the same
     * @param value without the binomial coefficients, with the penalty if there is one; NaN where no modes were found
     * @param gradient by theta
     * @param modes of the standardized random intercepts there
     */
    record Point(double[] theta, double value, double[] gradient, double[] modes) {}

    /** Return how many parameters there are. */
    int parameters();

    /**
     * Work out the log-likelihood.
     *
     * @param theta the parameters
     * @param start where to look for the modes first
     */
    Point at(double[] theta, double[] start);

    /** Return the same likelihood with memory of its own, for another thread. */
    Likelihood fork();

    /**
     * Return how the modes move with each parameter, at the place that {@link #at} was asked about last.
     *
     * @return by parameter, then by intercept
     */
    double[][] sensitivities();
}
