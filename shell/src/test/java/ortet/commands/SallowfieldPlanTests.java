package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** Plans on the demo nursery: what the guide shows, and what no answer may hold. */
class SallowfieldPlanTests {
    @TempDir
    static Path folder;

    private static Path book;

    @BeforeAll
    static void make() {
        book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open()) {
            assertEquals(0, desk.type("demo", "--to", book.toString()).status());
        }
    }

    private static String answer(String line) {
        try (Desk desk = Desk.open()) {
            Desk.Answer answer = desk.script(line + " --book " + book + "\n");
            assertEquals(0, answer.status(), answer.err());
            return answer.out();
        }
    }

    @Test
    void looksAsTheGuideShowsIt() throws IOException {
        String guide = Files.readString(Path.of("..").resolve("docs/guide.md"));
        for (String line : List.of(
                "plan --cultivar Deshojo --count 2 --by 2030-10-01 --method layer --as-of 2026-06-15",
                "plan --cultivar Deshojo --count 20 --by 2030-10-01 --as-of 2026-06-15")) {
            int from = guide.indexOf("ortet " + line + "\n");
            assertTrue(from > 0, "the guide has no transcript of " + line);
            String shown = guide.substring(from + line.length() + 7, guide.indexOf("\n```", from));
            assertEquals(shown.strip(), answer(line).strip());
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
}
