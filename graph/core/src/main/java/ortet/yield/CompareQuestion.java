package ortet.yield;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.value.Decimal;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A question about what one way of raising trees yields against another.
 *
 * @param on in what respect the sides differ
 * @param first what the first side is, as it was asked: methods, several with {@code +} between, or a value
 * @param second what the second side is
 * @param by whether each cultivar or taxon is compared by itself; only those two make sense
 * @param within within what the sides are compared
 * @param filter what is counted
 * @param asOf the cut-off day
 * @param periods after how long an outcome should be known
 * @param establishment when a young plant has established
 * @param stemMm the stem diameter whose years are told, above 0
 * @param confidence of the intervals, above 0 and below 1
 */
public record CompareQuestion(
        CompareOn on,
        String first,
        String second,
        Optional<TakeBy> by,
        Optional<Strata> within,
        TakeFilter filter,
        LocalDate asOf,
        Periods periods,
        Establishment establishment,
        Optional<Decimal> stemMm,
        double confidence) {
    public CompareQuestion {
        Objects.requireNonNull(on);
        first = Require.text(first, "first side");
        second = Require.text(second, "second side");
        Objects.requireNonNull(within);
        Objects.requireNonNull(filter);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(periods);
        Objects.requireNonNull(establishment);
        Require.above(0, stemMm, "stem");
        if (by.filter(one -> one != TakeBy.CULTIVAR && one != TakeBy.TAXON).isPresent()) {
            throw Refused.because(
                    "bad-group",
                    "by: expected cultivar or taxon, found " + by.get().word());
        }
    }

    /** Ask about two sides with everything else as it usually is. */
    public static CompareQuestion of(CompareOn on, String first, String second, LocalDate asOf) {
        return new CompareQuestion(
                on,
                first,
                second,
                Optional.empty(),
                Optional.empty(),
                TakeFilter.ALL,
                asOf,
                Periods.DEFAULTS,
                Establishment.DEFAULTS,
                Optional.empty(),
                TakeQuestion.CONFIDENCE);
    }

    /** Return this question for each cultivar or taxon by itself. */
    public CompareQuestion by(TakeBy group) {
        return new CompareQuestion(
                on,
                first,
                second,
                Optional.of(group),
                within,
                filter,
                asOf,
                periods,
                establishment,
                stemMm,
                confidence);
    }

    /** Return this question within seasons or mothers. */
    public CompareQuestion within(Strata strata) {
        return new CompareQuestion(
                on, first, second, by, Optional.of(strata), filter, asOf, periods, establishment, stemMm, confidence);
    }

    /** Return this question for part of the book. */
    public CompareQuestion where(TakeFilter part) {
        return new CompareQuestion(
                on, first, second, by, within, part, asOf, periods, establishment, stemMm, confidence);
    }

    /** Return this question with another rule for establishing. */
    public CompareQuestion with(Establishment other) {
        return new CompareQuestion(on, first, second, by, within, filter, asOf, periods, other, stemMm, confidence);
    }

    /** Return this question with the years to a stem diameter in millimetres. */
    public CompareQuestion stem(Decimal mm) {
        return new CompareQuestion(
                on, first, second, by, within, filter, asOf, periods, establishment, Optional.of(mm), confidence);
    }
}
