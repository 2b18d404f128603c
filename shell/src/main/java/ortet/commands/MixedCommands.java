package ortet.commands;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.figures.MixedFit;
import ortet.figures.MixedModel;
import ortet.figures.ModelData;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;

/** Mixed models put to a file of counts, without a book. */
public final class MixedCommands {
    private static final long SEED = 1;
    private static final int DRAWS = 4000;

    @Command(
            name = "figures mixed",
            group = "Questions",
            description = "tell how rates in a CSV file differ between groups, pooled by a mixed model",
            help = """
            Each row is so many successes of so many trials. Every group of a --random column has a rate of its own, drawn
            towards the others the fewer trials it has. A --fixed column of numbers is a slope, any other a factor; a:b is
            the product of two. --nested says that each random column lies within the one named before it. docs/methods/
            mixed.md tells the method, and when not to trust it.
            ortet figures mixed seeds.csv --successes r --trials n --random plate --fixed seed,extract,seed:extract
            ortet figures mixed mothers.csv --successes taken --trials known --random cultivar,mother --nested --best 10
            ortet figures mixed seeds.csv --successes r --trials n --random plate --quadrature 9 --explain
            """)
    void mixed(
            @Argument(index = 0, description = "a CSV file with a header") @Word("FILE") Path file,
            @Option(longName = "successes", required = true, description = "the column of successes") @Word("COL")
                    String successes,
            @Option(longName = "trials", required = true, description = "the column of trials") @Word("COL")
                    String trials,
            @Option(longName = "random", required = true, description = "the columns of groups") @Word("COL,COL")
                    List<String> random,
            @Option(longName = "fixed", description = "the columns that may explain the rate") @Word("COL,COL")
                    List<String> fixed,
            @Option(longName = "factor", description = "fixed columns whose numbers are names") @Word("COL,COL")
                    List<String> factors,
            @Option(longName = "nested", description = "each random column lies within the one before") boolean nested,
            @Option(longName = "quadrature", description = "so many nodes, with one random column") @Word("N")
                    Optional<Integer> quadrature,
            @Option(longName = "best", description = "how likely each group is among the best so many") @Word("K")
                    Optional<Integer> best,
            @Option(
                            longName = "confidence",
                            defaultValue = "90",
                            description = "confidence of the intervals in percent")
                    @Word("PERCENT")
                    Confidence confidence,
            @Option(longName = "explain", description = "tell the method, its source and what went in") boolean explain,
            @Option(longName = "format", defaultValue = "table", description = "how to answer") OutputFormat format,
            Screen screen) {
        UsageException.within("figures mixed", "quadrature", quadrature.orElse(1), 1, MixedModel.MOST_NODES);
        UsageException.within("figures mixed", "best", best.orElse(1), 1, 1_000_000);
        List<String> groups = apart(random);
        if (quadrature.orElse(1) > 1 && groups.size() > 1) {
            throw new UsageException(
                    "--quadrature of figures mixed goes with one --random column, found " + String.join(", ", groups));
        }
        FigureFile counts = FigureFile.read(file);
        ModelData data = new ModelTable(counts).model(successes, trials, groups, apart(fixed), apart(factors), nested);
        MixedFit fit = MixedModel.quadrature(quadrature.orElse(1)).fit(data);
        MixedView view = new MixedView(fit, groups, confidence.share(), quadrature.orElse(1));
        best.ifPresent(k -> view.rank(fit.ranking(groups.get(groups.size() - 1), k, DRAWS, SEED)));
        if (explain) {
            view.explain(file, counts.size());
        }
        screen.page(out -> out.show(view.sheet(), format));
    }

    /** Return the names that commas part. */
    private static List<String> apart(List<String> columns) {
        return columns.stream()
                .flatMap(names -> Arrays.stream(names.split(",")))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
    }
}
