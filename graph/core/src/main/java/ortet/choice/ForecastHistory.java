package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import ortet.book.Act;
import ortet.book.UnitFacts.Method;
import ortet.nursery.ClonalOrder;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;
import ortet.plant.CultivarName;

/**
 * Reads out of a snapshot how every unit that was raised here went through its stages.
 *
 * <p>Each plant is told under the tag under which it ended, or stands: a plant drawn from a tray has been growing since its
 * tray was last found to have taken before it was drawn. O(V + E) time.
 */
final class ForecastHistory {
    private static final int NONE = Integer.MIN_VALUE;
    private static final int NOBODY = -1;
    private static final int YEARS_OF_SALES = 3;
    private static final double DAYS = 365.25 / 12;

    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Names names;
    private final int asOf;
    private final int[] method;
    private final int[] since;
    private final int[] cluster;
    private final int[] start;
    private final int[] graded;
    private final int[] size;
    private final boolean[] settled;
    private final Map<List<Integer>, Integer> kindPlaces = new HashMap<>();
    private final List<ForecastKind> kinds = new ArrayList<>();
    private final Map<String, Integer> taxa = new HashMap<>();
    private final Map<List<Integer>, Integer> clusters = new HashMap<>();
    private final List<ForecastEpisode> episodes = new ArrayList<>();
    private final Map<List<Integer>, Integer> stock = new TreeMap<>(ForecastHistory::compare);
    private final double[] sold = new double[ForecastLeaving.MONTHS];
    private final TreeMap<Integer, Integer> stood = new TreeMap<>();
    private double lost;
    private int boughtIn;

    private ForecastHistory(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.cohorts = snapshot.cohorts();
        this.lives = snapshot.lives();
        this.names = Names.of(snapshot);
        this.asOf = Math.toIntExact(snapshot.asOf().toEpochDay());
        int units = snapshot.lastUnit() + 1;
        this.method = new int[units];
        this.since = new int[units];
        this.cluster = new int[units];
        this.start = new int[units];
        this.graded = new int[units];
        this.size = new int[units];
        this.settled = new boolean[units];
        Arrays.fill(method, NOBODY);
        Arrays.fill(start, NONE);
        Arrays.fill(graded, NONE);
        Arrays.fill(size, lives.sizes().size());
    }

    /** Read a snapshot. */
    static ForecastPast of(Snapshot snapshot) {
        ForecastHistory history = new ForecastHistory(snapshot);
        ClonalOrder.settle(snapshot, unit -> history.settled[unit], history::settle);
        return history.past();
    }

    private static int compare(List<Integer> one, List<Integer> other) {
        int first = Integer.compare(one.get(0), other.get(0));
        return first != 0 ? first : Integer.compare(one.get(1), other.get(1));
    }

    private ForecastPast past() {
        List<String> cultivars = new ArrayList<>(
                snapshot.cultivars().stream().map(CultivarName::toString).toList());
        cultivars.add("");
        double months = 0;
        double[] soldMonths = new double[ForecastLeaving.MONTHS];
        int from = Math.toIntExact(
                LocalDate.ofEpochDay(asOf).minusYears(YEARS_OF_SALES).toEpochDay());
        int standing = 0;
        int day = stood.isEmpty() ? asOf : stood.firstKey();
        for (Map.Entry<Integer, Integer> change : stood.entrySet()) {
            months += standing * (double) (change.getKey() - day) / DAYS;
            share(Math.max(day, from), change.getKey(), standing, soldMonths);
            day = change.getKey();
            standing += change.getValue();
        }
        return new ForecastPast(
                asOf,
                cultivars,
                kinds,
                lives.sizes(),
                episodes,
                stock.entrySet().stream()
                        .map(one -> new ForecastStock(
                                one.getKey().get(0), one.getKey().get(1), one.getValue()))
                        .toList(),
                new ForecastLeaving(lost, months, sold, soldMonths),
                boughtIn);
    }

    /** Add the months that so many trees stood between two days to the months of the year. */
    private static void share(int from, int to, int standing, double[] months) {
        int day = from;
        while (day < to && standing > 0) {
            LocalDate date = LocalDate.ofEpochDay(day);
            int next = Math.toIntExact(
                    Math.min(to, date.withDayOfMonth(1).plusMonths(1).toEpochDay()));
            months[date.getMonthValue() - 1] += standing * (next - day) / DAYS;
            day = next;
        }
    }

    // ---- where a unit comes from ----

