package ortet.decade;

import java.util.EnumMap;
import java.util.Map;

/** What came in and went out, and what became of all that was set. */
final class Accounts {
    /** What money is for. */
    enum Line {
        SALES,
        MOTHERS_SOLD,
        MOTHERS_LEFT,
        PENALTIES,
        MATERIAL,
        HOURS,
        MORE_HOURS,
        BENCH,
        MORE_ROOM,
        GROUND
    }

    /** What becomes of units. */
    enum Units {
        SET,
        FAILED,
        LOST,
        NEVER_FIT,
        SOLD,
        THROWN_AWAY,
        STANDING,
        ASKED,
        ORDERED,
        ORDERS_MISSED,
        MOTHERS_SOLD
    }

    private final Map<Line, Double> money = new EnumMap<>(Line.class);
    private final Map<Units, Long> units = new EnumMap<>(Units.class);

    void add(Line line, double amount) {
        money.merge(line, amount, Double::sum);
    }

    void count(Units what, long number) {
        units.merge(what, number, Long::sum);
    }

    double of(Line line) {
        return money.getOrDefault(line, 0.0);
    }

    long of(Units what) {
        return units.getOrDefault(what, 0L);
    }

    /** Return all that came in less all that went out, which stands below 0. */
    double margin() {
        return money.values().stream().mapToDouble(Double::doubleValue).sum();
    }
}
