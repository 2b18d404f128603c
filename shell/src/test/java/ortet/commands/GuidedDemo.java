package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import ortet.Desk;

/** The demo nursery in a folder, asked line by line, and held to what the guide shows of it. */
final class GuidedDemo {
    private final Path book;

    /** Make the demo nursery. */
    GuidedDemo(Path folder) {
        book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open()) {
            assertEquals(0, desk.type("demo", "--to", book.toString()).status());
        }
    }

    /** Return the file of its book. */
    Path book() {
        return book;
    }

    /** Return the answer to a line, which must be given. */
    String answer(String line) {
        try (Desk desk = Desk.open()) {
            Desk.Answer answer = desk.script(line + " --book " + book + "\n");
            assertEquals(0, answer.status(), answer.err());
            return answer.out();
        }
    }

    /** Hold the answer to a line to what the guide shows. */
    void looksAsInTheGuide(String line) throws IOException {
        String guide = Files.readString(Path.of("..").resolve("docs/guide.md"));
        int from = guide.indexOf("ortet " + line + "\n");
        assertTrue(from > 0, "the guide shows no answer to " + line);
        String shown = guide.substring(from + line.length() + 7, guide.indexOf("\n```", from));
        assertEquals(shown.strip(), answer(line).strip());
    }
}
