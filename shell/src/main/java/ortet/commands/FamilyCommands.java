package ortet.commands;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.Act;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.line.Word;
import ortet.lineage.CloneStory;
import ortet.lineage.CloneTable;
import ortet.lineage.FamilyGraph;
import ortet.lineage.Oddities;
import ortet.lineage.Progeny;
import ortet.nursery.Nursery;
import ortet.plant.Tag;
import ortet.screen.Screen;

/** The family: what was raised from a plant, and what is of one clone. */
public final class FamilyCommands {
    private static final String GROUP = "Questions";

    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;

    FamilyCommands(Shelf shelf, Judge judge, Nursery nursery) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
    }

    @Command(
            name = "offspring",
            group = GROUP,
            description = "tell everything that was raised from a plant, through every link",
            help = """
            What is filtered out is still named where something that is asked for was raised from it, in brackets.
            ortet offspring K-12
            ortet offspring K-12 --state growing,pending --depth 2
            ortet offspring R-9 --act rootstock-of,stock-wood-of --format csv
            """)
    void offspring(
            @Argument(index = 0, description = "the plant, layer or batch") @Word("TAG") Tag tag,
            @Option(longName = "depth", description = "how many links down; all unless given") @Word("N")
                    Optional<Integer> depth,
            @Option(longName = "state", description = "only what stands like this; all unless given")
                    List<Progeny.Standing> states,
            @Option(longName = "act", description = "only what was raised like this; all unless given") List<Act> acts,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Progeny.Filter filter = new Progeny.Filter(depth, new LinkedHashSet<>(states), new LinkedHashSet<>(acts));
        Progeny progeny = store.read(view -> Progeny.of(view, tag, day, filter));
        screen.page(out -> OffspringView.show(progeny, asked.format(), out));
    }

    @Command(name = "clone", group = GROUP, description = "tell all that is of one clone with a plant", help = """
            A graft follows its scion, wood below its union the rootstock; a seedling or a sport begins a clone of its own. What is
            one of several clones is told apart, and so are other clones that are said to be the same cultivar: the book does not
            know whether they are.
            ortet clone J-201
            ortet clone K-12 --as-of 2024-12-31 --format csv
            """)
    void clone(
            @Argument(index = 0, description = "the plant, layer or batch") @Word("TAG") Tag tag,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        CloneStory story = store.read(view -> CloneStory.of(view, nursery.at(view, day, CloneTable.parts()), tag));
        screen.page(out -> CloneView.show(story, asked.format(), out));
    }

    @Command(
            name = "clones",
            group = GROUP,
            description = "list the clones of the nursery, the largest first",
            help = """
            Each with its ortet or earliest known plant, how many tags were ever of it, and how many plants of it live and were sold.
            ortet clones
            ortet clones --cultivar Deshojo --least 1 --format csv
            """)
    void clones(
            @Option(
                            longName = "cultivar",
                            description = "only this cultivar, by its epithet or its whole name, or this taxon")
                    Optional<String> cultivar,
            @Option(longName = "least", defaultValue = "2", description = "how many tags a clone must have") @Word("N")
                    int least,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        CloneTable table =
                store.read(view -> CloneTable.of(view, nursery.at(view, day, CloneTable.parts()), cultivar, least));
        screen.page(out -> CloneView.show(table, asked.format(), out));
    }

    @Command(
            name = "lineage check",
            group = GROUP,
            description = "tell what is odd in the graph, and what would put it right",
            help = """
            Units said to be another cultivar than the plant whose clone they keep, mothers younger than what came from them, tags
            that look alike, and plants without a sign of life for so many months. A word in capitals in a proposed line stands
            for what only you know.
            ortet lineage check
            ortet lineage check --months 12 --format csv
            """)
    void check(
            @Option(
                            longName = "months",
                            defaultValue = "" + Oddities.MONTHS,
                            description = "after how many months without a sign of life a plant is told of")
                    @Word("N")
                    int months,
            @Option(longName = "most", defaultValue = "20", description = "how many of each sort are shown") @Word("N")
                    int most,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Oddities oddities =
                store.read(view -> Oddities.of(view, nursery.at(view, day, Oddities.parts()), Math.max(0, months)));
        screen.page(out -> OddityView.show(oddities, Math.max(0, most), asked.format(), out));
    }

    @Command(
            name = "lineage export",
            group = GROUP,
            description = "write a family, or all of the nursery, as a graph for other programs",
            help = """
            GraphML is read by most programs for graphs, DOT by Graphviz. Units are nodes, links are edges from the mother to what
            comes from her. A file that is there is not written over.
            ortet lineage export family.graphml --of K-12
            ortet lineage export nursery.dot --format dot
            """)
    void export(
            @Argument(index = 0, description = "the file") @Word("FILE") Path file,
            @Option(longName = "format", defaultValue = "graphml", description = "how to write it")
                    FamilyGraph.Format format,
            @Option(longName = "of", description = "whose family, up and down; all units unless given")
                    Optional<Tag> of,
            @Option(longName = "as-of", description = "the day as of which it is written; today unless given")
                    Optional<LocalDate> asOf,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asOf.orElseGet(() -> store.read(view -> judge.today(view.head())));
        FamilyGraph graph = store.read(view -> FamilyGraph.of(view, nursery.at(view, day, FamilyGraph.parts()), of));
        NewFile.write(file, writer -> graph.write(format, writer));
        screen.prose("wrote " + Counts.of(graph.units(), "unit", "units") + " and "
                + Counts.of(graph.links(), "link", "links") + " to " + file + ", as of " + day);
    }
}
