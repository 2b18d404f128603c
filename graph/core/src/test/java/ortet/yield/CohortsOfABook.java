package ortet.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.book.ForwardingView;
import ortet.book.Link;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Cohort;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Outcome;
import ortet.entry.Words;
import ortet.lineage.Lineage;
import ortet.plant.CultivarName;
import ortet.plant.UnitNumber;

/** A book in memory that answers the question {@code cohorts} from the facts that the judge worked out, slowly. */
final class CohortsOfABook extends ForwardingView {
    private final List<UnitFacts> all;

    CohortsOfABook(BookView book, List<UnitFacts> all) {
        super(book);
        this.all = all;
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        LocalDate asOf =
                LocalDate.parse((String) parameters.values().get("as_of").orElseThrow());
        List<List<Object>> rows = new ArrayList<>();
        all.stream()
                .sorted(Comparator.comparing(UnitFacts::unit))
                .filter(unit -> !unit.begun().day().first().isAfter(asOf))
                .forEach(unit -> unit.cohort().ifPresent(cohort -> rows.add(row(unit, cohort, asOf))));
        return new Rows(CohortsView.COLUMNS, rows);
    }

    private List<Object> row(UnitFacts unit, Cohort cohort, LocalDate asOf) {
        Set<String> mothers = new TreeSet<>();
        mothers(unit.unit(), asOf, mothers);
        return Arrays.asList(
                (long) unit.unit().value(),
                tag(unit, asOf),
                Words.of(cohort.method()),
                cohort.day().first().toString(),
                Words.of(cohort.day().precision()),
                cohort.by().map(person -> (long) person.value()).orElse(null),
                cohort.count().map(Integer::longValue).orElse(null),
                Lineage.trace(this, unit.tag(), asOf)
                        .tree()
                        .named()
                        .cultivar()
                        .map(CultivarName::toString)
                        .orElse(null),
                mothers.isEmpty() ? null : String.join(" + ", mothers),
                sum(unit, Fate.TAKEN, asOf),
                sum(unit, Fate.FAILED, asOf),
                sum(unit, Fate.WITHDRAWN, asOf),
                sum(unit, Fate.NOT_SEEN, asOf),
                sum(unit, Fate.MOVED_ON, asOf),
                sum(unit, Fate.FOUND_MORE, asOf),
                last(unit, asOf, fate -> fate == Fate.STILL_ON),
                last(unit, asOf, fate -> fate != Fate.NOT_SEEN));
    }

    private static String tag(UnitFacts unit, LocalDate asOf) {
        return unit.tags().stream()
                .filter(use -> !use.day().first().isAfter(asOf))
                .reduce((before, after) -> after)
                .orElseThrow()
                .tag()
                .text();
    }

    private static Stream<Outcome> outcomes(UnitFacts unit, LocalDate asOf) {
        return unit.outcomes().stream().filter(outcome -> !outcome.day().first().isAfter(asOf));
    }

    private static long sum(UnitFacts unit, Fate fate, LocalDate asOf) {
        return outcomes(unit, asOf)
                .filter(outcome -> outcome.fate() == fate)
                .mapToLong(Outcome::count)
                .sum();
    }

    private static String last(UnitFacts unit, LocalDate asOf, Predicate<Fate> fates) {
        return outcomes(unit, asOf)
                .filter(outcome -> fates.test(outcome.fate()))
                .map(outcome -> outcome.day().first())
                .max(Comparator.naturalOrder())
                .map(LocalDate::toString)
                .orElse(null);
    }

    private void mothers(UnitNumber unit, LocalDate asOf, Set<String> found) {
        for (Link link : facts(unit).orElseThrow().links()) {
            switch (link.act()) {
                case LAYERED_FROM, STRUCK_FROM, LAYERED_BELOW, STRUCK_BELOW, SCION_OF, SEED_OF -> {
                    // a mother whose day is known better than her child's may seem to be younger: then she is not told
                    UnitFacts hers = facts(link.mother()).orElseThrow();
                    if (!hers.begun().day().first().isAfter(asOf)) {
                        found.add(tag(hers, asOf));
                    }
                }
                case SPLIT_FROM, MERGED_FROM -> mothers(link.mother(), asOf, found);
                default -> {}
            }
        }
    }
}
