package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.book.UnitFacts.Method;
import ortet.figures.GroupRate;
import ortet.figures.Ranking;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;
import ortet.value.Refused;

/** Mothers told with the help of each other, out of small nurseries counted by hand. */
class MothersTests {
    private static final LocalDate DAY = LocalDate.of(2024, 12, 31);

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    private MothersTable mothers(UnaryOperator<MothersQuestion> asked) {
        MothersQuestion question = asked.apply(MothersQuestion.asOf(DAY));
        return store.read(view -> Mothers.ask(view, Snapshot.of(view, DAY, Mothers.parts()), question));
    }

    private PooledTake take(TakeQuestion question) {
        return store.read(view -> PooledTake.ask(view, Snapshot.of(view, DAY, PooledTake.parts()), question));
    }

    /** Set so many layers on a mother, of whom so many take. */
    private void layers(String mother, int year, int taken, int failed) {
        String first = mother + "-" + year + "-";
        diary.write(year + "-05-01 layer-set " + first + "1.." + first + (taken + failed) + "; mother=" + mother);
        if (taken > 0) {
            diary.write(year + "-09-20 severed " + first + "1.." + first + taken);
        }
        if (failed > 0) {
            diary.write(
                    year + "-09-21 failed " + first + (taken + 1) + ".." + first + (taken + failed) + "; cause=dried");
        }
    }

    /** Twelve mothers of one cultivar: eleven of whom three in four took of twenty, and one with three of three. */
    private void lucky() {
        for (int mother = 1; mother <= 12; mother++) {
            diary.write("2015-03-01 acquired M" + mother + "; cultivar=Acer palmatum 'Deshojo'");
        }
        for (int mother = 1; mother <= 11; mother++) {
            int more = mother % 3 - 1;
            layers("M" + mother, 2023, 15 + 3 * more, 5 - 3 * more);
        }
        layers("M12", 2023, 3, 0);
    }

    @Test
    void putsNobodyFirstForLuckWithAFew() {
        lucky();
        MothersTable table = mothers(question -> question);
        assertEquals(12, table.rows().size());
        MotherRow best = table.rows().get(0);
        assertEquals(18, best.tally().taken());
        MotherRow lucky = table.rows().stream()
                .filter(row -> row.tag().equals(new Tag("M12")))
                .findFirst()
                .orElseThrow();
        assertEquals(1.0, lucky.rate().orElseThrow().share());
        assertTrue(lucky.pooled().orElseThrow().rate()
                < best.pooled().orElseThrow().rate());
        assertTrue(table.rows().indexOf(lucky) >= 4, "three of three stand behind the four with eighteen of twenty");
        // she is drawn towards the others, and less is known of her than of any of them
        assertTrue(width(lucky) > width(best));
        List<Double> lower = table.rows().stream()
                .map(row -> row.pooled().orElseThrow().interval().lower())
                .toList();
        List<Double> sorted = new ArrayList<>(lower);
        sorted.sort((one, other) -> Double.compare(other, one));
        assertEquals(sorted, lower);
    }

    private static double width(MotherRow row) {
        GroupRate rate = row.pooled().orElseThrow();
        return rate.interval().upper() - rate.interval().lower();
    }

    @Test
    void chancesOfBeingAmongTheBestAddUpToTheirNumber() {
        lucky();
        diary.write("2024-03-01 lost M1");
        MothersTable table = mothers(question -> question.best(3));
        double sum = table.rows().stream()
                .flatMap(row -> row.standing().stream())
                .mapToDouble(Ranking.Standing::probability)
                .sum();
        assertEquals(3, sum, 1e-9);
        MotherRow gone = table.rows().stream()
                .filter(row -> row.tag().equals(new Tag("M1")))
                .findFirst()
                .orElseThrow();
        assertEquals(Optional.empty(), gone.standing());
        assertTrue(gone.pooled().isPresent(), "what she gave still tells of the others");
        assertTrue(!gone.isThere());
    }

    @Test
    void countsYearsProgenyAndTheLastLayering() {
        diary.write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'", "2015-03-01 kept-as-stock K-1");
        layers("K-1", 2020, 3, 1);
        layers("K-1", 2023, 2, 2);
        diary.write(
                "2023-10-01 potted K-1-2023-1; container=2 L",
                "2024-06-01 sold K-1-2020-1 K-1-2020-2",
                "2024-06-02 lost K-1-2020-3",
                "2024-06-03 cuttings-struck T-1; mothers=K-1; count=30",
                "2024-09-03 taken T-1; count=10");
        MotherRow row = mothers(question -> question).rows().get(0);
        assertEquals(5, row.tally().taken());
        assertEquals(3, row.tally().failed());
        // 2020 and 2023, and 2021 and 2022 as stock
        assertEquals(4, row.years());
        assertEquals(1.25, row.takenPerYear().orElseThrow());
        assertEquals(2, row.living());
        assertEquals(2, row.sold());
        assertEquals("2023-05-01", row.last().toString());
        MotherRow cuttings = mothers(question -> question.where(TakeFilter.ALL.method(Method.CUTTING)))
                .rows()
                .get(0);
        assertEquals(10, cuttings.living());
        assertEquals(20, cuttings.tally().pending());
    }

