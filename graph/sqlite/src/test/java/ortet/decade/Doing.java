package ortet.decade;

import java.util.List;

/**
 * What is done with a mother in a year; whoever is not named is left long.
 *
 * @param mother her number
 * @param sets how many layers are set, by band
 * @param what what else becomes of her
 */
record Doing(int mother, List<Integer> sets, What what) {
    /** What becomes of a mother. */
    enum What {
        /** She is cut back when the layers are severed. */
        CROPPED,
        /** A few layers to try her out leave her long. */
        TRIED,
        /** She is cropped, and sold in autumn. */
        CROPPED_AND_SOLD,
        /** She is sold before anything is set. */
        SOLD,
        /** She is cut back before spring, and the wood is thrown away. */
        CUT_BACK
    }

    Doing {
        sets = List.copyOf(sets);
    }

    static Doing without(int mother, What what) {
        return new Doing(mother, List.of(0, 0, 0), what);
    }

    int layers() {
        return sets.stream().mapToInt(Integer::intValue).sum();
    }
}
