package ortet.nursery;

import java.util.List;

/**
 * What happened to the units under every tag up to the day of the snapshot, turn by turn, and how they were set: rows of
 * whole numbers, those of one unit next to each other in the order of its days.
 *
 * <p>Takes 8 bytes for each unit and 8 for each turn.
 */
public final class Lives {
    /** Where there is no number. */
    public static final int NONE = -1;

    private static final Turn[] TURNS = Turn.values();
    private static final int TURN_BITS = 5;

    private final int[] from;
    private final int[] when;
    private final int[] what;
    private final int[] treatment;
    private final List<Treatment> treatments;
    private final List<String> sizes;

    private Lives(int[] from, int[] when, int[] what, int[] treatment, List<Treatment> treatments, List<String> sizes) {
        this.from = from;
        this.when = when;
        this.what = what;
        this.treatment = treatment;
        this.treatments = treatments;
        this.sizes = sizes;
    }

    static int packed(Turn turn, int value) {
        return value << TURN_BITS | turn.ordinal();
    }

    /** Put turns in the order of units and days; those of one unit and day by their kind, then as they were given. */
    static Lives of(
            int lastUnit,
            int[] unit,
            int[] when,
            int[] what,
            int[] treatment,
            List<Treatment> treatments,
            List<String> sizes) {
        int[] from = new int[lastUnit + 2];
        for (int one : unit) {
            from[one + 1]++;
        }
        for (int at = 1; at < from.length; at++) {
            from[at] += from[at - 1];
        }
        int[] next = from.clone();
        int[] sortedWhen = new int[unit.length];
        int[] sortedWhat = new int[unit.length];
        for (int at = 0; at < unit.length; at++) {
            int first = from[unit[at]];
            int place = next[unit[at]]++;
            // rows come nearly in order, and a unit has few
            while (place > first && isBefore(when[at], what[at], sortedWhen[place - 1], sortedWhat[place - 1])) {
                sortedWhen[place] = sortedWhen[place - 1];
                sortedWhat[place] = sortedWhat[place - 1];
                place--;
            }
            sortedWhen[place] = when[at];
            sortedWhat[place] = what[at];
        }
        return new Lives(from, sortedWhen, sortedWhat, treatment, List.copyOf(treatments), List.copyOf(sizes));
    }

    private static boolean isBefore(int when, int what, int otherWhen, int otherWhat) {
        int mask = (1 << TURN_BITS) - 1;
        int byDay = Integer.compare(last(when), last(otherWhen));
        return byDay != 0 ? byDay < 0 : (what & mask) < (otherWhat & mask);
    }

    private static int last(int when) {
        return (when & 3) == 0
                ? Days.first(when)
                : Math.toIntExact(Days.when(when).last().toEpochDay());
    }

    /** Return the number of the first turn of a unit; they are numbered without a gap. */
    public int first(int unit) {
        return from[unit];
    }

    /** Return the number after the last turn of a unit. */
    public int end(int unit) {
        return from[unit + 1];
    }

    /** Return what happened. */
    public Turn turn(int at) {
        return TURNS[what[at] & (1 << TURN_BITS) - 1];
    }

    /** Return to how many units it happened, or what was measured; 0 where neither is told. */
    public int value(int at) {
        return what[at] >> TURN_BITS;
    }

    /** Return the first day on which it may have happened, in days since 1970. */
    public int day(int at) {
        return Days.first(when[at]);
    }

    /** Return the last day on which it may have happened, in days since 1970. */
    public int lastDay(int at) {
        return last(when[at]);
    }

    /** Return how a unit was set, as its place in {@link #treatments()}; {@link #NONE} where it was begun otherwise. */
    public int treatment(int unit) {
        return treatment[unit];
    }

    /** Return every way in which something was set. */
    public List<Treatment> treatments() {
        return treatments;
    }

    /** Return every size class in which something was graded. */
    public List<String> sizes() {
        return sizes;
    }

    long bytes() {
        return (long) Integer.BYTES * (from.length + when.length + what.length + treatment.length)
                + (long) Integer.BYTES * (treatments.size() + sizes.size());
    }
}
