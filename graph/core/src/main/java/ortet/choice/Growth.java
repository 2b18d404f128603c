package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * What a mother carries, now and later. In each list the last entry stands for all after it.
 *
 * @param leftLong by year from this one on, as long as nothing is taken and nothing cut; the first is what she carries now
 * @param afterLayering by years since she was layered, from 1 on
 * @param afterCuttingBack by years since she was cut back, or cuttings were taken, from 1 on
 */
public record Growth(List<Wood> leftLong, List<Wood> afterLayering, List<Wood> afterCuttingBack) {
    public Growth {
        leftLong = List.copyOf(leftLong);
        afterLayering = List.copyOf(afterLayering);
        afterCuttingBack = List.copyOf(afterCuttingBack);
        Require.size(1, leftLong, "wood left long");
        Require.size(1, afterLayering, "wood after layering");
        Require.size(1, afterCuttingBack, "wood after cutting back");
    }
}
