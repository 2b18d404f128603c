package ortet.choice;

import ortet.value.Require;

/**
 * How many units of a protected cultivar may be set in a year.
 *
 * @param cultivar as the mothers name it
 * @param perYear layers and cuttings together; 0 where there is no licence
 */
public record Licence(String cultivar, int perYear) {
    public Licence {
        cultivar = Require.text(cultivar, "cultivar");
        Require.atLeast(0, perYear, "licensed units in a year");
    }
}
