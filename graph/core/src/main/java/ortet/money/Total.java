package ortet.money;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.value.Refused;

/**
 * A sum of charges, with what it does not contain.
 *
 * @param cost of all that is priced; empty when nothing is
 * @param hours of all, priced or not
 * @param m2Years of all, as far as it is known
 * @param notPriced how many charges have no price, and are not in the cost
 */
public record Total(Optional<Cost> cost, BigFraction hours, BigFraction m2Years, int notPriced) {
    /** Of nothing. */
    public static final Total NOTHING = new Total(Optional.empty(), BigFraction.ZERO, BigFraction.ZERO, 0);

    public Total {
        Objects.requireNonNull(cost);
        Objects.requireNonNull(hours);
        Objects.requireNonNull(m2Years);
    }

    /**
     * Return this and a share of a charge.
     *
     * @throws Refused when its currency is another
     */
    public Total plus(Charge charge, BigFraction share) {
        Optional<Cost> more = charge.cost().map(one -> one.times(share));
        return new Total(
                sum(cost, more),
                hours.add(charge.hours().multiply(share)),
                m2Years.add(charge.m2Years().multiply(share)),
                notPriced + (charge.isPriced() ? 0 : 1));
    }

    /**
     * Return this and another.
     *
     * @throws Refused when its currency is another
     */
    public Total plus(Total other) {
        return new Total(
                sum(cost, other.cost), hours.add(other.hours), m2Years.add(other.m2Years), notPriced + other.notPriced);
    }

    /** Return the same part of all of it. */
    public Total times(BigFraction share) {
        return new Total(cost.map(one -> one.times(share)), hours.multiply(share), m2Years.multiply(share), notPriced);
    }

    /** Return this with so many charges that have no price, each counted once. */
    Total without(int charges) {
        return new Total(cost, hours, m2Years, charges);
    }

    private static Optional<Cost> sum(Optional<Cost> one, Optional<Cost> other) {
        return one.isPresent() && other.isPresent()
                ? Optional.of(one.get().plus(other.get()))
                : one.isPresent() ? one : other;
    }
}
