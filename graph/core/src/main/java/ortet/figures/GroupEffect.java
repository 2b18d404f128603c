package ortet.figures;

/**
 * What a model says about one group's random intercept, on the scale of log odds.
 *
 * @param label of the group
 * @param count all its successes and trials
 * @param mode the most likely intercept, given the data and the estimates
 * @param conditionalSd its standard deviation if all parameters were known: from H alone
 * @param fullSd its standard deviation with the uncertainty of the fixed effects and of the variances
 */
public record GroupEffect(String label, Count count, double mode, double conditionalSd, double fullSd) {}
