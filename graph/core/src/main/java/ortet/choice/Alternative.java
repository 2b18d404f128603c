package ortet.choice;

import java.util.Objects;

/**
 * The next best deed for a mother this year.
 *
 * @param deed another than the one chosen
 * @param cost by how much the plan's worth would lessen, at least 0, how severe the two deeds are left aside; found anew where the plan is the best of
 *     all and was solved whole, else at the worth that means and trees have in the plan
 * @param way how the cost was found
 */
public record Alternative(Deed deed, double cost, Sureness.Way way) {
    public Alternative {
        Objects.requireNonNull(deed);
        Objects.requireNonNull(way);
    }
}
