package ortet.choice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What states a mother of so many parts can be in, year by year, and which deeds lead from one to another; the same for all
 * mothers with as many parts, whatever they carry.
 *
 * <p>A part is left long since the plan began (stage 0), layered n years ago (stage n), or cut back n years ago (stage
 * years + n). A state is how many parts are in which stage.
 */
final class Shape {
    /**
     * A deed in a state.
     *
     * @param number counted over all years and states
     * @param stages of the parts from which something is taken
     * @param taken how many parts in each of these
     * @param takesLeft whether parts are taken that were left long since the beginning
     * @param leastAge the fewest years since a part taken was layered; the greatest number when none was
     * @param longParts how many parts stand long in this year
     * @param shortParts how many stand short
     * @param next the state a year later; -1 when she is gone
     * @param soldFrom the state in which she is sold; -1 when she is not
     */
    record Arc(
            int number,
            Deed deed,
            int[] stages,
            int[] taken,
            boolean takesLeft,
            int leastAge,
            int longParts,
            int shortParts,
            int next,
            int soldFrom) {}

    private static final int[] NOBODY = {};

    private final int parts;
    private final int years;
    private final List<List<int[]>> states = new ArrayList<>();
    private final Arc[][][] arcs;
    private int arcCount;

    private static final Map<Integer, Shape> MADE = new java.util.concurrent.ConcurrentHashMap<>();

    static Shape of(int parts, int years) {
        return MADE.computeIfAbsent(parts * 100 + years, key -> new Shape(parts, years));
    }

    private Shape(int parts, int years) {
        this.parts = parts;
        this.years = years;
        this.arcs = new Arc[years][][];
        int[] start = new int[1 + 2 * years + 1];
        start[0] = parts;
        states.add(new ArrayList<>(List.of(start)));
        for (int year = 0; year < years; year++) {
            List<int[]> later = new ArrayList<>();
            Map<List<Integer>, Integer> numbers = new HashMap<>();
            List<int[]> now = states.get(year);
            arcs[year] = new Arc[now.size()][];
            for (int state = 0; state < now.size(); state++) {
                arcs[year][state] = arcs(year, state, now.get(state), later, numbers);
            }
            states.add(later);
        }
    }

    int parts() {
        return parts;
    }

    int years() {
        return years;
    }

    int states(int year) {
        return states.get(year).size();
    }

    /** Return how many parts are in each stage. */
    int[] stagesOf(int year, int state) {
        return states.get(year).get(state);
    }

    Arc[] arcs(int year, int state) {
        return arcs[year][state];
    }

    int arcCount() {
        return arcCount;
    }

    int stages() {
        return 1 + 2 * years;
    }

    private Arc[] arcs(int year, int state, int[] now, List<int[]> later, Map<List<Integer>, Integer> numbers) {
        List<Arc> all = new ArrayList<>();
        int recovering = now[1];
        int grown = number(aged(now, NOBODY, false), later, numbers);
        all.add(new Arc(
                arcCount++,
                Deed.LEAVE_LONG,
                NOBODY,
                NOBODY,
                false,
                Integer.MAX_VALUE,
                parts - recovering,
                recovering,
                grown,
                -1));
        if (year == 0) {
            all.add(new Arc(
                    arcCount++,
                    Deed.TRY_OUT,
                    new int[] {0},
                    new int[] {parts},
                    true,
                    Integer.MAX_VALUE,
                    parts,
                    0,
                    grown,
                    -1));
        }
        int[] taken = new int[now.length];
        choose(now, taken, 0, () -> {
            if (sum(taken) > 0) {
                int next = number(aged(now, taken, false), later, numbers);
                all.add(taking(Deed.LAYER, now, taken, parts - recovering, recovering, next, -1));
            }
        });
        all.add(taking(Deed.LAYER_AND_SELL, now, now, parts - recovering, recovering, -1, -1));
        int cut = number(aged(now, now, true), later, numbers);
        all.add(taking(Deed.CUT_BACK, now, now, 0, parts, cut, -1));
        all.add(taking(Deed.TAKE_CUTTINGS, now, now, 0, parts, cut, -1));
        all.add(new Arc(arcCount++, Deed.SELL, NOBODY, NOBODY, false, Integer.MAX_VALUE, 0, 0, -1, state));
        return all.toArray(Arc[]::new);
    }

    private Arc taking(Deed deed, int[] now, int[] taken, int longParts, int shortParts, int next, int soldFrom) {
        List<Integer> stages = new ArrayList<>();
        int leastAge = Integer.MAX_VALUE;
        for (int stage = 0; stage < now.length; stage++) {
            if (taken[stage] > 0) {
                stages.add(stage);
                if (stage >= 1 && stage <= years) {
                    leastAge = Math.min(leastAge, stage);
                }
            }
        }
        int[] which = stages.stream().mapToInt(Integer::intValue).toArray();
        int[] many = stages.stream().mapToInt(stage -> taken[stage]).toArray();
        return new Arc(arcCount++, deed, which, many, taken[0] > 0, leastAge, longParts, shortParts, next, soldFrom);
    }

    private static void choose(int[] now, int[] taken, int stage, Runnable then) {
        if (stage == now.length) {
            then.run();
            return;
        }
        for (int many = 0; many <= now[stage]; many++) {
            taken[stage] = many;
            choose(now, taken, stage + 1, then);
        }
        taken[stage] = 0;
    }

    /** Return the state a year later, when some parts were layered or cut back. */
    private int[] aged(int[] now, int[] taken, boolean cutBack) {
        int[] later = new int[now.length];
        for (int stage = 0; stage < now.length; stage++) {
            int gone = taken.length == 0 ? 0 : taken[stage];
            int kept = now[stage] - gone;
            if (kept > 0) {
                later[stage == 0 ? 0 : stage + 1] += kept;
            }
            if (gone > 0) {
                later[cutBack ? years + 1 : 1] += gone;
            }
        }
        return later;
    }

    private static int sum(int[] figures) {
        int sum = 0;
        for (int one : figures) {
            sum += one;
        }
        return sum;
    }

    private static int number(int[] state, List<int[]> later, Map<List<Integer>, Integer> numbers) {
        List<Integer> key = java.util.Arrays.stream(state).boxed().toList();
        return numbers.computeIfAbsent(key, fresh -> {
            later.add(state);
            return later.size() - 1;
        });
    }
}
