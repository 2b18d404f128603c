package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.EntryKind;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.screen.Screen;

/** Stock, branches, ground, health and remarks. */
public final class CareCommands {
    private final Recording recording;

    CareCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(name = "keep", group = "Plants", description = "keep plants as stock", help = """
            ortet keep K-12 K-13
            """)
    void keep(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(Draft.of(EntryKind.KEPT_AS_STOCK, tags.tags()).put("note", hand.note()), hand, context, screen);
    }

    @Command(name = "leave-long", group = "Plants", description = "leave branches long, for layers to come", help = """
            ortet leave-long K-12..K-20
            """)
    void leaveLong(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(Draft.of(EntryKind.LEFT_LONG, tags.tags()).put("note", hand.note()), hand, context, screen);
    }

    @Command(name = "cut-back", group = "Plants", description = "cut branches back", help = """
            Cut away from the hand.
            ortet cut-back K-12
            """)
    void cutBack(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(Draft.of(EntryKind.CUT_BACK, tags.tags()).put("note", hand.note()), hand, context, screen);
    }

    @Command(name = "plant-out", group = "Plants", description = "plant in open ground", help = """
            ortet plant-out J-201..J-203 --to "Field bed 3"
            """)
    void plantOut(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            @Option(longName = "to", required = true, description = "the bed") Place to,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.PLANTED_OUT, tags.tags()).put("place", to).put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "lift", group = "Plants", description = "lift from open ground", help = """
            ortet lift J-201 --into "15 L" --place "House 1"
            """)
    void lift(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            @Option(longName = "into", description = "what it was put into") Optional<String> into,
            @Option(longName = "place", description = "where it stands now") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.LIFTED, tags.tags())
                        .put("container", into)
                        .put("place", place)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "hold",
            group = "Plants",
            description = "hold for plant health: nothing leaves, nothing is propagated",
            help = """
            Tell the plant health authority where the law asks for it; the book does not.
            ortet hold J-201..J-205 --sign "leaf spots" --sample 26-17
            """)
    void hold(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "sign", required = true, description = "what was seen") String sign,
            @Option(longName = "sample", description = "the number of a sample sent away") Optional<String> sample,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.HELD, tags.tags())
                        .put("sign", sign)
                        .put("sample", sample)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "clear", group = "Plants", description = "clear after a hold", help = """
            ortet clear J-201..J-205
            """)
    void clear(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(Draft.of(EntryKind.CLEARED, tags.tags()).put("note", hand.note()), hand, context, screen);
    }

    @Command(name = "remark", group = "Plants", description = "write a remark", help = """
            ortet remark K-12 --text "bleeds late, layer in June"
            """)
    void remark(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "text", required = true, description = "the remark") String text,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(Draft.of(EntryKind.NOTED, tags.tags()).put("note", text), hand, context, screen);
    }
}
