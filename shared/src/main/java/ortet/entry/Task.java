package ortet.entry;

import java.util.Optional;

/** The acts whose work and material may cost something; what is only seen, said or promised costs nothing. */
public enum Task {
    /** Buying a plant in. */
    ACQUIRED,
    /** Setting a layer. */
    LAYER_SET,
    /** Striking a cutting. */
    CUTTINGS_STRUCK,
    /** Working a graft. */
    GRAFT_WORKED,
    /** Sowing. */
    SEED_SOWN,
    /** Dividing. */
    DIVIDED,
    /** Looking at what has been set. */
    CHECKED,
    /** Ringing or wrapping a layer again. */
    REWORKED,
    /** Severing a layer. */
    SEVERED,
    /** Drawing plants from a batch. */
    DRAWN,
    /** Potting up or on. */
    POTTED,
    /** Planting out. */
    PLANTED_OUT,
    /** Lifting from open ground. */
    LIFTED,
    /** Moving to another place. */
    MOVED,
    /** Measuring. */
    MEASURED,
    /** Cutting back. */
    CUT_BACK,
    /** Grading. */
    GRADED,
    /** Counting a batch. */
    COUNTED,
    /** Splitting a batch. */
    SPLIT,
    /** Merging batches. */
    MERGED,
    /** Selling: packing, and carrying to the customer. */
    SOLD;

    /** Return the kind of entry that tells of this act; both have the same word. */
    public EntryKind kind() {
        return EntryKind.valueOf(name());
    }

    /** Return the act that entries of a kind tell of, where it may cost something. */
    public static Optional<Task> of(EntryKind kind) {
        for (Task task : values()) {
            if (task.name().equals(kind.name())) {
                return Optional.of(task);
            }
        }
        return Optional.empty();
    }
}
