package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import ortet.plant.Place;

/**
 * The hours and the room that plans share, by the seasons of each calendar year: what one uses the next does not have. Not for
 * use by several threads.
 */
public final class PlanMeans {
    private static final int MONTHS_OF_A_SEASON = 3;
    private static final int MONTHS = 12;
    private static final double ROUNDING = 1e-9;

    private final Amounts hours;
    private final Map<String, Amounts> roomM2;
    private final Function<Optional<Place>, String> limited;
    private final List<String> seasons;
    private final int firstYear;
    private final double plenty;
    private final Map<Cell, Double> used = new TreeMap<>();

    /**
     * Hours, or room in a place, in a season of a calendar year.
     *
     * @param place the place of room; empty for hours
     * @param year the calendar year
     * @param season counted from 0, winter
     */
    public record Cell(String place, int year, int season) implements Comparable<Cell> {
        public Cell {
            Objects.requireNonNull(place);
        }

        @Override
        public int compareTo(Cell other) {
            int byYear = Integer.compare(year, other.year);
            int bySeason = byYear != 0 ? byYear : Integer.compare(season, other.season);
            return bySeason != 0 ? bySeason : place.compareTo(other.place);
        }
    }

    /**
     * How much of something limited the plans use.
     *
     * @param what it in words: {@code hours of spring in 2027}
     * @param used how much
     * @param available of how much
     */
    public record Use(String what, double used, double available) {}

    /**
     * State the means.
     *
     * @param hours by year from the first on and by season, or one for the year
     * @param roomM2 by place, likewise; a place that is not named has no limit
     * @param limited returns the limited place that a place is, or is within
     * @param seasons the names of the seasons; one, of no name, where means are told by the year
     * @param plenty from what amount on there is no limit
     */
    public PlanMeans(
            Amounts hours,
            Map<String, Amounts> roomM2,
            Function<Optional<Place>, String> limited,
            List<String> seasons,
            int firstYear,
            double plenty) {
        this.hours = hours;
        this.roomM2 = Map.copyOf(roomM2);
        this.limited = limited;
        this.seasons = List.copyOf(seasons);
        this.firstYear = firstYear;
        this.plenty = plenty;
    }

    /** What one unit needs, gathered cell by cell. */
    final class Needs {
        private final Map<Cell, Double> cells = new TreeMap<>();

        /** Add hours of work on a day. */
        void hours(LocalDate day, double amount) {
            cells.merge(cell("", day), amount, Double::sum);
        }

        /** Add room in a place from one day to another: all of it in every season that is touched. */
        void room(Optional<Place> place, LocalDate from, LocalDate to, double m2) {
            String name = limited.apply(place);
            if (!roomM2.containsKey(name) || m2 <= 0) {
                return;
            }
            for (LocalDate day = from; !day.isAfter(to); day = day.plusMonths(1)) {
                cells.putIfAbsent(cell(name, day), m2);
            }
        }

        /** Return for how many units there are means left, at most so many. */
        int enoughFor(int most) {
            double least = most;
            for (Map.Entry<Cell, Double> one : cells.entrySet()) {
                if (one.getValue() > 0 && available(one.getKey()) < plenty) {
                    least = Math.min(least, left(one.getKey()) / one.getValue());
                }
            }
            return (int) Math.floor(Math.max(0, least) + ROUNDING);
        }

        /** Return what is scarcest for one unit more; empty where nothing is limited. */
        Optional<String> scarcest() {
            Optional<Cell> scarcest = Optional.empty();
            double least = Double.POSITIVE_INFINITY;
            for (Map.Entry<Cell, Double> one : cells.entrySet()) {
                double enough = left(one.getKey()) / one.getValue();
                if (one.getValue() > 0 && available(one.getKey()) < plenty && enough < least) {
                    least = enough;
                    scarcest = Optional.of(one.getKey());
                }
            }
            return scarcest.map(PlanMeans.this::told);
        }

        /** Take what so many units need. */
        void use(int units) {
            cells.forEach((cell, amount) -> used.merge(cell, units * amount, Double::sum));
        }
    }

    private Cell cell(String place, LocalDate day) {
        int season = seasons.size() > 1 ? day.getMonthValue() % MONTHS / MONTHS_OF_A_SEASON : 0;
        return new Cell(place, day.getYear(), season);
    }

    private double available(Cell cell) {
        Amounts amounts = cell.place().isEmpty() ? hours : roomM2.get(cell.place());
        return amounts.at(Math.max(0, cell.year() - firstYear), cell.season());
    }

    private double left(Cell cell) {
        return available(cell) - used.getOrDefault(cell, 0.0);
    }

    private String told(Cell cell) {
        String season = seasons.size() > 1 ? " of " + seasons.get(cell.season()) : "";
        return (cell.place().isEmpty()
                        ? "hours" + season
                        : "m² of " + cell.place() + (season.isEmpty() ? "" : " in" + season.substring(" of".length())))
                + " in " + cell.year();
    }

    /** Return how much of everything limited is used so far, in the order of time. */
    public List<Use> uses() {
        List<Use> uses = new ArrayList<>();
        used.forEach((cell, amount) -> {
            if (available(cell) < plenty && amount > 0) {
                uses.add(new Use(told(cell), amount, available(cell)));
            }
        });
        return uses;
    }
}
