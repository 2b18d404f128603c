package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.springframework.shell.core.command.CommandArgument;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.ParsedInput;
import ortet.Desk;

class StrictParserTests {
    private static Desk desk;
    private static StrictParser parser;

    @BeforeContainer
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
        parser = new StrictParser(desk.bean(Commands.class));
    }

    @AfterContainer
    static void close() {
        desk.close();
    }

    @Property
    void givesEveryWordAfterTheDashesBackUnchanged(@ForAll List<String> words) {
        List<String> line = new ArrayList<>(List.of("bench", "set", "--"));
        line.addAll(words);
        assertEquals(
                words,
                parser.parse(line).arguments().stream()
                        .map(CommandArgument::value)
                        .toList());
    }

    @Property
    void givesAnyValueAfterAnEqualsSignBackUnchanged(@ForAll String value) {
        ParsedInput input = parser.parse(List.of("bench", "set", "--note=" + value, "A"));
        assertEquals(
                List.of(value),
                input.options().stream().map(CommandOption::value).toList());
        assertEquals(1, input.arguments().size());
    }

    @Property
    void takesNegativeNumbersForWords(@ForAll int number, @ForAll @IntRange(max = 999) int part) {
        String word = number + "." + part;
        assertEquals(
                List.of(word),
                parser.parse(List.of("bench", "set", word)).arguments().stream()
                        .map(CommandArgument::value)
                        .toList());
    }

    @Property
    void eitherReadsOrSaysWhyOnOneLine(@ForAll List<String> words) {
        try {
            parser.parse(words);
        } catch (UsageException e) {
            assertEquals(
                    1,
                    new Failure(2, List.of(e.getMessage()))
                            .lines()
                            .get(0)
                            .lines()
                            .count());
        }
    }
}
