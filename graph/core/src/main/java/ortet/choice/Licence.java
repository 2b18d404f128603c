package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * How many units of a protected cultivar may be set in a year.
 *
 * @param cultivar as the mothers name it
 * @param perYear layers and cuttings together, by year from this one on; the last stands for all after it; 0 where there is
 *     no licence
 */
public record Licence(String cultivar, List<Integer> perYear) {
    public Licence {
        cultivar = Require.text(cultivar, "cultivar");
        perYear = List.copyOf(perYear);
        Require.size(1, perYear, "licensed units");
        perYear.forEach(units -> Require.atLeast(0, units, "licensed units in a year"));
    }

    /** Make a licence for as many in every year. */
    public Licence(String cultivar, int perYear) {
        this(cultivar, List.of(perYear));
    }

    int in(int year) {
        return Checks.lastRepeats(perYear, year);
    }
}
