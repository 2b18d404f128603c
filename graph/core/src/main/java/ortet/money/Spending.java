package ortet.money;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;

/** What was spent on the units of one tag up to a day, and who carries it. */
final class Spending {
    /** All that was spent on units that are or were under the tag, what they brought with them too. */
    final Pool spent = new Pool();

    /** What those carry that are there. */
    final Pool here = new Pool();

    /** What went with those that failed, were withdrawn or not seen again. */
    final Pool failed = new Pool();

    /** What went with those that were sold, and can come back. */
    final Away sold = new Away();

    /** What went with those that were worked as rootstocks, and can come back. */
    final Away worked = new Away();

    /** For each entry that took units, what one of them carried; nothing where nobody knows how many there were. */
    final Map<Long, Optional<Pool>> perUnit = new HashMap<>();

    /** How many units are there; absent while nobody has counted. */
    Optional<Integer> units = Optional.of(0);

    /** How many units there ever were under the tag; absent when nobody ever counted those that were sown. */
    Optional<Integer> ever = Optional.of(0);

    /** How many failed, were withdrawn or were not seen again. */
    int failures;

    /** How many units were there at each entry that took some. */
    final Map<Long, Integer> unitsAt = new HashMap<>();

    /** Units that have gone and may come back. */
    static final class Away {
        private final Pool pool = new Pool();
        private int units;

        void add(Pool taken, int count) {
            pool.add(taken, BigFraction.ONE);
            units += count;
        }

        Pool back(int count) {
            if (units <= 0) {
                return new Pool();
            }
            Pool back = pool.take(BigFraction.of(Math.min(count, units), units));
            units -= Math.min(count, units);
            return back;
        }
    }
}
