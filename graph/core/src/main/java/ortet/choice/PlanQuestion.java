package ortet.choice;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A question about how many to set so that so many trees are fit for sale by a day.
 *
 * @param cultivar a name as written in the book, or its epithet alone, upper and lower case alike; a botanical name without
 *     an epithet stands for everything under it
 * @param wanted how many trees, 1 to {@link #MOST}
 * @param by the day by which they are wanted, after {@code asOf}
 * @param sure how sure that is to be, from 0.01 to 0.999
 * @param size the size class that they are wanted in; any when absent
 * @param method how they are to be raised; each of layers, cuttings and grafts by itself when absent
 * @param asOf the cut-off day: what was known by then counts, and nothing is set before it
 */
public record PlanQuestion(
        String cultivar,
        int wanted,
        LocalDate by,
        double sure,
        Optional<String> size,
        Optional<Method> method,
        LocalDate asOf) {
    /** How sure, where nobody asked otherwise. */
    public static final double SURE = 0.9;

    /** The most trees that are planned at one go, and the most units that are thought of for them. */
    public static final int MOST = 5_000;

    private static final double LEAST_SURE = 0.01;
    private static final double SUREST = 0.999;

    public PlanQuestion {
        cultivar = Require.text(cultivar, "cultivar");
        if (wanted < 1 || wanted > MOST) {
            throw Refused.because("bad-number", "expected 1 to " + MOST + " trees, found " + wanted);
        }
        Objects.requireNonNull(by);
        Objects.requireNonNull(asOf);
        if (!(sure >= LEAST_SURE && sure <= SUREST)) {
            throw Refused.because(
                    "bad-probability", "expected how sure as a share from 0.01 to 0.999, such as 0.9, found " + sure);
        }
        if (!by.isAfter(asOf)) {
            throw Refused.because("past-day", "expected a day after " + asOf + " to plan for, found " + by);
        }
        size = Require.text(size, "size");
        Objects.requireNonNull(method);
        if (method.filter(one -> one == Method.SEED).isPresent()) {
            throw Refused.because("bad-method", "plans are made for layers, cuttings and grafts, not for seed");
        }
    }

    /** Ask about any size class and every method, with the usual sureness. */
    public static PlanQuestion of(String cultivar, int wanted, LocalDate by, LocalDate asOf) {
        return new PlanQuestion(cultivar, wanted, by, SURE, Optional.empty(), Optional.empty(), asOf);
    }

    /** Return this question for one method. */
    public PlanQuestion method(Method only) {
        return new PlanQuestion(cultivar, wanted, by, sure, size, Optional.of(only), asOf);
    }

    /** Return this question for a size class. */
    public PlanQuestion size(String only) {
        return new PlanQuestion(cultivar, wanted, by, sure, Optional.of(only), method, asOf);
    }

    /** Return this question with another sureness. */
    public PlanQuestion sure(double share) {
        return new PlanQuestion(cultivar, wanted, by, share, size, method, asOf);
    }
}
