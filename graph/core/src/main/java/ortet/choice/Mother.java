package ortet.choice;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;

/**
 * A stock plant, or one that could be grown on as one.
 *
 * @param key her tag
 * @param cultivar as the ways and outlets name it
 * @param ortet which clone she is of, by the first plant of it that is known
 * @param place where she stands
 * @param parts into how many like parts she is divided when only some of her branches are layered in a year, 1 to 3; parts
 *     that are not layered grow on
 * @param restYears how many years must lie between two layerings of a part, at least 1
 * @param restNow for how many years from now she must recover first, 0 when she may be layered this year
 * @param heldYears for how many years from now nothing may be taken from her nor she sold, for plant health
 * @param growth what she carries, now and later
 * @param asTree what she would fetch as a tree; absent when she is not for sale
 * @param atEnd what she is worth as stock when the plan ends
 * @param whileLong what she needs in a year with long branches
 * @param whileShort what she needs in the year in which she is cut back, or the one after she was layered
 * @param rates how her layers and cuttings take and establish
 * @param trial the trial that could be made on her this year; absent where she has been tried
 */
public record Mother(
        String key,
        String cultivar,
        String ortet,
        String place,
        int parts,
        int restYears,
        int restNow,
        int heldYears,
        Growth growth,
        Optional<Worth> asTree,
        Worth atEnd,
        Needs whileLong,
        Needs whileShort,
        Rates rates,
        Optional<Trial> trial) {
    private static final int MOST_PARTS = 3;

    public Mother {
        key = Require.text(key, "mother");
        cultivar = Require.text(cultivar, "cultivar");
        ortet = Require.text(ortet, "ortet");
        place = Require.text(place, "place");
        Require.that(parts >= 1 && parts <= MOST_PARTS, "parts of " + key, "1 to " + MOST_PARTS);
        Require.atLeast(1, restYears, "years of rest of " + key);
        Require.atLeast(0, restNow, "years of rest now of " + key);
        Require.atLeast(0, heldYears, "years held of " + key);
        Objects.requireNonNull(growth);
        Objects.requireNonNull(asTree);
        Objects.requireNonNull(atEnd);
        Objects.requireNonNull(whileLong);
        Objects.requireNonNull(whileShort);
        Objects.requireNonNull(rates);
        Objects.requireNonNull(trial);
    }
}
