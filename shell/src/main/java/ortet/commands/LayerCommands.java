package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Cause;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Finding;
import ortet.entry.Remainder;
import ortet.entry.Rework;
import ortet.entry.Roots;
import ortet.entry.Wound;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Decimal;

/** Air layers: set, look, work again, sever, give up. */
public final class LayerCommands {
    private static final String GROUP = "Layers";

    private final Recording recording;

    LayerCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(name = "layer set", group = GROUP, description = "set air layers on a mother, one tag each", help = """
            Several stems: 12 for all, 12,15x3 for one of 12 mm and three of 15, 12,15x* for the rest.
            ortet layer set J-201..J-205 --mother K-12 --stem 12,15x3,18 --ring 18 --wound full-ring --by Aoife
            ortet layer set J-241 --mother G-3 --below-union
            ortet layer set J-206..J-240 except J-217 --mother K-12 --stem 12,15x* --hormone IBA --strength 0.3%
            """)
    void set(
            @Arguments
                    @Word(value = "TAG", begins = true, description = "a tag for each layer: J-201..J-240 except J-217")
                    TagList tags,
            @Option(longName = "mother", required = true, description = "the plant that they are set on") Tag mother,
            @Option(longName = "stem", description = "stem diameter at the wound in mm") @Word("MM")
                    Optional<Stems> stem,
            @Option(longName = "ring", description = "length of bark removed in mm") @Word("MM") Optional<Decimal> ring,
            @Option(longName = "wound", description = "how the bark was cut") Optional<Wound> wound,
            @Option(longName = "branch", description = "which branch, in words") Optional<String> branch,
            @Option(longName = "height", description = "height on the plant in mm") @Word("MM")
                    Optional<Decimal> height,
            @Option(longName = "order", description = "1 for a branch of the trunk, 2 for a branch of that")
                    Optional<Integer> order,
            @Option(longName = "above", description = "a layer on the same branch nearer the trunk")
                    Optional<Tag> above,
            @Option(longName = "below", description = "a layer on the same branch further out") Optional<Tag> below,
            @Option(
                            longName = "below-union",
                            description = "the wood is from below the graft union: it follows the rootstock")
                    boolean belowUnion,
            Hormone hormone,
            @Option(longName = "medium", description = "what it is packed in") Optional<String> medium,
            @Option(longName = "wrap", description = "what it is wrapped in") Optional<String> wrap,
            @Option(longName = "place", description = "where the mother stands") Optional<Place> place,
            @Option(longName = "stock-age", description = "age of the mother in years") @Word("YEARS")
                    Optional<Integer> stockAge,
            @Option(longName = "hedged", description = "the mother is kept cut back as a hedge") boolean hedged,
            Hand hand,
            CommandContext context,
            Screen screen) {
        Draft draft = hormone.into(Draft.of(EntryKind.LAYER_SET))
                .put("mother", mother)
                .put("branch", branch)
                .put("height_mm", height)
                .put("branch_order", order)
                .put("above", above)
                .put("below", below)
                .put("below_union", belowUnion)
                .put("ring_mm", ring)
                .put("wound", wound)
                .put("medium", medium)
                .put("wrap", wrap)
                .put("place", place)
                .put("stock_age_years", stockAge)
                .put("hedged", hedged)
                .put("note", hand.note());
        List<Entry> entries = new ArrayList<>();
        if (stem.isEmpty()) {
            entries.add(draft.copy().list("tags", tags.tags()).entry());
        } else {
            for (Map.Entry<Decimal, List<Tag>> run :
                    stem.get().over(tags.tags()).entrySet()) {
                entries.add(draft.copy()
                        .list("tags", run.getValue())
                        .put("stem_mm", run.getKey())
                        .entry());
            }
        }
        recording.write(entries, hand, context, screen);
    }

    @Command(
            name = "layer check",
            group = GROUP,
            description = "say what was seen when layers were looked at",
            help = """
            ortet layer check J-201..J-205 --found callus
            ortet layer check J-206 --found dead --on 2026-07-01
            """)
    void check(
            @Arguments @Word(value = "TAG", description = "the layers") TagList tags,
            @Option(
                            longName = "found",
                            required = true,
                            description = "nothing, callus, roots-showing, root-ball-full, dry or dead")
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

    @Command(name = "layer rework", group = GROUP, description = "ring or wrap layers again", help = """
            ortet layer rework J-201 J-204 --how re-ringed --ring 20
            """)
    void rework(
            @Arguments @Word(value = "TAG", description = "the layers") TagList tags,
            @Option(longName = "how", required = true, description = "what was done again") Rework how,
            @Option(longName = "ring", description = "length of bark removed in mm") @Word("MM") Optional<Decimal> ring,
            @Option(
                            longName = "below-union",
                            description = "the wood is from below the graft union: it follows the rootstock")
                    boolean belowUnion,
            Hormone hormone,
            @Option(longName = "medium", description = "what it is packed in") Optional<String> medium,
            @Option(longName = "wrap", description = "what it is wrapped in") Optional<String> wrap,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                hormone.into(Draft.of(EntryKind.REWORKED, tags.tags()))
                        .put("rework", how)
                        .put("ring_mm", ring)
                        .put("medium", medium)
                        .put("wrap", wrap)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "layer sever", group = GROUP, description = "cut layers from their mother", help = """
            With roots the layer has taken and is a plant; --roots none says that it failed. Cut away from the hand.
            ortet layer sever J-201..J-203 --roots full --place "House 1" --container "2 L"
            ortet layer sever J-204 --roots none
            """)
    void sever(
            @Arguments @Word(value = "TAG", description = "the layers") TagList tags,
            @Option(longName = "roots", description = "what roots there were") Optional<Roots> roots,
            @Option(longName = "remainder", description = "what becomes of the rest of the branch")
                    Optional<Remainder> remainder,
            @Option(longName = "place", description = "where they stand now") Optional<Place> place,
            @Option(longName = "container", description = "what they were put into") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.SEVERED, tags.tags())
                        .put("roots", roots)
                        .put("remainder", remainder)
                        .put("place", place)
                        .put("container", container)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "layer fail", group = GROUP, description = "say that layers came to nothing", help = """
            Failures are as much worth as successes: no rate is honest without them.
            ortet layer fail J-205 J-206 --cause dried
            """)
    void fail(
            @Arguments @Word(value = "TAG", description = "the layers") TagList tags,
            @Option(longName = "cause", description = "why; withdrawn counts for nothing") Optional<Cause> cause,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.FAILED, tags.tags()).put("cause", cause).put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
