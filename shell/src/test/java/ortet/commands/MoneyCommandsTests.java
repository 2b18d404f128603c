package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people type and read of costs and prices. */
class MoneyCommandsTests {
    @TempDir
    static Path folder;

    private static BookDesk desk;

    @BeforeAll
    static void open() {
        desk = new BookDesk(folder);
        desk.done("acquire K-1 --cultivar 'Acer palmatum ‘Deshojo’' --on 2019");
        desk.done("cost hour 20EUR --on 2020-01-01");
        desk.done("cost work layer-set --hours 0.25 --amount 0.60EUR --on 2020-01-01");
        desk.done("cost work severed --hours 0.1 --on 2020-01-01");
        desk.done("cost material '2 L' --amount 0.40EUR --on 2020-01-01");
        desk.done("cost material IBA --amount 0.004EUR --on 2020-01-01");
        desk.done("cost bench 36.50EUR --on 2020-01-01");
        desk.done("cost space 10 --container '2 L' --on 2020-01-01");
        desk.done("price set M 45EUR --on 2020-01-01");
        desk.done("price set M '65.00 EUR' --cultivar 'Acer palmatum ‘Deshojo’' --on 2021-01-01");
        desk.done("layer set J-1..J-4 --mother K-1 --on 2020-05-01 --hormone IBA");
        desk.done("layer fail J-4 --on 2020-08-01");
        desk.done("layer sever J-1..J-3 --roots full --place Yard --container '2 L' --on 2020-09-01");
        desk.done("pot J-2 --into '5 L' --on 2020-09-05");
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    private static Path made(String name) {
        try {
            return Files.createDirectories(folder.resolve(name));
        } catch (IOException unable) {
            throw new UncheckedIOException(unable);
        }
    }

    @Test
    void tellsWhatAListingSays() {
        try (BookDesk other = new BookDesk(made("other"))) {
            assertEquals(
                    "#1  cost-listed; 2026-06-15; container 2 L, 30 units on a m²\n",
                    other.done("cost space 30 --container '2 L'"));
            assertEquals(
                    "#2  cost-listed; 2026-06-15; task cuttings-struck, per tag, hours 0.15\n",
                    other.done("cost work cuttings-struck --hours 0.15 --per-tag"));
            assertEquals("#3  cost-listed; 2026-06-15; per hour, amount 19.50 EUR\n", other.done("cost hour 19.5EUR"));
            assertEquals(
                    "no prices are listed as of 2026-06-15; \"help price set\" tells how\n", other.done("price list"));
        }
    }

    @Test
    void showsTheCostsInForce() {
        assertEquals("""
                costs in force on 2026-06-15

                what       only    cost                     since       entry
                ─────────  ──────  ───────────────────────  ──────────  ─────
                layer-set          0.25 h + 0.60 EUR each   2020-01-01      3
                severed            0.1 h each               2020-01-01      4
                2 L                0.40 EUR each            2020-01-01      5
                IBA                0.004 EUR each           2020-01-01      6
                an hour            20.00 EUR an hour        2020-01-01      2
                bench              36.50 EUR a m² and year  2020-01-01      7
                space      in 2 L  10 on a m²               2020-01-01      8
                """, desk.done("cost list"));
        assertEquals(
                "no costs are listed as of 2019-12-31; \"help cost work\" tells how\n",
                desk.done("cost list --as-of 2019-12-31"));
        assertTrue(desk.type("cost list --format csv")
                .out()
                .contains("\r\nmaterial,IBA,,,,unit,,0.004,EUR,,2020-01-01,6\r\n"));
    }

    @Test
    void showsThePricesInForce() {
        assertEquals(
                """
                size,cultivar,price,currency,since,entry
                M,,45.00,EUR,2020-01-01,9
                M,Acer palmatum 'Deshojo',65.00,EUR,2021-01-01,10
                """.replace("\n", "\r\n"), desk.type("price list --format csv").out());
        assertEquals(
                2,
                desk.type("price list --as-of 2020-12-31 --format csv")
                        .out()
                        .lines()
                        .count());
    }

    @Test
    void tellsWhatATreeHasCostWithItsEntries() {
        assertEquals("""
                J-1, layer, as of 2020-09-11, each act priced by the costs in force on its day

                spent on it

                day                      what            tag     h  amount (EUR)  entry
                ───────────────────────  ──────────────  ───  ────  ────────────  ─────
                2020-05-01               layer set       J-1  0.25          5.00     11
                2020-05-01               layer set       J-1                0.60     11
                2020-05-01               IBA             J-1               <0.01     11
                2020-09-01               severed         J-1  0.10          2.00     13
                2020-09-01               2 L             J-1                0.40     13
                2020-09-01 – 2020-09-11  bench, at Yard  J-1                0.10     13

                its share of those of its cohort that failed

                day         what       tag  share     h  amount (EUR)  entry
                ──────────  ─────────  ───  ─────  ────  ────────────  ─────
                2020-05-01  layer set  J-4  1/3    0.08          1.67     11
                2020-05-01  layer set  J-4  1/3                  0.20     11
                2020-05-01  IBA        J-4  1/3                 <0.01     11

                own cost:           8.10 EUR, 0.35 h, 0.0027 m² years of bench
                share of failures:  1.87 EUR, 0.08 h
                with failures:      9.97 EUR, 0.43 h, 0.0027 m² years of bench
                own cost: of one that did not fail; with failures: what those of its cohort
                    that failed so far cost is carried alike by those that did not, pending ones
                    among them
                """, desk.done("cost of J-1 --as-of 2020-09-11"));
    }

    @Test
    void explainsEachAmount() {
        String told = desk.done("cost of J-1 --as-of 2020-09-11 --explain").replaceAll("\\s+", " ");
        assertTrue(told.contains("0.25 h × 20.00 EUR, listed in"), told);
        assertTrue(told.contains("1 × 10 days / 365"), told);
    }

    @Test
    void callsFewMinutesLessThanAHundredthOfAnHourAndNotNone() {
        try (BookDesk other = new BookDesk(made("minutes"))) {
            other.done("acquire K-1 --on 2019");
            other.done("cost work layer-set --hours 0.004 --on 2020-01-01");
            other.done("layer set J-1 --mother K-1 --on 2020-05-01");
            String told = other.done("cost J-1");
            assertTrue(told.contains("layer set  J-1  <0.01"), told);
        }
    }

    @Test
    void namesWhatHasNoPrice() {
        String told = desk.done("cost of J-2 --as-of 2020-09-11").replaceAll("\\s+", " ");
        assertTrue(
                told.endsWith(
                        "not priced, and in no sum: no cost of \"potted\" is listed; no cost of \"5 L\" is listed;"
                                + " nothing lists how many stand on a square metre in 5 L "),
                told);
        assertTrue(told.contains("potted J-2 – 14"), told);
        String json = desk.done("cost of J-2 --as-of 2020-09-11 --format json");
        assertTrue(json.contains("\"missing\" : \"no cost of \\\"potted\\\" is listed\""), json);
        assertTrue(json.contains("\"not_priced\" : 3"), json);
    }

    @Test
    void tellsOfALayerThatFailed() {
        String told = desk.done("cost of J-4");
        assertTrue(told.startsWith("J-4, failed, as of 2026-06-15"), told);
        assertTrue(told.contains("of one:             – (none is left that did not fail"), told);
    }

    @Test
    void pricesAllByTheCostsOfOneDay() {
        assertTrue(desk.done("cost of J-1 --as-of 2020-09-11 --priced-on 2026-06-15")
                .startsWith("J-1, layer, as of 2020-09-11, all priced by the costs in force on 2026-06-15"));
        String none = desk.done("cost of J-1 --as-of 2020-09-11 --priced-on 2019-12-31");
        assertTrue(none.contains("own cost:           –, without"), none);
    }

    @Test
    void refusesInOneLine() {
        assertEquals("ortet: no plant or batch J-9; nearest: J-1, J-2, J-3\n", desk.refused("cost of J-9"));
        assertEquals(
                "ortet: J-1 began on 2020-05-01, after 2020-04-30\n", desk.refused("cost of J-1 --as-of 2020-04-30"));
        assertEquals(
                "ortet: AMOUNT of cost hour: expected an amount such as 0.35 EUR, found \"19.50\"\n",
                desk.wrong("cost hour 19.50"));
        assertEquals("ortet: amount: expected an amount, hours or both\n", desk.refused("cost work potted"));
        assertEquals(
                "ortet: ACT of cost work: no \"poted\"; expected one of acquired, layer-set, cuttings-struck,"
                        + " graft-worked, seed-sown, divided, checked, reworked, severed, drawn, potted, planted-out,"
                        + " lifted, moved, measured, cut-back, graded, counted, split, merged, sold; nearest: potted, moved\n",
                desk.wrong("cost work poted --hours 1"));
        assertEquals("ortet: no command \"cost wrok\"; nearest: cost work\n", desk.wrong("cost wrok potted --hours 1"));
        assertEquals(
                "ortet: \"cost\" is not a whole command; it goes on with bench, hour, list, material, of, space, work\n",
                desk.wrong("cost"));
        assertEquals("ortet: no plant or batch J-9; nearest: J-1, J-2, J-3\n", desk.refused("cost J-9"));
    }

    @Test
    void tellsTheCostOfATagWithoutOf() {
        assertEquals(desk.done("cost of J-1 --explain"), desk.done("cost J-1 --explain"));
        assertEquals(desk.done("cost of J-1"), desk.done("cost --as-of 2026-06-15 J-1"));
    }

    @Test
    void explainsCostByAllThatFollowsIt() {
        String told = desk.done("help cost");
        assertTrue(told.contains("cost of "), told);
        assertTrue(told.contains("cost work "), told);
        assertTrue(desk.done("help cost of").contains("also: cost"), told);
    }

    @Test
    void neverTakesThousandsForDecimals() {
        assertEquals(
                "ortet: PRICE of price set: expected at most 2 decimals for EUR, and thousands without a mark, found"
                        + " \"4,500EUR\"\n",
                desk.wrong("price set M 4,500EUR"));
        assertEquals(
                "ortet: --amount of cost material: expected an amount with a point, and thousands without a mark, found"
                        + " \"1,200EUR\"\n",
                desk.wrong("cost material pot --amount 1,200EUR"));
    }

    @Test
    void remarksOnNamesThatNothingBears() {
        try (BookDesk other = new BookDesk(made("named"))) {
            other.done("acquire K-1 --cultivar 'Acer palmatum ‘Deshojo’' --on 2019 --place 'House 1'");
            other.done("pot K-1 --into '2 L' --on 2020");
            other.done("grade K-1 --size medium --on 2021");
            assertEquals("""
                    #4  price-listed; 2026-06-15; size mediun, price 45.00 EUR
                    remark: nothing was graded in the size class "mediun" yet; nearest: medium
                    """, other.done("price set mediun 45EUR"));
            assertEquals("""
                    #5  price-listed; 2026-06-15; size medium, cultivar Acer palmatum 'Katsura',
                        price 45.00 EUR
                    remark: nothing in the book is of Acer palmatum 'Katsura'; nearest: Acer
                        palmatum 'Deshojo'
                    """, other.done("price set medium 45EUR --cultivar 'Acer palmatum ‘Katsura’'"));
            assertEquals(
                    "#6  cost-listed; 2026-06-15; material 3 L, amount 0.40 EUR\n",
                    other.done("cost material '3 L' --amount 0.40EUR"));
            assertEquals(
                    "#7  cost-listed; 2026-06-15; material 2l, amount 0.40 EUR\n",
                    other.done("cost material 2l --amount 0.40EUR"));
            assertEquals("""
                    #8  cost-listed; 2026-06-15; place Huose 1, per m2-year, amount 42.00 EUR
                    remark: the book knows no place "Huose 1" yet; nearest: House 1
                    """, other.done("cost bench 42EUR --place 'Huose 1'"));
        }
    }

    @Test
    void takesAnEpithetForTheCultivarThatBearsIt() {
        try (BookDesk other = new BookDesk(made("epithet"))) {
            other.done("acquire K-1 --cultivar 'Acer palmatum ‘Deshojo’' --on 2019");
            assertEquals("""
                    #2  price-listed; 2026-06-15; size medium, cultivar Acer palmatum 'Deshojo',
                        price 65.00 EUR
                    """, other.done("price set medium 65EUR --cultivar Deshojo"));
            assertEquals(
                    "#3  price-listed; 2026-06-15; size medium, cultivar Acer, price 49.00 EUR\n",
                    other.done("price set medium 49EUR --cultivar Acer"));
        }
    }

    @Test
    void refusesToAddTwoCurrencies() {
        try (BookDesk other = new BookDesk(made("mixed"))) {
            other.done("acquire K-1 --on 2019");
            other.done("cost work layer-set --amount 2EUR --on 2020-01-01");
            assertEquals("""
                    #3  cost-listed; 2020-01-01; material sphagnum, amount 0.30 GBP
                    remark: all else is listed in EUR, and what is in GBP cannot be added to it
                    """, other.done("cost material sphagnum --amount 0.30GBP --on 2020-01-01"));
            other.done("layer set J-1 --mother K-1 --on 2020-05-01 --medium sphagnum");
            assertEquals(
                    "ortet: what J-1 cost is in EUR (listed in #2) and GBP (listed in #3) and cannot be added; list all"
                            + " of it in one currency\n",
                    other.refused("cost of J-1"));
        }
    }
}
