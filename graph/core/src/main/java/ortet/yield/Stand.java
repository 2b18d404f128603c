package ortet.yield;

import ortet.book.Act;
import ortet.nursery.Cohorts;
import ortet.nursery.Snapshot;

/**
 * Counts in how many batches and from how many mothers the units of a row of the answer stood; batches as they were first
 * set, as far as that was in the same row.
 *
 * <p>One for many rows of the answer in turn: what was met in one is marked with its number, so that nothing need be wiped.
 */
final class Stand {
    private final Samples samples;
    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final int[] here;
    private final int[] batch;
    private final int[] mother;
    private int group;
    private int batches;
    private int mothers;

    Stand(Samples samples) {
        this.samples = samples;
        this.snapshot = samples.snapshot();
        this.cohorts = samples.cohorts();
        this.here = new int[snapshot.lastUnit() + 1];
        this.batch = new int[snapshot.lastUnit() + 1];
        this.mother = new int[snapshot.lastUnit() + 1];
    }

    /** Count for some rows of the cohorts: those from one place to another of a list. */
    Stood of(int[] rows, int from, int to) {
        group++;
        batches = 0;
        mothers = 0;
        int singles = 0;
        int motherless = 0;
        for (int at = from; at < to; at++) {
            here[cohorts.unit(rows[at])] = group;
        }
        for (int at = from; at < to; at++) {
            int row = rows[at];
            if (samples.set(row) > 0) {
                if (samples.isBatch(row)) {
                    first(cohorts.unit(row));
                } else {
                    singles += samples.set(row);
                }
                int who = samples.mother(row);
                if (who > 0) {
                    meet(who);
                } else if (who < 0) {
                    samples.several(who).forEach(this::meet);
                } else {
                    motherless += samples.set(row);
                }
            }
        }
        return new Stood(batches, singles, mothers, motherless);
    }

    private void meet(int who) {
        if (mother[who] != group) {
            mother[who] = group;
            mothers++;
        }
    }

    /** Count the batches of the same row in which the units of a batch were first set: itself, or where it is from. */
    private void first(int unit) {
        if (batch[unit] == group) {
            return;
        }
        batch[unit] = group;
        boolean from = false;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            Act act = snapshot.act(link);
            int origin = snapshot.mother(link);
            if ((act == Act.SPLIT_FROM || act == Act.MERGED_FROM) && here[origin] == group && hasPassedOn(origin)) {
                from = true;
                first(origin);
            }
        }
        batches += from ? 0 : 1;
    }

    private boolean hasPassedOn(int unit) {
        int row = cohorts.row(unit);
        return row >= 0 && cohorts.movedOn(row) > 0;
    }
}
