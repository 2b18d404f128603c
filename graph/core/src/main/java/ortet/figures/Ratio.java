package ortet.figures;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Defect;

/**
 * A ratio of two figures neither of which is below 0. It may be infinite, when the second is 0, or not defined, when both
 * are; neither is a number to reckon with, so each is a type of its own.
 */
public sealed interface Ratio {
    /** A ratio that is not defined: 0 to 0. */
    Ratio UNDEFINED = new Undefined();

    /** A ratio without limit: something to 0. */
    Ratio INFINITE = new Infinite();

    /** A ratio that is a number, at least 0. */
    record Finite(double value) implements Ratio {
        public Finite {
            if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
                throw new Defect(value + " is no finite ratio");
            }
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.finite(value);
        }

        @Override
        public String toString() {
            return Double.toString(value);
        }
    }

    /** A ratio without limit. */
    record Infinite() implements Ratio {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.infinite();
        }

        @Override
        public String toString() {
            return "infinite";
        }
    }

    /** A ratio that is not defined. */
    record Undefined() implements Ratio {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.undefined();
        }

        @Override
        public String toString() {
            return "not defined";
        }
    }

    /** Does something with a ratio, kind by kind. */
    interface Visitor<R> {
        /** Visit a ratio that is a number. */
        R finite(double value);

        /** Visit a ratio without limit. */
        R infinite();

        /** Visit a ratio that is not defined. */
        R undefined();
    }

    /** Hand the ratio to the method for its kind. */
    <R> R accept(Visitor<R> visitor);

    /** Return the ratio of two figures, each at least 0. */
    static Ratio of(double first, double second) {
        if (!(first >= 0 && second >= 0)) {
            throw new Defect("no ratio of " + first + " to " + second);
        }
        if (second > 0) {
            return of(first / second);
        }
        return first > 0 ? INFINITE : UNDEFINED;
    }

    /** Return a ratio that is given as a number, {@code Infinity} included. */
    static Ratio of(double value) {
        return value == Double.POSITIVE_INFINITY ? INFINITE : new Finite(value);
    }

    /** Return the number, where there is one. */
    default Optional<Double> finite() {
        return Objects.requireNonNull(accept(new Visitor<Optional<Double>>() {
            @Override
            public Optional<Double> finite(double value) {
                return Optional.of(value);
            }

            @Override
            public Optional<Double> infinite() {
                return Optional.empty();
            }

            @Override
            public Optional<Double> undefined() {
                return Optional.empty();
            }
        }));
    }
}
