package ortet.line;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.core.convert.converter.Converter;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.ExitStatus;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Unavailable;
import ortet.value.Where;

/** Commands that say what they were given, or fail in a chosen way. */
final class BenchCommands {
    enum Cut {
        FULL_RING,
        RING_WITH_BRIDGE,
        TONGUE
    }

    record Stem(int mm) {}

    record Labels(String all) {}

    @Configuration(proxyBeanMethods = false)
    @Import({BenchCommands.class, OtherCommands.class, AwayCommands.class})
    static class Wiring {
        @Bean
        @Primary
        Clock fixed() {
            return Clock.fixed(Instant.parse("2024-03-01T12:00:00Z"), ZoneOffset.UTC);
        }

        @Bean
        Converter<String, Stem> stem() {
            return word -> {
                if (!word.endsWith("mm")) {
                    throw new IllegalArgumentException("\"" + word + "\" is no stem; expected 12mm");
                }
                return new Stem(Integer.parseInt(word.substring(0, word.length() - 2)));
            };
        }

        @Bean
        Converter<TypedWords, Labels> labels() {
            return words -> new Labels(String.join("+", words.list()));
        }
    }

    @Command(name = "bench set", alias = "bs", group = "Bench", description = "set something on the bench", help = """
            Says back what it was given.
            ortet bench set A B --on M-1 --count 3
            ortet bench set "A C" --on M-1 --cut tongue,full-ring --note 'two words'
            """)
    void set(
            @Arguments @Word(value = "LABEL", description = "what to set") Labels labels,
            @Option(longName = "on", required = true, description = "where") String on,
            @Option(shortName = 'n', defaultValue = "5", description = "how many") int count,
            @Option(shortName = 'c', description = "how it is cut") List<Cut> cut,
            @Option(description = "when") Optional<LocalDate> day,
            @Option(description = "said with it") List<String> note,
            @Option Optional<Stem> stem,
            @Option OptionalInt high,
            @Option boolean dryRun,
            CommandContext context) {
        context.outputWriter()
                .println(String.join(
                        " | ",
                        labels.all(),
                        on,
                        "" + count,
                        cut.toString(),
                        day.toString(),
                        note.toString(),
                        stem.toString(),
                        high.toString(),
                        "" + dryRun));
    }

    @Command(name = "bench look", group = "Bench", description = "look at the bench")
    void look(
            @Argument(index = 0, description = "what to look at") String what,
            @Argument(index = 1) Optional<LocalDate> day,
            @Option(longName = "by", defaultValue = "tray")
                    @Word(
                            value = "WHAT",
                            allowed = {"tray", "mother"})
                    List<String> by,
            Screen screen) {
        screen.println(what + " | " + day + " | " + by);
    }

    /** Options that several commands share. */
    record Shared(
            @Option(description = "as things stood then") Optional<LocalDate> asOf,

            @Option(shortName = 'f', defaultValue = "table", description = "how it is written")
            OutputFormat format,

            Screen screen) {
        Shared {
            if (asOf.filter(day -> day.getYear() < 1900).isPresent()) {
                throw new UsageException("--as-of " + asOf.get() + " is before any book");
            }
        }
    }

    @Command(name = "bench count", group = "Bench", description = "count what is on the bench")
    void count(@Argument(index = 0) Optional<String> what, Shared shared) {
        shared.screen().println(what + " | " + shared.asOf() + " | " + shared.format());
    }

    @Command(name = "number", description = "tell a number")
    void number(@Argument(index = 0) double value, Screen screen) {
        screen.println(Double.toString(value));
    }

    @Command(name = "fail", description = "fail in a chosen way")
    void fail(@Argument(index = 0) String how) throws IOException {
        switch (how) {
            case "twice" -> throw new Refused(List.of(fault("no cultivar", 2), fault("no place", 3)));
            case "busy" -> throw new Unavailable("the book is busy; try again");
            case "defect" -> throw new Defect("order 7 after 8");
            case "file" -> throw new NoSuchFileException("day.csv");
            case "io" -> throw new IOException("the stick is gone\nmore of it");
            case "usage" -> throw new UsageException("not like this");
            default -> throw new IllegalStateException("broken " + how);
        }
    }

    private static Fault fault(String text, int line) {
        return Fault.of("bad-row", text).at(new Where("day.csv", line, Optional.of("5")));
    }

    @Command(name = "status", description = "end with a status")
    ExitStatus status(@Argument(index = 0) int code) {
        return new ExitStatus(code, "");
    }

    @Command(name = "secret", hidden = true, description = "do not tell")
    void secret(Screen screen) {
        screen.println("told");
    }

    /** Commands in another class, to see that it is not made without need. */
    static final class OtherCommands {
        @Command(name = "other", description = "do something else")
        void other(Screen screen) {
            screen.println("other");
        }
    }

    /** A command whose bean cannot be made. */
    static final class AwayCommands {
        AwayCommands() {
            throw new Unavailable("the book is away");
        }

        @Command(name = "away", description = "never get there")
        void away(Screen screen) {
            screen.println("there");
        }
    }
}
