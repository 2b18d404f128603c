package ortet.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Snapshot;
import ortet.plant.Place;
import ortet.plant.UnitNumber;
import ortet.yield.Outcomes.Cohort;

/**
 * Tells into what young trees were mostly potted first, and where they stood then: of at most {@value #LOOKED_AT} tags that
 * took, the latest set first.
 */
final class PlanPots {
    private static final int LOOKED_AT = 20;

    private final BookView view;
    private final Snapshot snapshot;
    private final Map<Integer, Optional<Pot>> known = new HashMap<>();

    /**
     * The first container, and where it stood.
     *
     * @param container empty where nobody wrote one
     * @param place empty where nobody wrote one
     */
    record Pot(Optional<String> container, Optional<Place> place) {
        static final Pot NOT_KNOWN = new Pot(Optional.empty(), Optional.empty());
    }

    PlanPots(BookView view, Snapshot snapshot) {
        this.view = view;
        this.snapshot = snapshot;
    }

    /** Return the container and the place that most of some cohorts had first. */
    Pot of(List<Cohort> cohorts) {
        List<Pot> pots = cohorts.stream()
                .filter(cohort -> cohort.tally().taken() > 0)
                .sorted(Comparator.comparing(Cohort::set)
                        .thenComparingInt(Cohort::unit)
                        .reversed())
                .limit(LOOKED_AT)
                .map(cohort -> cohort.method() == Method.LAYER || cohort.method() == Method.GRAFT
                        ? cohort.unit()
                        : drawn(cohort.unit()))
                .map(unit -> known.computeIfAbsent(unit, this::first))
                .flatMap(Optional::stream)
                .toList();
        return new Pot(
                most(pots.stream().map(Pot::container).toList()),
                most(pots.stream().map(Pot::place).toList()));
    }

    /** Return the first plant drawn from a batch, or the batch where none was. */
    private int drawn(int batch) {
        for (int at = 0; at < snapshot.countDown(batch); at++) {
            int link = snapshot.down(batch, at);
            if (snapshot.act(link) == Act.DRAWN_FROM) {
                return snapshot.child(link);
            }
        }
        return batch;
    }

    private Optional<Pot> first(int unit) {
        Optional<UnitFacts> facts = view.facts(new UnitNumber(unit));
        Optional<UnitFacts.Potting> potting = facts.flatMap(one -> one.pottings().stream()
                .filter(potted -> potted.container().isPresent())
                .findFirst());
        return potting.map(first -> new Pot(
                first.container(),
                facts.orElseThrow().stays().stream()
                        .filter(stay -> !stay.day().first().isBefore(first.day().first()))
                        .findFirst()
                        .or(() -> facts.orElseThrow().stays().stream().reduce((before, after) -> after))
                        .map(UnitFacts.Stay::place)));
    }

    private static <T extends Comparable<? super T>> Optional<T> most(List<Optional<T>> words) {
        Map<T, Integer> counts = new TreeMap<>();
        new ArrayList<>(words)
                .stream()
                        .filter(Objects::nonNull)
                        .flatMap(Optional::stream)
                        .forEach(word -> counts.merge(word, 1, Integer::sum));
        return counts.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
    }
}
