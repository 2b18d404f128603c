package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Listings;
import ortet.book.UnitFacts.Method;
import ortet.book.UnitFacts.Nature;
import ortet.choice.PlanMother.LeftOut;
import ortet.choice.PlanMother.Position;
import ortet.choice.PlanMother.Why;
import ortet.entry.Band;
import ortet.entry.Measured;
import ortet.entry.Mention.Role;
import ortet.figures.GroupRate;
import ortet.lineage.Marks;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.nursery.Turn;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;
import ortet.yield.MotherRow;
import ortet.yield.Mothers;
import ortet.yield.MothersQuestion;
import ortet.yield.Outcomes;
import ortet.yield.Outcomes.Cohort;
import ortet.yield.Periods;
import ortet.yield.TakeFilter;

/**
 * The wood that the nursery has: its mothers, and their positions that are free. What a plan uses is taken out, so that the
 * next one does not have it. Not for use by several threads.
 */
final class PlanWood {
    private static final double HUNDREDTHS = 100;

    private final BookView view;
    private final Snapshot snapshot;
    private final Outcomes outcomes;
    private final LocalDate asOf;
    private final Listings listings;
    private final Names names;
    private final Set<Integer> gave = new HashSet<>();
    private final Map<Integer, Optional<Stand>> stands = new HashMap<>();
    private final Map<Integer, List<Event>> histories = new HashMap<>();
    private final Map<Method, Map<Integer, GroupRate>> rates = new EnumMap<>(Method.class);

    /** The positions of a mother. */
    private static final class Stand {
        private final When measured;
        private final List<Band> bands = new ArrayList<>();
        private final List<Integer> free = new ArrayList<>();

        Stand(When measured, List<Band> counted) {
            this.measured = measured;
            counted.stream()
                    .sorted(Comparator.comparing(Band::highMm)
                            .thenComparing(Band::lowMm)
                            .reversed())
                    .forEach(band -> {
                        bands.add(band);
                        free.add(band.count());
                    });
        }

        /** Take out the position of a layer: of its stem, or the thickest where that has none or is not known. */
        void use(int stemHundredths) {
            int chosen = -1;
            for (int at = 0; at < bands.size(); at++) {
                double stem = stemHundredths / HUNDREDTHS;
                boolean holds = stemHundredths > 0
                        && bands.get(at).lowMm().value().doubleValue() <= stem
                        && stem <= bands.get(at).highMm().value().doubleValue();
                if (free.get(at) > 0 && (holds || chosen < 0)) {
                    chosen = at;
                    if (holds) {
                        break;
                    }
                }
            }
            if (chosen >= 0) {
                free.set(chosen, free.get(chosen) - 1);
            }
        }
    }

    PlanWood(BookView view, Snapshot snapshot, Outcomes outcomes) {
        this.view = view;
        this.snapshot = snapshot;
        this.outcomes = outcomes;
        this.asOf = snapshot.asOf();
        this.listings = Listings.of(view);
        this.names = Names.of(snapshot);
        outcomes.cohorts().forEach(cohort -> gave.add(cohort.mother()));
    }

    /** The mothers of a cultivar for a method, in the order of what is known of them, and those left out. */
    record Found(List<PlanMother> mothers, List<LeftOut> leftOut) {
        /** Return how many positions are free. */
        int free() {
            return mothers.stream().mapToInt(PlanMother::free).sum();
        }
    }

