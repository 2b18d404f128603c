package ortet.commands;

import java.time.LocalDate;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.choice.Forecast;
import ortet.choice.ForecastCheck;
import ortet.choice.ForecastQuestion;
import ortet.choice.ForecastSales;
import ortet.choice.ForecastScore;
import ortet.choice.ForecastTable;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.nursery.Nursery;
import ortet.screen.Screen;

/** Which trees will become saleable, and when. */
public final class ForecastCommands {
    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;

    ForecastCommands(Shelf shelf, Judge judge, Nursery nursery) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
    }

    @Command(
            name = "forecast",
            group = "Questions",
            description = "tell which trees will become saleable, month by month, and how sure that is",
            help = """
            What is pending takes or fails, what grows on becomes saleable or is lost, as it has been here before; drawn many
            times. Nothing is sold unless you say --sales as-before. With --check it forecasts for an earlier day, with what was
            known then, and tells how that has held.
            ortet forecast --cultivar Deshojo --months 36
            ortet forecast --size medium --sales as-before
            ortet forecast --check 2024-01-01 --explain
            """)
    void forecast(
            @Option(
                            longName = "cultivar",
                            description = "only this cultivar, by its epithet or its whole name, or this taxon")
                    Optional<String> cultivar,
            @Option(longName = "months", defaultValue = "24", description = "for how many months") int months,
            @Option(longName = "size", description = "only this size class") @Word("CLASS") Optional<String> size,
            @Option(longName = "sales", defaultValue = "none", description = "what is assumed of sales")
                    ForecastSales sales,
            @Option(longName = "check", description = "forecast for this earlier day, and tell how that has held")
                    Optional<LocalDate> check,
            @Option(longName = "seed", defaultValue = "1", description = "seed of the draws") long seed,
            @Option(longName = "simulations", defaultValue = "400", description = "how many are drawn") int simulations,
            @Option(longName = "explain", description = "tell the reason of every number") boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        UsageException.within("forecast", "months", months, 1, ForecastQuestion.MOST_MONTHS);
        UsageException.within("forecast", "simulations", simulations, ForecastQuestion.FEWEST, ForecastQuestion.MOST);
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        ForecastQuestion question = new ForecastQuestion(cultivar, size, months, day, sales, simulations, seed);
        if (check.isPresent()) {
            ForecastScore score = store.read(view ->
                    ForecastCheck.ask(view, judge, nursery.at(view, day, Forecast.parts()), question, check.get()));
            screen.page(out -> ForecastScoreView.show(score, explain, asked.format(), out));
            return;
        }
        ForecastTable table = store.read(view -> Forecast.ask(view, nursery.at(view, day, Forecast.parts()), question));
        screen.page(out -> ForecastView.show(table, explain, asked.format(), out));
    }
}
