package ortet.yield;

import ortet.entry.Words;

/** What take is told apart by. */
public enum TakeBy {
    /** The cultivar, as it is known of the unit that was set. */
    CULTIVAR("cultivar not known"),
    /** The botanical name without the cultivar epithet. */
    TAXON("taxon not known"),
    /** The plant that gave the wood or bore the seed. */
    MOTHER("mother not known"),
    /** Layers, cuttings, grafts, seed. */
    METHOD("method not known"),
    /** The calendar year of the day of setting, striking, working or sowing. */
    SEASON("season not known"),
    /** Who set, struck, worked or sowed. */
    OPERATOR("not told");

    private final String unknown;

    TakeBy(String unknown) {
        this.unknown = unknown;
    }

    /** Return the word for this in commands and columns. */
    public String word() {
        return Words.of(this);
    }

    /** Return what to call the group of which this is not known. */
    String unknown() {
        return unknown;
    }
}
