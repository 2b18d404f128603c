package ortet.entry;

/** What a cost is for. */
public enum Per {
    /** One unit: one layer, one cutting, one plant. */
    UNIT,
    /** One tag, however many units it has: a whole tray. */
    TAG,
    /** One mother at one going, however many units are set on her or taken from her: the way to her, and tools laid out. */
    MOTHER,
    /** One hour of work. */
    HOUR,
    /** One square metre of bench, or of ground, for one year. */
    M2_YEAR
}
