package ortet.nursery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.Act;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Reason;
import ortet.plant.CultivarName;
import ortet.value.Defect;

/** Columns being filled, row by row; the rows of each part come by unit number, and within a unit in timeline order. */
final class Filling {
    private static final Act[] ACTS = Act.values();
    private static final int STILL_ON = Fate.STILL_ON.ordinal();
    private static final int NOT_SEEN = Fate.NOT_SEEN.ordinal();
    private static final int SOLD = Reason.SOLD.ordinal();
    private static final int RETURNED = Reason.RETURNED.ordinal();
    private static final int UNWORKED = Reason.UNWORKED.ordinal();

    private static final Fate[] FATES = Fate.values();
    private static final Reason[] REASONS = Reason.values();
    private static final Map<Fate, Turn> OUTCOMES = new EnumMap<>(Map.of(
            Fate.TAKEN, Turn.TAKEN,
            Fate.FAILED, Turn.FAILED,
            Fate.WITHDRAWN, Turn.WITHDRAWN,
            Fate.NOT_SEEN, Turn.NOT_SEEN,
            Fate.MOVED_ON, Turn.PASSED_ON,
            Fate.FOUND_MORE, Turn.FOUND_MORE,
            Fate.STILL_ON, Turn.STILL_ON));
    private static final Map<Reason, Turn> DEPARTURES = new EnumMap<>(Map.of(
            Reason.SOLD, Turn.SOLD,
            Reason.RETURNED, Turn.RETURNED,
            Reason.LOST, Turn.LOST,
            Reason.CULLED, Turn.CULLED,
            Reason.SURPLUS, Turn.SURPLUS,
            Reason.MOVED_ON, Turn.WENT_ON,
            Reason.WORKED, Turn.WORKED,
            Reason.UNWORKED, Turn.UNWORKED,
            Reason.USED_UP, Turn.USED_UP));

    private final int lastUnit;
    private final Set<Part> parts;
    private final Columns known;

    private byte[] nature;
    private int[] begun;
    private final Longs packed = new Longs();
    private final Longs told = new Longs();
    private final Ints toldUnits = new Ints();
    private Optional<Links> links;
    private final Ints beginningUnits = new Ints();
    private final List<Beginning> beginnings = new ArrayList<>();
    private int[] pending = {};
    private int[] growing = {};
    private final Ints cohort = new Ints();
    private final Ints method = new Ints();
    private final Ints day = new Ints();
    private final Ints by = new Ints();
    private final Ints set = new Ints();
    private final Ints root = new Ints();
    private int[][] fates = {};
    private int[] looked = {};
    private int row;
    private int[] names = {};
    private List<CultivarName> cultivars = List.of();
    private final Ints turnUnit = new Ints();
    private final Ints turnWhen = new Ints();
    private final Ints turnWhat = new Ints();
    private int[] treatment = {};
    private final Map<Treatment, Integer> treatments = new LinkedHashMap<>();
    private final Map<String, Integer> sizes = new LinkedHashMap<>();
    private int[] sold = {};
    private byte[] left = {};

    /**
     * Begin to fill columns.
     *
     * @param parts what is to be filled
     * @param known columns that are there already and are kept
     */
    Filling(int lastUnit, Set<Part> parts, Columns known) {
        this.lastUnit = lastUnit;
        this.parts = EnumSet.noneOf(Part.class);
        this.parts.addAll(parts);
        this.known = known;
        this.links = known.links();
        nature = known.nature();
        begun = known.begun();
        if (nature.length == 0) {
            nature = new byte[lastUnit + 1];
            Arrays.fill(nature, (byte) -1);
            begun = new int[lastUnit + 1];
        }
        if (fills(Part.STANDINGS)) {
            pending = new int[lastUnit + 1];
            growing = new int[lastUnit + 1];
        }
        if (fills(Part.NAMES)) {
            names = filled();
        }
        if (fills(Part.LIVES)) {
            treatment = filled();
        }
        if (fills(Part.LEAVINGS)) {
            sold = new int[lastUnit + 1];
            left = new byte[lastUnit + 1];
            Arrays.fill(left, (byte) -1);
        }
    }

