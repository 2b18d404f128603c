package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans on the demo nursery: what the guide shows, and what no answer may hold. */
class SallowfieldPlanTests {
    @TempDir
    static Path folder;

    private static GuidedDemo demo;

    @BeforeAll
    static void make() {
        demo = new GuidedDemo(folder);
    }

    private static String answer(String line) {
        return demo.answer(line);
    }

    @Test
    void looksAsTheGuideShowsIt() throws IOException {
        for (String line : List.of(
                "plan --cultivar Deshojo --count 2 --by 2030-10-01 --method layer --as-of 2026-06-15",
                "plan --cultivar Deshojo --count 20 --by 2030-10-01 --as-of 2026-06-15")) {
            demo.looksAsInTheGuide(line);
        }
    }

    @Test
    void holdsNoNumberThatIsNone() {
        for (String line : List.of(
                "plan --cultivar Kotobuki --count 12 --by 2031-10-01 --as-of 2026-06-15 --format json",
                "plan --cultivar Chojubai --count 5 --by 2030-05-01 --method graft --as-of 2026-06-15 --explain",
                "plan --cultivar Deshojo --count 5 --by 1991-01-01 --as-of 1990-01-01 --format csv",
                "plan --cultivar 'Acer palmatum' --count 200 --by 2028-10-01 --size medium --as-of 2026-06-15")) {
            String out = answer(line);
            assertFalse(out.contains("NaN"), line);
            assertFalse(out.contains("Infinity"), line);
        }
    }

    @Test
    void keepsInTheDemoWhatPlanWouldHaveKeptOnThatDay() {
        String kept = answer("plan list --format csv --as-of 2026-10-31");
        List<String> head = List.of(kept.lines().findFirst().orElseThrow().split(","));
        int plans = 0;
        for (String row : kept.lines().skip(1).toList()) {
            List<String> cells = List.of(row.split(",", -1));
            String size = cells.get(head.indexOf("size"));
            String asked = answer("plan --cultivar \"" + cells.get(head.indexOf("cultivar")) + "\" --method "
                    + cells.get(head.indexOf("method")) + " --count " + cells.get(head.indexOf("wanted")) + " --by "
                    + cells.get(head.indexOf("wanted_by")) + (size.isEmpty() ? "" : " --size " + size)
                    + " --as-of 2026-10-30 --format csv");
            List<String> names = List.of(asked.lines().findFirst().orElseThrow().split(","));
            List<String> told =
                    List.of(asked.lines().skip(1).findFirst().orElseThrow().split(",", -1));
            for (String column : List.of("to_set", "set_from", "set_to")) {
                assertEquals(told.get(names.indexOf(column)), cells.get(head.indexOf(column)), row);
            }
            assertEquals(
                    Double.parseDouble(told.get(names.indexOf("expected"))),
                    Double.parseDouble(cells.get(head.indexOf("expected_then"))),
                    0.05,
                    row);
            plans++;
        }
        assertEquals(3, plans);
    }
}
