package ortet.nursery;

/**
 * What every unit of a snapshot is known as: its own name, else that of what it keeps the clone of, and so on up.
 *
 * <p>Where that is one of several under different names, or one whose name is known and one whose name is not, nobody can
 * tell. O(V + E) time and 4 bytes for each unit. Ends also in a damaged book that runs in a circle.
 */
public final class Names {
    /** Nobody said. */
    public static final int UNKNOWN = -1;

    /** One of several that are known by different names. */
    public static final int SEVERAL = -2;

    private static final int NOT_YET = -3;

    private final Snapshot snapshot;
    private final int[] names;

    private Names(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.names = new int[snapshot.lastUnit() + 1];
    }

    /** Work out the names of all units; needs links and names. */
    public static Names of(Snapshot snapshot) {
        Names found = new Names(snapshot);
        found.work();
        return found;
    }

    /** Return the name as its place in {@link Snapshot#cultivars()}, or {@link #UNKNOWN} or {@link #SEVERAL}. */
    public int name(int unit) {
        return names[unit];
    }

    private void work() {
        for (int unit = 1; unit < names.length; unit++) {
            names[unit] = snapshot.ownName(unit);
            if (names[unit] < 0) {
                names[unit] = NOT_YET;
            }
        }
        ClonalOrder.settle(snapshot, unit -> names[unit] != NOT_YET, unit -> names[unit] = joined(unit));
    }

    private int joined(int unit) {
        int all = NOT_YET;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            int one = names[snapshot.mother(link)];
            if (snapshot.act(link).keepsTheClone() && one != NOT_YET) {
                all = all == NOT_YET || all == one ? one : SEVERAL;
            }
        }
        return all == NOT_YET ? UNKNOWN : all;
    }
}
