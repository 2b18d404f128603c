package ortet.commands;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.book.Lookup;
import ortet.entry.EntryKind;
import ortet.entry.Per;
import ortet.entry.Task;
import ortet.inventory.InUse;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.money.ListingRemarks;
import ortet.money.Tariff;
import ortet.money.TreeCost;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Money;

/** What raising trees costs and what they sell for. */
public final class MoneyCommands {
    private static final String GROUP = "Costs and prices";

    private final Shelf shelf;
    private final Judge judge;
    private final Recording recording;

    MoneyCommands(Shelf shelf, Judge judge, Recording recording) {
        this.shelf = shelf;
        this.judge = judge;
        this.recording = recording;
    }

    private void write(Draft draft, Hand hand, Consumer<ListingRemarks> named, CommandContext context, Screen screen) {
        List<String> remarks = shelf.open(context).read(view -> {
            ListingRemarks listing = new ListingRemarks(view, judge.today(view.head()));
            named.accept(listing);
            return listing.remarks();
        });
        recording.write(draft.put("note", hand.note()), hand, context, screen);
        remarks.forEach(remark -> screen.hanging("", "    ", "remark: " + remark));
    }

    @Command(name = "cost work", group = GROUP, description = "list what the work of an act costs", help = """
            Hours, an amount, or both; for one unit, or with --per-tag for a tag however many units it has; with --per-mother
            for going to a mother once, the way and the tools, however many layers are set on her or cuttings taken. It holds
            from the day on (--on), until another is listed. An amount of 0 says that it costs nothing.
            ortet cost work layer-set --hours 0.2 --amount 0.40EUR --on 2026-01-01
            ortet cost work cuttings-struck --hours 0.15 --per-tag
            ortet cost work layer-set --hours 0.1 --per-mother
            ortet cost work potted --hours 0.1 --container "15 L"
            """)
    void work(
            @Argument(index = 0, description = "the act, by its word in the day book") @Word("ACT") Task task,
            @Option(longName = "hours", description = "hours of work") Optional<Decimal> hours,
            @Option(longName = "amount", description = "what it costs besides, with the currency")
                    Optional<Amount> amount,
            @Option(longName = "container", description = "only for this container") Optional<String> container,
            @Option(longName = "per-tag", description = "for a tag, however many units it has") boolean perTag,
            @Option(longName = "per-mother", description = "for going to a mother once, however much is set on her")
                    boolean perMother,
            Hand hand,
            CommandContext context,
            Screen screen) {
        if (perTag && perMother) {
            throw new UsageException("--per-tag and --per-mother do not go together");
        }
        write(
                Draft.of(EntryKind.COST_LISTED)
                        .put("task", task)
                        .put("container", container)
                        .put("per", perMother ? Optional.of(Per.MOTHER) : per(perTag))
                        .put("amount", amount)
                        .put("hours", hours),
                hand,
                listing -> {
                    listing.container(container);
                    amount.map(Amount::currency).ifPresent(listing::currency);
                },
                context,
                screen);
    }

    @Command(name = "cost material", group = GROUP, description = "list what a material costs", help = """
            The material is named as entries name it: a container, a medium, a wrap, a hormone. The amount is for one unit, or
            with --per-tag for a tag.
            ortet cost material "2 L" --amount 0.38EUR
            ortet cost material sphagnum --amount 0.30EUR --on 2026-01-01
            ortet cost material "bark and grit" --container "15 L" --amount 1.85EUR
            """)
    void material(
            @Argument(index = 0, description = "the material, as entries name it") @Word("MATERIAL") String material,
            @Option(longName = "amount", required = true, description = "what it costs, with the currency")
                    Amount amount,
            @Option(longName = "container", description = "only for this container") Optional<String> container,
            @Option(longName = "per-tag", description = "for a tag, however many units it has") boolean perTag,
            Hand hand,
            CommandContext context,
            Screen screen) {
        write(
                Draft.of(EntryKind.COST_LISTED)
                        .put("material", material)
                        .put("container", container)
                        .put("per", per(perTag))
                        .put("amount", amount),
                hand,
                listing -> {
                    listing.material(material);
                    listing.currency(amount.currency());
                    listing.container(container);
                },
                context,
                screen);
    }

    private static Optional<Per> per(boolean perTag) {
        return perTag ? Optional.of(Per.TAG) : Optional.empty();
    }

    @Command(name = "cost hour", group = GROUP, description = "list what an hour of work costs", help = """
            ortet cost hour 19.50EUR
            ortet cost hour 24EUR --work graft-worked --on 2026-01-01
            """)
    void hour(
            @Argument(index = 0, description = "what an hour costs, with the currency") @Word("AMOUNT") Amount amount,
            @Option(longName = "work", description = "only for this act") @Word("ACT") Optional<Task> task,
            Hand hand,
            CommandContext context,
            Screen screen) {
        write(
                Draft.of(EntryKind.COST_LISTED)
                        .put("task", task)
                        .put("per", Per.HOUR)
                        .put("amount", amount),
                hand,
                listing -> listing.currency(amount.currency()),
                context,
                screen);
    }

