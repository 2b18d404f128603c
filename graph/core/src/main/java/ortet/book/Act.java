package ortet.book;

/** How one unit comes from another; a link leads from the child to the unit that it comes from. */
public enum Act {
    /** A layer from its mother. */
    LAYERED_FROM(true),
    /** Cuttings from a mother; several mothers mean that each cutting is from one of them. */
    STRUCK_FROM(true),
    /** A graft by its scion. */
    SCION_OF(true),
    /** A graft by its rootstock, whose clone lives below the union. */
    ROOTSTOCK_OF(false),
    /** A seedling by the plant that bore the seed. */
    SEED_OF(false),
    /** A seedling by the plant that gave the pollen. */
    POLLEN_OF(false),
    /** A division from its mother. */
    DIVIDED_FROM(true),
    /** A sport from the plant on which it was found; it starts a clone of its own. */
    SPORT_OF(false),
    /** A plant from the batch that it was drawn from. */
    DRAWN_FROM(true),
    /** A batch from the one that it was split from. */
    SPLIT_FROM(true),
    /** A batch from those that were merged into it; each unit is from one of them. */
    MERGED_FROM(true),
    /** A plant found without a label, which is one of several. */
    ONE_OF(true),
    /** A layer from a mother, of wood below her graft union: of the rootstock's clone, not of hers. */
    LAYERED_BELOW(false),
    /** Cuttings from a mother, of wood below her graft union: of the rootstock's clone, not of hers. */
    STRUCK_BELOW(false),
    /** What was raised from wood below a graft union, by the rootstock whose clone it keeps. */
    STOCK_WOOD_OF(true);

    private final boolean keepsTheClone;

    Act(boolean keepsTheClone) {
        this.keepsTheClone = keepsTheClone;
    }

    /** Tell whether the child belongs to the clone of the unit that it comes from. */
    public boolean keepsTheClone() {
        return keepsTheClone;
    }

    /** Tell whether several links of this act mean that the child comes from one of them, and nobody knows which. */
    public boolean isOneOfSeveral() {
        return this == STRUCK_FROM
                || this == MERGED_FROM
                || this == ONE_OF
                || this == STRUCK_BELOW
                || this == STOCK_WOOD_OF;
    }

    /** Tell whether a layer was set on the unit that its child comes from by this act. */
    public boolean isLayering() {
        return this == LAYERED_FROM || this == LAYERED_BELOW;
    }
}
