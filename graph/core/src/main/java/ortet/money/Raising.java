package ortet.money;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.UnitFacts.Method;

/**
 * What raising one unit takes, by a tariff.
 *
 * @param method how it is raised
 * @param size the size class that it is raised to
 * @param charges one by one, those without a price too
 */
public record Raising(Method method, String size, List<Charge> charges) {
    public Raising {
        Objects.requireNonNull(method);
        Objects.requireNonNull(size);
        charges = List.copyOf(charges);
    }

    /** Return the sum, with how much of it has no price. */
    public Total total() {
        Total total = Total.NOTHING;
        for (Charge charge : charges) {
            total = total.plus(charge, BigFraction.ONE);
        }
        return total;
    }

    /** Return the cost, where all of it has a price. */
    public Optional<Cost> cost() {
        return missing().isEmpty() ? total().cost() : Optional.empty();
    }

    /** Return what the tariff does not say. */
    public List<String> missing() {
        return charges.stream()
                .flatMap(charge -> charge.missing().stream())
                .distinct()
                .toList();
    }
}
