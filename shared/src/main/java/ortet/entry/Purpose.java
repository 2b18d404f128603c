package ortet.entry;

/** Why a plant was potted. */
public enum Purpose {
    /** Into its first container. */
    POT_UP,
    /** Into a larger one. */
    POT_ON,
    /** Into one of the same size. */
    SAME_SIZE,
    /** Into a bonsai pot. */
    BONSAI_POT
}
