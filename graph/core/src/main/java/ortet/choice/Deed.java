package ortet.choice;

/** What may be done with a mother in one year. */
public enum Deed {
    /** Leave her branches long; nothing is taken although something could be. */
    LEAVE_LONG("leave long", 0),
    /** Set layers on her; what is not layered on the parts used is cut back when they are severed. */
    LAYER("layer", 4),
    /** Set layers on all of her, and sell her as a tree once they are severed. */
    LAYER_AND_SELL("layer, then sell", 6),
    /** Cut her back, and throw the wood away. */
    CUT_BACK("cut back", 2),
    /** Take nothing, because nothing can or may be taken: she is regrowing, recovering or held. */
    REST("rest", 0),
    /** Cut her back, and strike cuttings from the wood. */
    TAKE_CUTTINGS("take cuttings", 3),
    /** Sell her as a tree. */
    SELL("sell", 5),
    /** Set a few layers on an untried mother to learn how she takes, and leave her long otherwise. */
    TRY_OUT("try out", 1);

    private final String word;
    private final int severity;

    Deed(String word, int severity) {
        this.word = word;
        this.severity = severity;
    }

    /** Return what a grower calls it. */
    public String word() {
        return word;
    }

    /**
     * Return how much it takes of what could be done with her later, by its place in an order: leaving and resting, which
     * take nothing, 0; trying out 1, for her branches stay; cutting back 2; taking cuttings 3, which needs bench and work
     * besides; layering 4, after which she must rest; selling 5, which cannot be undone; layering and selling 6.
     */
    public int severity() {
        return severity;
    }

    /** Tell whether layers or cuttings are set. */
    boolean sets() {
        return this == LAYER || this == LAYER_AND_SELL || this == TAKE_CUTTINGS || this == TRY_OUT;
    }
}
