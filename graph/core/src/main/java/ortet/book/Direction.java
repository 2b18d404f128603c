package ortet.book;

/** Which way links are followed. */
public enum Direction {
    /** From a plant to where it comes from. */
    UP,
    /** From a plant to what was raised from it. */
    DOWN
}
