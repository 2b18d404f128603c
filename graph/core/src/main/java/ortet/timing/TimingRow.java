package ortet.timing;

import java.util.Objects;
import java.util.Optional;

/**
 * How long rooting took for the units of one cultivar.
 *
 * @param cultivar the name; absent where it is not known, and in the row for all
 * @param set how many were set, struck, worked or sown
 * @param failed how many have failed or were withdrawn: they are in no time
 * @param neverLooked how many of those waiting for roots nobody has looked at, so that they tell nothing
 * @param firstRoots from setting until there were roots
 * @param ready from setting until a layer was severed, or a unit found rooted and lifted
 */
public record TimingRow(
        Optional<String> cultivar, int set, int failed, int neverLooked, Waiting firstRoots, Waiting ready) {
    public TimingRow {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(firstRoots);
        Objects.requireNonNull(ready);
    }
}
