package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.book.Link;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Outcome;
import ortet.entry.Words;
import ortet.plant.Person.Role;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** The question {@code cohorts}. */
class CohortsTests {
    private static final String DESHOJO = "Acer palmatum 'Deshojo'";

    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();
    private final Diary diary = new Diary(store);

    @AfterEach
    @AfterProperty
    void clear() {
        shelf.close();
    }

    private static Rows cohorts(SqliteBookStore store, String asOf) {
        return store.read(view -> view.ask(new QueryName("cohorts"), Parameters.NONE.with("as_of", asOf)));
    }

    /** Return the given columns of each cohort, by tag. */
    private Map<String, String> columns(String asOf, String... columns) {
        Map<String, String> found = new LinkedHashMap<>();
        for (Rows.Row row : cohorts(store, asOf)) {
            found.put(
                    row.text("tag").orElseThrow(),
                    Arrays.stream(columns)
                            .map(column -> row.text(column).orElse("-"))
                            .collect(Collectors.joining(" ")));
        }
        return found;
    }

    @Test
    void tellsEveryCohortWithWhatBecameOfIt() {
        diary.person(1, "Máire", Role.STAFF);
        diary.write(
                "2015-03-01 acquired K-1; cultivar=" + DESHOJO,
                "2018-05 layer-set J-1 J-2; mother=K-1; by=#1",
                "2018-08-30 severed J-1; roots=full",
                "2018-08-31 failed J-2; cause=dried",
                "2018-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2018-07-01 checked T-1; findings=callus:20",
                "2018-08-01 taken T-1; count=10",
                "2018-09-01 failed T-1; count=5",
                "2018-09-02 failed T-1; count=3; cause=withdrawn",
                "2018-09-10 split T-2; source=T-1; count=12",
                "2018-09-20 counted T-1; count=41",
                "2018-10-01 closed T-1; rest=not-seen",
                "2019 seed-sown S-1; grams=12");
        assertEquals(
                Map.of(
                        "J-1", "layer 2018-05-01 month 1 1 1 0 0 0 0 0",
                        "J-2", "layer 2018-05-01 month 1 1 0 1 0 0 0 0",
                        "T-1", "cutting 2018-06-01 day - 60 10 5 3 31 12 1",
                        "T-2", "cutting 2018-06-01 day - 12 0 0 0 0 0 0",
                        "S-1", "seed 2019-01-01 year - - 0 0 0 0 0 0"),
                columns(
                        "2020-01-01",
                        "method",
                        "day",
                        "precision",
                        "by_person",
                        "count",
                        "taken",
                        "failed",
                        "withdrawn",
                        "not_seen",
                        "moved_on",
                        "found_more"));
        assertEquals(
                Map.of(
                        "J-1", "- 2018-08-30",
                        "J-2", "- 2018-08-31",
                        "T-1", "2018-07-01 2018-09-20",
                        "T-2", "- -",
                        "S-1", "- -"),
                columns("2020-01-01", "still_on_day", "last_seen_day"));
    }

