package ortet.line;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.springframework.shell.core.InputReader;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.ParsedInput;
import ortet.Desk;

class HelpTests {
    private static Desk desk;

    @BeforeAll
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void listsTheCommandsByGroupWithoutTheHidden() {
        String out = desk.type("help").out();
        assertTrue(
                out.contains(
                        "\nBench\n  bench count  count what is on the bench\n  bench look   look at the bench\n  bench set    set something on the bench\n"),
                out);
        assertFalse(out.contains("secret"), out);
        assertEquals("told\n", desk.type("secret").out());
    }

    @Test
    void explainsACommandWholly() {
        assertEquals("""
                bench set: set something on the bench

                usage
                  ortet bench set LABEL… --on TEXT [--count N] [--cut CUT]… [--day DAY]
                                  [--note TEXT]… [--stem STEM] [--high N] [--dry-run]
                  also: bs

                words
                  LABEL…  what to set

                options
                  --on TEXT      where; always needed
                  -n, --count N  how many; 5 unless given
                  -c, --cut CUT  how it is cut; one of full-ring, ring-with-bridge, tongue;
                                 several: with commas or given again
                  --day DAY      when
                  --note TEXT    said with it; several: given again
                  --stem STEM
                  --high N
                  --dry-run

                Says back what it was given.

                examples
                  ortet bench set A B --on M-1 --count 3
                  ortet bench set "A C" --on M-1 --cut tongue,full-ring --note 'two words'
                """, desk.type("help", "bench", "set").out());
    }

    @Test
    void isTheSameHoweverItIsAskedFor() {
        String help = desk.type("help", "bench", "set").out();
        assertEquals(help, desk.type("bench", "set", "--help").out());
        assertEquals(help, desk.type("bench", "set", "A", "--on", "--help").out());
        assertEquals(help, desk.type("bs", "--help").out());
        assertEquals(
                desk.type("help", "bench").out(), desk.type("bench", "--help").out());
        assertEquals(desk.type("help").out(), desk.type("--help").out());
        assertEquals(desk.type("help").out(), desk.type("-h").out());
    }

    @Test
    void listsTheCommandsThatBeginAlike() {
        assertEquals(
                "  bench count  count what is on the bench\n  bench look   look at the bench\n  bench set    set something on the bench\n",
                desk.type("help", "bench").out());
    }

    @Test
    void tellsTheVersion() {
        assertTrue(desk.type("--version").out().matches("ortet [0-9]+\\.[0-9]+\\.[0-9]+\\S* on Java [0-9]+\n"));
    }

    /** Every example of every command is a line that its command would run on. */
    @TestFactory
    List<DynamicTest> givesExamplesThatWork() {
        Commands commands = desk.bean(Commands.class);
        StrictParser parser = new StrictParser(commands);
        List<DynamicTest> tests = new ArrayList<>();
        for (MethodCommand command : commands.all()) {
            for (String example : Help.examples(command)) {
                tests.add(DynamicTest.dynamicTest(example, () -> {
                    ParsedInput input = parser.parse(example);
                    assertEquals(command, commands.named(name(input)).orElseThrow());
                    assertDoesNotThrow(() -> command.bind(new CommandContext(
                            input,
                            commands.registry(),
                            new PrintWriter(PrintWriter.nullWriter()),
                            new InputReader() {})));
                }));
            }
        }
        assertTrue(tests.size() > 3, "too few examples: " + tests.size());
        return tests;
    }

    private static String name(ParsedInput input) {
        List<String> words = new ArrayList<>();
        words.add(input.commandName());
        words.addAll(input.subCommands());
        return String.join(" ", words);
    }

    @Test
    void describesEveryCommandOfTheProgram() {
        try (Desk plain = Desk.open()) {
            for (MethodCommand command : plain.bean(Commands.class).all()) {
                assertFalse(command.getDescription().isBlank(), command.getName() + " has no description");
                assertFalse(command.getGroup().isBlank(), command.getName() + " has no group");
                assertFalse(Help.examples(command).isEmpty(), command.getName() + " has no example");
                for (Slot slot : command.slots()) {
                    assertTrue(
                            !(slot.isOption() || slot.isWord())
                                    || !slot.description().isBlank(),
                            slot.said() + " of " + command.getName() + " has no description");
                }
            }
        }
    }
}
