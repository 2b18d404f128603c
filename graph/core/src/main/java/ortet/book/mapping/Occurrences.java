package ortet.book.mapping;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tells rows that say the same apart: which of several with the same key a row is, and which repeat another. */
final class Occurrences {
    private final Map<String, List<Deed>> byKey = new HashMap<>();

    /** Return the deeds told so far with a key. */
    List<Deed> before(String sheet, String key) {
        return byKey.getOrDefault(sheet + "\n" + key, List.of());
    }

    /** Remember a deed. */
    void add(String sheet, Deed deed) {
        byKey.computeIfAbsent(sheet + "\n" + deed.key(), key -> new ArrayList<>(1))
                .add(deed);
    }

    /** Return the deed among some that another says again in every word. */
    static Optional<Deed> same(List<Deed> among, Deed deed) {
        return among.stream()
                .filter(other -> other.by().equals(deed.by())
                        && other.texts().equals(deed.texts())
                        && other.turn() == deed.turn()
                        && other.kind() == deed.kind()
                        && other.rest().equals(deed.rest()))
                .findFirst();
    }
}
