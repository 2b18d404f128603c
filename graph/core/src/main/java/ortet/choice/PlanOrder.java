package ortet.choice;

import java.util.Objects;
import ortet.value.Where;

/**
 * An order to plan for.
 *
 * @param question what is ordered, and by when
 * @param where the file and line that it stands in
 */
public record PlanOrder(PlanQuestion question, Where where) {
    public PlanOrder {
        Objects.requireNonNull(question);
        Objects.requireNonNull(where);
    }
}
