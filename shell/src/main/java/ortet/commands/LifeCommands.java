package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Band;
import ortet.entry.Cause;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Ownership;
import ortet.entry.Purpose;
import ortet.entry.Raised;
import ortet.line.Word;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Decimal;
import ortet.value.Money;
import ortet.value.When;

/** What becomes of plants: acquired, potted, moved, measured, sold, lost. */
public final class LifeCommands {
    private static final String GROUP = "Plants";

    private final Recording recording;
    private final Shelf shelf;

    LifeCommands(Recording recording, Shelf shelf) {
        this.recording = recording;
        this.shelf = shelf;
    }

    @Command(name = "acquire", group = GROUP, description = "enter plants that came from outside", help = """
            With --count each tag is a batch. What is bought in is the earliest known, its origin unknown.
            ortet acquire K-40 K-41 --cultivar "Acer palmatum 'Deshojo'" --supplier "An Example" --consignment D-77
            ortet acquire R-9 --count 50 --cultivar "Acer palmatum" --born 2024 --container "9 cm" --place "House 2"
            """)
    void acquire(
            @Arguments
                    @Word(
                            value = "TAG",
                            begins = true,
                            description = "a tag for each plant, or for a batch with --count")
                    TagList tags,
            @Option(longName = "count", description = "how many under each tag: then each is a batch")
                    Optional<Integer> count,
            @Option(longName = "cultivar", description = "the name it is said to bear") Optional<CultivarName> cultivar,
            @Option(longName = "supplier", description = "who supplied it") @Word("PERSON") Optional<String> supplier,
            @Option(longName = "consignment", description = "delivery note") Optional<String> consignment,
            @Option(longName = "ownership", description = "whose it is; owned unless given")
                    Optional<Ownership> ownership,
            @Option(longName = "raised", description = "how it is said to have been raised") Optional<Raised> raised,
            @Option(longName = "born", description = "when it is said to have started life") Optional<When> born,
            @Option(longName = "stem", description = "stem diameter in mm") @Word("MM") Optional<Decimal> stem,
            @Option(longName = "height", description = "height in mm") @Word("MM") Optional<Decimal> height,
            @Option(longName = "container", description = "the pot, in words") Optional<String> container,
            @Option(longName = "place", description = "where it stands") Optional<Place> place,
            @Option(longName = "passport", description = "traceability code of its plant passport")
                    Optional<String> passport,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.ACQUIRED, tags.tags())
                        .put("count", count)
                        .put("cultivar", cultivar)
                        .put("supplier", recording.number(supplier, "supplier", context))
                        .put("consignment", consignment)
                        .put("ownership", ownership)
                        .put("raised", raised)
                        .put("born", born)
                        .put("stem_mm", stem)
                        .put("height_mm", height)
                        .put("container", container)
                        .put("place", place)
                        .put("passport", passport)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "pot", group = GROUP, description = "pot plants up or on", help = """
            ortet pot J-201..J-203 --into "2 L" --purpose pot-up --medium "bark and grit" --place "House 1"
            ortet pot T-31 --into "9 cm"
            """)
    void pot(
            @Arguments @Word(value = "TAG", description = "the plants, or whole batches") TagList tags,
            @Option(longName = "into", required = true, description = "the container, in words") String into,
            @Option(longName = "purpose", description = "why it was potted") Optional<Purpose> purpose,
            @Option(longName = "medium", description = "what it grows in") Optional<String> medium,
            @Option(longName = "place", description = "where it stands now") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.POTTED, tags.tags())
                        .put("container", into)
                        .put("purpose", purpose)
                        .put("medium", medium)
                        .put("place", place)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "move", group = GROUP, description = "stand plants in another place", help = """
            ortet move J-201..J-240 except J-217 --to "House 2 bench 4"
            """)
    void move(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "to", required = true, description = "the place") Place to,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.MOVED, tags.tags()).put("place", to).put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "measure", group = GROUP, description = "measure stem, height and places for layers", help = """
            Positions are counted by stem diameter in mm: 8-12:5 is five places of 8 to 12 mm.
            ortet measure K-12 --stem 64 --height 1900 --positions 8-12:5,12-20:3
            """)
    void measure(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            @Option(longName = "stem", description = "stem diameter in mm") @Word("MM") Optional<Decimal> stem,
            @Option(longName = "height", description = "height in mm") @Word("MM") Optional<Decimal> height,
            @Option(longName = "positions", description = "places for layers by diameter") @Word("MM-MM:N")
                    List<Band> positions,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.MEASURED, tags.tags())
                        .put("stem_mm", stem)
                        .put("height_mm", height)
                        .list("positions", positions)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "sell", group = GROUP, description = "sell plants", help = """
            Layers still on a mother that is sold need a word first: --layers failed or --layers withdrawn.
            ortet sell J-201 J-203 --to "An Example" --price "45.00 EUR" --invoice 2026-118
            ortet sell R-9 --count 20 --to "An Example"
            """)
    void sell(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "to", description = "the customer") @Word("PERSON") Optional<String> to,
            @Option(longName = "count", description = "how many of each batch; all unless given")
                    Optional<Integer> count,
            @Option(longName = "price", description = "the price of one, with its currency") Optional<Money> price,
            @Option(longName = "passport", description = "traceability code of the passport issued")
                    Optional<String> passport,
            @Option(longName = "invoice", description = "invoice or delivery note") Optional<String> invoice,
            @Option(longName = "layers", description = "what becomes of layers still on it")
                    Optional<LayersFate> layers,
            Hand hand,
            CommandContext context,
            Screen screen) {
        List<Entry> entries = new ArrayList<>(layersFirst(tags.tags(), layers, context));
        entries.add(Draft.of(EntryKind.SOLD, tags.tags())
                .put("count", count)
                .put("customer", recording.number(to, "to", context))
                .put("price", price)
                .put("passport", passport)
                .put("invoice", invoice)
                .put("note", hand.note())
                .entry());
        recording.write(entries, hand, context, screen);
    }

    @Command(name = "lose", group = GROUP, description = "say that plants were lost", help = """
            What has not taken yet fails; what stands on its own roots is lost.
            ortet lose J-203 --cause frost
            ortet lose K-12 --layers failed
            """)
    void lose(
            @Arguments @Word(value = "TAG", description = "the plants or batches") TagList tags,
            @Option(longName = "count", description = "how many of each batch; all unless given")
                    Optional<Integer> count,
            @Option(longName = "cause", description = "why") Optional<Cause> cause,
            @Option(longName = "layers", description = "what becomes of layers still on it")
                    Optional<LayersFate> layers,
            Hand hand,
            CommandContext context,
            Screen screen) {
        List<Entry> entries = new ArrayList<>(layersFirst(tags.tags(), layers, context));
        entries.add(Draft.of(EntryKind.LOST, tags.tags())
                .put("count", count)
                .put("cause", cause)
                .put("note", hand.note())
                .entry());
        recording.write(entries, hand, context, screen);
    }

    private List<Entry> layersFirst(List<Tag> mothers, Optional<LayersFate> fate, CommandContext context) {
        if (fate.isEmpty()) {
            return List.of();
        }
        List<Tag> on = shelf.open(context).read(view -> ortet.lineage.OnMother.pendingLayers(view, mothers));
        return on.isEmpty()
                ? List.of()
                : List.of(Draft.of(EntryKind.FAILED, on)
                        .put("cause", fate.get() == LayersFate.FAILED ? Cause.MOTHER_LOST : Cause.WITHDRAWN)
                        .entry());
    }

    /** What becomes of layers on a mother that goes. */
    enum LayersFate {
        /** They failed. */
        FAILED,
        /** They were taken off before anybody could know. */
        WITHDRAWN
    }
}
