package ortet.choice;

import java.util.Objects;

/**
 * The next best deed for a mother this year.
 *
 * @param deed another than the one chosen
 * @param cost by how much the plan's worth would lessen, at least 0; found anew on small nurseries, at the worth of means
 *     and trees on large ones
 * @param way how the cost was found
 */
public record Alternative(Deed deed, double cost, Sureness.Way way) {
    public Alternative {
        Objects.requireNonNull(deed);
        Objects.requireNonNull(way);
    }
}