    /** Return the mothers of some cultivars for a method. */
    Found found(Set<CultivarName> cultivars, Method method) {
        List<Integer> units = new ArrayList<>();
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            if (snapshot.isThere(unit)
                    && snapshot.nature(unit) != Nature.SPORT
                    && snapshot.growing(unit) > 0
                    && names.name(unit) >= 0
                    && cultivars.contains(snapshot.cultivars().get(names.name(unit)))
                    && (gave.contains(unit) || isStock(unit))) {
                units.add(unit);
            }
        }
        Map<Integer, Tag> tags = TagsOfUnits.of(view, units, asOf);
        List<PlanMother> mothers = new ArrayList<>();
        List<LeftOut> leftOut = new ArrayList<>();
        for (int number : units) {
            UnitNumber unit = new UnitNumber(number);
            Tag tag = tags.get(number);
            Optional<Why> why = why(unit);
            if (why.isPresent()) {
                leftOut.add(new LeftOut(tag, why.get()));
            } else if (method == Method.LAYER && stand(unit).isEmpty()) {
                leftOut.add(new LeftOut(tag, Why.NOT_COUNTED));
            } else {
                mothers.add(mother(unit, tag, method));
            }
        }
        mothers.sort(Comparator.comparingDouble((PlanMother mother) ->
                        mother.rate().map(rate -> -rate.interval().lower()).orElse(1.0))
                .thenComparing(PlanMother::tag));
        leftOut.sort(Comparator.comparing(LeftOut::why).thenComparing(LeftOut::tag));
        return new Found(mothers, leftOut);
    }

    private boolean isStock(int unit) {
        Lives lives = snapshot.lives();
        boolean stock = false;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            Turn turn = lives.turn(at);
            stock = turn == Turn.STOCK || stock && turn != Turn.NO_STOCK;
        }
        return stock;
    }

    private Optional<Why> why(UnitNumber unit) {
        Marks marks = Marks.of(history(unit), asOf);
        if (marks.held().isPresent()) {
            return Optional.of(Why.HELD);
        }
        if (listings.isProtected(snapshot.cultivars().get(names.name(unit.value())), asOf)) {
            return Optional.of(Why.PROTECTED);
        }
        return marks.reserved().isEmpty() ? Optional.empty() : Optional.of(Why.RESERVED);
    }

    private List<Event> history(UnitNumber unit) {
        return histories.computeIfAbsent(unit.value(), number -> History.of(view, unit, asOf));
    }

    private PlanMother mother(UnitNumber unit, Tag tag, Method method) {
        Map<Integer, Integer> bySeason = new TreeMap<>();
        for (Cohort cohort : outcomes.cohorts()) {
            if (cohort.method() == method && cohort.mother() == unit.value()) {
                bySeason.merge(cohort.season(), cohort.tally().set(), Integer::sum);
            }
        }
        int most = bySeason.values().stream().mapToInt(count -> count).max().orElse(0);
        Optional<Stand> stand = method == Method.LAYER ? stand(unit) : Optional.empty();
        List<Position> positions = new ArrayList<>();
        stand.ifPresent(known -> {
            for (int at = 0; at < known.bands.size(); at++) {
                Band band = known.bands.get(at);
                if (known.free.get(at) > 0) {
                    positions.add(new Position(band.lowMm(), band.highMm(), known.free.get(at), 0));
                }
            }
        });
        return new PlanMother(
                unit,
                tag,
                Optional.ofNullable(rates(method).get(unit.value())),
                stand.map(known -> known.measured),
                positions,
                most,
                0);
    }

    /** Return the positions of a mother that are free; absent where nobody has counted them. */
    private Optional<Stand> stand(UnitNumber unit) {
        return stands.computeIfAbsent(unit.value(), number -> read(unit));
    }

    private Optional<Stand> read(UnitNumber unit) {
        Optional<Stand> stand = Optional.empty();
        for (Event event : history(unit)) {
            if (event.entry() instanceof Measured measured
                    && !measured.positions().isEmpty()
                    && event.roles().contains(Role.SUBJECT)) {
                stand = Optional.of(new Stand(event.day(), measured.positions()));
            }
        }
        stand.ifPresent(known -> {
            LocalDate since = known.measured.first();
            outcomes.cohorts().stream()
                    .filter(cohort -> cohort.method() == Method.LAYER && cohort.mother() == unit.value())
                    .filter(cohort ->
                            !cohort.set().isBefore(since) || cohort.tally().pending() > 0)
                    .forEach(cohort -> {
                        for (int one = 0; one < cohort.tally().set(); one++) {
                            known.use(cohort.stemHundredths());
                        }
                    });
        });
        return stand;
    }

    /** Return what to expect of every mother by a method. */
    private Map<Integer, GroupRate> rates(Method method) {
        return rates.computeIfAbsent(method, one -> {
            MothersQuestion question = new MothersQuestion(
                    TakeFilter.ALL.method(one),
                    MothersQuestion.BEST,
                    1,
                    MothersQuestion.SEED,
                    asOf,
                    Periods.DEFAULTS,
                    PlanHistory.CONFIDENCE);
            Map<Integer, GroupRate> known = new HashMap<>();
            for (MotherRow row : Mothers.ask(view, snapshot, question).rows()) {
                row.pooled().ifPresent(rate -> known.put(row.unit().value(), rate));
            }
            return known;
        });
    }

    /** Take out the positions that a plan uses. */
    void use(List<PlanMother> mothers) {
        for (PlanMother mother : mothers) {
            stand(mother.unit()).ifPresent(stand -> {
                for (Position position : mother.positions()) {
                    for (int at = 0; at < stand.bands.size(); at++) {
                        Band band = stand.bands.get(at);
                        if (band.lowMm().equals(position.lowMm())
                                && band.highMm().equals(position.highMm())) {
                            stand.free.set(at, stand.free.get(at) - position.use());
                        }
                    }
                }
            });
        }
    }

    /**
     * Share out a number among mothers in their order: layers to the positions that are free, the thickest first; others up to
     * the most that was ever taken from each in a season, and what is left over to nobody.
     */
    static List<PlanMother> shared(List<PlanMother> mothers, int number, Method method) {
        List<PlanMother> shared = new ArrayList<>();
        int left = number;
        for (PlanMother mother : mothers) {
            List<Position> positions = new ArrayList<>();
            int use = 0;
            if (method == Method.LAYER) {
                for (Position position : mother.positions()) {
                    int here = Math.min(left, position.free());
                    positions.add(new Position(position.lowMm(), position.highMm(), position.free(), here));
                    use += here;
                    left -= here;
                }
            } else {
                use = Math.min(left, mother.most());
                left -= use;
            }
            shared.add(new PlanMother(
                    mother.unit(), mother.tag(), mother.rate(), mother.measured(), positions, mother.most(), use));
        }
        return shared;
    }
}
