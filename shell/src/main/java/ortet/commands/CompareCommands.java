package ortet.commands;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.entry.Words;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.nursery.Nursery;
import ortet.screen.Screen;
import ortet.value.Decimal;
import ortet.yield.Compare;
import ortet.yield.CompareOn;
import ortet.yield.CompareQuestion;
import ortet.yield.ComparisonTable;
import ortet.yield.Establishment;
import ortet.yield.Periods;
import ortet.yield.Strata;
import ortet.yield.TakeBy;

/** What one way of raising trees yields against another. */
public final class CompareCommands {
    private static final Pattern SEASON = Pattern.compile("(\\d{1,2})-(\\d{1,2})\\.\\.(\\d{1,2})-(\\d{1,2})");

    private final Shelf shelf;
    private final Judge judge;
    private final Nursery nursery;

    CompareCommands(Shelf shelf, Judge judge, Nursery nursery) {
        this.shelf = shelf;
        this.judge = judge;
        this.nursery = nursery;
    }

    @Command(
            name = "compare",
            group = "Questions",
            description = "tell what one way of raising trees yields against another",
            help = """
            Methods: layers, cuttings, grafts, seed; several on a side with + between. With --treatment the two are values:
            hormone 0.3% 0.8% (or none), wood, wound, medium, wrap, operator. Every unit is followed to the plant that it
            became. The verdict follows the interval, which allows for trays and mothers, never the figure in its middle.
            ortet compare layering cuttings --by cultivar
            ortet compare layering cuttings --cultivar Deshojo --within season
            ortet compare --treatment hormone 0.3% 0.8% --method cutting --explain
            """)
    void compare(
            @Arguments @Word(value = "SIDE", description = "the two sides") List<String> words,
            @Option(longName = "treatment", description = "the two sides are values of this") @Word("WHAT")
                    Optional<CompareOn> treatment,
            @Option(longName = "by", description = "each cultivar, or each taxon, by itself")
                    @Word(
                            value = "WHAT",
                            allowed = {"cultivar", "taxon"})
                    Optional<String> by,
            @Option(longName = "within", description = "within seasons, or within mothers") Optional<Strata> within,
            Filtered filtered,
            @Option(longName = "stem", description = "tell the years to this stem diameter in mm") @Word("MM")
                    Optional<Decimal> stem,
            @Option(longName = "days", description = "growing-season days until established; 90 unless given")
                    Optional<Integer> days,
            @Option(longName = "season", description = "the growing season; 4-1..10-31 unless given") @Word("M-D..M-D")
                    Optional<String> season,
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
        if (words.size() != 2) {
            throw new UsageException("SIDE of compare: expected two sides, such as layering cuttings, found "
                    + (words.isEmpty() ? "none" : String.join(" ", words)));
        }
        if (treatment.filter(on -> on == CompareOn.METHOD).isPresent()) {
            throw new UsageException(
                    "--treatment of compare: methods are compared without it, such as compare layers" + " cuttings");
        }
        stem.filter(mm -> mm.signum() <= 0).ifPresent(mm -> {
            throw new UsageException("--stem of compare: expected above 0 mm, found " + mm);
        });
        days.filter(count -> count < 1).ifPresent(count -> {
            throw new UsageException("--days of compare: expected at least 1, found " + count);
        });
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        CompareQuestion question = new CompareQuestion(
                treatment.orElse(CompareOn.METHOD),
                words.get(0),
                words.get(1),
                by.map(what -> Words.parse(TakeBy.class, what)),
                within,
                filtered.filter(),
                day,
                Periods.DEFAULTS,
                establishment(days, season),
                stem,
                confidence.share());
        ComparisonTable table = store.read(view -> Compare.ask(view, nursery.at(view, day, Compare.parts()), question));
        screen.page(out -> YieldView.show(table, explain, asked.format(), out));
    }

    private static Establishment establishment(Optional<Integer> days, Optional<String> season) {
        Establishment usual = Establishment.DEFAULTS;
        if (season.isEmpty()) {
            return new Establishment(days.orElse(usual.days()), usual.from(), usual.to());
        }
        Matcher matcher = SEASON.matcher(season.get().strip().toLowerCase(Locale.ROOT));
        if (!matcher.matches()) {
            throw wrong(season.get());
        }
        try {
            return new Establishment(
                    days.orElse(usual.days()),
                    day(matcher.group(1), matcher.group(2)),
                    day(matcher.group(3), matcher.group(4)));
        } catch (DateTimeException none) {
            throw wrong(season.get());
        }
    }

    private static MonthDay day(String month, String day) {
        return MonthDay.of(Integer.parseInt(month), Integer.parseInt(day));
    }

    private static UsageException wrong(String season) {
        return new UsageException("--season of compare: \"" + season
                + "\"; expected the first and the last day of the growing season, such as 4-1..10-31");
    }
}
