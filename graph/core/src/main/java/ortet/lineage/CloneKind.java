package ortet.lineage;

/** What is known of the beginning of a clone. */
public enum CloneKind {
    /** The first unit is the ortet: a seedling raised here. */
    SEEDLING,
    /** The first unit is the ortet: a sport found here. */
    SPORT,
    /** The first unit came from outside: the earliest known, origin unknown. */
    ACQUIRED,
    /** The first unit was raised here from something that is not in the book: the earliest known, origin unknown. */
    NOT_IN_THE_BOOK,
    /** The first unit is one of several clones in the book, and nobody knows which. */
    ONE_OF_SEVERAL;

    /** Tell whether the first unit is the ortet. */
    public boolean isOrtet() {
        return this == SEEDLING || this == SPORT;
    }

    /** Return this in words before the tag of the first unit: {@code ortet}, {@code earliest known}, {@code one of several}. */
    public String words() {
        return switch (this) {
            case SEEDLING, SPORT -> "ortet";
            case ACQUIRED, NOT_IN_THE_BOOK -> "earliest known";
            case ONE_OF_SEVERAL -> "one of several";
        };
    }
}
