package ortet.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressBarTests {
    private final StringWriter err = new StringWriter();
    private final AtomicLong nanos = new AtomicLong();

    private ProgressBar bar(boolean shown, int width) {
        return new ProgressBar(new PrintWriter(err), shown, width, nanos::get);
    }

    @Test
    void showsAndErasesItself() {
        try (ProgressBar bar = bar(true, 80)) {
            bar.at("reading", 1, 2);
            assertEquals("\rreading  ████████████░░░░░░░░░░░░  50 %  1 of 2", err.toString());
        }
        assertTrue(err.toString().endsWith("\r" + " ".repeat(47) + "\r"), err.toString());
    }

    @Test
    void isShownAtMostEvery80Milliseconds() {
        try (ProgressBar bar = bar(true, 80)) {
            for (int i = 0; i < 1000; i++) {
                bar.at("reading", i, 1000);
                nanos.addAndGet(1_000_000);
            }
        }
        assertEquals(13, err.toString().split("reading", -1).length - 1);
    }

    @Test
    void saysNothingWhereNobodyLooks() {
        try (ProgressBar bar = bar(false, 80)) {
            bar.at("reading", 1, 2);
        }
        assertEquals("", err.toString());
    }

    @Test
    void countsWhereTheWholeIsUnknownAndFitsANarrowScreen() {
        bar(true, 80).at("reading", 5, 0);
        assertEquals("\rreading  5", err.toString());
        err.getBuffer().setLength(0);
        bar(true, 20).at("reading", 5, 10);
        assertTrue(Text.columns(err.toString().substring(1)) < 20, err.toString());
    }
}
