package ortet.commands;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.book.UnitFacts.Method;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.lineage.Account;
import ortet.lineage.Lineage;
import ortet.lineage.Trace;
import ortet.nursery.Nursery;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.timing.Timing;
import ortet.timing.TimingQuestion;
import ortet.timing.TimingTable;
import ortet.yield.Mothers;
import ortet.yield.MothersQuestion;
import ortet.yield.MothersTable;
import ortet.yield.Periods;
import ortet.yield.PooledTake;
import ortet.yield.TakeBy;
import ortet.yield.TakeFilter;
import ortet.yield.TakeQuestion;

/** Questions put to the book. */
public final class QuestionCommands {
    private static final String GROUP = "Questions";

    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;

    QuestionCommands(Shelf shelf, Judge judge, Nursery nursery) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
    }

    @Command(
            name = "trace",
            group = GROUP,
            description = "tell where a tree comes from, to its mother and on to the ortet",
            help = """
            At each step the act, its day and who did it, and every potting and move between. A bought-in plant is the
            earliest known, its origin unknown.
            ortet trace J-0140
            ortet trace J-0140 --as-of 2024-12-31 --format json
            """)
    void trace(
            @Argument(index = 0, description = "the tree, layer or batch") @Word("TAG") Tag tag,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Trace trace = store.read(view -> Lineage.trace(view, tag, day));
        screen.page(out -> TraceView.show(trace, asked.format(), out));
    }

    @Command(
            name = "plant",
            group = GROUP,
            description = "tell all that the book says of one plant, layer or batch",
            help = """
            ortet plant K-12
            ortet plant K-12 --format csv
            """)
    void plant(
            @Argument(index = 0, description = "the plant, layer or batch") @Word("TAG") Tag tag,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Account account = store.read(view -> Lineage.plant(view, tag, day));
        screen.page(out -> PlantView.show(account, asked.format(), out));
    }

    @Command(
            name = "take",
            group = GROUP,
            description = "tell how many took of those set, struck, worked and sown",
            help = """
            The rate is taken of those known (taken and failed), with the interval in which the true rate may lie. What is
            pending is in neither; unaccounted is what should be known by now and nobody has said. Mothers are told with the
            help of each other (pooled), and stand in the order of what is known, not of luck.
            ortet take --by cultivar,method
            ortet take --by mother --cultivar "Acer palmatum 'Deshojo'" --method layer --from 2020
            ortet take --by operator,season --format csv
            """)
    void take(
            @Option(longName = "by", description = "what to tell apart, one or two") List<TakeBy> by,
            Filtered filtered,
            @Option(
                            longName = "confidence",
                            defaultValue = "95",
                            description = "confidence of the intervals in percent")
                    @Word("PERCENT")
                    Confidence confidence,
            @Option(longName = "explain", description = "tell the methods, their sources and what went in")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        TakeQuestion question = new TakeQuestion(by, filtered.filter(), day, Periods.DEFAULTS, confidence.share());
        PooledTake table =
                store.read(view -> PooledTake.ask(view, nursery.at(view, day, PooledTake.parts()), question));
        screen.page(out -> TakeView.show(table, explain, asked.format(), out));
    }

    @Command(
            name = "mothers",
            group = GROUP,
            description = "tell which mothers yield best, and how sure that is",
            help = """
            Each mother by one method (layers unless asked otherwise): what took, what to expect of her with the help of the
            others, how likely she is among the best of those that still stand, what she gave a year, and what became of it.
            ortet mothers --cultivar Deshojo
            ortet mothers --method cutting --best 10 --format csv
            """)
    void mothers(
            @Option(longName = "method", defaultValue = "layer", description = "by this method") Method method,
            Seasons seasons,
            @Option(longName = "operator", description = "only by this person") @Word("PERSON")
                    Optional<String> operator,
            @Option(longName = "best", defaultValue = "5", description = "among how many of the best") int best,
            @Option(longName = "seed", defaultValue = "1", description = "seed of the draws") long seed,
            @Option(
                            longName = "confidence",
                            defaultValue = "90",
                            description = "confidence of the intervals in percent")
                    @Word("PERCENT")
                    Confidence confidence,
            @Option(longName = "explain", description = "tell the methods, their sources and what went in")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        if (best < 1) {
            throw new UsageException("--best of mothers: expected at least 1, found " + best);
        }
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        MothersQuestion question = new MothersQuestion(
                new TakeFilter(
                        seasons.cultivar(),
                        Optional.empty(),
                        Optional.of(method),
                        seasons.from(),
                        seasons.to(),
                        operator),
                best,
                MothersQuestion.DRAWS,
                seed,
                day,
                Periods.DEFAULTS,
                confidence.share());
        MothersTable table = store.read(view -> Mothers.ask(view, nursery.at(view, day, Mothers.parts()), question));
        screen.page(out -> MothersView.show(table, explain, asked.format(), out));
    }

    @Command(name = "timing", group = GROUP, description = "tell how long rooting takes", help = """
            Weeks from setting to the first roots, as far as the looks tell it, and days until a layer was severed or a tray
            lifted: when 1 in 10, 1 in 2 and 9 in 10 had come to it.
            ortet timing --cultivar Deshojo
            ortet timing --method cutting --from 2020 --format csv
            With --warmth, times are degree-days above --base: a file with the columns month (1 to 12) and normal_c.
            """)
    void timing(
            @Option(longName = "method", defaultValue = "layer", description = "by this method") Method method,
            Seasons seasons,
            @Option(longName = "warmth", description = "count by warmth: a CSV of monthly normal temperatures")
                    @Word("FILE")
                    Optional<Path> warmth,
            @Option(
                            longName = "base",
                            defaultValue = "5",
                            description = "temperature above which warmth counts, in degrees Celsius")
                    @Word("DEGREES")
                    double base,
            @Option(
                            longName = "confidence",
                            defaultValue = "90",
                            description = "confidence of the intervals in percent")
                    @Word("PERCENT")
                    Confidence confidence,
            @Option(longName = "explain", description = "tell the methods, their sources and what went in")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        TimingQuestion question = new TimingQuestion(
                method,
                seasons.cultivar(),
                seasons.from(),
                seasons.to(),
                warmth.map(file -> new TimingQuestion.Climate(Normals.read(file), base)),
                day,
                confidence.share());
        TimingTable table = store.read(view -> Timing.ask(view, nursery.at(view, day, Timing.parts()), question));
        screen.page(out -> TimingView.show(table, explain, asked.format(), out));
    }
}
