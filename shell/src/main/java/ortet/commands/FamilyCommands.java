package ortet.commands;

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
}
