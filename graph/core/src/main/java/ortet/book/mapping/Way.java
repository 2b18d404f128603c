package ortet.book.mapping;

import java.util.EnumSet;
import java.util.Set;
import ortet.entry.EntryKind;

/** How a unit must take before it stands on its own roots, and which entries show that it has. */
enum Way {
    /** A layer takes when it is severed; before that it can hardly be handled. */
    LAYER(EntryKind.SEVERED, Shown.BY_HANDLING, EnumSet.of(EntryKind.SEVERED)),
    /** A graft takes when its union holds. */
    GRAFT(EntryKind.TAKEN, Shown.BY_USE, EnumSet.of(EntryKind.TAKEN)),
    /** Cuttings and seed take when they are found rooted, or are potted. */
    SOWN_OR_STRUCK(EntryKind.TAKEN, Shown.BY_USE, EnumSet.of(EntryKind.TAKEN, EntryKind.POTTED)),
    /** Anything else grows from its beginning. */
    GROWN(EntryKind.TAKEN, Set.of(), Set.of());

    /** Entries that show that a unit had taken before. */
    private static final class Shown {
        private static final Set<EntryKind> BY_USE = EnumSet.of(
                EntryKind.KEPT_AS_STOCK,
                EntryKind.LEFT_LONG,
                EntryKind.CUT_BACK,
                EntryKind.GRADED,
                EntryKind.RESERVED,
                EntryKind.SOLD,
                EntryKind.LOST);
        private static final Set<EntryKind> BY_HANDLING =
                EnumSet.of(EntryKind.POTTED, EntryKind.PLANTED_OUT, EntryKind.LIFTED, EntryKind.MOVED);

        static {
            BY_HANDLING.addAll(BY_USE);
        }
    }

    private final EntryKind taking;
    private final Set<EntryKind> evidence;
    private final Set<EntryKind> takings;

    Way(EntryKind taking, Set<EntryKind> evidence, Set<EntryKind> takings) {
        this.taking = taking;
        this.evidence = evidence;
        this.takings = takings;
    }

    /** Return the way of what an entry begins. */
    static Way of(EntryKind beginning) {
        return switch (beginning) {
            case LAYER_SET -> LAYER;
            case GRAFT_WORKED -> GRAFT;
            case CUTTINGS_STRUCK, SEED_SOWN -> SOWN_OR_STRUCK;
            default -> GROWN;
        };
    }

    /** Return the kind of entry by which it takes. */
    EntryKind taking() {
        return taking;
    }

    /** Tell whether an entry shows that it had taken before. */
    boolean isShownBy(Deed deed) {
        return evidence.contains(deed.kind())
                || this != GROWN
                        && deed.kind() == EntryKind.CULLED
                        && deed.texts().get("cull").equals("quality");
    }

    /** Tell whether it takes by an entry. */
    boolean takesBy(Deed deed) {
        return takings.contains(deed.kind()) && !deed.texts().get("roots").equals("none");
    }
}
