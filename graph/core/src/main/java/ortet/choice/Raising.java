package ortet.choice;

import java.util.List;
import java.util.Objects;
import ortet.value.Require;

/**
 * One way to raise trees from a layer or a cutting: what it needs, and what is sold when.
 *
 * @param key what to call it, such as "two years in 5 L"
 * @param perSet what each layer or cutting set needs in the year of setting, whether it takes or not
 * @param perEstablished what each tree that establishes needs, by year from that of setting on; none after the last
 * @param grades what becomes of the trees that establish; the shares sum to at most 1, the rest is culled
 */
public record Raising(String key, Needs perSet, List<Needs> perEstablished, List<Grade> grades) {
    private static final double ROUNDING = 1e-9;

    public Raising {
        key = Require.text(key, "raising");
        Objects.requireNonNull(perSet);
        perEstablished = List.copyOf(perEstablished);
        grades = List.copyOf(grades);
        Require.that(
                grades.stream().mapToDouble(Grade::share).sum() <= 1 + ROUNDING,
                "raising " + key,
                "shares in size classes that sum to at most 1");
    }

    /** Return how many years after setting the last of it is over. */
    int years() {
        int last = perEstablished.size() - 1;
        for (Grade grade : grades) {
            last = Math.max(last, grade.years());
        }
        return Math.max(last, 0);
    }
}
