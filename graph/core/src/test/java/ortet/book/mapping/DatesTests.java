package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.value.Refused;
import ortet.value.When;

class DatesTests {
    private static Dates dates(String... formats) {
        return new Dates(Arrays.stream(formats).map(DayFormat::of).toList());
    }

    private static String fault(Dates dates, String text) {
        return assertThrows(Refused.class, () -> dates.parse(text)).getMessage();
    }

    @ParameterizedTest(name = "{0} as {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "3/5/2019          | d/M/yyyy    | 2019-05-03",
                "03/05/2019        | dd/MM/yyyy  | 2019-05-03",
                "3/5/2019          | dd/MM/yyyy  | 2019-05-03",
                "3 / 5 / 2019      | dd/MM/yyyy  | 2019-05-03",
                "05/03/2019        | MM/dd/yyyy  | 2019-05-03",
                "3.5.19            | d.M.yy      | 2019-05-03",
                "3.5.59            | d.M.yy      | 2059-05-03",
                "3.5.60            | d.M.yy      | 1960-05-03",
                "3-May-19          | d-MMM-yy    | 2019-05-03",
                "3rd May 2019      | d MMM yyyy  | 2019-05-03",
                "3 MAY 2019        | d MMM yyyy  | 2019-05-03",
                "3 sept. 2019      | d MMM yyyy  | 2019-09-03",
                "May 3, 2019       | MMM d, yyyy | 2019-05-03",
                "Fri 3 May 2019    | EEE d MMM yyyy | 2019-05-03",
                "03052019          | ddMMyyyy    | 2019-05-03",
                "190503            | yyMMdd      | 2019-05-03",
                "May 2019          | MMM yyyy    | 2019-05",
                "January '19       | MMM yy      | 2019-01",
                "5/2019            | M/yyyy      | 2019-05",
                "4.98              | M.yy        | 1998-04",
                "2019              | yyyy        | 2019",
                "2019-05-03        | dd/MM/yyyy  | 2019-05-03",
                "2019-05           | dd/MM/yyyy  | 2019-05",
                "03/05/2019 14:30  | dd/MM/yyyy  | 2019-05-03",
                "2019-05-03T00:00:00Z | dd/MM/yyyy | 2019-05-03",
                "3/5/2019 2:30 pm  | dd/MM/yyyy  | 2019-05-03",
                "c. 2004           | dd/MM/yyyy  | 2004",
                "ca 2004           | dd/MM/yyyy  | 2004",
                "circa May 2004    | MMM yyyy    | 2004",
                "about 3/5/2019    | dd/MM/yyyy  | 2019-05",
                "~ 2019?           | dd/MM/yyyy  | 2019",
                "May 2019?         | MMM yyyy    | 2019",
                "43588             | spreadsheet number | 2019-05-03",
                "43588.75          | spreadsheet number | 2019-05-03",
                "2019              | spreadsheet number | 2019",
            })
    void readsDaysAsTheyAreWritten(String text, String format, String day) {
        assertEquals(When.parse(day), dates(format).parse(text));
    }

    /** Day numbers of spreadsheets: 1 January 2000 is 36526 and 29 February 2024 is 45351 (ISO/IEC 29500-1, 18.17.4). */
    @Test
    void countsTheDaysOfSpreadsheetsAsTheStandardDoes() {
        assertEquals(When.parse("2000-01-01"), dates("spreadsheet number").parse("36526"));
        assertEquals(When.parse("2024-02-29"), dates("spreadsheet number").parse("45351"));
    }

    @Test
    void triesFormatsInOrderAndIsoLast() {
        Dates dates = dates("dd/MM/yyyy", "MM/dd/yyyy");
        assertEquals(When.parse("2019-05-03"), dates.parse("03/05/2019"));
        assertEquals(When.parse("2019-12-31"), dates.parse("12/31/2019"));
    }

    @Test
    void saysThatThereIsNoSuchDayOrWhatWasExpected() {
        Dates dates = dates("dd/MM/yyyy", "MMM yyyy");
        assertEquals("there is no day 31/02/2020", fault(dates, "31/02/2020"));
        assertEquals("there is no day 29/02/2019", fault(dates, "29/02/2019"));
        assertEquals("there is no day Floréal 2020", fault(dates, "Floréal 2020"));
        assertEquals("expected a day as 13/05/2021 or May 2021, found \"spring\"", fault(dates, "spring"));
        assertEquals("expected a day as 2021-05-13 or 2021-05 or 2021, found \"3/5/2019\"", fault(dates(), "3/5/2019"));
        assertEquals(
                "expected a day as 43 or so, found \"12\"".replace("43 or so", "44329"),
                fault(dates("spreadsheet number"), "12"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "dd/MM        | a year",
                "dd yyyy      | a month",
                "dd/MM/yyy    | yy or yyyy for the year",
                "dd/MM/yyyy hh| only d, M, y and E as letters",
                "dd/dd/yyyy   | each of day, month and year once",
                "MM MMM yyyy  | each of day, month and year once",
                "yy yyyy      | each of day, month and year once",
            })
    void refusesAFormatThatIsNone(String format, String expected) {
        Refused refused = assertThrows(Refused.class, () -> DayFormat.of(format.strip()));
        assertEquals(
                "expected a way to write days such as dd/MM/yyyy, MMM yyyy or yyyy, with " + expected + "; found \""
                        + format.strip() + "\"",
                refused.getMessage());
    }

    @Property
    void readsWhatItWrites(
            @ForAll @IntRange(min = 0, max = 36_000) int days, @ForAll @IntRange(min = 0, max = 8) int which) {
        List<String> patterns = List.of(
                "dd/MM/yyyy",
                "d.M.yyyy",
                "d MMM yyyy",
                "d MMMM yyyy",
                "MMM d, yyyy",
                "EEE dd-MM-yyyy",
                "yyyyMMdd",
                "d/M/yy",
                "spreadsheet number");
        DayFormat format = DayFormat.of(patterns.get(which));
        When day = When.on(LocalDate.of(1960, 1, 1).plusDays(days));
        assertEquals(Optional.of(day), format.read(format.write(day)));
    }
}
