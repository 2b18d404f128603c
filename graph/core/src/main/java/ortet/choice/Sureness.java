package ortet.choice;

import java.util.Objects;
import java.util.Optional;

/**
 * In how many draws of what is not known the same deed is the best for a mother this year, or as good as the best: within a
 * hundredth of what a mother is worth to the plan on the mean.
 *
 * @param same in how many
 * @param draws of how many; 0 when nobody asked
 * @param way how that was found
 */
public record Sureness(int same, int draws, Way way) {
    /** How sureness is found. */
    public enum Way {
        /** For every draw the whole plan was made anew, with mothers divisible. */
        ANEW,
        /** For every draw the worth of means and trees was moved by a few steps, and each mother judged by herself at that. */
        PRICED
    }

    public Sureness {
        Objects.requireNonNull(way);
    }

    /** Return the share of draws, in [0, 1]; absent when nobody asked. */
    public Optional<Double> share() {
        return draws == 0 ? Optional.empty() : Optional.of((double) same / draws);
    }
}
