package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.value.Refused;

class EstablishmentTests {
    private static LocalDate due(Establishment rule, String start) {
        return LocalDate.ofEpochDay(
                rule.due(Math.toIntExact(LocalDate.parse(start).toEpochDay())));
    }

    /** Counted on a calendar: April to October has 214 days. */
    @ParameterizedTest
    @CsvSource({
        "2024-04-30, 2024-07-29",
        "2024-05-01, 2024-07-30",
        "2024-03-31, 2024-06-29",
        "2024-01-15, 2024-06-29",
        "2024-11-20, 2025-06-29",
        "2024-08-02, 2024-10-31",
        "2024-08-03, 2025-04-01",
        "2024-09-30, 2025-05-29",
        "2024-10-31, 2025-06-29"
    })
    void countsDaysOfTheGrowingSeasonAlone(String start, String due) {
        assertEquals(LocalDate.parse(due), due(Establishment.DEFAULTS, start));
    }

    @ParameterizedTest
    @CsvSource({"2024-01-01, 30, 2024-01-31", "2024-02-28, 1, 2024-02-29", "2024-06-01, 400, 2025-07-06"})
    void countsEveryDayWhereItGrowsAllYear(String start, int days, String due) {
        Establishment rule = new Establishment(days, MonthDay.of(1, 1), MonthDay.of(12, 31));
        assertEquals(LocalDate.parse(due), due(rule, start));
    }

    @Property(tries = 200)
    void agreesWithCountingDayByDay(
            @ForAll @IntRange(min = 15_000, max = 20_000) int start, @ForAll @IntRange(min = 1, max = 700) int days) {
        Establishment rule = new Establishment(days, MonthDay.of(4, 1), MonthDay.of(10, 31));
        LocalDate due = Stream.iterate(LocalDate.ofEpochDay(start + 1L), day -> day.plusDays(1))
                .filter(day -> day.getMonthValue() >= 4 && day.getMonthValue() <= 10)
                .skip(days - 1L)
                .findFirst()
                .orElseThrow();
        assertEquals(due, LocalDate.ofEpochDay(rule.due(start)));
    }

    /** South of the equator: October to April, 212 days or 213. */
    @ParameterizedTest
    @CsvSource({"2024-04-29, 2, 2024-10-01", "2024-12-30, 3, 2025-01-02", "2024-05-20, 213, 2025-10-01"})
    void knowsASeasonThatGoesOnOverTheTurnOfTheYear(String start, int days, String due) {
        Establishment rule = new Establishment(days, MonthDay.of(10, 1), MonthDay.of(4, 30));
        assertEquals(LocalDate.parse(due), due(rule, start));
    }

    @Test
    void refusesNoDaysAtAll() {
        MonthDay day = MonthDay.of(4, 1);
        assertThrows(Refused.class, () -> new Establishment(0, day, day));
    }
}
