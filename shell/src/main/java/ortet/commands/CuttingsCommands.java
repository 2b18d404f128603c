package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Cause;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Finding;
import ortet.entry.Rest;
import ortet.entry.Share;
import ortet.entry.Wood;
import ortet.line.Word;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Decimal;

/** Trays of cuttings: strike, look, draw, give up. */
public final class CuttingsCommands {
    private static final String GROUP = "Cuttings and batches";

    private final Recording recording;

    CuttingsCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(
            name = "cuttings strike",
            group = GROUP,
            description = "strike cuttings, one tag for each tray",
            help = """
            ortet cuttings strike T-31 --mother K-12 --count 60 --wood semi-ripe --hormone IBA --strength 0.3%
            ortet cuttings strike T-32 --mother K-12:40,K-13:20 --count 60 --place "Mist bench"
            """)
    void strike(
            @Arguments @Word(value = "TAG", begins = true, description = "a tag for each tray") TagList tags,
            @Option(longName = "mother", description = "who gave them: K-12, or K-12:40,K-13:20 with counts")
                    @Word("TAG[:N]")
                    List<Share> mothers,
            @Option(longName = "count", required = true, description = "how many in each tray") int count,
            @Option(longName = "cultivar", description = "the name, where no mother says it")
                    Optional<CultivarName> cultivar,
            @Option(longName = "wood", description = "the kind of cutting") Optional<Wood> wood,
            @Option(
                            longName = "below-union",
                            description = "the wood is from below the graft union: it follows the rootstock")
                    boolean belowUnion,
            Hormone hormone,
            @Option(longName = "medium", description = "what they root in") Optional<String> medium,
            @Option(longName = "heat", description = "bottom heat in °C") @Word("C") Optional<Decimal> heat,
            @Option(longName = "place", description = "where the tray stands") Optional<Place> place,
            @Option(longName = "container", description = "the tray") Optional<String> container,
            @Option(longName = "stock-age", description = "age of the mother in years") @Word("YEARS")
                    Optional<Integer> stockAge,
            @Option(longName = "hedged", description = "the mother is kept cut back as a hedge") boolean hedged,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                hormone.into(Draft.of(EntryKind.CUTTINGS_STRUCK, tags.tags()))
                        .list("mothers", mothers)
                        .put("count", count)
                        .put("cultivar", cultivar)
                        .put("wood", wood)
                        .put("below_union", belowUnion)
                        .put("medium", medium)
                        .put("heat_c", heat)
                        .put("place", place)
                        .put("container", container)
                        .put("stock_age_years", stockAge)
                        .put("hedged", hedged)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "cuttings check", group = GROUP, description = "say what was seen in a tray", help = """
            ortet cuttings check T-31 --found callus:20,roots-showing:30,dead:4
            """)
    void check(
            @Arguments @Word(value = "TAG", description = "the trays") TagList tags,
            @Option(
                            longName = "found",
                            required = true,
                            description =
                                    "nothing, callus, roots-showing, root-ball-full, dry or dead, each with how many")
                    @Word("FINDING[:N]")
                    List<Finding> found,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.CHECKED, tags.tags()).list("findings", found).put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "cuttings draw",
            group = GROUP,
            description = "draw rooted plants from a tray, one tag each",
            help = """
            What is drawn has taken. --rest failed says at once that nothing else in the tray will.
            ortet cuttings draw C-101..C-148 --from T-31 --container "9 cm" --place "House 2" --rest failed
            ortet cuttings draw C-200 --from T-32 --count 40
            """)
    void draw(
            @Arguments
                    @Word(
                            value = "TAG",
                            begins = true,
                            description = "a tag for each plant, or for a batch with --count")
                    TagList tags,
            @Option(longName = "from", required = true, description = "the tray") Tag from,
            @Option(longName = "count", description = "how many under each tag: then each is a batch")
                    Optional<Integer> count,
            @Option(longName = "rest", description = "what becomes of the rest") Optional<Rest> rest,
            @Option(longName = "place", description = "where they stand now") Optional<Place> place,
            @Option(longName = "container", description = "what they were put into") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        List<Entry> entries = new ArrayList<>();
        entries.add(Draft.of(EntryKind.DRAWN, tags.tags())
                .put("source", from)
                .put("count", count)
                .put("place", place)
                .put("container", container)
                .put("note", hand.note())
                .entry());
        rest.ifPresent(what -> entries.add(
                Draft.of(EntryKind.CLOSED, List.of(from)).put("rest", what).entry()));
        recording.write(entries, hand, context, screen);
    }

    @Command(name = "cuttings fail", group = GROUP, description = "say that cuttings came to nothing", help = """
            ortet cuttings fail T-31 --count 12 --cause damped-off
            ortet cuttings fail T-31
            """)
    void fail(
            @Arguments @Word(value = "TAG", description = "the trays") TagList tags,
            @Option(longName = "count", description = "how many; all that are pending unless given")
                    Optional<Integer> count,
            @Option(longName = "cause", description = "why; withdrawn counts for nothing") Optional<Cause> cause,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.FAILED, tags.tags())
                        .put("count", count)
                        .put("cause", cause)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