    @Command(
            name = "cost bench",
            group = GROUP,
            description = "list what a square metre of bench or ground costs for a year",
            help = """
            Heating, water, glass and rent, as you reckon them. At a place it counts for all that is listed within it too.
            ortet cost bench 42EUR
            ortet cost bench 95EUR --place "House 1" --on 2026-01-01
            """)
    void bench(
            @Argument(index = 0, description = "what a square metre costs for a year, with the currency")
                    @Word("AMOUNT")
                    Amount amount,
            @Option(longName = "place", description = "only there, and within it") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        write(
                Draft.of(EntryKind.COST_LISTED)
                        .put("place", place)
                        .put("per", Per.M2_YEAR)
                        .put("amount", amount),
                hand,
                listing -> {
                    listing.place(place);
                    listing.currency(amount.currency());
                },
                context,
                screen);
    }

    @Command(
            name = "cost space",
            group = GROUP,
            description = "list how many units stand on a square metre",
            help = """
            For a container, a size class, a place, or what is all of these.
            ortet cost space 30 --container "2 L"
            ortet cost space 600 --place "Mist bench 1"
            """)
    void space(
            @Argument(index = 0, description = "how many stand on one square metre") @Word("N") Decimal units,
            @Option(longName = "container", description = "in this container") Optional<String> container,
            @Option(longName = "size", description = "of this size class") Optional<String> size,
            @Option(longName = "place", description = "there, and within it") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        write(
                Draft.of(EntryKind.COST_LISTED)
                        .put("place", place)
                        .put("container", container)
                        .put("size", size)
                        .put("units_per_m2", units),
                hand,
                listing -> {
                    listing.container(container);
                    size.ifPresent(listing::size);
                    listing.place(place);
                },
                context,
                screen);
    }

    @Command(
            name = "price set",
            group = GROUP,
            description = "list what one tree of a size class sells for",
            help = """
            Of every cultivar, or with --cultivar of one, or of all under a botanical name. It holds from the day on (--on),
            until another is listed. The size class "ungraded" is for trees sold without one, rooted cuttings say.
            ortet price set "12-15 mm" 45.00EUR
            ortet price set ungraded 4.50EUR
            ortet price set "12-15 mm" 65.00EUR --cultivar "Acer palmatum 'Deshojo'" --on 2026-01-01
            """)
    void price(
            @Argument(index = 0, description = "the size class, as in grading") @Word("SIZE") String size,
            @Argument(index = 1, description = "the price of one, with the currency") @Word("PRICE") Money price,
            @Option(
                            longName = "cultivar",
                            description =
                                    "only of this cultivar, by its epithet or its whole name, or under this botanical name")
                    Optional<CultivarName> cultivar,
            Hand hand,
            CommandContext context,
            Screen screen) {
        Optional<CultivarName> meant =
                cultivar.map(name -> shelf.open(context).read(view -> Lookup.meant(name, InUse.cultivars(view))));
        write(
                Draft.of(EntryKind.PRICE_LISTED)
                        .put("size", size)
                        .put("cultivar", meant)
                        .put("price", price),
                hand,
                listing -> {
                    listing.size(size);
                    listing.cultivar(meant);
                    listing.currency(price.currency());
                },
                context,
                screen);
    }

    @Command(name = "cost list", group = GROUP, description = "tell which costs are in force", help = """
            ortet cost list
            ortet cost list --as-of 2024-12-31 --format csv
            """)
    void costs(Asked asked, CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Tariff tariff = store.read(view -> Tariff.of(view, day));
        screen.page(out -> TariffView.costs(tariff, day, asked.format(), out));
    }

    @Command(name = "price list", group = GROUP, description = "tell which prices are in force", help = """
            ortet price list
            ortet price list --as-of 2024-12-31 --format csv
            """)
    void prices(Asked asked, CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Tariff tariff = store.read(view -> Tariff.of(view, day));
        screen.page(out -> TariffView.prices(tariff, day, asked.format(), out));
    }

    @Command(
            name = "cost of",
            alias = "cost",
            group = GROUP,
            description = "tell what a tree, layer or batch has cost so far",
            help = """
            Line by line with the number of its entry: work, material, and its time on the bench, each by the costs in force on
            its day; what was drawn or split carries its share of the batch. Told apart: what one cost itself, and what it
            carries of those of its cohort that failed. What has no listed cost is told as not priced, and is in no sum.
            Without "of" it is the same, but for a tag that is one of the words that follow "cost", such as list.
            ortet cost of J-201
            ortet cost of J-201 --explain
            ortet cost of T-31 --priced-on 2026-06-01 --format json
            """)
    void cost(
            @Argument(index = 0, description = "the tree, layer or batch") @Word("TAG") Tag tag,
            @Option(
                            longName = "priced-on",
                            description = "price all of it by the costs in force on this day, not each act by its own")
                    Optional<LocalDate> priced,
            @Option(longName = "explain", description = "tell how each amount was worked out, and who listed it")
                    boolean explain,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        TreeCost cost = store.read(view -> TreeCost.of(view, tag, day, priced));
        screen.page(out -> CostView.show(cost, explain, asked.format(), out));
    }
}
