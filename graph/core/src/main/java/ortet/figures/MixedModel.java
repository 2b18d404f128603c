package ortet.figures;

import ortet.value.Refused;

/**
 * A binomial mixed model: how a rate depends on fixed effects, with a random intercept for every group of one or several
 * groupings, nested or crossed.
 *
 * <p>Of n trials in a row r succeed with probability p, where
 *
 * <pre>log(p / (1 − p)) = x′β + Σ b of the row's groups,   b ~ N(0, σ²) with a σ for each grouping</pre>
 *
 * <p>β and all σ are those of greatest likelihood, the random intercepts integrated out by Laplace's approximation over all
 * of them at once ({@link Laplace}), or with one grouping, where asked for, by adaptive Gauss–Hermite quadrature ({@link
 * Quadrature}). Standard errors come from the inverse of the information in all parameters together, each σ on its own
 * scale.
 *
 * <p>Edges, each with a remark in the result: a σ of greatest likelihood 0 is 0 and has no standard error; a grouping of one
 * group, or whose groups had one trial each, or that parts the rows as another does, is left out; a column that others make
 * up is left out; where fixed effects are separated (some combination tells success from failure without exception, so that
 * no finite estimate exists) the columns concerned are charged β² / (2 · 2.5²), a normal prior of standard deviation 2.5 on
 * the scale of log odds; so is the intercept where everything succeeded or nothing did. A fit that has not converged gives
 * no estimates at all.
 *
 * <p>When not to trust it: few groups (fewer than about ten), for their σ; rows of one trial, where Laplace's approximation
 * draws σ towards 0; rates near 0 or 1 in nearly every group.
 *
 * @see "Breslow & Clayton 1993, Journal of the American Statistical Association 88:9"
 * @see "Pinheiro & Bates 1995, Journal of Computational and Graphical Statistics 4:12"
 * @see "Gelman, Jakulin, Pittau & Su 2008, Annals of Applied Statistics 2:1360, for a weak prior where data are separated"
 */
public final class MixedModel {
    /** The most nodes of quadrature. */
    public static final int MOST_NODES = 50;

    private final int quadrature;

    private MixedModel(int quadrature) {
        this.quadrature = quadrature;
    }

    /** Return a model fitted by Laplace's approximation. */
    public static MixedModel laplace() {
        return new MixedModel(1);
    }

    /**
     * Return a model fitted by adaptive Gauss–Hermite quadrature, for data with one grouping.
     *
     * @param nodes 1 (the same as Laplace's approximation) to 50
     */
    public static MixedModel quadrature(int nodes) {
        if (nodes < 1 || nodes > MOST_NODES) {
            throw Refused.because("bad-nodes", "expected 1 to " + MOST_NODES + " nodes, found " + nodes);
        }
        return new MixedModel(nodes);
    }

    /**
     * Fit the model.
     *
     * @throws Refused when quadrature is asked for with several groupings, or the groupings cross in too many ways
     */
    public MixedFit fit(ModelData data) {
        if (quadrature > 1 && data.groupings().size() != 1) {
            throw Refused.because(
                    "one-grouping",
                    "quadrature needs exactly one random grouping, found "
                            + data.groupings().size());
        }
        return new Fitting(data, quadrature).fit();
    }
}
