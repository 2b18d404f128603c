package ortet.commands;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.choice.Aim;
import ortet.choice.Choice;
import ortet.choice.Chooser;
import ortet.choice.Settings;
import ortet.choice.inputs.ChoiceInputs;
import ortet.choice.inputs.ChoiceRequest;
import ortet.choice.inputs.DemandLine;
import ortet.choice.inputs.InputsReader;
import ortet.choice.inputs.LimitLine;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.nursery.Nursery;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;

/** Which stock to grow on for layering wood. */
public final class ChoiceCommands {
    private static final int MOST_SECONDS = 3600;
    private static final int MOST_DRAWS = 10_000;
    private static final int MOST_YEARS = 10;

    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;

    ChoiceCommands(Shelf shelf, Judge judge, Nursery nursery) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
    }

    @Command(
            name = "choose",
            group = "Questions",
            description = "tell which stock to grow on for layering wood",
            help = """
            For each stock plant what to do this season, place by place: layer, take cuttings, leave long, cut back, rest, try
            out or sell; how sure that is, and what the next best would cost. Read from the book: positions, take, times,
            costs, prices and past sales. The plan is advice; the grower sees the tree.
            LIMITS.csv has the columns what,where,year,amount: hours (where: a season, or nothing), room (a place, in m²),
            licence (a cultivar), clone-share and place-share (of 1). DEMAND.csv has cultivar,size,count and, if you like, year.
            ortet choose
            ortet choose --cultivar Deshojo --years 3 --explain
            ortet choose --trials
            """)
    void choose(
            @Option(
                            longName = "cultivar",
                            description =
                                    "only mothers of this cultivar, by its epithet or its whole name, or this taxon")
                    Optional<String> cultivar,
            @Option(longName = "years", defaultValue = "5", description = "how many years to plan") int years,
            @Option(longName = "aim", defaultValue = "margin", description = "what the plan is to do best") Aim aim,
            @Option(longName = "limits", description = "hours, room, licences and shares, as CSV") @Word("FILE")
                    Optional<Path> limits,
            @Option(longName = "demand", description = "trees asked for, as CSV; past sales unless given") @Word("FILE")
                    Optional<Path> demand,
            @Option(longName = "seconds", defaultValue = "600", description = "how long to search at most") int seconds,
            @Option(longName = "draws", defaultValue = "200", description = "draws that tell how sure the plan is")
                    int draws,
            @Option(longName = "seed", defaultValue = "1", description = "seed of the draws") long seed,
            @Option(
                            longName = "discount",
                            description =
                                    "by what a year's delay lessens money, below 1, such as 0.05 or 5%; 0.03 unless given")
                    @Word("SHARE")
                    Optional<Portion> discount,
            @Option(longName = "trials", description = "list the mothers worth trying out, by what that would teach")
                    boolean trials,
            @Option(longName = "explain", description = "tell where each figure comes from") boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        UsageException.within("choose", "years", years, 1, MOST_YEARS);
        UsageException.within("choose", "seconds", seconds, 1, MOST_SECONDS);
        UsageException.within("choose", "draws", draws, 0, MOST_DRAWS);
        discount.map(Portion::share).filter(share -> share >= 1).ifPresent(share -> {
            throw new UsageException("--discount of choose: expected a share below 1, such as 0.05 or 5%, found "
                    + Confidence.percent(share) + "%");
        });
        Optional<List<DemandLine>> wanted = demand.map(ChoiceCommands::demand);
        List<LimitLine> available = limits.map(LimitFile::read).orElse(List.of());
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        ChoiceRequest request = new ChoiceRequest(
                cultivar,
                day,
                years,
                aim,
                wanted,
                available,
                Duration.ofSeconds(seconds),
                draws,
                seed,
                discount.map(Portion::share).orElse(Settings.DEFAULTS.discount()));
        ChoiceInputs inputs;
        Optional<Choice> choice;
        try (ProgressBar bar = screen.progress()) {
            inputs = store.read(
                    view -> InputsReader.read(view, nursery.at(view, day, InputsReader.parts()), request, bar::at));
            choice = inputs.question().map(question -> Chooser.choose(question, bar::at));
        }
        ChoiceView view = new ChoiceView(request, inputs, choice);
        screen.page(out -> view.show(trials, explain, asked.format(), out));
    }

    private static List<DemandLine> demand(Path path) {
        FigureFile file = FigureFile.read(path);
        file.needs("--demand", List.of("cultivar", "size", "count"));
        return file.each(row -> new DemandLine(
                row.name("cultivar"),
                row.name("size"),
                LimitFile.amount(row, "count"),
                LimitFile.year(file, row),
                Optional.of(row.where())));
    }
}
