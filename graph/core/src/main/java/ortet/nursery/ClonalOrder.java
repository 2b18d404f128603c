package ortet.nursery;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntConsumer;
import java.util.function.IntPredicate;

/** Goes through the units of a nursery so that each comes after those whose clone it keeps. */
public final class ClonalOrder {
    private static final int NOBODY = 0;

    private final Snapshot snapshot;
    private final IntPredicate isSettled;
    private final BitSet begun = new BitSet();

    private ClonalOrder(Snapshot snapshot, IntPredicate isSettled) {
        this.snapshot = snapshot;
        this.isSettled = isSettled;
    }

    /**
     * Hand every unit that is not settled to what settles it, after those whose clone it keeps. In a damaged book, in which
     * units keep one another's clone in a circle, one of them comes before its mother. O(V + E) time.
     *
     * @param snapshot the nursery, with its links
     * @param isSettled whether a unit is settled; must be true of each once it was handed over
     */
    public static void settle(Snapshot snapshot, IntPredicate isSettled, IntConsumer settler) {
        new ClonalOrder(snapshot, isSettled).settle(settler);
    }

    private void settle(IntConsumer settler) {
        int[] path = new int[16];
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            int depth = 0;
            path[depth++] = unit;
            while (depth > 0) {
                int here = path[depth - 1];
                if (isSettled.test(here)) {
                    depth--;
                    continue;
                }
                begun.set(here);
                int above = unsettled(here);
                if (above == NOBODY) {
                    settler.accept(here);
                    depth--;
                } else {
                    if (depth == path.length) {
                        path = Arrays.copyOf(path, 2 * depth);
                    }
                    path[depth++] = above;
                }
            }
        }
    }

    /** Return a unit that must be settled first. */
    private int unsettled(int unit) {
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            int mother = snapshot.mother(link);
            if (snapshot.act(link).keepsTheClone() && !isSettled.test(mother) && !begun.get(mother)) {
                return mother;
            }
        }
        return NOBODY;
    }
}
