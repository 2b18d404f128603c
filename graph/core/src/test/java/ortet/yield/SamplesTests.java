package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.entry.Words;
import ortet.nursery.Cohorts;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.Person.Role;

/** What take counts, unit by unit. */
class SamplesTests {
    private static final String DESHOJO = "Acer palmatum 'Deshojo'";

    private final Diary diary = new Diary();

    /** Return the given columns of each cohort, by tag. */
    private Map<String, String> columns(String asOf, String... columns) {
        LocalDate day = LocalDate.parse(asOf);
        return diary.store().read(view -> {
            Samples samples = Samples.of(Snapshot.of(view, day, Samples.PARTS), Periods.DEFAULTS);
            Map<String, String> found = new LinkedHashMap<>();
            for (int row = 0; row < samples.cohorts().size(); row++) {
                if (samples.isThere(row)) {
                    int here = row;
                    found.put(
                            tag(view, samples.cohorts().unit(row), day),
                            Stream.of(columns)
                                    .map(column -> column(view, samples, here, column))
                                    .collect(Collectors.joining(" ")));
                }
            }
            return found;
        });
    }

    private static String tag(BookView view, int unit, LocalDate day) {
        return TagsOfUnits.of(view, List.of(unit), day).get(unit).text();
    }

    private static String column(BookView view, Samples samples, int row, String column) {
        Cohorts cohorts = samples.cohorts();
        return switch (column) {
            case "method" -> Words.of(cohorts.method(row));
            case "day" -> cohorts.day(row).first().toString();
            case "precision" -> Words.of(cohorts.day(row).precision());
            case "by_person" -> number(cohorts.by(row));
            case "count" -> number(cohorts.count(row));
            case "taken" -> number(cohorts.taken(row));
            case "failed" -> number(cohorts.failed(row));
            case "withdrawn" -> number(cohorts.withdrawn(row));
            case "not_seen" -> number(cohorts.notSeen(row));
            case "moved_on" -> number(cohorts.movedOn(row));
            case "found_more" -> number(cohorts.foundMore(row));
            case "looked" ->
                cohorts.looked(row) == Integer.MIN_VALUE
                        ? "-"
                        : LocalDate.ofEpochDay(cohorts.looked(row)).toString();
            case "cultivar" ->
                Optional.of(samples.cultivar(row))
                        .filter(name -> name >= 0)
                        .map(name -> samples.snapshot().cultivars().get(name).toString())
                        .orElse("-");
            case "mothers" -> mothers(view, samples, row);
            default -> throw new IllegalArgumentException(column);
        };
    }

    private static String number(int value) {
        return value == Cohorts.NONE ? "-" : Integer.toString(value);
    }

    private static String mothers(BookView view, Samples samples, int row) {
        int mother = samples.mother(row);
        if (mother == 0) {
            return "-";
        }
        List<Integer> units = mother < 0 ? samples.several(mother) : List.of(mother);
        return units.stream()
                .map(unit -> tag(view, unit, samples.snapshot().asOf()))
                .sorted()
                .collect(Collectors.joining(" + "));
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
                        "J-1", "2018-08-30",
                        "J-2", "2018-08-31",
                        "T-1", "2018-09-20",
                        "T-2", "-",
                        "S-1", "-"),
                columns("2020-01-01", "looked"));
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
                        "T-4", "D-1 + J-1 " + DESHOJO,
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
                        "T-2", "K-1 + K-3 " + DESHOJO,
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
}
