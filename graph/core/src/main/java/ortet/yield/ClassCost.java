package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.money.Cost;

/**
 * What raising one saleable tree of a size class costs on a side of a comparison, with what those cost that came to nothing.
 *
 * @param size the size class; empty for those sold in none
 * @param saleable how many there are, above 0
 * @param grown how they were grown on, by method
 * @param least what one costs if all that is open becomes saleable; empty where a part of it is not listed
 * @param most what one costs if none does: all that was spent so far, carried by those that are saleable
 * @param price what one sells for, the mean of these trees where their cultivars have several prices
 * @param missing what is not listed, of costs and of prices
 */
public record ClassCost(
        Optional<String> size,
        int saleable,
        List<Grown> grown,
        Optional<Cost> least,
        Optional<Cost> most,
        Optional<Cost> price,
        List<String> missing) {
    public ClassCost {
        Objects.requireNonNull(size);
        grown = List.copyOf(grown);
        Objects.requireNonNull(least);
        Objects.requireNonNull(most);
        Objects.requireNonNull(price);
        missing = List.copyOf(missing);
    }

    /** Return what is left of the price at the highest cost; below 0 where it costs more than it sells for. */
    public Optional<Cost> marginLeast() {
        return less(most);
    }

    /** Return what is left of the price at the lowest cost. */
    public Optional<Cost> marginMost() {
        return less(least);
    }

    private Optional<Cost> less(Optional<Cost> cost) {
        return cost.flatMap(spent -> price.map(paid -> paid.plus(spent.times(BigFraction.ONE.negate()))));
    }

    /** Tell whether there is a cost or a price. */
    boolean isTold() {
        return most.isPresent() || price.isPresent();
    }
}
