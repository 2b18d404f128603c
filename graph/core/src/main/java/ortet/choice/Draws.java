package ortet.choice;

import java.util.stream.DoubleStream;

/** Draws from the posterior distribution of one figure; one alone is a figure that is known. */
public final class Draws {
    private final double[] values;

    private Draws(double[] values) {
        this.values = values;
    }

    /**
     * Return draws; those with the same place in the lists of two figures belong together.
     *
     * @throws ortet.value.Refused when there is none, or one is not a number
     */
    public static Draws of(double... values) {
        ortet.value.Require.that(values.length > 0, "draws", "at least one");
        for (double value : values) {
            ortet.value.Require.that(!Double.isNaN(value), "draws", "numbers");
        }
        return new Draws(values.clone());
    }

    /** Return how many there are. */
    public int size() {
        return values.length;
    }

    /** Return a draw; of a figure that is known, the figure. */
    public double at(int draw) {
        return values[values.length == 1 ? 0 : draw];
    }

    boolean allMatch(java.util.function.DoublePredicate holds) {
        return DoubleStream.of(values).allMatch(holds);
    }
}
