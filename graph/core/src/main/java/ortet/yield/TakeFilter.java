package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.plant.Tag;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * Which of the things set, struck, worked and sown are counted; everything when nothing is asked.
 *
 * @param cultivar a name as written in the book, or its epithet alone, upper and lower case alike; a botanical name
 *     without an epithet stands for everything under it
 * @param mother the only mother, by any tag that she bears or bore
 * @param method the method
 * @param fromYear the first season
 * @param toYear the last season
 * @param operator who did it, by name or number
 */
public record TakeFilter(
        Optional<String> cultivar,
        Optional<Tag> mother,
        Optional<Method> method,
        Optional<Integer> fromYear,
        Optional<Integer> toYear,
        Optional<String> operator) {
    /** Everything. */
    public static final TakeFilter ALL = new TakeFilter(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    public TakeFilter {
        cultivar = Require.text(cultivar, "cultivar");
        Objects.requireNonNull(mother);
        Objects.requireNonNull(method);
        Objects.requireNonNull(fromYear);
        Objects.requireNonNull(toYear);
        operator = Require.text(operator, "operator");
        if (fromYear.isPresent() && toYear.isPresent() && fromYear.get() > toYear.get()) {
            throw Refused.because(
                    "bad-season",
                    "expected seasons from the first to the last, found " + fromYear.get() + " to " + toYear.get());
        }
    }

    /** Return this filter for one cultivar or taxon. */
    public TakeFilter cultivar(String name) {
        return new TakeFilter(Optional.of(name), mother, method, fromYear, toYear, operator);
    }

    /** Return this filter for one mother. */
    public TakeFilter mother(Tag tag) {
        return new TakeFilter(cultivar, Optional.of(tag), method, fromYear, toYear, operator);
    }

    /** Return this filter without a mother and a cultivar. */
    public TakeFilter anyStock() {
        return new TakeFilter(Optional.empty(), Optional.empty(), method, fromYear, toYear, operator);
    }

    /** Return this filter without a method. */
    public TakeFilter anyMethod() {
        return new TakeFilter(cultivar, mother, Optional.empty(), fromYear, toYear, operator);
    }

    /** Return this filter for one method. */
    public TakeFilter method(Method only) {
        return new TakeFilter(cultivar, mother, Optional.of(only), fromYear, toYear, operator);
    }

    /** Return this filter for the seasons from a year on. */
    public TakeFilter from(int year) {
        return new TakeFilter(cultivar, mother, method, Optional.of(year), toYear, operator);
    }

    /** Return this filter for the seasons up to a year. */
    public TakeFilter to(int year) {
        return new TakeFilter(cultivar, mother, method, fromYear, Optional.of(year), operator);
    }

    /** Return this filter for one operator. */
    public TakeFilter operator(String nameOrNumber) {
        return new TakeFilter(cultivar, mother, method, fromYear, toYear, Optional.of(nameOrNumber));
    }
}
