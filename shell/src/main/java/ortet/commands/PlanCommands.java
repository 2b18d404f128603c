package ortet.commands;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.UnitFacts.Method;
import ortet.choice.Plan;
import ortet.choice.PlanKept;
import ortet.choice.PlanMeans;
import ortet.choice.PlanOrder;
import ortet.choice.PlanOrders;
import ortet.choice.PlanQuestion;
import ortet.choice.Plans;
import ortet.choice.inputs.LimitLine;
import ortet.choice.inputs.PlanMeansReader;
import ortet.entry.EntryKind;
import ortet.entry.PlannedMethod;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.nursery.Nursery;
import ortet.plant.CultivarName;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.value.Refused;

/** How many to set so that so many trees are fit for sale by a day, and how plans stand that were kept. */
public final class PlanCommands {
    private static final String GROUP = "Questions";
    private static final int PERCENT = 100;
    private static final double LEAST_SURE = 0.01;
    private static final double MOST_SURE = 0.999;

    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;
    private final Recording recording;

    PlanCommands(Shelf shelf, Judge judge, Nursery nursery, Recording recording) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
        this.recording = recording;
    }

    @Command(
            name = "plan",
            group = GROUP,
            description = "tell how many to set so that so many trees are fit for sale by a day",
            help = """
            Backward from trees fit for sale through establishing and taking, as the book tells them, with what a bad season
            may spoil: the smallest number that is enough as often as asked, on which mothers and positions, when, and at what
            cost. Without a method each is told. With --keep the plan goes into the book. Orders in a file (cultivar, count,
            by, and if wanted size, sure, method) share the mothers: the first day is served first. --limits FILE tells hours by
            season and room by place (what,where,year,amount, as for choose), which orders then share too.
            ortet plan --cultivar Deshojo --count 20 --by 2030-10-01
            ortet plan --cultivar Deshojo --count 20 --by 2030-10-01 --method layer --keep "Deshojo 2030"
            ortet plan --orders orders.csv --limits limits.csv
            """)
    void plan(
            @Option(
                            longName = "cultivar",
                            description = "the cultivar, by its epithet or its whole name, or a botanical name")
                    Optional<String> cultivar,
            @Option(longName = "count", description = "how many trees") Optional<Integer> count,
            @Option(longName = "by", description = "the day by which they are to be fit for sale")
                    Optional<LocalDate> by,
            @Option(longName = "sure", description = "how sure, from 0.01 to 0.999 or in percent; 0.9 unless given")
                    @Word("SHARE")
                    Optional<Portion> sure,
            @Option(longName = "method", description = "only by this method; each unless given")
                    Optional<PlannedMethod> method,
            @Option(longName = "size", description = "the size class that they are wanted in, as in grading")
                    Optional<String> size,
            @Option(longName = "orders", description = "a CSV file with several orders") @Word("FILE")
                    Optional<Path> orders,
            @Option(longName = "limits", description = "hours by season and room by place, as CSV, as choose takes it")
                    @Word("FILE")
                    Optional<Path> limits,
            @Option(longName = "keep", description = "keep the plan in the book, under this name") @Word("NAME")
                    Optional<String> keep,
            @Option(longName = "kept-by", description = "who decided it, where it is kept") @Word("PERSON")
                    Optional<String> keptBy,
            @Option(longName = "explain", description = "tell the methods, their sources and what went in")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        if (orders.isPresent()) {
            boolean more = cultivar.isPresent()
                    || count.isPresent()
                    || by.isPresent()
                    || sure.isPresent()
                    || method.isPresent()
                    || size.isPresent()
                    || keep.isPresent()
                    || keptBy.isPresent();
            if (more) {
                throw new UsageException("--orders goes alone: the file says what is wanted, how many and by when");
            }
            Optional<List<LimitLine>> lines = limits.map(LimitFile::read);
            BookStore store = shelf.open(context);
            LocalDate day = asked.day(store, judge);
            List<PlanOrder> wanted = PlanOrderFile.read(orders.get(), day);
            PlanOrders answer = store.read(view ->
                    PlanOrders.ask(view, nursery.at(view, day, Plans.parts()), wanted, means(view, lines, day)));
            screen.page(out -> PlanView.orders(answer, day, explain, asked.format(), out));
            lines.ifPresent(all -> notForPlans(all, screen));
            return;
        }
        if (cultivar.isEmpty() || count.isEmpty() || by.isEmpty()) {
            throw new UsageException("expected --cultivar, --count and --by, or --orders with a file");
        }
        count.filter(trees -> trees < 1 || trees > PlanQuestion.MOST).ifPresent(trees -> {
            throw new UsageException("--count of plan: expected 1 to " + PlanQuestion.MOST + " trees, found " + trees);
        });
        sure.map(Portion::share)
                .filter(share -> share < LEAST_SURE || share > MOST_SURE)
                .ifPresent(share -> {
                    throw new UsageException(
                            "--sure of plan: expected a share from 0.01 to 0.999, such as 0.9 or 90%, found "
                                    + Confidence.percent(share) + "%");
                });
        if (keep.isPresent() && method.isEmpty()) {
            throw new UsageException("--keep needs --method: a plan is kept for one of them");
        }
        if (keep.isPresent() && asked.format() != OutputFormat.TABLE) {
            throw new UsageException("--keep goes with --format table");
        }
        if (keptBy.isPresent() && keep.isEmpty()) {
            throw new UsageException("--kept-by goes with --keep");
        }
        Optional<List<LimitLine>> lines = limits.map(LimitFile::read);
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        PlanQuestion question = new PlanQuestion(
                cultivar.get(),
                count.get(),
                by.get(),
                sure.map(Portion::share).orElse(PlanQuestion.SURE),
                size,
                method.map(one -> Method.valueOf(one.name())),
                day);
        Plans plans = store.read(
                view -> Plans.ask(view, nursery.at(view, day, Plans.parts()), question, means(view, lines, day)));
        screen.page(out -> PlanView.show(plans, explain, asked.format(), out));
        lines.ifPresent(all -> notForPlans(all, screen));
        keep.ifPresent(name -> keep(plans.all().get(0), name, keptBy, context, screen));
    }

    private static Optional<PlanMeans> means(BookView view, Optional<List<LimitLine>> lines, LocalDate day) {
        return lines.map(all -> PlanMeansReader.read(view, all, day.getYear()));
    }

    /** Say which lines of a file, made for the choice of stock, no plan counts. */
    private static void notForPlans(List<LimitLine> lines, Screen screen) {
        String others = lines.stream()
                .map(LimitLine::what)
                .filter(what -> what != LimitLine.What.HOURS && what != LimitLine.What.ROOM)
                .distinct()
                .map(LimitLine.What::word)
                .collect(Collectors.joining(", "));
        if (!others.isEmpty()) {
            screen.aside("note: of --limits a plan counts hours and room alone, not " + others);
        }
    }

    private void keep(Plan plan, String name, Optional<String> by, CommandContext context, Screen screen) {
        Plan.Answer answer = plan.answer()
                .orElseThrow(() ->
                        Refused.because("no-plan", "nothing is kept as \"" + name + "\": the plan cannot be met"));
        PlanQuestion question = plan.question();
        CultivarName cultivar = CultivarName.parse(
                plan.cultivars().size() == 1 ? plan.cultivars().get(0) : question.cultivar());
        Draft draft = Draft.of(EntryKind.PLANNED)
                .put("name", name)
                .put("cultivar", cultivar)
                .put("method", plan.method())
                .put("wanted", question.wanted())
                .put("wanted_by", question.by())
                .put("sure_percent", percent(question.sure()))
                .put("size", question.size())
                .put("to_set", answer.toSet())
                .put("set_from", answer.from())
                .put("set_to", answer.to())
                .put("expected", rounded(answer.expected()));
        screen.println();
        recording.write(draft, Optional.empty(), by, context, screen);
    }

    private static String percent(double share) {
        return BigDecimal.valueOf(share)
                .multiply(BigDecimal.valueOf(PERCENT))
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String rounded(double expected) {
        return BigDecimal.valueOf(expected)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    @Command(name = "plan show", group = GROUP, description = "tell how a plan that was kept stands", help = """
            What was set for it so far, what is pending and what took; what to expect in the end; whether that is behind, and
            how many more to set. Once its day is over, what came of it. Without a name, every plan.
            ortet plan show "Deshojo 2030"
            ortet plan show --as-of 2029-06-01 --format json
            """)
    void show(
            @Argument(index = 0, description = "the name of the plan") @Word("NAME") Optional<String> name,
            @Option(longName = "explain", description = "tell the methods, their sources and what went in")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        List<PlanKept> plans = store.read(view -> name.isPresent()
                ? List.of(PlanKept.named(view, nursery.at(view, day, Plans.parts()), name.get()))
                : PlanKept.all(view, nursery.at(view, day, Plans.parts())));
        screen.page(out -> PlanKeptView.show(plans, day, explain, asked.format(), out));
    }

    @Command(name = "plan list", group = GROUP, description = "list the plans that are kept", help = """
            ortet plan list
            ortet plan list --as-of 2029-06-01 --format csv
            """)
    void list(Asked asked, CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        List<PlanKept> plans = store.read(view -> PlanKept.all(view, nursery.at(view, day, Plans.parts())));
        screen.page(out -> PlanKeptView.list(plans, day, asked.format(), out));
    }
}
