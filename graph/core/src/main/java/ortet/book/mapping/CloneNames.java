package ortet.book.mapping;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.UnitFacts;
import ortet.entry.EntryKind;
import ortet.plant.UnitNumber;

/** Finds the cultivar of units, also of those that have their name from their mother. */
final class CloneNames {
    /** How many generations are followed. */
    private static final int DEEPEST = 200;

    private final KeptRows kept;
    private final BookView book;
    private final Map<Unit, Optional<String>> names = new IdentityHashMap<>();
    private int depth;

    CloneNames(KeptRows kept, BookView book) {
        this.kept = kept;
        this.book = book;
    }

    /** Return the cultivar of a unit: its own name, or that of the plant whose clone it keeps. */
    Optional<String> name(Unit unit) {
        Optional<String> known = names.get(unit);
        if (known == null) {
            names.put(unit, Optional.empty()); // what comes round to itself has no name by that way
            depth++;
            known = depth > DEEPEST ? Optional.empty() : named(unit);
            depth--;
            names.put(unit, known);
        }
        return known;
    }

    private Optional<String> named(Unit unit) {
        if (unit.inBook().isPresent()) {
            return nameInBook(unit.inBook().get(), 0);
        }
        if (unit.isAcquired()) {
            Set<String> said = new TreeSet<>();
            for (Deed child : kept.children(unit)) {
                boolean isClone = child.kind() != EntryKind.SEED_SOWN
                        && !child.texts().get("stock").equals(unit.tag());
                if (isClone) {
                    String name = child.said().isEmpty() ? child.texts().get(Meaning.CULTIVAR) : child.said();
                    if (!name.isEmpty()) {
                        said.add(name);
                    }
                }
            }
            return said.size() == 1 ? Optional.of(said.iterator().next()) : Optional.empty();
        }
        Optional<Deed> beginning = kept.beginning(unit);
        if (beginning.isEmpty()) {
            return Optional.empty();
        }
        String own = beginning.get().texts().get(Meaning.CULTIVAR);
        if (!own.isEmpty()) {
            return Optional.of(own);
        }
        return source(beginning.get()).flatMap(this::name);
    }

    /** Return the unit whose clone a beginning keeps. */
    static Optional<Unit> source(Deed beginning) {
        return switch (beginning.kind()) {
            case LAYER_SET, DIVIDED, CUTTINGS_STRUCK ->
                beginning.parents().size() == 1
                        ? Optional.of(beginning.parents().get(0))
                        : Optional.empty();
            case GRAFT_WORKED ->
                beginning.texts().has("scion")
                        ? beginning.parents().stream()
                                .filter(parent ->
                                        parent.tag().equals(beginning.texts().get("scion")))
                                .findFirst()
                        : Optional.empty();
            case DRAWN, SPLIT -> beginning.others().stream().findFirst();
            default -> Optional.empty();
        };
    }

    private Optional<String> nameInBook(UnitNumber number, int generations) {
        Optional<UnitFacts> facts = generations > DEEPEST ? Optional.empty() : book.facts(number);
        if (facts.isEmpty()) {
            return Optional.empty();
        }
        List<UnitFacts.Naming> namings = facts.get().names();
        if (!namings.isEmpty()) {
            return Optional.of(namings.get(namings.size() - 1).cultivar().toString());
        }
        return facts.get().links().stream()
                .filter(link -> link.act().keepsTheClone())
                .findFirst()
                .flatMap(link -> nameInBook(link.mother(), generations + 1));
    }
}
