package ortet.lineage;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.PersonNumber;
import ortet.value.When;

/**
 * Plants that went to a customer.
 *
 * @param customer who bought them; absent when nobody wrote it down
 * @param shown the customer's name, or number once the name is erased
 * @param day when
 * @param count how many plants
 * @param back how many of them came back
 * @param isSure whether they surely were sold after the unit could have carried the disease
 */
public record Sale(
        Optional<PersonNumber> customer, Optional<String> shown, When day, int count, int back, boolean isSure) {
    public Sale {
        Objects.requireNonNull(customer);
        Objects.requireNonNull(shown);
        Objects.requireNonNull(day);
    }

    /** Return this with so many more that came back. */
    Sale back(int more) {
        return new Sale(customer, shown, day, count, back + more, isSure);
    }
}
