package ortet.choice;

import java.util.Objects;
import java.util.Optional;

/**
 * In how many draws of what is not known the same deed is the best for a mother this year.
 *
 * @param same in how many
 * @param draws of how many; 0 when nobody asked
 * @param way how that was found
 */
public record Sureness(int same, int draws, Way way) {
    /** How sureness is found. */
    public enum Way {
        /** The whole plan was made anew for every draw, with mothers divisible; a deed counts where it is among the best. */
        ANEW,
        /** Each mother was judged by herself in every draw, at the worth that means and trees have in the plan. */
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
