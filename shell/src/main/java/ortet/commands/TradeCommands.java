package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.ReleasedFrom;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.screen.Screen;
import ortet.value.Money;
import ortet.value.When;

/** Graded, promised, released, come back, culled. */
public final class TradeCommands {
    private final Recording recording;

    TradeCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(name = "grade", group = "Plants", description = "grade plants fit for sale in a size class", help = """
            ortet grade J-201 J-202 --size "12-15 mm, 2 L" --grade A
            """)
    void grade(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "size", required = true, description = "the size class") String size,
            @Option(longName = "grade", description = "the grade within it") Optional<String> grade,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.GRADED, tags.tags())
                        .put("size", size)
                        .put("grade", grade)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "reserve", group = "Plants", description = "promise plants to a customer", help = """
            ortet reserve J-201 --to "An Example" --until 2026-12-31
            """)
    void reserve(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "count", description = "how many of each batch") Optional<Integer> count,
            @Option(longName = "to", required = true, description = "the customer") @Word("PERSON") String to,
            @Option(longName = "until", description = "the last day on which it holds") Optional<When> until,
            @Option(longName = "price", description = "the price of one") Optional<Money> price,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.RESERVED, tags.tags())
                        .put("count", count)
                        .put("customer", recording.number(Optional.of(to), "to", context))
                        .put("until", until)
                        .put("price", price)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "release",
            group = "Plants",
            description = "keep no longer as stock, or reserve no longer",
            help = """
            ortet release J-201 --from reservation
            """)
    void release(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "from", description = "what they are released from") Optional<ReleasedFrom> from,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.RELEASED, tags.tags()).put("from", from).put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "return", group = "Plants", description = "take sold plants back", help = """
            ortet return J-201 --from "An Example" --reason "wrong size" --place "House 1"
            """)
    void takeBack(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "count", description = "how many of each batch") Optional<Integer> count,
            @Option(longName = "from", description = "who brings them back") @Word("PERSON") Optional<String> from,
            @Option(longName = "reason", description = "why") Optional<String> reason,
            @Option(longName = "place", description = "where they stand now") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.RETURNED, tags.tags())
                        .put("count", count)
                        .put("customer", recording.number(from, "from", context))
                        .put("reason", reason)
                        .put("place", place)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "cull", group = "Plants", description = "take plants out by choice", help = """
            For quality: they took, but are not fit for sale. As surplus: counts for nothing.
            ortet cull J-203 --why quality
            ortet cull T-31 --why surplus --count 10
            """)
    void cull(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "count", description = "how many of each batch; all unless given")
                    Optional<Integer> count,
            @Option(longName = "why", required = true, description = "why") CullReason why,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.CULLED, tags.tags())
                        .put("count", count)
                        .put("cull", why)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
