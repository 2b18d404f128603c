package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import ortet.Desk;

/** A desk with a book of its own, on 15 June 2026. */
final class BookDesk implements AutoCloseable {
    private final Desk desk = Desk.open(Day.class);
    private final Path book;

    /** Stops the clock. */
    @Configuration(proxyBeanMethods = false)
    static class Day {
        @Bean
        @Primary
        Clock stopped() {
            return Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC);
        }
    }

    /** Open a desk with an empty book in the folder. */
    BookDesk(Path folder) {
        this(Optional.of(folder.resolve("book.ortet")));
        done("book new --zone Europe/Dublin");
    }

    private BookDesk(Optional<Path> book) {
        this.book = book.orElseThrow();
    }

    /** Open another desk at a book that is there. */
    static BookDesk at(Path book) {
        return new BookDesk(Optional.of(book));
    }

    /** Type a line, words parted at blanks outside single quotes. */
    Desk.Answer type(String line) {
        List<String> words = new ArrayList<>();
        for (String part : line.split(" (?=(?:[^']*'[^']*')*[^']*$)")) {
            words.add(part.startsWith("'") ? part.substring(1, part.length() - 1) : part);
        }
        words.add("--book");
        words.add(book.toString());
        return desk.type(words.toArray(new String[0]));
    }

    /** Give lines on standard input to what the arguments ask for. */
    Desk.Answer lines(String lines, String... arguments) {
        return desk.run(Desk.PIPES, lines, arguments);
    }

    /** Type a line that must be done, and return what it says. */
    String done(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.err());
        assertEquals(0, answer.status());
        return answer.out();
    }

    /** Type a line that cannot be done, and return what it says. */
    String refused(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.out());
        assertEquals(1, answer.status());
        return answer.err();
    }

    /** Type a line that is wrong usage, and return what it says. */
    String wrong(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.out());
        assertEquals(2, answer.status());
        return answer.err();
    }

    /** Press keys at the prompt, where this is the book that is meant; the answers are what the lines said. */
    Desk.Answer keys(String... lines) {
        StringBuilder keys = new StringBuilder();
        for (String line : lines) {
            keys.append(line).append('\r');
        }
        return desk.keys("use --book " + book + "\r" + keys, Optional.empty());
    }

    /** Return a bean of the wiring. */
    <T> T bean(Class<T> type) {
        return desk.bean(type);
    }

    /** Return the file of the book. */
    Path book() {
        return book;
    }

    @Override
    public void close() {
        desk.close();
    }
}
