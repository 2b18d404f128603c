package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** What the documents tell people to type really works, line after line. */
class GuideTests {
    private static final Path TOP = Path.of("..");
    private static final Pattern FIELD = Pattern.compile("\"([a-z_]+)\" :");

    @TempDir
    Path folder;

    /** Return the lines in fenced blocks that begin with the prefix, without it and without remarks after wide gaps. */
    private static List<String> lines(Path document, String prefix) throws IOException {
        List<String> lines = new ArrayList<>();
        boolean fenced = false;
        for (String line : Files.readAllLines(document)) {
            if (line.startsWith("```")) {
                fenced = !fenced;
            } else if (fenced && line.startsWith(prefix)) {
                lines.add(line.substring(prefix.length())
                        .replaceAll(" {3,}.*", "")
                        .strip());
            }
        }
        return lines;
    }

    /** Put the example of the page about mappings into the folder, for the lines that read it. */
    private void layOutSpreadsheets() throws IOException {
        String page = Files.readString(TOP.resolve("docs/mapping.md"));
        for (String name : List.of("csv trees.csv", "csv pots.csv", "mapping")) {
            Matcher block =
                    Pattern.compile("```" + name + "\n(.*?)```", Pattern.DOTALL).matcher(page);
            assertTrue(block.find(), name);
            String file = name.equals("mapping") ? "mapping.txt" : name.substring("csv ".length());
            Files.writeString(folder.resolve(file), block.group(1));
        }
    }

    private void runAll(List<String> lines) throws IOException {
        layOutSpreadsheets();
        String book = folder.resolve("book.ortet").toString();
        try (Desk desk = Desk.open(BookDesk.Day.class)) {
            for (String line : lines) {
                String inFolder = line.replaceAll(
                        "\\b(export-2026|backup-2026.ortet|family\\.graphml|nursery\\.dot|(?:trees|pots|faults)\\.csv|(?:mapping|proposal)\\.txt)\\b",
                        folder + "/$1");
                Desk.Answer answer = desk.script(inFolder + " --book " + book + "\n");
                assertEquals(0, answer.status(), () -> line + "\n" + answer.err());
            }
        }
    }

    @Test
    void everyLineOfTheGuideRuns() throws IOException {
        List<String> lines = lines(TOP.resolve("docs/guide.md"), "ortet ").stream()
                .filter(line -> !line.startsWith("@"))
                .toList();
        assertTrue(lines.size() > 25, () -> "only " + lines.size() + " lines found");
        runAll(lines);
    }

    @Test
    void everyLineAboutMappingsRuns() throws IOException {
        List<String> lines = new ArrayList<>(List.of("book new --zone Europe/Dublin"));
        lines.addAll(lines(TOP.resolve("docs/mapping.md"), "ortet "));
        assertEquals(7, lines.size());
        runAll(lines);
    }

    @Test
    void everyLineOfTheReadmeRuns() throws IOException {
        List<String> lines = lines(TOP.resolve("README.md"), "./ortet ").stream()
                .filter(line -> !line.equals("demo"))
                .toList();
        assertTrue(lines.size() > 6, () -> "only " + lines.size() + " lines found");
        runAll(lines);
    }

    /** Compare what has every field: two trays and more layers a side, within seasons, not told apart. */
    private static String compared(BookDesk desk) {
        desk.done("acquire K-9 --cultivar 'Acer palmatum' --on 2015-03-01");
        desk.done("layer set J-31 J-32 --mother K-9 --stem 12 --on 2023-05-01");
        desk.done("layer sever J-31 --roots full --on 2023-09-01");
        desk.done("layer fail J-32 --on 2023-09-01");
        for (String tray : List.of("T-1", "T-2")) {
            String year = tray.equals("T-1") ? "2023" : "2022";
            desk.done("cuttings strike " + tray + " --mother K-9 --count 10 --on " + year + "-06-01");
            desk.done("cuttings draw P" + tray + "-1..P" + tray + "-5 --from " + tray + " --on " + year + "-08-01");
            desk.done("cuttings fail " + tray + " --count 5 --on " + year + "-08-02");
        }
        desk.done("layer set J-33 J-34 --mother K-9 --on 2022-05-01");
        desk.done("layer sever J-33 --roots full --on 2022-09-01");
        desk.done("layer fail J-34 --on 2022-09-01");
        desk.done("move J-31 J-33 --to Yard --on 2025-09-01");
        desk.done("grade J-31 --size medium --on 2025-09-02");
        return desk.done("compare layering cuttings --by cultivar --within season --stem 10 --method layer --from 2000"
                        + " --to 2030 --mother K-9 --cultivar 'Acer palmatum' --format json")
                + desk.done("compare layering cuttings --within season --stem 10 --format json");
    }

