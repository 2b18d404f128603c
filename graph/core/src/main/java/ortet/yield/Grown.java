package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.plant.Place;
import ortet.value.Decimal;

/**
 * How some trees were grown on after they were set, and what that costs for one.
 *
 * @param method how they were raised
 * @param which what became of them
 * @param count how many there are, above 0
 * @param weeks how long they stood on the bench on average, to a tenth
 * @param container in what trees of that size class and method mostly stood; empty where in open ground, or not known
 * @param place where they mostly stood
 * @param charges what growing one on costs, part by part
 */
public record Grown(
        Method method,
        Which which,
        int count,
        Decimal weeks,
        Optional<String> container,
        Optional<Place> place,
        List<Charge> charges) {

    /** What became of trees that were grown on. */
    public enum Which {
        /** Fit for sale, in the size class. */
        SALEABLE,
        /** Lost before they were graded, or culled for quality. */
        LOST,
        /** Growing on, or gone without being graded. */
        OPEN
    }

    public Grown {
        Objects.requireNonNull(method);
        Objects.requireNonNull(which);
        Objects.requireNonNull(weeks);
        Objects.requireNonNull(container);
        Objects.requireNonNull(place);
        charges = List.copyOf(charges);
    }

    /** Return what growing one on costs; empty where a part of it is not listed. */
    public Optional<Cost> cost() {
        return Costs.sum(charges);
    }
}
