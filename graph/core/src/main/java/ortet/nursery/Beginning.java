package ortet.nursery;

import java.util.Optional;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Acquired;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Raised;

/** How a unit began that keeps the clone of no other in the book. */
public enum Beginning {
    /** It came from outside. */
    ACQUIRED,
    /** It is a batch that came from outside and was raised from seed or collected: each plant is a clone of its own. */
    ACQUIRED_EACH,
    /** It was sown: each seedling is a clone of its own. */
    SOWN,
    /** It was found as a sport. */
    SPORT,
    /** It was raised here from what is not in the book. */
    NOT_IN_THE_BOOK;

    /** Tell whether each plant of it is a clone of its own. */
    public boolean isEach() {
        return this == ACQUIRED_EACH || this == SOWN;
    }

    static Beginning of(Entry entry, Nature nature) {
        Optional<Raised> raised = entry instanceof Acquired acquired ? acquired.raised() : Optional.empty();
        return of(entry.kind(), raised, nature);
    }

    static Beginning of(EntryKind kind, Optional<Raised> raised, Nature nature) {
        return switch (kind) {
            case ACQUIRED ->
                nature == Nature.BATCH
                                && raised.filter(how -> how == Raised.SEED || how == Raised.COLLECTED)
                                        .isPresent()
                        ? ACQUIRED_EACH
                        : ACQUIRED;
            case SEED_SOWN -> SOWN;
            case SPORT_FOUND -> SPORT;
            default -> NOT_IN_THE_BOOK;
        };
    }
}
