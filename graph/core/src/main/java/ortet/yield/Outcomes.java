package ortet.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * What became of everything that was set, struck, worked and sown, for those who plan: cohort by cohort, and plant by plant
 * once they had taken (docs/methods/yield.md has the definitions).
 */
public final class Outcomes {
    private final List<Cohort> cohorts;
    private final List<Plants> plants;
    private final List<String> sizes;

    /**
     * Units that were set at one go under one tag.
     *
     * @param unit the unit that they stand under
     * @param method how they are raised
     * @param cultivar the name, as its place in {@link Snapshot#cultivars()}; negative where it is not known
     * @param mother who gave the wood; 0 or less where nobody knows, or it is one of several
     * @param set the first day on which they may have been set
     * @param isExact whether that day is known to the day
     * @param stemHundredths the stem of the branch in hundredths of a millimetre, 0 where nobody measured it
     * @param treatment how they were set, as its place in the treatments of the snapshot; negative where nobody said
     * @param tally how they stand
     */
    public record Cohort(
            int unit,
            Method method,
            int cultivar,
            int mother,
            LocalDate set,
            boolean isExact,
            int stemHundredths,
            int treatment,
            Tally tally) {
        /** Return the season: the calendar year in which they were set. */
        public int season() {
            return set.getYear();
        }
    }

    /** How plants that have taken stand as to establishing. */
    public enum Standing {
        /** Seen alive when that was due, or later. */
        ESTABLISHED,
        /** Lost, or culled for quality, before that. */
        NOT_ESTABLISHED,
        /** Nobody knows yet, or will. */
        NOT_KNOWN
    }

    /**
     * Plants of a cohort that have taken and fared alike.
     *
     * @param cohort whose units they were
     * @param count how many; below 0 where it takes back what was counted before (a sale that came back)
     * @param standing as to establishing
     * @param daysToFit how many days after setting they were known to be fit for sale; absent where they never were
     * @param isLeft whether they left for another reason than loss without ever being fit for sale as asked, so that nobody
     *     will know
     * @param isThere whether they grow in the nursery still
     */
    public record Plants(
            Cohort cohort,
            int count,
            Standing standing,
            Optional<Integer> daysToFit,
            boolean isLeft,
            boolean isThere) {}

    private Outcomes(List<Cohort> cohorts, List<Plants> plants, List<String> sizes) {
        this.cohorts = List.copyOf(cohorts);
        this.plants = List.copyOf(plants);
        this.sizes = List.copyOf(sizes);
    }

    /** Return the parts of a snapshot that this needs. */
    public static Set<Part> parts() {
        return EnumSet.copyOf(Fates.PARTS);
    }

    /**
     * Follow everything that was set to the day of a snapshot with the parts needed.
     *
     * @param size the size class in which plants count as fit for sale, upper and lower case alike; any when absent
     * @throws Refused when nothing was ever graded in that size class; the nearest are named
     */
    public static Outcomes of(Snapshot snapshot, Periods periods, Establishment establishment, Optional<String> size) {
        Samples samples = Samples.of(snapshot, periods);
        List<String> sizes = snapshot.lives().sizes();
        Fates fates = Fates.of(
                samples, establishment, size.map(name -> place(name, sizes)).orElse(Fates.ANY));
        Cohorts rows = samples.cohorts();
        List<Optional<Cohort>> byRow = new ArrayList<>(rows.size());
        for (int row = 0; row < rows.size(); row++) {
            byRow.add(
                    samples.isThere(row) && samples.isCounted(row) && samples.set(row) > 0
                            ? Optional.of(cohort(row, samples))
                            : Optional.empty());
        }
        List<Plants> plants = new ArrayList<>();
        for (int event = 0; event < fates.events(); event++) {
            int row = fates.eventRow(event);
            Optional<Cohort> cohort = byRow.get(row);
            if (cohort.isPresent() && !fates.isBlurred(fates.account(row))) {
                plants.add(plants(event, cohort.get(), fates));
            }
        }
        return new Outcomes(byRow.stream().flatMap(Optional::stream).toList(), plants, sizes);
    }

    private static int place(String name, List<String> sizes) {
        return IntStream.range(0, sizes.size())
                .filter(at -> sizes.get(at).equalsIgnoreCase(name.strip()))
                .findFirst()
                .orElseThrow(() -> new Refused(Fault.of(
                                "unknown-size",
                                sizes.isEmpty()
                                        ? "nothing was ever graded, so nothing is known of the size class \"" + name
                                                + "\""
                                        : "nothing was ever graded in the size class \"" + name + "\"; there are "
                                                + String.join(", ", sizes))
                        .nearest(Nearest.of(name.toLowerCase(Locale.ROOT), sizes))));
    }

    private static Cohort cohort(int row, Samples samples) {
        Cohorts rows = samples.cohorts();
        Samples.Sums sums = new Samples.Sums();
        samples.addTo(sums, row);
        int unit = rows.unit(row);
        return new Cohort(
                unit,
                rows.method(row),
                samples.cultivar(row),
                samples.mother(row),
                LocalDate.ofEpochDay(rows.firstDay(row)),
                rows.isExact(row),
                stem(unit, samples),
                samples.snapshot().lives().treatment(unit),
                sums.tally());
    }

    private static int stem(int unit, Samples samples) {
        Lives lives = samples.snapshot().lives();
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            if (lives.turn(at) == Turn.SET_ON) {
                return lives.value(at);
            }
        }
        return 0;
    }

    private static Plants plants(int event, Cohort cohort, Fates fates) {
        Standing standing = switch (fates.eventHow(event)) {
            case YES -> Standing.ESTABLISHED;
            case NO -> Standing.NOT_ESTABLISHED;
            case CENSORED, TOO_YOUNG, UNSEEN -> Standing.NOT_KNOWN;
        };
        int fit = fates.eventFitDay(event);
        Fates.Saleable sale = fates.eventSale(event);
        boolean there = fates.eventIsThere(event);
        Optional<Integer> days = fit == Fates.NONE
                ? Optional.empty()
                : Optional.of(Math.max(0, fit - Math.toIntExact(cohort.set().toEpochDay())));
        boolean left = days.isEmpty() && !there && (sale == Fates.Saleable.CENSORED || sale == Fates.Saleable.YES);
        return new Plants(cohort, fates.eventCount(event), standing, days, left, there);
    }

    /** Return every cohort of which somebody knows how many were set. */
    public List<Cohort> cohorts() {
        return cohorts;
    }

    /** Return all plants that took and of which it is known which cohort they come from. */
    public List<Plants> plants() {
        return plants;
    }

    /** Return every size class in which something was graded. */
    public List<String> sizes() {
        return sizes;
    }
}