    @Test
    void tellsTheSameOfAMotherWhoeverElseIsShown() {
        lucky();
        diary.write("2015-03-01 acquired J1; cultivar=Juniperus chinensis 'Itoigawa'");
        layers("J1", 2023, 2, 9);
        MotherRow among = mothers(question -> question).rows().stream()
                .filter(row -> row.tag().equals(new Tag("J1")))
                .findFirst()
                .orElseThrow();
        MotherRow alone = mothers(question -> question.where(TakeFilter.ALL.cultivar("Itoigawa")))
                .rows()
                .get(0);
        assertEquals(among.pooled(), alone.pooled());
        PooledTake take = take(TakeQuestion.asOf(DAY).by(TakeBy.MOTHER).where(TakeFilter.ALL.mother(new Tag("J1"))));
        assertEquals(among.pooled(), take.rows().get(0).pooled());
    }

    @Test
    void namesStockThatNobodyHasTried() {
        lucky();
        diary.write(
                "2015-03-01 acquired N-1; cultivar=Acer palmatum 'Deshojo'",
                "2016-03-01 kept-as-stock N-1",
                "2015-03-01 acquired N-2; cultivar=Acer palmatum 'Deshojo'",
                "2016-03-01 kept-as-stock N-2",
                "2017-03-01 released N-2",
                "2015-03-01 acquired N-3; cultivar=Juniperus chinensis 'Itoigawa'",
                "2016-03-01 kept-as-stock N-3");
        assertEquals(
                List.of(new Tag("N-1"), new Tag("N-3")),
                mothers(question -> question).untried());
        assertEquals(
                List.of(new Tag("N-1")),
                mothers(question -> question.where(TakeFilter.ALL.cultivar("Deshojo")))
                        .untried());
    }

    @Test
    void saysNothingOfANurseryWithNothingInIt() {
        MothersTable empty = mothers(question -> question);
        assertEquals(List.of(), empty.rows());
        assertEquals(0, empty.pooled().mothers());
        diary.write("2015-03-01 acquired K-1", "2024-05-01 layer-set J-1; mother=K-1");
        MotherRow pending = mothers(question -> question).rows().get(0);
        assertEquals(Optional.empty(), pending.rate());
        assertEquals(Optional.empty(), pending.pooled());
        assertEquals(Optional.empty(), pending.standing());
    }

    @Test
    void poolsNothingWhereARowHasSeveralMethods() {
        lucky();
        diary.write("2024-06-03 cuttings-struck T-1; mothers=M1; count=30", "2024-09-03 taken T-1; count=10");
        PooledTake mixed = take(TakeQuestion.asOf(DAY).by(TakeBy.MOTHER));
        assertTrue(mixed.mixesMethods());
        assertTrue(mixed.rows().stream().allMatch(row -> row.pooled().isEmpty()));
        PooledTake apart = take(TakeQuestion.asOf(DAY).by(TakeBy.METHOD, TakeBy.MOTHER));
        assertEquals(2, apart.pooled().size());
        assertTrue(apart.rows().stream().allMatch(row -> row.pooled().isPresent()));
        assertEquals(
                List.of("layers", "cuttings"),
                apart.rows().stream()
                        .map(row -> row.row().groups().get(0).shown())
                        .distinct()
                        .toList());
    }

    @Test
    void leavesTableAndTotalAsTheyAreWithoutTheHelp() {
        lucky();
        TakeQuestion question = TakeQuestion.asOf(DAY).by(TakeBy.CULTIVAR, TakeBy.METHOD);
        TakeTable plain = store.read(view -> Take.ask(view, question));
        PooledTake told = take(question);
        assertEquals(plain, told.table());
        assertEquals(plain.rows(), told.rows().stream().map(PooledTake.Row::row).toList());
        assertEquals(List.of(), told.pooled());
    }

    @Test
    void refusesAMotherToRankAgainstNobody() {
        Refused refused = assertThrows(
                Refused.class, () -> MothersQuestion.asOf(DAY).where(TakeFilter.ALL.mother(new Tag("K-1"))));
        assertTrue(refused.getMessage().contains("mother"), refused.getMessage());
    }
}
