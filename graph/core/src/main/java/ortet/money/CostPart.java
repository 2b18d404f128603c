package ortet.money;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * The part of a line that units carry: of a tray of 60, each cutting carries one sixtieth of what was spent on the tray.
 *
 * @param line what was spent
 * @param share how much of it, above 0
 */
public record CostPart(CostLine line, BigFraction share) {
    public CostPart {
        Objects.requireNonNull(line);
        Objects.requireNonNull(share);
    }

    /** Return what the part costs, where the line has a price. */
    public Optional<Cost> cost() {
        return line.charge().cost().map(cost -> cost.times(share));
    }

    /** Return the hours of the part. */
    public BigFraction hours() {
        return line.charge().hours().multiply(share);
    }

    /** Return the square metres times years of the part. */
    public BigFraction m2Years() {
        return line.charge().m2Years().multiply(share);
    }
}
