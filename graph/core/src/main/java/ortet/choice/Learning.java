package ortet.choice;

/**
 * What trying out is worth for what it teaches: the expected value of sample information.
 *
 * <p>Before the trial her take is believed to be beta(α, β). Of n layers r take with the beta-binomial probability
 *
 * <pre>P(r) = C(n, r) B(α + r, β + n − r) / B(α, β)</pre>
 *
 * <p>after which her mean take is (α + r) / (α + β + n). With V(m) what her best path over the years to come is worth at the
 * prices of the plan when her mean take is m, the trial teaches
 *
 * <pre>Σ P(r) V((α + r) / (α + β + n)) − V(α / (α + β)),</pre>
 *
 * <p>which is never below 0, because V is the greatest of linear functions of m, and is 0 when every outcome would lead to
 * the same deeds. What her outcome says about other mothers of her cultivar is not counted.
 *
 * @see "Raiffa and Schlaifer 1961, Applied Statistical Decision Theory, chapter 5"
 */
final class Learning {
    private Learning() {}

    /** Return the probability of each number of takes, 0 to n. */
    static double[] outcomes(Trial trial) {
        int n = trial.layers();
        double[] chances = new double[n + 1];
        double first = 1;
        for (int i = 0; i < n; i++) {
            first *= (trial.beta() + i) / (trial.alpha() + trial.beta() + i);
        }
        chances[0] = first;
        for (int r = 0; r < n; r++) {
            chances[r + 1] = chances[r] * (n - r) / (r + 1) * (trial.alpha() + r) / (trial.beta() + n - r - 1);
        }
        return chances;
    }

    /** Return what the trial teaches, in money at these prices, at least 0; 0 where there is no trial to make. */
    static double of(Walk walk, Stock stock, Priced priced, Taking taking) {
        if (stock.mother.trial().isEmpty() || stock.shape.years() < 2) {
            return 0;
        }
        Trial trial = stock.mother.trial().orElseThrow();
        int next = stock.shape.arcs(0, 0)[0].next();
        double mean = trial.alpha() / (trial.alpha() + trial.beta());
        walk.of(stock, priced, taking, 1, 1);
        double without = walk.at(1, next);
        double with = 0;
        double[] chances = outcomes(trial);
        for (int taken = 0; taken < chances.length; taken++) {
            double after = (trial.alpha() + taken) / (trial.alpha() + trial.beta() + trial.layers());
            walk.of(stock, priced, taking, 1, after / mean);
            with += chances[taken] * walk.at(1, next);
        }
        return Math.max(0, with - without);
    }
}
