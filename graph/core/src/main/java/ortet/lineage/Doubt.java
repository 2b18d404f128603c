package ortet.lineage;

/** Why a unit cannot be called implicated, although it cannot be ruled out. */
public enum Doubt {
    /** Cuttings from several mothers in one tray: which are from which, nobody knows. */
    SEVERAL_MOTHERS("cuttings of several mothers in one tray"),
    /** Batches merged: which unit is from which, nobody knows. */
    MERGED("batches merged, nobody knows which is which"),
    /** A plant found without its label: one of several. */
    LOST_LABEL("found without a label, one of several"),
    /** The same supplier on the same day, and no consignment written down for one of the two. */
    SAME_DELIVERY("same supplier and day, the consignment was not written down"),
    /** A day known to the month or year alone, on which it depends. */
    COARSE_DAY("a day is known to the month or year only"),
    /** It is not known where the unit stood. */
    PLACE_UNKNOWN("its place is not known for that time"),
    /** It is not known where the suspect stood. */
    SUSPECT_PLACE_UNKNOWN("the place of a suspect is not known for that time");

    private final String words;

    Doubt(String words) {
        this.words = words;
    }

    /** Return the reason in words. */
    public String words() {
        return words;
    }
}
