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

    private static final int LONGEST = 400;

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
        placed.add(new Placed(new Fault(rule, Optional.of(where), oneLine(text), nearest), position));
    }

    /** Return a text, in which a cell may be quoted, as one line of bearable length. */
    private static String oneLine(String text) {
        StringBuilder line = new StringBuilder(Math.min(text.length(), LONGEST + 1));
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            if (at == LONGEST) {
                return line.append('…').toString();
            }
            line.append(Character.isISOControl(letter) ? ' ' : letter);
        }
        return line.toString();
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