    /** Plans that have every field: one that can be met, one that cannot, and orders, in a nursery with a history. */
    private String planned() throws IOException {
        Path own = Files.createDirectory(folder.resolve("planned"));
        try (BookDesk desk = new BookDesk(own)) {
            PlanCommandsTests.fill(desk, own);
            Path orders = own.resolve("orders.csv");
            Files.writeString(orders, "cultivar,count,by\nDeshojo,4,2029-11-01\n");
            desk.done("plan --cultivar Deshojo --count 4 --by 2029-11-01 --method layer --keep Four");
            return desk.done("plan --cultivar Deshojo --count 4 --by 2029-11-01 --format json")
                    + desk.done("plan --cultivar Deshojo --count 40 --by 2029-11-01 --format json")
                    + desk.done("plan --orders " + orders + " --format json")
                    + desk.done("plan show --format json");
        }
    }

    @Test
    void everyFieldOfTheJsonIsDescribed() throws IOException {
        String described = Files.readString(TOP.resolve("docs/json.md"));
        try (BookDesk desk = new BookDesk(folder)) {
            desk.done("acquire K-1 --cultivar 'Acer palmatum'");
            desk.done("layer set J-1 J-2 --mother K-1 --on 2026-06-15");
            desk.done("layer sever J-1 --roots full");
            desk.done("measure J-1 --stem 12");
            desk.done("correct 4 --field stem_mm --value 13");
            desk.done("sell J-1");
            Files.writeString(folder.resolve("looks.csv"), "left,right\n1,2\n");
            desk.done("layer fail J-2");
            desk.done("cost work layer-set --amount 1EUR");
            desk.done("price set M 40EUR");
            String all = desk.done("trace J-1 --format json")
                    + desk.done("figures survival " + folder.resolve("looks.csv")
                            + " --left left --right right --format json")
                    + desk.done("plant J-1 --format json")
                    + desk.done("plant K-1 --format json")
                    + desk.done("take --by mother --method layer --format json")
                    + desk.done("mothers --format json")
                    + desk.done("timing --format json")
                    + compared(desk)
                    + desk.done("forecast --cultivar 'Acer palmatum' --format json")
                    + desk.done("forecast --as-of 1990-01-01 --format json")
                    + desk.done("forecast --check 2024-01-01 --size medium --format json")
                    + desk.done("offspring K-1 --format json")
                    + desk.done("clone J-1 --format json")
                    + desk.done("clones --format json")
                    + desk.done("lineage check --format json")
                    + desk.done("recall K-1 --contacts 1 --format json")
                    + desk.done("kin J-1 K-1 --format json")
                    + desk.done("cost of J-1 --format json")
                    + desk.done(
                            "plan --cultivar 'Acer palmatum' --count 3 --by 2029-01-01 --method layer --format json")
                    + planned()
                    + desk.done("cost list --format json")
                    + desk.done("price list --format json")
                    + desk.done("choose --draws 2 --format json");
            TreeSet<String> missing = new TreeSet<>();
            Matcher matcher = FIELD.matcher(all);
            int found = 0;
            while (matcher.find()) {
                found++;
                if (!described.contains("`" + matcher.group(1) + "`")) {
                    missing.add(matcher.group(1));
                }
            }
            assertTrue(found > 100);
            missing.removeAll(List.of("cultivar", "roots", "stem_mm", "mother"));
            assertEquals(new TreeSet<>(), missing, "fields that docs/json.md does not describe");
        }
    }
}
