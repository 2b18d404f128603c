package ortet.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.Act;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Cohorts;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;

/**
 * The units that were set, struck, worked or sown and had begun by a day, and how they stood: rows of whole numbers.
 *
 * <p>A row is the row of {@link Cohorts}.
 */
final class Samples {
    /** What a snapshot must have. */
    static final Set<Part> PARTS = EnumSet.of(Part.LINKS, Part.COHORTS, Part.NAMES);

    private static final int NOBODY = 0;
    private static final int DAYS_OF_A_WEEK = 7;

    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final Names names;
    private final int[] mothers;
    private final List<List<Integer>> several = new ArrayList<>();
    private final Map<List<Integer>, Integer> severalKeys = new HashMap<>();
    private final int asOf;
    private final Map<Method, Integer> days = new EnumMap<>(Method.class);

    private Samples(Snapshot snapshot, Periods periods) {
        this.snapshot = snapshot;
        this.cohorts = snapshot.cohorts();
        this.names = Names.of(snapshot);
        this.asOf = Math.toIntExact(snapshot.asOf().toEpochDay());
        for (Method method : Method.values()) {
            days.put(method, DAYS_OF_A_WEEK * periods.weeks(method));
        }
        this.mothers = new int[cohorts.size()];
        for (int row = 0; row < mothers.length; row++) {
            mothers[row] = isThere(row) ? readMothers(row) : NOBODY;
        }
    }

    static Samples of(Snapshot snapshot, Periods periods) {
        return new Samples(snapshot, periods);
    }

    Snapshot snapshot() {
        return snapshot;
    }

    Cohorts cohorts() {
        return cohorts;
    }

    /** Tell whether the unit had begun; one that was split off has an older day of setting. */
    boolean isThere(int row) {
        return snapshot.isThere(cohorts.unit(row));
    }

    /** Tell whether somebody knows how many were set. */
    boolean isCounted(int row) {
        return cohorts.count(row) != Cohorts.NONE;
    }

    /** Return the name as its place in {@link Snapshot#cultivars()}, negative where it is not known. */
    int cultivar(int row) {
        return names.name(cohorts.unit(row));
    }

    // ---- mothers ----

    /** Return who gave the wood or bore the seed: a unit, 0 where nobody knows, or a negative key to {@link #several}. */
    int mother(int row) {
        return mothers[row];
    }

    /** Return the mothers, one of whom it is, by unit number, for a negative key. */
    List<Integer> several(int key) {
        return several.get(-1 - key);
    }

    /** Tell whether a unit is among several mothers, one of whom it is. */
    boolean isOneOf(int row, int mother) {
        return mothers[row] < 0 && several(mothers[row]).contains(mother);
    }

    private int readMothers(int row) {
        int unit = cohorts.unit(row);
        Method method = cohorts.method(row);
        int one = NOBODY;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            Act act = snapshot.act(link);
            if (isParting(act) || gave(act, method) && one != NOBODY) {
                return manyMothers(unit, method);
            }
            if (gave(act, method) && snapshot.isThere(snapshot.mother(link))) {
                one = snapshot.mother(link);
            }
        }
        return one;
    }

    private int manyMothers(int unit, Method method) {
        Set<Integer> found = new TreeSet<>();
        Set<Integer> origins = new TreeSet<>();
        addMothers(unit, method, origins, found);
        if (found.size() < 2) {
            return found.isEmpty() ? NOBODY : found.iterator().next();
        }
        return severalKeys.computeIfAbsent(List.copyOf(found), key -> {
            several.add(key);
            return -several.size();
        });
    }

    private void addMothers(int unit, Method method, Set<Integer> origins, Set<Integer> found) {
        if (!origins.add(unit)) {
            return;
        }
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            Act act = snapshot.act(link);
            if (isParting(act)) {
                addMothers(snapshot.mother(link), method, origins, found);
            } else if (gave(act, method) && snapshot.isThere(snapshot.mother(link))) {
                found.add(snapshot.mother(link));
            }
        }
    }

    private static boolean isParting(Act act) {
        return act == Act.SPLIT_FROM || act == Act.MERGED_FROM;
    }

    private static boolean gave(Act act, Method method) {
        return switch (method) {
            case LAYER -> act.isLayering();
            case CUTTING -> act == Act.STRUCK_FROM || act == Act.STRUCK_BELOW;
            case GRAFT -> act == Act.SCION_OF;
            case SEED -> act == Act.SEED_OF;
        };
    }

    // ---- how they stand ----

    /** Tell whether many stood under one tag, so that they shared their luck. */
    boolean isBatch(int row) {
        return switch (cohorts.method(row)) {
            case LAYER -> false;
            case GRAFT -> cohorts.count(row) > 1;
            case CUTTING, SEED -> true;
        };
    }

    /** Return the season: the calendar year of the act, which a day known to the year alone tells too. */
    int season(int row) {
        return LocalDate.ofEpochDay(cohorts.firstDay(row)).getYear();
    }

    /** Return how many were set, as they are counted under this tag. */
    int set(int row) {
        return Math.max(0, cohorts.count(row)) + cohorts.foundMore(row) - cohorts.movedOn(row);
    }

    /** Return the last day on which it was set, seen or said to be still on, in days since 1970. */
    int heard(int row) {
        int day = cohorts.isExact(row)
                ? cohorts.firstDay(row)
                : Math.toIntExact(cohorts.day(row).last().toEpochDay());
        return Math.max(day, cohorts.looked(row));
    }

    private int pending(int row) {
        return set(row) - cohorts.taken(row) - cohorts.failed(row) - cohorts.withdrawn(row);
    }

    /** Tell whether more came of the units than was set: then what the store has worked out is wrong. */
    boolean isImpossible(int row) {
        return isCounted(row) && pending(row) < cohorts.notSeen(row);
    }

    /** Add how the units of a row stand to sums. */
    void addTo(Sums sums, int row) {
        int set = set(row);
        int pending = pending(row);
        boolean overdue = asOf > heard(row) + days.get(cohorts.method(row));
        sums.add(
                set,
                cohorts.taken(row),
                cohorts.failed(row),
                cohorts.withdrawn(row),
                pending,
                overdue ? pending : cohorts.notSeen(row));
    }

    /** Sums over rows. */
    static final class Sums {
        private int set;
        private int taken;
        private int failed;
        private int withdrawn;
        private int pending;
        private int unaccounted;

        private void add(int more, int took, int fell, int out, int open, int lost) {
            set = Math.addExact(set, more);
            taken += took;
            failed += fell;
            withdrawn += out;
            pending += open;
            unaccounted += lost;
        }

        Tally tally() {
            return new Tally(set, taken, failed, withdrawn, pending, unaccounted);
        }
    }
}
