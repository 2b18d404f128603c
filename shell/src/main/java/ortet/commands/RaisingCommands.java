package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.EntryKind;
import ortet.entry.GraftKind;
import ortet.entry.Remainder;
import ortet.line.Word;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Decimal;

/** Grafts, seed, divisions and sports. */
public final class RaisingCommands {
    private final Recording recording;

    RaisingCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(name = "graft", group = "Grafts, seed, divisions", description = "work grafts", help = """
            The scion decides the clone; when a graft fails its rootstock comes back. Cut away from the hand.
            ortet graft G-1..G-10 --scion K-12 --stock R-9 --kind side-veneer
            ortet graft GB-1 --count 40 --scion K-12 --stock R-9
            """)
    void graft(
            @Arguments
                    @Word(
                            value = "TAG",
                            begins = true,
                            description = "a tag for each graft, or for a batch with --count")
                    TagList tags,
            @Option(longName = "count", description = "how many under each tag: then each is a batch")
                    Optional<Integer> count,
            @Option(longName = "scion", description = "the plant that gives the scions") Optional<Tag> scion,
            @Option(longName = "stock", description = "the rootstock, a plant or a batch") Optional<Tag> stock,
            @Option(longName = "stock-cultivar", description = "the name of a rootstock that is not in the book")
                    Optional<CultivarName> stockCultivar,
            @Option(longName = "cultivar", description = "the name, where no scion plant says it")
                    Optional<CultivarName> cultivar,
            @Option(longName = "kind", description = "the kind of graft") Optional<GraftKind> kind,
            @Option(longName = "place", description = "where they stand") Optional<Place> place,
            @Option(longName = "container", description = "what they stand in") Optional<String> container,
            @Option(longName = "stock-age", description = "age of the scion plant in years") @Word("YEARS")
                    Optional<Integer> stockAge,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.GRAFT_WORKED, tags.tags())
                        .put("count", count)
                        .put("scion", scion)
                        .put("stock", stock)
                        .put("stock_cultivar", stockCultivar)
                        .put("cultivar", cultivar)
                        .put("graft", kind)
                        .put("place", place)
                        .put("container", container)
                        .put("stock_age_years", stockAge)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "sow",
            group = "Grafts, seed, divisions",
            description = "sow seed, by count or by weight",
            help = """
            A sowing by weight has no rate until it is counted. A seedling starts a clone of its own.
            ortet sow S-4 --count 200 --mother K-12 --pollen K-13 --place "Cold frame"
            ortet sow S-5 --grams 12 --cultivar "Pinus thunbergii" --supplier "An Example"
            """)
    void sow(
            @Arguments @Word(value = "TAG", begins = true, description = "a tag for each pan") TagList tags,
            @Option(longName = "count", description = "how many seeds in each") Optional<Integer> count,
            @Option(longName = "grams", description = "weight of the seed in grams") @Word("G") Optional<Decimal> grams,
            @Option(longName = "mother", description = "the plant that bore the seed") Optional<Tag> mother,
            @Option(longName = "pollen", description = "the plant that gave the pollen") Optional<Tag> pollen,
            @Option(longName = "cultivar", description = "the name") Optional<CultivarName> cultivar,
            @Option(longName = "supplier", description = "who supplied it") @Word("PERSON") Optional<String> supplier,
            @Option(longName = "consignment", description = "delivery note") Optional<String> consignment,
            @Option(longName = "place", description = "where it stands") Optional<Place> place,
            @Option(longName = "container", description = "the pan") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.SEED_SOWN, tags.tags())
                        .put("count", count)
                        .put("grams", grams)
                        .put("seed_parent", mother)
                        .put("pollen_parent", pollen)
                        .put("cultivar", cultivar)
                        .put("supplier", recording.number(supplier, "supplier", context))
                        .put("consignment", consignment)
                        .put("place", place)
                        .put("container", container)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(name = "divide", group = "Grafts, seed, divisions", description = "divide a plant", help = """
            Each part has roots of its own. --remainder used-up says that nothing is left of the mother.
            ortet divide D-1..D-3 --mother K-30 --remainder kept
            """)
    void divide(
            @Arguments @Word(value = "TAG", begins = true, description = "a tag for each part") TagList tags,
            @Option(longName = "mother", required = true, description = "the plant that is divided") Tag mother,
            @Option(longName = "remainder", description = "what is left of the mother") Optional<Remainder> remainder,
            @Option(longName = "place", description = "where they stand") Optional<Place> place,
            @Option(longName = "container", description = "what they were put into") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.DIVIDED, tags.tags())
                        .put("mother", mother)
                        .put("remainder", remainder)
                        .put("place", place)
                        .put("container", container)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "sport",
            group = "Grafts, seed, divisions",
            description = "tag a branch that differs from its plant",
            help = """
            It starts a clone of its own: layer it, strike it or graft it under its tag.
            ortet sport SP-1 --mother K-12 --branch "west 2" --cultivar "Acer palmatum"
            """)
    void sport(
            @Arguments @Word(value = "TAG", begins = true, description = "a tag for the branch") TagList tags,
            @Option(longName = "mother", required = true, description = "the plant on which it was found") Tag mother,
            @Option(longName = "branch", description = "which branch, in words") Optional<String> branch,
            @Option(longName = "cultivar", description = "what it is to be called") Optional<CultivarName> cultivar,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.SPORT_FOUND, tags.tags())
                        .put("mother", mother)
                        .put("branch", branch)
                        .put("cultivar", cultivar)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
