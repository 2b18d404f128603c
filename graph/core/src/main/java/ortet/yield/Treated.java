package ortet.yield;

import java.util.Arrays;
import ortet.book.Act;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Snapshot;

/**
 * How the units of every cohort were set, also of those that were split off or merged since: the treatment of the trays
 * that they come from, where those agree.
 */
final class Treated {
    /** Nobody wrote anything, or they come from trays that were set in different ways. */
    static final int UNKNOWN = -1;

    private static final int NOT_YET = -2;
    private static final int SEVERAL = -3;

    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final Lives lives;
    private final int[] ways;

    Treated(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.cohorts = snapshot.cohorts();
        this.lives = snapshot.lives();
        this.ways = new int[cohorts.size()];
        Arrays.fill(ways, NOT_YET);
    }

    /** Return the place in {@link Lives#treatments()} of how the units of a row were set, or {@link #UNKNOWN}. */
    int treatment(int row) {
        return Math.max(UNKNOWN, way(row, 0));
    }

    /** Return it, going no deeper than there are rows, so that it ends also in a damaged book. */
    private int way(int row, int depth) {
        if (ways[row] == NOT_YET) {
            ways[row] = work(cohorts.unit(row), depth);
        }
        return ways[row];
    }

    private int work(int unit, int depth) {
        int own = lives.treatment(unit);
        if (own != Lives.NONE || depth > cohorts.size()) {
            return own;
        }
        int all = NOT_YET;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            Act act = snapshot.act(link);
            int from = cohorts.row(snapshot.mother(link));
            if ((act == Act.SPLIT_FROM || act == Act.MERGED_FROM) && from >= 0) {
                int one = way(from, depth + 1);
                all = all == NOT_YET || all == one ? one : SEVERAL;
            }
        }
        return all == NOT_YET ? UNKNOWN : all;
    }
}
