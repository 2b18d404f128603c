package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** Forecasts of the demo nursery: what the guide shows, and what no answer may hold. */
class SallowfieldForecastTests {
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
        String line = "forecast --cultivar Deshojo --months 18 --as-of 2026-06-15";
        demo.looksAsInTheGuide(line);
    }

    @Test
    void holdsNoNumberThatIsNone() {
        for (String line : List.of(
                "forecast --as-of 2026-06-15 --months 3 --explain",
                "forecast --as-of 1990-01-01",
                "forecast --as-of 1990-01-01 --format json",
                "forecast --as-of 2026-06-15 --size medium --months 6 --format csv",
                "forecast --check 1991-01-01 --as-of 1992-01-01 --format json",
                "forecast --check 2024-06-15 --as-of 2026-06-15 --cultivar Zelkova --explain")) {
            String out = answer(line);
            assertFalse(out.contains("NaN"), line);
            assertFalse(out.contains("Infinity"), line);
            assertFalse(out.isBlank(), line);
        }
        assertTrue(answer("forecast --as-of 1990-01-01").contains("Nothing to go by"));
    }

    @Test
    void saysThatTheDemoWasWrittenLater() {
        String out = answer("forecast --check 2024-06-15 --as-of 2026-06-15").replaceAll("\\s+", " ");
        assertTrue(out.contains("had been written into it by then"), out);
        assertTrue(out.contains("The forecasts "), out);
    }

    @Test
    void refusesInOneLine() {
        try (Desk desk = Desk.open()) {
            Desk.Answer late =
                    desk.script("forecast --check 2026-06-15 --as-of 2026-06-15 --book " + demo.book() + "\n");
            assertEquals(1, late.status());
            assertTrue(late.err().contains("expected a day before 2026-06-15"), late.err());
            Desk.Answer size = desk.script("forecast --size mediun --book " + demo.book() + "\n");
            assertEquals(1, size.status());
            assertTrue(size.err().contains("nearest: medium"), size.err());
            Desk.Answer unlike = desk.script("forecast --size tiny --book " + demo.book() + "\n");
            assertEquals(1, unlike.status());
            assertTrue(unlike.err().contains("no size class tiny; expected one of "), unlike.err());
            for (String months : new String[] {"0", "121"}) {
                Desk.Answer usage = desk.script("forecast --months " + months + " --book " + demo.book() + "\n");
                assertEquals(2, usage.status());
                assertTrue(
                        usage.err().contains("--months of forecast: expected 1 to 120, found " + months), usage.err());
            }
            Desk.Answer few = desk.script("forecast --simulations 5 --book " + demo.book() + "\n");
            assertEquals(2, few.status());
            assertTrue(few.err().contains("--simulations of forecast: expected 100 to 10000, found 5"), few.err());
        }
    }
}
