package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.Desk;

/** Commands that are declared at odds with themselves or with others are found out, never guessed at. */
class CommandsTests {
    static final class Twice {
        @Command(name = "help", description = "another help")
        void help() {}
    }

    static final class AliasTaken {
        @Command(name = "first", alias = "version", description = "an alias that is a name")
        void first() {}
    }

    static final class BadSlots {
        @Command(name = "bare", description = "neither option nor word")
        void bare(String what) {}

        @Command(name = "null", description = "what would be null")
        void absent(@Option(description = "a day") String day) {}

        record Shared(@Option(description = "once") boolean dry) {}

        @Command(name = "same", description = "one option twice")
        void same(Shared shared, @Option(longName = "dry", description = "twice") boolean again) {}

        @Command(name = "strange", description = "a type that no word makes")
        void strange(@Argument(index = 0, description = "a thread") Thread thread) {}
    }

    @Test
    void refusesTwoCommandsOfOneName() {
        try (Desk desk = Desk.open(Twice.class)) {
            assertTrue(message(desk).contains("two commands are called help"), message(desk));
        }
    }

    @Test
    void refusesAnAliasThatIsAName() {
        try (Desk desk = Desk.open(AliasTaken.class)) {
            assertTrue(message(desk).contains("the alias version is a command's name"), message(desk));
        }
    }

    private static String message(Desk desk) {
        RuntimeException thrown = assertThrows(RuntimeException.class, () -> desk.bean(Commands.class));
        return String.valueOf(thrown.getMessage());
    }

    @Test
    void tellsABadDeclarationAsAFaultOfItsOwn() {
        try (Desk desk = Desk.open(BadSlots.class)) {
            assertEquals(
                    "ortet: a fault in ortet itself: IllegalStateException: void ortet.line.CommandsTests$BadSlots.bare"
                            + "(java.lang.String): what is neither option nor word (ORTET_TRACE=1 shows where)\n",
                    desk.type("bare", "x").err());
            assertTrue(desk.type("null").err().contains("day is neither required nor Optional, and has no default"));
            assertTrue(desk.type("same").err().contains("two options are called --dry"));
            assertTrue(
                    desk.type("strange", "x").err().contains("no converter to java.lang.Thread for THREAD of strange"));
            assertEquals(1, desk.type("strange", "x").status());
        }
    }
}
