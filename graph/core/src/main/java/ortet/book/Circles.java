package ortet.book;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import ortet.plant.UnitNumber;

/** Finds units that would come from themselves by way of others; each unit is looked at once. */
final class Circles {
    private final Function<UnitNumber, List<UnitNumber>> sources;
    private final Map<Integer, Boolean> open = new HashMap<>();

    /**
     * Begin to look.
     *
     * @param sources tells which units a unit comes from
     */
    Circles(Function<UnitNumber, List<UnitNumber>> sources) {
        this.sources = sources;
    }

    /** Return a circle of links that can be reached from a unit; units met before are closed and not looked at again. */
    Optional<List<UnitNumber>> from(UnitNumber start) {
        if (open.containsKey(start.value())) {
            return Optional.empty();
        }
        Deque<UnitNumber> path = new ArrayDeque<>();
        Deque<Deque<UnitNumber>> left = new ArrayDeque<>();
        path.addLast(start);
        left.addLast(new ArrayDeque<>(sources.apply(start)));
        open.put(start.value(), true);
        while (!path.isEmpty()) {
            UnitNumber next = left.getLast().poll();
            if (next == null) {
                open.put(path.removeLast().value(), false);
                left.removeLast();
                continue;
            }
            Boolean state = open.get(next.value());
            if (state == null) {
                open.put(next.value(), true);
                path.addLast(next);
                left.addLast(new ArrayDeque<>(sources.apply(next)));
            } else if (state) {
                List<UnitNumber> members = new ArrayList<>(path);
                path.forEach(unit -> open.put(unit.value(), false));
                return Optional.of(members.subList(members.indexOf(next), members.size()));
            }
        }
        return Optional.empty();
    }
}
