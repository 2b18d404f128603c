package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** Months of a forecast, and rounds that begin in March. */
class ForecastHorizonTests {
    private static final ForecastRounds FROM_MARCH = new ForecastRounds(2);

    private static int day(int year, int month, int of) {
        return Math.toIntExact(LocalDate.of(year, month, of).toEpochDay());
    }

    @Test
    void beginsWithWhatIsLeftOfTheMonthAndEndsWithTheLastDayThatCounts() {
        ForecastHorizon horizon = new ForecastHorizon(day(2026, 1, 20), 16, day(2027, 4, 12), FROM_MARCH);
        assertEquals(day(2026, 1, 20), horizon.before(0));
        assertEquals(day(2026, 1, 31), horizon.end(0));
        assertEquals(day(2026, 2, 28), horizon.end(1));
        assertEquals(3, horizon.monthOfYear(15));
        assertEquals(2027, horizon.year(15));
        assertEquals(day(2027, 4, 12), horizon.end(15), "cut short");
        assertEquals(2, horizon.years());
    }

    @Test
    void beginsWithTheNextMonthOnTheLastDayOfOne() {
        ForecastHorizon horizon = new ForecastHorizon(day(2026, 1, 31), 1, day(2026, 2, 28), FROM_MARCH);
        assertEquals(1, horizon.monthOfYear(0));
        assertEquals(day(2026, 2, 28), horizon.end(0));
    }

    @Test
    void cutsMonthsIntoRoundsAndKeepsTheRestOfTheLastForWhatComesLater() {
        ForecastHorizon horizon = new ForecastHorizon(day(2026, 1, 20), 16, day(2027, 4, 30), FROM_MARCH);
        assertEquals(3, horizon.rounds().size());
        assertEquals(new ForecastHorizon.Round(0, 0, 2), horizon.round(1), "January and February");
        assertEquals(new ForecastHorizon.Round(1, 2, 14), horizon.round(2), "a whole year from March");
        assertEquals(new ForecastHorizon.Round(2, 14, 16), horizon.round(15));
        assertSame(horizon.round(15), horizon.round(16), "what comes after all months");
        assertEquals(day(2028, 2, 29), horizon.end(16), "until the round ends");
    }
}
