package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * What can be taken from a mother at one time: either layers, or cuttings.
 *
 * @param positions where a layer can be set, by diameter band, measured or expected
 * @param cuttings how many cuttings her wood would make when she is cut back
 */
public record Wood(List<Integer> positions, int cuttings) {
    public Wood {
        positions = List.copyOf(positions);
        positions.forEach(one -> Require.atLeast(0, one, "positions"));
        Require.atLeast(0, cuttings, "cuttings");
    }

    int layers() {
        return positions.stream().mapToInt(Integer::intValue).sum();
    }
}
