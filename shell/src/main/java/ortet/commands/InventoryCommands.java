package ortet.commands;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.book.UnitFacts.Nature;
import ortet.inventory.DayRecord;
import ortet.inventory.Findings;
import ortet.inventory.HoldingFilter;
import ortet.inventory.Holdings;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;

/** What there is, where words occur, and what was recorded today. */
public final class InventoryCommands {
    private static final String GROUP = "Questions";

    private final Shelf shelf;
    private final Judge judge;

    InventoryCommands(Shelf shelf, Judge judge) {
        this.shelf = shelf;
        this.judge = judge;
    }

    @Command(name = "list", group = GROUP, description = "list plants, layers and batches", help = """
            Those that are there, unless --state asks for others; of a place also what stands in places within it. --mother finds
            what was raised from a plant, directly or through trays.
            ortet list --place "House 1"
            ortet list J-2 --kind layer --state pending
            ortet list --cultivar Deshojo --mother K-12 --state growing,gone --format csv
            ortet list --stock
            """)
    void list(
            @Argument(index = 0, description = "what the tag begins with") @Word("BEGINNING")
                    Optional<String> beginning,
            @Option(
                            longName = "cultivar",
                            description = "only this cultivar, by its epithet or its whole name, or this taxon")
                    Optional<String> cultivar,
            @Option(longName = "place", description = "only what stands there") Optional<Place> place,
            @Option(longName = "state", description = "how they stand; growing and pending unless given")
                    List<HoldingFilter.Standing> states,
            @Option(longName = "kind", description = "what they are; all unless given") List<Nature> kinds,
            @Option(longName = "mother", description = "only what was raised from this plant") Optional<Tag> mother,
            @Option(longName = "stock", description = "only what is kept as stock") boolean stock,
            @Option(longName = "held", description = "only what is held for plant health") boolean held,
            @Option(longName = "reserved", description = "only what is reserved") boolean reserved,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        HoldingFilter filter = new HoldingFilter(
                beginning,
                cultivar,
                place,
                new LinkedHashSet<>(states),
                new LinkedHashSet<>(kinds),
                mother,
                stock,
                held,
                reserved);
        Holdings holdings = store.read(view -> Holdings.of(view, filter, day));
        screen.page(out -> InventoryView.show(holdings, asked.format(), out));
    }

    @Command(name = "find", group = GROUP, description = "find words on labels, in names and in remarks", help = """
            Looks for all of the words on labels old and new, in names of cultivars, places and persons, and in what somebody
            wrote freely: notes, reasons, signs, invoices, delivery notes, passports. Case does not matter.
            ortet find bleeds june
            ortet find J-20
            ortet find 2026-118 --most 100
            """)
    void find(
            @Arguments @Word(value = "WORD", description = "the words") List<String> words,
            @Option(longName = "most", defaultValue = "20", description = "how much of each sort is shown") int most,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        FindView.Found found = store.read(view -> {
            Findings findings = Findings.of(view, words, day, Math.max(1, most));
            return new FindView.Found(findings, findings.isNothing() ? FindView.near(view, words) : List.of());
        });
        screen.page(out -> FindView.show(found, asked.format(), out));
    }

    @Command(name = "today", group = GROUP, description = "tell what was recorded today, by whom", help = """
            In the order in which it was recorded, whatever day it was done on. The number is that of the entry, for "correct"
            and "cross-out".
            ortet today
            ortet today --day yesterday --by Aoife
            """)
    void today(
            @Option(longName = "day", description = "another day on which it was recorded") Optional<LocalDate> day,
            @Option(longName = "by", description = "only what this person did") @Word("PERSON") Optional<String> by,
            @Option(
                            longName = "most",
                            defaultValue = "1000",
                            description = "how many entries are shown, the last of them")
                    int most,
            @Option(longName = "format", defaultValue = "table", description = "how to answer") OutputFormat format,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate wanted = day.orElseGet(() -> store.read(view -> judge.today(view.head())));
        DayRecord record = store.read(view -> DayRecord.of(view, wanted, by, Math.max(1, most)));
        screen.page(out -> DayView.show(record, format, out));
    }
}
