package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.Judge;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Snapshot;
import ortet.value.Refused;

/** Forecasts of small nurseries that were worked out by hand. */
class ForecastTests {
    private static final LocalDate DAY = LocalDate.of(2024, 6, 1);

    private final Diary diary = new Diary();

    @BeforeEach
    void mothers() {
        diary.write("2010-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'", "2010-03-01 kept-as-stock K-1");
    }

    private static ForecastQuestion question(int months) {
        return new ForecastQuestion(
                Optional.empty(), Optional.empty(), months, DAY, ForecastSales.NONE, ForecastQuestion.SIMULATIONS, 1);
    }

    private ForecastTable ask(ForecastQuestion question) {
        return diary.store()
                .read(view -> Forecast.ask(view, Snapshot.of(view, question.asOf(), Forecast.parts()), question));
    }

    /** Four layers set on 1 May of every year, all severed on 29 August, all graded two years later on 15 September. */
    private void clockwork(int from, int to) {
        for (int year = from; year <= to; year++) {
            String tags = "J-" + year + "1..J-" + year + "4";
            diary.write(year + "-05-01 layer-set " + tags + "; mother=K-1");
            if (year < 2024) {
                diary.write(year + "-08-29 severed " + tags + "; roots=full");
            }
            if (year < 2022) {
                diary.write((year + 2) + "-09-15 graded " + tags + "; size=medium");
            }
        }
    }

    private static ForecastBand inAll(ForecastTable table) {
        return table.total().get(0).inAll();
    }

    private static ForecastBand in(ForecastTable table, String month) {
        return table.total().get(0).becoming().get(table.months().indexOf(YearMonth.parse(month)));
    }

    @Test
    void runsOnLikeClockworkWhereAllWentAlike() {
        clockwork(2011, 2024);
        ForecastTable table = ask(question(30));
        assertEquals(4, table.pending());
        assertEquals(8, table.growing());
        assertEquals(44, table.total().get(0).now(), "eleven years of four stand saleable");
        // severed in 2022 and 2023, and to be severed in 2024: four trees each in September of 2024, 2025 and 2026
        for (String september : new String[] {"2024-09", "2025-09", "2026-09"}) {
            assertEquals(4, in(table, september).median(), september);
        }
        assertEquals(12, inAll(table).median());
        assertEquals(12, inAll(table).upper90());
        for (YearMonth month : table.months()) {
            if (month.getMonthValue() < 8 || month.getMonthValue() > 10) {
                assertEquals(0, in(table, month.toString()).median(), month.toString());
            }
        }
        assertEquals(
                56, table.total().get(0).standing().get(29).median(), "nothing is sold, and nothing was ever lost");
        assertEquals(Optional.of("medium"), table.total().get(1).size(), "all that was ever graded was graded medium");
        ForecastBehind taking = table.behind().get(0);
        assertEquals(Method.LAYER, taking.method());
        assertEquals(52, taking.good());
        assertEquals(0, taking.bad());
        assertTrue(taking.chance() > 0.97, taking.toString());
    }

    @Test
    void tellsTheSameForOneSeedAndOtherDrawsForAnother() {
        clockwork(2015, 2024);
        diary.write("2024-05-02 layer-set L-1..L-30; mother=K-1", "2023-05-01 layer-set M-1..M-9; mother=K-1");
        diary.write("2023-08-20 failed M-1..M-5");
        ForecastTable first = ask(question(30));
        assertEquals(first.rows(), ask(question(30)).rows());
        ForecastQuestion other = new ForecastQuestion(
                Optional.empty(), Optional.empty(), 30, DAY, ForecastSales.NONE, ForecastQuestion.SIMULATIONS, 2);
        assertNotEquals(first.rows(), ask(other).rows());
        // a third or so of few failed: so many more may, and the band says it
        assertTrue(
                inAll(first).lower90() < inAll(first).upper90() - 2,
                inAll(first).toString());
    }

    @Test
    void saysPlainlyThatAYoungBookTellsNothing() {
        assertTrue(ask(question(24)).isEmpty());
        diary.write("2024-05-01 layer-set J-1..J-4; mother=K-1");
        ForecastTable table = ask(question(24));
        assertTrue(table.isEmpty());
        assertEquals(4, table.pending());
        assertEquals(0, table.saleable());
    }