    boolean fills(Part part) {
        return parts.contains(part);
    }

    private int[] filled() {
        int[] column = new int[lastUnit + 1];
        Arrays.fill(column, -1);
        return column;
    }

    void unit(int unit, int what, long first, long precision) {
        nature[unit] = (byte) what;
        begun[unit] = Days.packed(first, precision);
    }

    /** Take a link, as {@link Packed} has it; links come in any order. */
    void link(long link) {
        packed.add(link);
    }

    /** Tell how many units came by one of the links. */
    void linkCount(long link, int units) {
        told.add(link);
        toldUnits.add(units);
    }

    /** Put the links that were given in order, by child, mother and act, and compress them. */
    void closeLinks() {
        long[] sorted = packed.done();
        Arrays.sort(sorted);
        int[] child = new int[sorted.length];
        int[] mother = new int[sorted.length];
        byte[] act = new byte[sorted.length];
        int[] count = new int[sorted.length];
        for (int at = 0; at < sorted.length; at++) {
            child[at] = Packed.child(sorted[at]);
            mother[at] = Packed.mother(sorted[at]);
            act[at] = (byte) Packed.act(sorted[at]);
        }
        long[] links = told.done();
        int[] units = toldUnits.done();
        for (int at = 0; at < links.length; at++) {
            count[place(sorted, links[at], count)] = units[at];
        }
        this.links = Optional.of(Links.of(lastUnit, child, mother, act, count));
    }

    /** Return the first place of a link whose units have not been told yet. */
    private static int place(long[] sorted, long link, int[] count) {
        int place = Arrays.binarySearch(sorted, link);
        if (place < 0) {
            throw new Defect(
                    "units of a link that is not there: " + Packed.child(link) + " from " + Packed.mother(link));
        }
        while (place > 0 && sorted[place - 1] == link) {
            place--;
        }
        while (count[place] != 0 && place + 1 < sorted.length && sorted[place + 1] == link) {
            place++;
        }
        return place;
    }

    /** Return the units that had begun by a day and keep the clone of no other, ascending; after the links were closed. */
    int[] founders(long asOf) {
        Links all = links.orElseThrow(() -> new Defect("beginnings without links"));
        Ints found = new Ints();
        for (int unit = 1; unit <= lastUnit; unit++) {
            boolean keeps = nature[unit] < 0 || Days.first(begun[unit]) > asOf;
            for (int link = all.up()[unit]; !keeps && link < all.up()[unit + 1]; link++) {
                keeps = ACTS[all.act()[link]].keepsTheClone();
            }
            if (!keeps) {
                found.add(unit);
            }
        }
        return found.done();
    }

    boolean hasBegun(int unit, long asOf) {
        return nature[unit] >= 0 && Days.first(begun[unit]) <= asOf;
    }

    int nature(int unit) {
        return nature[unit];
    }

    void beginning(int unit, Beginning how) {
        beginningUnits.add(unit);
        beginnings.add(how);
    }

    void standing(int unit, int undecided, int grow) {
        pending[unit] = undecided;
        growing[unit] = grow;
    }

    void cohort(int unit, int how, long first, long precision, int person, int units, int from) {
        cohort.add(unit);
        method.add(how);
        day.add(Days.packed(first, precision));
        by.add(person);
        set.add(units);
        root.add(from);
    }

    /** Make room for what became of the cohorts that were given. */
    void closeCohorts() {
        fates = new int[Fate.values().length - 1][cohort.size()];
        looked = new int[cohort.size()];
        Arrays.fill(looked, Integer.MIN_VALUE);
    }

