package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * What a mother is worth in money. In each list the last entry stands for all after it.
 *
 * @param leftLong by year from this one on, as long as nothing is taken and nothing cut
 * @param afterLayering by years since she was layered, from 0, which is when the layers have been severed, on
 * @param afterCuttingBack by years since she was cut back, from 0 on
 */
public record Worth(List<Double> leftLong, List<Double> afterLayering, List<Double> afterCuttingBack) {
    /** Worth nothing, whatever was done. */
    public static final Worth NOTHING = always(0);

    public Worth {
        leftLong = List.copyOf(leftLong);
        afterLayering = List.copyOf(afterLayering);
        afterCuttingBack = List.copyOf(afterCuttingBack);
        Require.size(1, leftLong, "worth left long");
        Require.size(1, afterLayering, "worth after layering");
        Require.size(1, afterCuttingBack, "worth after cutting back");
        for (List<Double> list : List.of(leftLong, afterLayering, afterCuttingBack)) {
            list.forEach(one -> Checks.atLeastZero(one, "worth"));
        }
    }

    /** Worth the same, whatever was done. */
    public static Worth always(double money) {
        return new Worth(List.of(money), List.of(money), List.of(money));
    }
}