    @Test
    void leansOnTheTaxonWhereACultivarIsNew() {
        clockwork(2011, 2024);
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2023-05-01 layer-set N-1..N-5; mother=K-2",
                "2023-08-29 severed N-1..N-5; roots=full");
        ForecastTable table = ask(question(30));
        ForecastBehind katsura = table.behind().stream()
                .filter(one -> one.cultivar().contains("Katsura") && one.stage() == ForecastStage.GRADING)
                .findFirst()
                .orElseThrow();
        assertEquals(0, katsura.good());
        assertEquals(5, katsura.waiting());
        assertEquals(ForecastBehind.Wider.TAXON, katsura.wider());
        assertEquals(44, katsura.widerKnown());
        assertTrue(katsura.lean() > 0.5, katsura.toString());
        ForecastRow row = table.rows().stream()
                .filter(one -> one.cultivar().orElse("").contains("Katsura"))
                .findFirst()
                .orElseThrow();
        assertEquals(5, row.becoming().get(15).median(), "in September 2025, as the others of its taxon do");
    }

    @Test
    void countsWhatIsSoldUngradedAndLeavesOutStockAndWhatWasBoughtIn() {
        for (int year = 2012; year < 2024; year++) {
            String tray = "T-" + year;
            diary.write(
                    year + "-06-01 cuttings-struck " + tray + "; mothers=K-1; count=20",
                    year + "-08-01 failed " + tray + "; count=10");
            if (year < 2023) {
                diary.write(
                        year + "-08-15 potted " + tray + "; container=9 cm",
                        (year + 1) + "-03-20 sold " + tray + "; count=10");
            }
        }
        diary.write(
                "2023-08-15 potted T-2023; container=9 cm",
                "2020-03-01 acquired B-1..B-3; cultivar=Acer palmatum 'Deshojo'");
        ForecastTable table = ask(new ForecastQuestion(
                Optional.empty(),
                Optional.empty(),
                24,
                LocalDate.of(2024, 2, 15),
                ForecastSales.NONE,
                ForecastQuestion.SIMULATIONS,
                1));
        assertEquals(10, table.growing());
        assertEquals(3, table.boughtIn());
        assertEquals(0, table.pending());
        assertEquals(Optional.of(""), table.total().get(1).size());
        assertEquals(110, table.saleable());
        assertEquals(10, in(table, "2024-03").median(), "in March, as every year");
        assertEquals(0, table.tooOldGrowing());
        // by June it is older than any that was ever sold: nothing is forecast of it, and that is said
        ForecastTable late = ask(question(24));
        assertEquals(10, late.tooOldGrowing());
        assertEquals(0, inAll(late).upper90());
    }

    @Test
    void letsAllComeWhereAllIsGradedOrSold() {
        for (int year = 2011; year < 2024; year++) {
            String layers = "J-" + year + "1..J-" + year + "8";
            diary.write(
                    year + "-05-01 layer-set " + layers + "; mother=K-1",
                    year + "-08-29 severed " + layers + "; roots=full");
            if (year < 2022) {
                diary.write(
                        (year + 2) + "-09-15 graded J-" + year + "1..J-" + year + "4; size=medium",
                        (year + 2) + "-09-20 sold J-" + year + "5..J-" + year + "8");
            }
        }
        // of sixteen that grow on none was ever lost: what is not drawn as sold is graded, however the two are drawn
        ForecastTable table = ask(question(30));
        assertEquals(16, table.growing());
        assertEquals(16, inAll(table).median());
        assertTrue(inAll(table).lower90() >= 11, inAll(table).toString());
        for (ForecastRow row : table.total().subList(1, 3)) {
            assertTrue(row.inAll().lower90() >= 2, row.toString());
            assertTrue(row.inAll().upper90() <= 14, row.toString());
        }
    }

    @Test
    void sellsAsBeforeOnlyWhereAsked() {
        clockwork(2011, 2024);
        for (int year = 2021; year < 2024; year++) {
            diary.write(year + "-12-01 sold J-" + (year - 8) + "1..J-" + (year - 8) + "4");
        }
        assertEquals(32, ask(question(12)).total().get(0).now());
        assertEquals(36, ask(question(12)).total().get(0).standing().get(11).median());
        ForecastTable sold =
                ask(new ForecastQuestion(Optional.empty(), Optional.empty(), 12, DAY, ForecastSales.AS_BEFORE, 400, 1));
        ForecastBand standing = sold.total().get(0).standing().get(11);
        // each December four of some forty went, so about four of 36 go in the next
        assertTrue(standing.median() >= 30 && standing.median() <= 34, standing.toString());
        assertTrue(standing.lower90() < standing.upper90());
    }

    @Test
    void refusesWhatIsNotInTheBookAndNamesTheNearest() {
        clockwork(2011, 2024);
        Refused size = assertThrows(
                Refused.class,
                () -> ask(new ForecastQuestion(
                        Optional.empty(), Optional.of("mediun"), 12, DAY, ForecastSales.NONE, 400, 1)));
        assertTrue(
                size.faults().get(0).line().contains("nearest: medium"),
                size.faults().toString());
        Refused cultivar = assertThrows(
                Refused.class,
                () -> ask(new ForecastQuestion(
                        Optional.of("Deshoyo"), Optional.empty(), 12, DAY, ForecastSales.NONE, 400, 1)));
        assertTrue(
                cultivar.faults().get(0).line().contains("Deshojo"),
                cultivar.faults().toString());
        assertThrows(Refused.class, () -> question(0));
        assertThrows(Refused.class, () -> question(121));
    }

    private ForecastScore check(LocalDate from) {
        return diary.store()
                .read(view -> ForecastCheck.ask(
                        view, diary.judge(), Snapshot.of(view, DAY, Forecast.parts()), question(24), from));
    }

    @Test
    void holdsEarlierForecastsAgainstWhatCame() {
        clockwork(2011, 2024);
        ForecastScore score = check(LocalDate.of(2021, 6, 30));
        assertEquals(ForecastKnown.RECORDED_LATER, score.known(), "all of it was written in 2026");
        assertEquals(0, score.recorded());
        // set in 2019, 2020 and 2021, graded two years after; what was set in 2022 is not graded yet
        assertEquals(12, score.came());
        assertEquals(0, score.later());
        assertEquals(12, score.inAll().median());
        assertEquals(36, score.total().size());
        ForecastCell september = score.total().get(2);
        assertEquals(YearMonth.of(2021, 9), september.month());
        assertEquals(4, september.came());
        assertEquals(4, september.forecast().median());
        assertEquals(1, score.within90());
        assertThrows(Refused.class, () -> check(DAY));
    }

    @Test
    void goesByWhatWasWrittenByThenWhereTheBookWasKept() {
        Judge then = new Judge(Clock.fixed(Instant.parse("2021-06-30T12:00:00Z"), ZoneOffset.UTC));
        Diary kept = new Diary();
        for (int year = 2011; year <= 2021; year++) {
            String tags = "J-" + year + "1..J-" + year + "4";
            if (year == 2011) {
                kept.store().append(kept.proposal("2010-03-01 acquired K-1; cultivar=Acer palmatum"), then);
            }
            kept.store().append(kept.proposal(year + "-05-01 layer-set " + tags + "; mother=K-1"), then);
            if (year < 2021) {
                kept.store().append(kept.proposal(year + "-08-29 severed " + tags + "; roots=full"), then);
            }
            if (year < 2019) {
                kept.store().append(kept.proposal((year + 2) + "-09-15 graded " + tags + "; size=medium"), then);
            }
        }
        // found out later: a fifth layer of that year
        kept.write(
                "2019-05-01 layer-set L-1; mother=K-1",
                "2019-08-29 severed L-1; roots=full",
                "2021-09-15 graded L-1 J-20191..J-20194; size=medium");
        ForecastScore score = kept.store()
                .read(view -> ForecastCheck.ask(
                        view,
                        kept.judge(),
                        Snapshot.of(view, DAY, Forecast.parts()),
                        question(24),
                        LocalDate.of(2021, 6, 30)));
        assertEquals(ForecastKnown.RECORDED_BY_THEN, score.known());
        assertEquals(45, score.recorded());
        assertEquals(46, score.begun());
        assertEquals(5, score.came());
        assertEquals(4, score.total().get(2).forecast().median(), "nobody had written of the fifth");
        assertFalse(score.total().get(2).forecast().holds90(5)
                && score.total().get(2).forecast().upper90() < 5);
    }
}
