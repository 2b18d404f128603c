package ortet.timing;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.figures.Warmth;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A question about how long rooting takes by one method.
 *
 * @param method the method
 * @param cultivar only this cultivar or taxon, by its name or its epithet
 * @param fromYear the first season of setting
 * @param toYear the last one
 * @param climate by whose warmth times are counted, in degree-days; in days where it is absent
 * @param asOf the cut-off day
 * @param confidence of the intervals, above 0 and below 1
 */
public record TimingQuestion(
        Method method,
        Optional<String> cultivar,
        Optional<Integer> fromYear,
        Optional<Integer> toYear,
        Optional<Climate> climate,
        LocalDate asOf,
        double confidence) {
    /** The confidence where nobody asked for another. */
    public static final double CONFIDENCE = 0.9;

    /**
     * The warmth of a place.
     *
     * @param warmth of its year
     * @param baseC the temperature above which it counts
     */
    public record Climate(Warmth warmth, double baseC) {
        public Climate {
            Objects.requireNonNull(warmth);
        }
    }

    public TimingQuestion {
        Objects.requireNonNull(method);
        cultivar = Require.text(cultivar, "cultivar");
        Objects.requireNonNull(fromYear);
        Objects.requireNonNull(toYear);
        Objects.requireNonNull(climate);
        Objects.requireNonNull(asOf);
        if (fromYear.isPresent() && toYear.isPresent() && fromYear.get() > toYear.get()) {
            throw Refused.because(
                    "bad-season",
                    "expected seasons from the first to the last, found " + fromYear.get() + " to " + toYear.get());
        }
        if (!(confidence > 0 && confidence < 1)) {
            throw Refused.because(
                    "bad-confidence", "expected a confidence above 0 and below 1, such as 0.9, found " + confidence);
        }
    }

    /** Ask about everything by a method as of a day. */
    public static TimingQuestion of(Method method, LocalDate asOf) {
        return new TimingQuestion(
                method, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), asOf, CONFIDENCE);
    }

    /** Return this question for one cultivar or taxon. */
    public TimingQuestion cultivar(String name) {
        return new TimingQuestion(method, Optional.of(name), fromYear, toYear, climate, asOf, confidence);
    }

    /** Return this question counted by warmth. */
    public TimingQuestion by(Climate place) {
        return new TimingQuestion(method, cultivar, fromYear, toYear, Optional.of(place), asOf, confidence);
    }
}
