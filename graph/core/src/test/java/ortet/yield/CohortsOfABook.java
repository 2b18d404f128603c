package ortet.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.ForwardingView;
import ortet.book.Link;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Cohort;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Naming;
import ortet.book.UnitFacts.Outcome;
import ortet.entry.Words;
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
        mothers(unit.unit(), mothers);
        return Arrays.asList(
                (long) unit.unit().value(),
                unit.tag().text(),
                Words.of(cohort.method()),
                cohort.day().first().toString(),
                Words.of(cohort.day().precision()),
                cohort.by().map(person -> (long) person.value()).orElse(null),
                cohort.count().map(Integer::longValue).orElse(null),
                cultivar(unit.unit()).orElse(null),
                mothers.isEmpty() ? null : String.join(" + ", mothers),
                sum(unit, Fate.TAKEN, asOf),
                sum(unit, Fate.FAILED, asOf),
                sum(unit, Fate.WITHDRAWN, asOf),
                sum(unit, Fate.NOT_SEEN, asOf),
                sum(unit, Fate.MOVED_ON, asOf),
                sum(unit, Fate.FOUND_MORE, asOf),
                unit.outcomes().stream()
                        .filter(outcome -> outcome.fate() == Fate.STILL_ON)
                        .map(outcome -> outcome.day().first())
                        .filter(day -> !day.isAfter(asOf))
                        .max(Comparator.naturalOrder())
                        .map(LocalDate::toString)
                        .orElse(null),
                null);
    }

    private static long sum(UnitFacts unit, Fate fate, LocalDate asOf) {
        return unit.outcomes().stream()
                .filter(outcome -> outcome.fate() == fate)
                .filter(outcome -> !outcome.day().first().isAfter(asOf))
                .mapToLong(Outcome::count)
                .sum();
    }

    private void mothers(UnitNumber unit, Set<String> found) {
        for (Link link : facts(unit).orElseThrow().links()) {
            switch (link.act()) {
                case LAYERED_FROM, STRUCK_FROM, SCION_OF, SEED_OF ->
                    found.add(facts(link.mother()).orElseThrow().tag().text());
                case SPLIT_FROM, MERGED_FROM -> mothers(link.mother(), found);
                default -> {}
            }
        }
    }

    private Optional<String> cultivar(UnitNumber unit) {
        UnitFacts facts = facts(unit).orElseThrow();
        Optional<Naming> own = facts.names().stream().reduce((before, after) -> after);
        return own.map(naming -> naming.cultivar().toString())
                .or(() -> facts.links().stream()
                        .filter(link -> link.act().keepsTheClone())
                        .findFirst()
                        .flatMap(link -> cultivar(link.mother())));
    }
}
