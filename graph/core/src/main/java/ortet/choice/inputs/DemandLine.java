package ortet.choice.inputs;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;
import ortet.value.Where;

/**
 * So many trees asked for.
 *
 * @param cultivar by its epithet or its whole name
 * @param size the size class, or {@code ungraded} for trees sold without one
 * @param count how many in a year, at least 0
 * @param year the calendar year; empty for every year
 * @param at where it was told; empty where in no file
 */
public record DemandLine(String cultivar, String size, double count, Optional<Integer> year, Optional<Where> at) {
    public DemandLine {
        cultivar = Require.text(cultivar, "cultivar");
        size = Require.text(size, "size");
        Require.that(count >= 0 && count < Double.POSITIVE_INFINITY, "count", "at least 0");
        Objects.requireNonNull(year);
        Objects.requireNonNull(at);
    }
}
