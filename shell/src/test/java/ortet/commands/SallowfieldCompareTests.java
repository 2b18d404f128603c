package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Comparisons on the demo nursery: what the guide shows, and what no answer may hold. */
class SallowfieldCompareTests {
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
        String line = "compare layering cuttings --cultivar Deshojo --stem 25 --as-of 2026-06-15";
        demo.looksAsInTheGuide(line);
    }

    @Test
    void holdsNoNumberThatIsNone() {
        for (String line : List.of(
                "compare layering cuttings --by cultivar",
                "compare layering cuttings --by cultivar --within mother --format json",
                "compare grafting seed --by taxon --stem 10 --format csv",
                "compare layering cuttings --as-of 1990-01-01",
                "compare layering cuttings --as-of 1990-01-01 --by cultivar",
                "compare layering cuttings --as-of 1990-01-01 --format json")) {
            String out = answer(line);
            assertFalse(out.contains("NaN"), line);
            assertFalse(out.contains("Infinity"), line);
        }
        assertTrue(answer("compare layering cuttings --as-of 1990-01-01")
                .contains("Nothing was set on either side by this day."));
    }

    @Test
    void neverSpeaksAgainstItsInterval() {
        String csv = answer("compare layering cuttings --by cultivar --format csv");
        List<String> lines = csv.lines().toList();
        List<String> header = List.of(lines.get(0).split(","));
        int lower = header.indexOf("difference_lower");
        int upper = header.indexOf("difference_upper");
        int told = 0;
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            String verdict = cells[cells.length - 1];
            int away = header.size() - cells.length;
            if (verdict.endsWith("yields-more")) {
                told++;
                double from = Double.parseDouble(cells[lower - away]);
                double to = Double.parseDouble(cells[upper - away]);
                assertTrue(verdict.startsWith("first") ? from > 0 : to < 0, line);
            }
        }
        assertTrue(told > 10, told + " verdicts");
    }
}
