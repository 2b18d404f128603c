package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people type and read of plans, in a small nursery. */
class PlanCommandsTests {
    private static final String ASKED = "plan --cultivar Deshojo --count 4 --by 2029-11-01";

    @TempDir
    static Path folder;

    private static BookDesk desk;

    /** Ten seasons of ten layers on one mother, eight of them taken and seven of these graded two years later. */
    @BeforeAll
    static void layOut() throws IOException {
        desk = new BookDesk(folder);
        fill(desk, folder);
    }

    static void fill(BookDesk book, Path where) throws IOException {
        StringBuilder rows =
                new StringBuilder("day,kind,tags,mother,cultivar,cause,size,positions,task,hours,sign,amount,per\n");
        rows.append("2010-03-01,acquired,K-1,,Acer palmatum 'Deshojo',,,,,,,,\n");
        rows.append("2010-03-01,acquired,K-2,,Acer palmatum 'Deshojo',,,,,,,,\n");
        rows.append("2011-03-01,kept-as-stock,K-1 K-2,,,,,,,,,,\n");
        for (int year = 2012; year < 2022; year++) {
            String tag = "J" + year + "-";
            rows.append(year + "-05-10,layer-set," + tag + "1.." + tag + "10,K-1,,,,,,,,,\n");
            rows.append(year + "-09-20,severed," + tag + "1.." + tag + "8,,,,,,,,,,\n");
            rows.append(year + "-09-21,failed," + tag + "9 " + tag + "10,,,dried,,,,,,,\n");
            rows.append((year + 1) + "-09-20,seen," + tag + "1.." + tag + "8,,,,,,,,,,\n");
            rows.append((year + 2) + "-10-01,graded," + tag + "1.." + tag + "7,,,,medium,,,,,,\n");
        }
        rows.append("2026-02-01,measured,K-1,,,,,8-12:6 12-20:5,,,,,\n");
        rows.append("2026-02-01,measured,K-2,,,,,8-12:20,,,,,\n");
        rows.append("2026-02-02,held,K-2,,,,,,,,cankers,,\n");
        rows.append("2026-01-01,cost-listed,,,,,,,layer-set,0.25,,,\n");
        rows.append("2026-01-01,cost-listed,,,,,,,,,,20 EUR,hour\n");
        Path file = where.resolve("history.csv");
        Files.writeString(file, rows);
        book.done("book import " + file);
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void tellsOnePlanInFull() {
        String out = flat(desk.done(ASKED + " --method layer"));
        assertTrue(
                out.startsWith(
                        "plan: 4 of Acer palmatum 'Deshojo' fit for sale by 2029-11-01, 90 % sure, as of 2026-06-15"
                                + " Set 8 layers, 2027-05-10 (week 19). Then 4 or more are fit for sale by 2029-10-22 with a chance of"
                                + " 92.6 %. Expected: 5.5 (3 to 8, 90 %). Ready to sever from 2027-09-20 to 2027-09-20 (half after 133"
                                + " days; 80 known, of its own). Material: –. Hours: 2.0. Cost: 40.00 EUR, without what has no price:"
                                + " no cost of \"severed\" is listed; no cost of \"potted\" is listed;"),
                out);
        assertTrue(out.contains("take, of those set 80 of 100 10 – 80 (73 to 86)"), out);
        assertTrue(out.contains("5 × 12–20, 3 × 8–12 11 2026-02-01"), out);
        assertTrue(out.endsWith("Left out: K-2, held for plant health. "), out);
        String explained = flat(desk.done(ASKED + " --method layer --explain"));
        assertTrue(explained.contains("rate of a season to come Beta(80.50, 20.50)."), explained);
        assertTrue(explained.contains("8.0 × layer set: 0.25 h × 20.00 EUR (listed in #"), explained);
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void comparesMethodsAndSaysWhyOneCannotBeMet() {
        String out = flat(desk.done("plan --cultivar Deshojo --count 40 --by 2029-11-01"));
        assertTrue(
                out.contains(
                        "This cannot be met by layers: 67 positions are needed, 11 are free. Nearest that can: 5 by"
                                + " 2029-11-01, 90 % sure; or 8 by 2029-11-01, as likely as not. All with every free position used, set 2027-05-10 (week 19)."),
                out);
        String csv = desk.type("plan --cultivar Deshojo --count 4 --by 2029-11-01 --format csv")
                .out();
        assertTrue(csv.startsWith("method,can,to_set,chance,chance_of_one_less,expected,expected_lower,"), csv);
        assertTrue(csv.contains("\nlayer,yes,8,0.92"), csv);
        assertTrue(csv.contains(",2027-05-10,2027-05-10,2029-10-22,2.000000,40.000000,EUR,3,"), csv);
    }

    @Test
    void keepsAPlanAndTellsHowItStands() throws IOException {
        Path own = Files.createDirectory(folder.resolve("kept"));
        try (BookDesk book = new BookDesk(own)) {
            fill(book, own);
            assertEquals(
                    "no plan is kept as of 2026-06-15; \"help plan\" tells how to keep one\n", book.done("plan list"));
            String kept = flat(book.done(ASKED + " --method layer --keep 'Deshojo 2029'"));
            assertTrue(kept.contains("planned; 2026-06-15; name Deshojo 2029, cultivar Acer palmatum 'Deshojo'"), kept);
            assertTrue(kept.contains("wanted 4, wanted by 2029-11-01, sure 90 %, to set 8,"), kept);
            String shown = book.done("plan show 'deshojo 2029'").replaceAll("\\s+", " ");
            assertTrue(
                    shown.contains(
                            "so far: 0 set, of these 0 pending, 0 taken, 0 failed; 0 fit for sale, 0 more growing on; 8 still to be set"),
                    shown);
            assertTrue(shown.contains("on course: as sure as planned"), shown);
            String late =
                    book.done("plan show 'Deshojo 2029' --as-of 2027-06-01").replaceAll("\\s+", " ");
            assertTrue(late.contains("behind: less sure than the 90 % planned; the days of setting are over"), late);
            String over = book.done("plan show --as-of 2030-01-01").replaceAll("\\s+", " ");
            assertTrue(over.contains("missed: 0 fit for sale by 2029-11-01, 4 wanted"), over);
            String listed = book.done("plan list --format csv");
            assertTrue(
                    listed.contains(
                            "Deshojo 2029,Acer palmatum 'Deshojo',layer,4,2029-11-01,90,,8,2027-05-10,2027-05-10,"),
                    listed);
            assertEquals(
                    "ortet: no plan \"Deshojo\"; there are Deshojo 2029; nearest: Deshojo 2029\n",
                    book.refused("plan show Deshojo").replace("\n    ", " "));
        }
    }

    @Test
    void keepsNothingThatCannotBeMet() {
        var answer = desk.type("plan --cultivar Deshojo --count 40 --by 2029-11-01 --method layer --keep Much");
        assertEquals(1, answer.status());
        assertEquals("ortet: nothing is kept as \"Much\": the plan cannot be met\n", answer.err());
    }

    @Test
    void servesTheFirstDayFirstAndNamesWhatIsMissing() throws IOException {
        Path file = folder.resolve("orders.csv");
        Files.writeString(
                file, "cultivar,count,by,sure,method\nDeshojo,4,2029-12-01,,layer\nDeshojo,4,2029-11-01,0.9,layer\n");
        var answer = desk.type("plan --orders " + file + " --format csv");
        assertEquals(0, answer.status(), answer.err());
        String[] lines = answer.out().split("\r?\n");
        assertTrue(lines[1].startsWith("3,Acer palmatum 'Deshojo',4,2029-11-01,,0.9,layer,8,0.9"), lines[1]);
        // three positions are left for the other
        assertTrue(lines[2].startsWith("2,Acer palmatum 'Deshojo',4,2029-12-01,,0.9,layer,3,"), lines[2]);
        assertTrue(
                answer.err().contains("line 2: This cannot be met by layers: 8 positions are needed, 3 are free."),
                answer.err());
        assertTrue(desk.done("plan --orders " + file + " --format json").contains("\"missing\" : 3"));
    }

    @Test
    void namesEveryFaultOfAFileOfOrders() throws IOException {
        Path file = folder.resolve("bad.csv");
        Files.writeString(
                file,
                "cultivar,count,by,sure,method\nDeshojo,0,2029-12-01,,\nDeshojo,4,soon,,\nDeshojo,4,2020-01-01,,\n"
                        + "Deshojo,4,2029-12-01,90,\nDeshojo,4,2029-12-01,,seed\n");
        assertEquals(
                "ortet: " + file + ":2:count: expected 1 to 5000 trees, found 0\n"
                        + "ortet: " + file + ":3:by: expected a day such as 2027-10-01, found \"soon\"\n"
                        + "ortet: " + file + ":4:by: expected a day after 2026-06-15, found 2020-01-01\n"
                        + "ortet: " + file + ":5:sure: expected a share from 0.01 to 0.999, such as 0.9, found 90.0\n"
                        + "ortet: " + file + ":6:method: expected layer, cutting, graft or nothing, found \"seed\"\n",
                desk.refused("plan --orders " + file));
        Files.writeString(file, "cultivar,count,by,size\nDeshoj,4,2029-12-01,\nDeshojo,4,2029-12-01,huge\n");
        assertEquals(
                "ortet: " + file + ":2:cultivar: no cultivar Deshoj; nearest: Acer palmatum 'Deshojo'\n"
                        + "ortet: " + file
                        + ":3:size: nothing was ever graded in the size class \"huge\"; there are medium\n",
                desk.refused("plan --orders " + file));
        Files.writeString(file, "cultivar,count,by,colour\nDeshojo,4,2029-12-01,red\n");
        assertEquals(
                "ortet: " + file + ":1:colour: expected the columns cultivar, count, by, size, sure and method, found"
                        + " \"colour\"\n",
                desk.refused("plan --orders " + file));
    }

    @Test
    void refusesWhatDoesNotGoTogether() {
        assertEquals(
                "ortet: expected --cultivar, --count and --by, or --orders with a file\n",
                desk.wrong("plan --cultivar Deshojo"));
        assertEquals(
                "ortet: --orders goes alone: the file says what is wanted, how many and by when\n",
                desk.wrong("plan --orders orders.csv --cultivar Deshojo"));
        assertEquals(
                "ortet: --keep needs --method: a plan is kept for one of them\n", desk.wrong(ASKED + " --keep Much"));
        assertEquals(
                "ortet: expected a day after 2026-06-15 to plan for, found 2026-01-01\n",
                desk.refused("plan --cultivar Deshojo --count 4 --by 2026-01-01"));
        assertEquals(
                "ortet: --sure of plan: expected a share from 0.01 to 0.999, such as 0.9 or 90%, found 9000%\n",
                desk.wrong(ASKED + " --sure 90"));
    }

    @Test
    void guessesNothingInAnEmptyBook() throws IOException {
        Path own = Files.createDirectory(folder.resolve("empty"));
        try (BookDesk book = new BookDesk(own)) {
            book.done("acquire K-1 --cultivar 'Acer palmatum' --on 2015-03-01");
            String out = book.done("plan --cultivar 'Acer palmatum' --count 3 --by 2029-01-01")
                    .replaceAll("\\s+", " ");
            assertTrue(
                    out.contains(
                            "This cannot be planned by layers: the book does not tell of any that were ever set of it, nor"
                                    + " enough of others to say what takes"),
                    out);
            assertTrue(book.done("plan show").startsWith("no plan is kept"));
        }
    }

    @Test
    void sharesHoursAmongOrdersAndSaysWhatBinds() throws IOException {
        Path orders = folder.resolve("shared.csv");
        Files.writeString(orders, "cultivar,count,by,method\nDeshojo,2,2029-11-01,layer\nDeshojo,2,2029-11-02,layer\n");
        Path limits = folder.resolve("hours.csv");
        // a layer takes a quarter of an hour to set: 1.5 hours are for six
        Files.writeString(limits, "what,where,year,amount\nhours,spring,2027,1.5\nhours,spring,,0\n");
        String free = flat(desk.done("plan --orders " + orders));
        assertTrue(free.contains("hours and benches are added up, not limited"), free);
        String out = flat(desk.done("plan --orders " + orders + " --limits " + limits));
        assertTrue(out.contains("there are too few hours of spring in 2027"), out);
        assertTrue(out.contains("nearly used up: hours of spring in 2027 1.5 of 1.5"), out);
        String one =
                flat(desk.done("plan --cultivar Deshojo --count 4 --by 2029-11-01 --method layer --limits " + limits));
        assertTrue(
                one.contains("This cannot be met by layers: there are too few hours of spring in 2027 for the 8 that"),
                one);
        Files.writeString(limits, "what,where,amount\nhours,spring,2\n");
        assertTrue(
                flat(desk.done("plan --cultivar Deshojo --count 4 --by 2029-11-01 --method layer --limits " + limits))
                        .contains("Set 8 layers"));
        Files.writeString(limits, "what,where,amount\nhours,spring,2\nlicence,Acer palmatum 'Deshojo',3\n");
        assertEquals(
                "note: of --limits a plan counts hours and room alone, not licence\n",
                desk.type("plan --orders " + orders + " --limits " + limits).err());
        Files.writeString(limits, "what,where,amount\nhours,Lent,2\n");
        String bad =
                desk.type("plan --orders " + orders + " --limits " + limits).err();
        assertTrue(bad.contains("hours.csv:2: \"Lent\" is no season"), bad);
    }
}
