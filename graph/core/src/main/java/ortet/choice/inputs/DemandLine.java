package ortet.choice.inputs;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;

/**
 * So many trees asked for.
 *
 * @param cultivar by its epithet or its whole name
 * @param size the size class
 * @param count how many in a year, at least 0
 * @param year the calendar year; empty for every year
 */
public record DemandLine(String cultivar, String size, double count, Optional<Integer> year) {
    public DemandLine {
        cultivar = Require.text(cultivar, "cultivar");
        size = Require.text(size, "size");
        Require.that(count >= 0 && count < Double.POSITIVE_INFINITY, "count", "at least 0");
        Objects.requireNonNull(year);
    }
}