    @Test
    void tellsNothingThatHappenedLater() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=" + DESHOJO,
                "2018-05-01 layer-set J-1; mother=K-1",
                "2018-08-30 severed J-1; roots=full",
                "2019-01-01 retagged J-1; new_tag=P-1",
                "2019-01-02 retagged K-1; new_tag=M-1",
                "2019-02-01 redetermined J-1; cultivar=Acer palmatum 'Katsura'",
                "2019-05-01 layer-set J-2; mother=K-1");
        assertEquals(Map.of(), columns("2018-04-30", "taken"));
        assertEquals(Map.of("J-1", "0 K-1 " + DESHOJO), columns("2018-05-01", "taken", "mothers", "cultivar"));
        assertEquals(Map.of("J-1", "1 K-1 " + DESHOJO), columns("2018-12-31", "taken", "mothers", "cultivar"));
        assertEquals(
                Map.of("P-1", "1 M-1 Acer palmatum 'Katsura'", "J-2", "0 M-1 " + DESHOJO),
                columns("2019-12-31", "taken", "mothers", "cultivar"));
    }

    @Test
    void tellsOfWhatWasSplitOffFromThatDayOnly() {
        diary.write(
                "2015-03-01 acquired K-1",
                "2018-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2018-09-10 split T-2; source=T-1; count=12");
        assertEquals(Map.of("T-1", "2018-06-01 60 0"), columns("2018-09-09", "day", "count", "moved_on"));
        assertEquals(
                Map.of("T-1", "2018-06-01 60 12", "T-2", "2018-06-01 12 0"),
                columns("2018-09-10", "day", "count", "moved_on"));
    }

    @Test
    void countsADayKnownToTheMonthFromItsFirst() {
        diary.write("2015 acquired K-1", "2018-05 layer-set J-1; mother=K-1");
        assertEquals(Map.of(), columns("2018-04-30", "day"));
        assertEquals(Map.of("J-1", "2018-05-01"), columns("2018-05-01", "day"));
    }

    @Test
    void takesTheCultivarFromTheMotherThroughEveryVegetativeLink() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=" + DESHOJO,
                "2010-03-01 acquired R-1; count=9; cultivar=Acer palmatum",
                "2011-05-01 divided D-1; mother=K-1",
                "2012-05-01 layer-set J-1; mother=D-1",
                "2012-09-01 severed J-1",
                "2013-05-01 cuttings-struck T-1; mothers=J-1; count=20",
                "2013-06-01 split T-2; source=T-1; count=8",
                "2013-07-01 cuttings-struck T-3; mothers=D-1; count=9",
                "2013-08-01 merged T-4; sources=T-2 T-3",
                "2013-09-01 taken T-4",
                "2013-10-01 drawn C-1; source=T-4",
                "2015-03-01 graft-worked G-1; scion=C-1; stock=R-1",
                "2016-03-01 seed-sown S-1; count=10; seed_parent=C-1",
                "2016-03-02 sport-found X-1; mother=C-1",
                "2016-05-01 layer-set J-2; mother=X-1");
        assertEquals(
                Map.of(
                        "J-1", "D-1 " + DESHOJO,
                        "T-1", "J-1 " + DESHOJO,
                        "T-2", "J-1 " + DESHOJO,
                        "T-3", "D-1 " + DESHOJO,
                        "T-4", "J-1 + D-1 " + DESHOJO,
                        "G-1", "C-1 " + DESHOJO,
                        "S-1", "C-1 -",
                        "J-2", "X-1 -"),
                columns("2020-01-01", "mothers", "cultivar"));
    }

    @Test
    void tellsNoCultivarWhereMothersDisagreeOrNobodyKnows() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=" + DESHOJO,
                "2010-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2010-03-01 acquired K-3; cultivar=" + DESHOJO,
                "2010-03-01 acquired K-4",
                "2013-05-01 cuttings-struck T-1; mothers=K-1 K-2; count=20",
                "2013-05-01 cuttings-struck T-2; mothers=K-3 K-1; count=20",
                "2013-05-01 cuttings-struck T-3; mothers=K-1 K-4; count=20",
                "2013-05-01 cuttings-struck T-4; mothers=K-4; count=20",
                "2013-05-01 cuttings-struck T-5; count=20",
                "2013-05-01 cuttings-struck T-6; mothers=K-1 K-2; count=20; cultivar=Acer palmatum",
                "2013-09-01 drawn C-1; source=T-1",
                "2014-05-01 layer-set J-1; mother=C-1",
                "2014-09-01 drawn C-3; source=T-3",
                "2015-05-01 layer-set J-3; mother=C-3");
        assertEquals(
                Map.of(
                        "T-1", "K-1 + K-2 -",
                        "T-2", "K-3 + K-1 " + DESHOJO,
                        "T-3", "K-1 + K-4 -",
                        "T-4", "K-4 -",
                        "T-5", "- -",
                        "T-6", "K-1 + K-2 Acer palmatum",
                        "J-1", "C-1 -",
                        "J-3", "C-3 -"),
                columns("2020-01-01", "mothers", "cultivar"));
    }

    @Test
    void takesATrueDeterminationBeforeWhatWasSaid() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=" + DESHOJO,
                "2013-05-01 layer-set J-1; mother=K-1",
                "2014-05-01 redetermined K-1; cultivar=Acer palmatum 'Katsura'",
                "2015-05-01 redetermined K-1; cultivar=Acer palmatum 'Seiryu'");
        assertEquals(Map.of("J-1", DESHOJO), columns("2014-04-30", "cultivar"));
        assertEquals(Map.of("J-1", "Acer palmatum 'Katsura'"), columns("2015-04-30", "cultivar"));
        assertEquals(Map.of("J-1", "Acer palmatum 'Seiryu'"), columns("2016-04-30", "cultivar"));
    }

    @Property(tries = 60)
    void agreesWithTheFactsOfRandomHistories(
            @ForAll int seed,
            @ForAll @IntRange(min = 20, max = 100) int lines,
            @ForAll @IntRange(min = 2015, max = 2020) int year) {
        LocalDate asOf = LocalDate.of(year, 7, 1);
        try (SqliteBookStore random = shelf.create()) {
            Diary writer = new Diary(random);
            Histories.write(seed, lines, line -> {
                try {
                    return !writer.write(line).written().isEmpty();
                } catch (Refused refused) {
                    return false;
                }
            });
            List<List<String>> expected = random.read(view -> new Slowly(view, asOf).cohorts());
            List<List<String>> found = new ArrayList<>();
            for (List<Object> row : cohorts(random, asOf.toString()).values()) {
                found.add(row.stream()
                        .map(value -> value == null ? "-" : value.toString())
                        .toList());
            }
            assertEquals(expected, found);
        }
    }

    /** Works cohorts out one by one from the facts of units. */
    private static final class Slowly {
        private final Map<UnitNumber, UnitFacts> facts = new TreeMap<>();
        private final LocalDate asOf;

        Slowly(BookView view, LocalDate asOf) {
            this.asOf = asOf;
            for (int unit = 1; unit <= view.head().lastUnit(); unit++) {
                view.facts(new UnitNumber(unit)).ifPresent(found -> facts.put(found.unit(), found));
            }
        }

        private boolean isPast(ortet.value.When day) {
            return !day.first().isAfter(asOf);
        }

        List<List<String>> cohorts() {
            List<List<String>> rows = new ArrayList<>();
            for (UnitFacts unit : facts.values()) {
                boolean isThere = isPast(unit.begun().day());
                unit.cohort().filter(cohort -> isThere && isPast(cohort.day())).ifPresent(cohort -> {
                    List<String> row = new ArrayList<>(List.of(
                            unit.unit().toString(),
                            tag(unit),
                            Words.of(cohort.method()),
                            cohort.day().first().toString(),
                            Words.of(cohort.day().precision()),
                            cohort.by().map(by -> String.valueOf(by.value())).orElse("-"),
                            cohort.count().map(Object::toString).orElse("-"),
                            cultivar(unit.unit()).orElse("-"),
                            mothers(unit, cohort.method())));
                    for (Fate fate : List.of(
                            Fate.TAKEN, Fate.FAILED, Fate.WITHDRAWN, Fate.NOT_SEEN, Fate.MOVED_ON, Fate.FOUND_MORE)) {
                        row.add(String.valueOf(outcomes(unit, Set.of(fate)).stream()
                                .mapToInt(Outcome::count)
                                .sum()));
                    }
                    row.add(last(outcomes(unit, Set.of(Fate.STILL_ON))));
                    Set<Fate> seen = new TreeSet<>(List.of(Fate.values()));
                    seen.remove(Fate.NOT_SEEN);
                    row.add(last(outcomes(unit, seen)));
                    rows.add(row);
                });
            }
            return rows;
        }

        private String tag(UnitFacts unit) {
            return unit.tags().stream()
                    .filter(use -> isPast(use.day()))
                    .reduce((one, other) -> other)
                    .orElseThrow()
                    .tag()
                    .text();
        }

        private List<Outcome> outcomes(UnitFacts unit, Set<Fate> fates) {
            return unit.outcomes().stream()
                    .filter(outcome -> isPast(outcome.day()) && fates.contains(outcome.fate()))
                    .toList();
        }

        private static String last(List<Outcome> outcomes) {
            return outcomes.stream()
                    .map(outcome -> outcome.day().first())
                    .max(Comparator.naturalOrder())
                    .map(LocalDate::toString)
                    .orElse("-");
        }

        private Optional<String> cultivar(UnitNumber number) {
            UnitFacts unit = facts.get(number);
            List<UnitFacts.Naming> names =
                    unit.names().stream().filter(naming -> isPast(naming.day())).toList();
            Optional<UnitFacts.Naming> best = names.stream()
                    .filter(UnitFacts.Naming::isTrue)
                    .reduce((one, other) -> other)
                    .or(() -> names.stream().reduce((one, other) -> other));
            if (best.isPresent()) {
                return best.map(naming -> naming.cultivar().toString());
            }
            Set<Optional<String>> found = unit.links().stream()
                    .filter(link -> isPast(link.day()) && link.act().keepsTheClone())
                    .map(link -> cultivar(link.mother()))
                    .collect(Collectors.toSet());
            return found.size() == 1 ? found.iterator().next() : Optional.empty();
        }

        private String mothers(UnitFacts unit, UnitFacts.Method method) {
            Act act = switch (method) {
                case LAYER -> Act.LAYERED_FROM;
                case CUTTING -> Act.STRUCK_FROM;
                case GRAFT -> Act.SCION_OF;
                case SEED -> Act.SEED_OF;
            };
            Set<UnitNumber> origins = new TreeSet<>();
            addOrigins(unit.unit(), origins);
            Set<UnitNumber> mothers = new LinkedHashSet<>();
            for (UnitNumber origin : origins) {
                for (Link link : facts.get(origin).links()) {
                    if (link.act() == act && isPast(link.day())) {
                        mothers.add(link.mother());
                    }
                }
            }
            return mothers.isEmpty()
                    ? "-"
                    : mothers.stream().map(mother -> tag(facts.get(mother))).collect(Collectors.joining(" + "));
        }

        private void addOrigins(UnitNumber unit, Set<UnitNumber> origins) {
            if (origins.add(unit)) {
                for (Link link : facts.get(unit).links()) {
                    if (isPast(link.day()) && (link.act() == Act.SPLIT_FROM || link.act() == Act.MERGED_FROM)) {
                        addOrigins(link.mother(), origins);
                    }
                }
            }
        }
    }

    @Test
    void isAnsweredForALargeBook() {
        SqliteBookStore large = shelf.create();
        ortet.book.Ruling nursery = HandMade.nursery(large.read(BookView::head), 10_000);
        List<String> steps = new ArrayList<>();
        large.append(view -> nursery, (step, done, total) -> steps.add(step + " " + done + " of " + total));
        assertTrue(steps.size() > 10);
        assertTrue(steps.get(steps.size() - 1).matches("writing (\\d+) of \\1"), steps.get(steps.size() - 1));
        Rows rows = cohorts(large, "2024-01-01");
        assertEquals(4000, rows.size());
        for (Rows.Row row : rows) {
            assertTrue(row.text("cultivar").isPresent());
            assertTrue(row.text("mothers").isPresent());
        }
    }
}
