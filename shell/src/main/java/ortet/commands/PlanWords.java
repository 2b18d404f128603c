package ortet.commands;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.time.temporal.IsoFields;
import java.util.Locale;
import ortet.book.UnitFacts.Method;
import ortet.choice.PlanStage;

/** The words of plans. */
final class PlanWords {
    private PlanWords() {}

    static String units(Method method, long count) {
        return switch (method) {
            case LAYER -> Counts.of(count, "layer", "layers");
            case CUTTING -> Counts.of(count, "cutting", "cuttings");
            case GRAFT -> Counts.of(count, "graft", "grafts");
            case SEED -> Counts.of(count, "seed", "seeds");
        };
    }

    static String act(Method method) {
        return switch (method) {
            case LAYER -> "Set";
            case CUTTING -> "Strike";
            case GRAFT -> "Work";
            case SEED -> "Sow";
        };
    }

    static String done(Method method) {
        return switch (method) {
            case LAYER -> "set";
            case CUTTING -> "struck";
            case GRAFT -> "worked";
            case SEED -> "sown";
        };
    }

    static String ready(Method method) {
        return switch (method) {
            case LAYER -> "Ready to sever";
            case CUTTING -> "Rooted";
            case GRAFT -> "United";
            case SEED -> "Up";
        };
    }

    static String howMany(PlanStage.Kind kind) {
        return switch (kind) {
            case TAKE -> "how many take";
            case ESTABLISH -> "how many establish";
            case FIT -> "how many are fit for sale in time";
        };
    }

    /** Return days and the weeks of the year in which they lie. */
    static String between(LocalDate from, LocalDate to) {
        int first = from.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
        int last = to.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
        return from.equals(to)
                ? from + " (week " + first + ")"
                : from + " to " + to
                        + (first == last ? " (week " + first + ")" : " (weeks " + first + " to " + last + ")");
    }

    static String between(MonthDay from, MonthDay to) {
        return day(from) + " to " + day(to);
    }

    private static String day(MonthDay day) {
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    static String lean(PlanStage.Lean lean) {
        return switch (lean) {
            case OWN -> "its own";
            case TAXON -> "its botanical name";
            case ALL -> "all cultivars";
        };
    }

    /** Return a chance in percent with one decimal, never rounded up to what it is not. */
    static String chance(double share) {
        if (share > 0 && share < 0.001) {
            return "<0.1";
        }
        if (share < 1 && share > 0.999) {
            return ">99.9";
        }
        return BigDecimal.valueOf(share)
                .movePointRight(2)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String decimal(double value) {
        return BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP).toPlainString();
    }
}
