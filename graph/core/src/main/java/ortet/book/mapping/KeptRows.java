package ortet.book.mapping;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The rows that are not refused: nothing else plays a part in what the rows tell.
 *
 * @param refused the rows that are
 */
record KeptRows(Set<SheetRow> refused) {
    boolean isKept(Deed deed) {
        return !refused.contains(deed.row());
    }

    /** Return what begins a unit. */
    Optional<Deed> beginning(Unit unit) {
        return unit.beginnings().stream().filter(this::isKept).findFirst();
    }

    /** Return what is told of a unit, apart from its beginning. */
    List<Deed> about(Unit unit) {
        return kept(unit.about());
    }

    /** Return by what others come from a unit. */
    List<Deed> children(Unit unit) {
        return kept(unit.children());
    }

    private List<Deed> kept(List<Deed> deeds) {
        return refused.isEmpty() || deeds.isEmpty()
                ? deeds
                : deeds.stream().filter(this::isKept).toList();
    }
}