    private void settle(int unit) {
        settled[unit] = true;
        if (!snapshot.isThere(unit)) {
            return;
        }
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            switch (snapshot.act(link)) {
                case DRAWN_FROM, SPLIT_FROM, MERGED_FROM -> inherit(unit, snapshot.mother(link));
                default -> {}
            }
        }
        int row = cohorts.row(unit);
        boolean own = row >= 0 && cohorts.count(row) != Cohorts.NONE;
        if (own) {
            method[unit] = cohorts.method(row).ordinal();
            since[unit] = cohorts.firstDay(row);
            cluster[unit] = clusters.computeIfAbsent(cluster(row), key -> clusters.size());
            takes(unit, row);
        }
        live(unit);
    }

    private void inherit(int unit, int mother) {
        if (method[mother] < 0) {
            graded[unit] = graded[mother] != NONE && graded[mother] <= snapshot.begunDay(unit) ? graded[mother] : NONE;
            size[unit] = size[mother];
            return;
        }
        method[unit] = method[mother];
        since[unit] = since[mother];
        cluster[unit] = cluster[mother];
        int day = snapshot.begunDay(unit);
        int taken = start[mother] != NONE && start[mother] <= day ? start[mother] : NONE;
        for (int at = lives.first(mother); at < lives.end(mother); at++) {
            if (lives.turn(at) == Turn.TAKEN && lives.day(at) <= day) {
                taken = Math.max(taken, lives.day(at));
            }
        }
        start[unit] = Math.max(start[unit], taken);
        if (graded[mother] != NONE && graded[mother] <= day) {
            graded[unit] = graded[mother];
            size[unit] = size[mother];
        }
    }

    /** Return what tells a cluster: the tray; else the mother, the year, how, and of which cultivar. */
    private List<Integer> cluster(int row) {
        int year = LocalDate.ofEpochDay(cohorts.firstDay(row)).getYear();
        if (cohorts.method(row) != Method.LAYER && (cohorts.count(row) > 1 || cohorts.method(row) != Method.GRAFT)) {
            return List.of(cohorts.root(row));
        }
        int unit = cohorts.unit(row);
        int mother = NOBODY;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            Act act = snapshot.act(link);
            if (act.isLayering() || act == Act.SCION_OF) {
                mother = snapshot.mother(link);
                break;
            }
        }
        return List.of(mother, year, cohorts.method(row).ordinal(), names.name(unit));
    }

    private int kind(int unit) {
        int name = names.name(unit);
        int cultivar = name < 0 ? snapshot.cultivars().size() : name;
        return kindPlaces.computeIfAbsent(List.of(cultivar, method[unit]), key -> {
            String taxon = name < 0 ? "" : snapshot.cultivars().get(name).taxon();
            kinds.add(new ForecastKind(cultivar, taxa.computeIfAbsent(taxon, one -> taxa.size()), method[unit]));
            return kinds.size() - 1;
        });
    }

    private void add(ForecastStage stage, int unit, int from, int to, ForecastEnd how, int sizeClass, int count) {
        if (count > 0) {
            episodes.add(new ForecastEpisode(
                    stage, kind(unit), cluster[unit], since[unit], from, Math.max(from, to), how, sizeClass, count));
        }
    }

    // ---- until it has taken ----

    private void takes(int unit, int row) {
        int set = since[unit];
        int none = lives.sizes().size();
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            Optional<ForecastEnd> how = switch (lives.turn(at)) {
                case TAKEN -> Optional.of(ForecastEnd.GOOD);
                case FAILED -> Optional.of(ForecastEnd.BAD);
                case WITHDRAWN, NOT_SEEN -> Optional.of(ForecastEnd.OUT);
                default -> Optional.empty();
            };
            int turn = at;
            how.ifPresent(one -> add(ForecastStage.TAKING, unit, set, lives.day(turn), one, none, lives.value(turn)));
        }
        int pending = Math.max(0, cohorts.count(row))
                + cohorts.foundMore(row)
                - cohorts.movedOn(row)
                - cohorts.taken(row)
                - cohorts.failed(row)
                - cohorts.withdrawn(row)
                - cohorts.notSeen(row);
        add(ForecastStage.TAKING, unit, set, asOf, ForecastEnd.STILL, none, pending);
    }

    // ---- until it is saleable, and after ----

    private void live(int unit) {
        boolean raised = method[unit] >= 0;
        int[] counts = counts(unit);
        int none = lives.sizes().size();
        boolean kept = false;
        if (graded[unit] != NONE) {
            stands(Math.max(graded[unit], snapshot.begunDay(unit)), counts[0]);
        }
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            int day = lives.day(at);
            int value = lives.value(at);
            int there = counts[at - lives.first(unit)];
            boolean saleable = graded[unit] != NONE;
            switch (lives.turn(at)) {
                case TAKEN -> {
                    start[unit] = start[unit] == NONE ? day : start[unit];
                    if (saleable) {
                        stands(day, value);
                    }
                }
                case POTTED -> {
                    // a plant that was drawn from a tray of which nobody wrote that it had taken
                    if (start[unit] == NONE && raised && there > 0) {
                        start[unit] = day;
                    }
                }
                case GRADED -> {
                    if (!saleable) {
                        ends(unit, day, ForecastEnd.GOOD, value, kept ? 0 : there);
                        graded[unit] = day;
                        stands(day, there);
                    }
                    size[unit] = value;
                }
                case SOLD -> {
                    if (saleable) {
                        stands(day, -value);
                        if (day > asOf - YEARS_OF_SALES * 12 * DAYS) {
                            sold[LocalDate.ofEpochDay(day).getMonthValue() - 1] += value;
                        }
                    } else {
                        ends(unit, day, ForecastEnd.GOOD, none, kept ? 0 : value);
                    }
                }
                case RETURNED -> {
                    if (saleable) {
                        stands(day, value);
                    }
                }
                case LOST, CULLED -> {
                    if (saleable) {
                        stands(day, -value);
                        lost += value;
                    } else {
                        ends(unit, day, ForecastEnd.BAD, none, kept ? 0 : value);
                    }
                }
                case SURPLUS, USED_UP, WORKED -> {
                    if (saleable) {
                        stands(day, -value);
                    } else {
                        ends(unit, day, ForecastEnd.OUT, none, kept ? 0 : value);
                    }
                }
                case WENT_ON -> {
                    if (saleable) {
                        stands(day, -value);
                    }
                }
                case STOCK -> {
                    if (!saleable && !kept) {
                        ends(unit, day, ForecastEnd.OUT, none, there);
                    }
                    kept = true;
                }
                case NO_STOCK -> kept = false;
                default -> {}
            }
        }
        int growing = snapshot.growing(unit);
        if (graded[unit] != NONE) {
            stands(asOf, -growing);
        }
        if (growing <= 0 || kept) {
            return;
        }
        if (graded[unit] != NONE) {
            int name = names.name(unit);
            stock.merge(List.of(name < 0 ? snapshot.cultivars().size() : name, size[unit]), growing, Integer::sum);
        } else if (raised) {
            if (start[unit] == NONE) {
                start[unit] = snapshot.begunDay(unit);
            }
            ends(unit, asOf, ForecastEnd.STILL, none, growing);
        } else {
            boughtIn += growing;
        }
    }

    private void stands(int day, int change) {
        stood.merge(day, change, Integer::sum);
    }

    private void ends(int unit, int day, ForecastEnd how, int sizeClass, int count) {
        if (method[unit] >= 0 && count > 0) {
            if (start[unit] == NONE) {
                start[unit] = snapshot.begunDay(unit);
            }
            add(ForecastStage.GRADING, unit, start[unit], day, how, sizeClass, count);
        }
    }

    /** Return how many plants grew under a tag before each of its turns, told backwards from those that grow at last. */
    private int[] counts(int unit) {
        int first = lives.first(unit);
        int turns = lives.end(unit) - first;
        int[] counts = new int[turns + 1];
        int there = Math.max(0, snapshot.growing(unit));
        counts[turns] = there;
        for (int at = turns - 1; at >= 0; at--) {
            int value = lives.value(first + at);
            switch (lives.turn(first + at)) {
                case SOLD, LOST, CULLED, SURPLUS, USED_UP, WORKED -> there += value;
                case WENT_ON -> there += Math.max(0, value - undecided(unit, lives.day(first + at)));
                case RETURNED, UNWORKED, TAKEN -> there = Math.max(0, there - value);
                default -> {}
            }
            counts[at] = there;
        }
        return counts;
    }

    /** Return how many undecided units went on under other tags on a day. */
    private int undecided(int unit, int day) {
        int units = 0;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            if (lives.turn(at) == Turn.PASSED_ON && lives.day(at) == day) {
                units += lives.value(at);
            }
        }
        return units;
    }
}
