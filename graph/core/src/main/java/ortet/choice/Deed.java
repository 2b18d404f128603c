package ortet.choice;

/** What may be done with a mother in one year. */
public enum Deed {
    /** Leave her branches long; nothing is taken although something could be. */
    LEAVE_LONG("leave long"),
    /** Set layers on her; what is not layered on the parts used is cut back when they are severed. */
    LAYER("layer"),
    /** Set layers on all of her, and sell her as a tree once they are severed. */
    LAYER_AND_SELL("layer, then sell"),
    /** Cut her back, and throw the wood away. */
    CUT_BACK("cut back"),
    /** Take nothing, because nothing can or may be taken: she is regrowing, recovering or held. */
    REST("rest"),
    /** Cut her back, and strike cuttings from the wood. */
    TAKE_CUTTINGS("take cuttings"),
    /** Sell her as a tree. */
    SELL("sell"),
    /** Set a few layers on an untried mother to learn how she takes, and leave her long otherwise. */
    TRY_OUT("try out");

    private final String word;

    Deed(String word) {
        this.word = word;
    }

    /** Return what a grower calls it. */
    public String word() {
        return word;
    }

    /** Tell whether layers or cuttings are set. */
    boolean sets() {
        return this == LAYER || this == LAYER_AND_SELL || this == TAKE_CUTTINGS || this == TRY_OUT;
    }
}
