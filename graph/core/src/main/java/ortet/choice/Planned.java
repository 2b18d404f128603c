package ortet.choice;

import java.util.List;
import java.util.Objects;

/**
 * What a plan does with one mother in one year.
 *
 * @param year counted from this one, which is 0
 * @param deed what is done
 * @param sets what is set with it; empty for deeds that set nothing
 */
public record Planned(int year, Deed deed, List<ToSet> sets) {
    public Planned {
        Objects.requireNonNull(deed);
        sets = List.copyOf(sets);
    }

    /** Return how many layers are set. */
    public int layers() {
        return count(Method.LAYER);
    }

    /** Return how many cuttings are set. */
    public int cuttings() {
        return count(Method.CUTTING);
    }

    private int count(Method method) {
        return sets.stream()
                .filter(one -> one.method() == method)
                .mapToInt(ToSet::count)
                .sum();
    }
}
