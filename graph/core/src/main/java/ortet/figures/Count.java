package ortet.figures;

import java.util.Optional;
import ortet.value.Defect;

/**
 * How many of a number of trials ended in success.
 *
 * @param successes at least 0, at most the trials
 * @param trials at least 0; 0 means that nothing is known
 */
public record Count(long successes, long trials) {
    public Count {
        if (successes < 0 || successes > trials) {
            throw new Defect(successes + " of " + trials + " is no count");
        }
    }

    /** Return the share of successes, in [0, 1]; absent when nothing is known. */
    public Optional<Double> share() {
        return trials == 0 ? Optional.empty() : Optional.of((double) successes / trials);
    }

    /** Return both counts taken together. */
    public Count plus(Count other) {
        return new Count(Math.addExact(successes, other.successes), Math.addExact(trials, other.trials));
    }

    /** Return the same trials with failures counted as successes. */
    public Count failures() {
        return new Count(trials - successes, trials);
    }

    @Override
    public String toString() {
        return successes + " of " + trials;
    }
}
