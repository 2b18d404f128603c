package ortet.yield;

import ortet.book.UnitFacts.Method;
import ortet.value.Require;

/**
 * After how many weeks it should be known whether a unit has taken; what is pending longer is unaccounted.
 *
 * <p>Counted from the day of setting, or from the last day on which somebody looked. The defaults are common practice,
 * not published figures: generous enough for a layer left for a second season.
 *
 * @param layerWeeks weeks for a layer, at least 1
 * @param cuttingWeeks weeks for cuttings, at least 1
 * @param graftWeeks weeks for a graft, at least 1
 * @param seedWeeks weeks for seed, at least 1
 */
public record Periods(int layerWeeks, int cuttingWeeks, int graftWeeks, int seedWeeks) {
    /** Common practice: layers 78 weeks, cuttings 52, grafts 40, seed 104. */
    public static final Periods DEFAULTS = new Periods(78, 52, 40, 104);

    public Periods {
        Require.atLeast(1, layerWeeks, "weeks for a layer");
        Require.atLeast(1, cuttingWeeks, "weeks for cuttings");
        Require.atLeast(1, graftWeeks, "weeks for a graft");
        Require.atLeast(1, seedWeeks, "weeks for seed");
    }

    /** Return the weeks for a method. */
    public int weeks(Method method) {
        return switch (method) {
            case LAYER -> layerWeeks;
            case CUTTING -> cuttingWeeks;
            case GRAFT -> graftWeeks;
            case SEED -> seedWeeks;
        };
    }

    /** Return these periods with another for one method. */
    public Periods with(Method method, int weeks) {
        return switch (method) {
            case LAYER -> new Periods(weeks, cuttingWeeks, graftWeeks, seedWeeks);
            case CUTTING -> new Periods(layerWeeks, weeks, graftWeeks, seedWeeks);
            case GRAFT -> new Periods(layerWeeks, cuttingWeeks, weeks, seedWeeks);
            case SEED -> new Periods(layerWeeks, cuttingWeeks, graftWeeks, weeks);
        };
    }
}
