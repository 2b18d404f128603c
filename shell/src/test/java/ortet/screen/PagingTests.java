package ortet.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.screen.Surroundings.Paging;

class PagingTests {
    @TempDir
    Path folder;

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    private static Surroundings terminal(int height, boolean dumb, Paging paging) {
        return new Surroundings(true, true, true, 20, height, true, dumb, false, paging);
    }

    /** Return what came on the screen; the pager puts what it is given into a file. */
    private String shown(Surroundings around, String... lines) {
        return Page.of(
                        around,
                        screen -> screen.page(out -> {
                            for (String line : lines) {
                                out.println(line);
                            }
                        }))
                .out();
    }

    private Paging pager() {
        return new Paging(true, Optional.of("cat > '" + folder.resolve("paged") + "'"));
    }

    @Test
    void handsALongAnswerToThePager() throws IOException {
        assertEquals("", shown(terminal(4, false, pager()), "1", "2", "3 楓", "\u001b[1m4\u001b[0m"));
        assertEquals("1\n2\n3 楓\n\u001b[1m4\u001b[0m\n", Files.readString(folder.resolve("paged")));
    }

    @Test
    void showsWhatFitsAtOnce() {
        assertEquals("1\n2\n3\n", shown(terminal(4, false, pager()), "1", "2", "3"));
        assertFalse(Files.exists(folder.resolve("paged")));
    }

    @Test
    void countsRowsOfTheScreenNotLines() {
        assertEquals(3, Text.rows("a\n" + "b".repeat(21) + "\n", 20));
        assertEquals(1, Text.rows("楓".repeat(10) + "\n", 20));
        assertEquals(2, Text.rows("楓".repeat(11), 20));
        assertEquals(1, Text.rows("\u001b[1m" + "b".repeat(20) + "\u001b[0m\n", 20));
        assertEquals("", shown(terminal(3, false, pager()), "a", "b".repeat(21)));
    }

    @Test
    void pagesNothingWhereThatIsNotWantedOrNotPossible() {
        for (Surroundings around : new Surroundings[] {
            terminal(2, false, Paging.NONE),
            terminal(2, true, pager()),
            terminal(0, false, pager()),
            new Surroundings(true, false, true, 20, 2, true, false, false, pager())
        }) {
            assertEquals("1\n2\n3\n", shown(around, "1", "2", "3"));
        }
        assertFalse(Files.exists(folder.resolve("paged")));
    }

    @Test
    void leavesAnAnswerThatThePagerDoesNotReadToItsEnd() {
        String much = "x".repeat(19);
        String[] lines = new String[50_000];
        java.util.Arrays.fill(lines, much);
        assertEquals("", shown(terminal(4, false, new Paging(true, Optional.of("true"))), lines));
    }

    @Test
    void writesWhatCameBeforeFirst() throws IOException {
        Page page = Page.of(terminal(3, false, pager()), screen -> {
            screen.println("before");
            screen.page(out -> out.println("1\n2\n3"));
            screen.println("after");
        });
        assertEquals("before\nafter\n", page.out());
        assertEquals("1\n2\n3\n", Files.readString(folder.resolve("paged")));
    }

    @Test
    void stopsALongAnswerWhenAsked() {
        Sheet.Builder sheet = Sheet.titled("", Column.text("tag", "tag"));
        for (int at = 0; at < 10; at++) {
            sheet.row("J-" + at);
        }
        for (OutputFormat format : OutputFormat.values()) {
            assertThrows(
                    Stopped.class,
                    () -> Page.piped(80, screen -> {
                        Thread.currentThread().interrupt();
                        screen.show(sheet.build(), format);
                    }),
                    format.name());
            assertFalse(Thread.interrupted());
        }
    }

    @Test
    void stopsLongWorkWhenAsked() {
        assertThrows(
                Stopped.class,
                () -> Page.piped(80, screen -> {
                    try (ProgressBar bar = screen.progress()) {
                        bar.at("reading", 1, 10);
                        Thread.currentThread().interrupt();
                        bar.at("reading", 2, 10);
                    }
                }));
    }

    @Test
    void breaksAsidesAtBlanksWhereSomebodySitsAtThem() {
        assertEquals(
                "ortet: no command\n\"numbr\"; nearest:\nnumber\n",
                Page.of(
                                terminal(10, false, Paging.NONE),
                                screen -> screen.aside("ortet: no command \"numbr\"; nearest: number"))
                        .err());
        assertEquals(
                "ortet: no command \"numbr\"; nearest: number\n",
                Page.piped(20, screen -> screen.aside("ortet: no command \"numbr\"; nearest: number"))
                        .err());
    }
}
