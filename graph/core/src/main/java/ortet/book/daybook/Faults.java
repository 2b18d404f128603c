package ortet.book.daybook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

/** Gathers what is wrong in one import, to be told all at once: by file, line and column. */
final class Faults {
    private record Placed(Fault fault, int position) {
        Where where() {
            return fault.where().orElseThrow();
        }
    }

    private final List<Placed> placed = new ArrayList<>();
    private final List<Fault> general = new ArrayList<>();

    /** Add what is wrong with a whole file. */
    void add(Fault fault) {
        general.add(fault);
    }

    /**
     * Add what is wrong at a place.
     *
     * @param position the place of the column in the header, to sort by; -1 where the whole row is meant
     */
    void add(String rule, Where where, int position, String text, Optional<String> nearest) {
        placed.add(new Placed(new Fault(rule, Optional.of(where), text, nearest), position));
    }

    /** Add what is wrong at a place, where nothing is near. */
    void add(String rule, Where where, int position, String text) {
        add(rule, where, position, text, Optional.empty());
    }

    boolean isEmpty() {
        return placed.isEmpty() && general.isEmpty();
    }

    int size() {
        return placed.size() + general.size();
    }

    /** Refuse when there is anything. */
    void refuse() {
        if (isEmpty()) {
            return;
        }
        List<Fault> all = new ArrayList<>(general);
        placed.stream()
                .sorted(Comparator.comparing(Placed::where).thenComparingInt(Placed::position))
                .forEach(each -> all.add(each.fault()));
        throw new Refused(all);
    }
}
