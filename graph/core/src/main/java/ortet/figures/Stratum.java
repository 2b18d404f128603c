package ortet.figures;

import java.util.Objects;

/**
 * Two groups compared under like circumstances, such as within one cultivar and season.
 *
 * @param label what the stratum is called
 * @param first successes and trials of the first group
 * @param second successes and trials of the second group
 */
public record Stratum(String label, Count first, Count second) {
    public Stratum {
        Objects.requireNonNull(label);
        Objects.requireNonNull(first);
        Objects.requireNonNull(second);
    }

    /** Return both groups taken together. */
    Count both() {
        return first.plus(second);
    }

    /** Tell whether it says anything about the odds ratio: both groups present, and successes as well as failures. */
    boolean informs() {
        Count both = both();
        return first.trials() > 0 && second.trials() > 0 && both.successes() > 0 && both.successes() < both.trials();
    }
}