    void outcome(int[] cohorts, int unit, int fate, int units, int when) {
        while (row < cohorts.length && cohorts[row] < unit) {
            row++;
        }
        if (row == cohorts.length || cohorts[row] != unit) {
            return; // of a cohort that was set later
        }
        if (fate != STILL_ON) {
            fates[fate][row] += units;
        }
        if (fate != NOT_SEEN) {
            looked[row] = Math.max(looked[row], when);
        }
    }

    /** Return the units of the cohorts that were given. */
    int[] cohortUnits() {
        return cohort.done();
    }

    void cultivars(List<CultivarName> all) {
        cultivars = all;
    }

    void name(int unit, int which, boolean determined) {
        names[unit] = which << 1 | (determined ? 1 : 0);
    }

    void leaving(int unit, int reason, int units) {
        if (reason == SOLD) {
            sold[unit] += units;
        } else if (reason == RETURNED) {
            sold[unit] -= units;
        }
        if (reason != RETURNED && reason != UNWORKED) {
            left[unit] = (byte) reason;
        }
    }

    /** Tell of something that happened to units under a tag. */
    void turn(int unit, Turn what, int when, int value) {
        turnUnit.add(unit);
        turnWhen.add(when);
        turnWhat.add(Lives.packed(what, value));
    }

    /** Tell what became of units of a cohort; whether it was set later does not matter here. */
    void outcomeTurn(int unit, int fate, int units, int when) {
        turn(unit, OUTCOMES.get(FATES[fate]), when, units);
    }

    /** Tell of units that left their tag; those that failed or were withdrawn or not seen are outcomes already. */
    void leavingTurn(int unit, int reason, int units, int when) {
        Turn what = DEPARTURES.get(REASONS[reason]);
        if (what != null) {
            turn(unit, what, when, units);
        }
    }

    /** Return the place of a size class, a new one where it was not met before. */
    int size(String size) {
        return sizes.computeIfAbsent(size, one -> sizes.size());
    }

    /** Return the place of a treatment, a new one where it was not met before. */
    int treatment(Treatment one) {
        return treatments.computeIfAbsent(one, fresh -> treatments.size());
    }

    /** Tell how a unit was set, and on what stem, 0 where nobody measured it. */
    void set(int unit, int how, int stem) {
        treatment[unit] = how;
        if (stem > 0) {
            turn(unit, Turn.SET_ON, begun[unit], stem);
        }
    }

    private Lives lives() {
        return Lives.of(
                lastUnit,
                turnUnit.done(),
                turnWhen.done(),
                turnWhat.done(),
                treatment,
                List.copyOf(treatments.keySet()),
                List.copyOf(sizes.keySet()));
    }

    /** Return the columns: those that were there already, and those filled. */
    Columns columns(int[] cohortUnits) {
        return new Columns(
                nature,
                begun,
                links,
                fills(Part.BEGINNINGS) ? Optional.of(beginningUnits.done()) : known.beginningUnits(),
                fills(Part.BEGINNINGS) ? List.copyOf(beginnings) : known.beginnings(),
                fills(Part.STANDINGS) ? Optional.of(pending) : known.pending(),
                fills(Part.STANDINGS) ? Optional.of(growing) : known.growing(),
                fills(Part.COHORTS) ? Optional.of(cohorts(cohortUnits)) : known.cohorts(),
                fills(Part.NAMES) ? Optional.of(names) : known.names(),
                fills(Part.NAMES) ? List.copyOf(cultivars) : known.cultivars(),
                fills(Part.LEAVINGS) ? Optional.of(sold) : known.sold(),
                fills(Part.LIVES) ? Optional.of(lives()) : known.lives(),
                fills(Part.LEAVINGS) ? Optional.of(left) : known.left());
    }

    private Cohorts cohorts(int[] units) {
        return new Cohorts(units, method.bytes(), day.done(), by.done(), set.done(), root.done(), fates, looked);
    }
}
