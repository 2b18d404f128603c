package ortet.commands;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ortet.book.Listed;
import ortet.entry.CostListed;
import ortet.entry.Per;
import ortet.entry.PriceListed;
import ortet.entry.Words;
import ortet.money.Tariff;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Money;

/** Shows costs and prices in force. */
final class TariffView {
    private TariffView() {}

    static void costs(Tariff tariff, LocalDate asOf, OutputFormat format, Screen screen) {
        List<Listed> costs = tariff.costs().stream()
                .sorted(Comparator.comparing((Listed one) -> ((CostListed) one.entry()).sort())
                        .thenComparing(one -> what((CostListed) one.entry()))
                        .thenComparingLong(Listed::order))
                .toList();
        if (costs.isEmpty() && format == OutputFormat.TABLE) {
            screen.prose("no costs are listed as of " + asOf + "; \"help cost work\" tells how");
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "costs in force on " + asOf,
                Column.text("sort", "sort").forPrograms(),
                Column.text("what", "what"),
                Column.text("place", "place").forPrograms(),
                Column.text("container", "container").forPrograms(),
                Column.text("size", "size").forPrograms(),
                Column.text("only", "only").forPeople(),
                Column.text("cost", "cost").forPeople(),
                Column.text("per", "per").forPrograms(),
                Column.number("hours", "hours", 2).forPrograms(),
                Column.number("amount", "amount", 2).forPrograms(),
                Column.text("currency", "currency").forPrograms(),
                Column.number("units_per_m2", "units per m²", 1).forPrograms(),
                Column.text("since", "since"),
                Column.whole("entry", "entry"));
        boolean people = format == OutputFormat.TABLE;
        for (Listed one : costs) {
            CostListed cost = (CostListed) one.entry();
            sheet.row(
                    Words.of(cost.sort()),
                    people ? named(cost) : what(cost),
                    cost.place().map(Object::toString),
                    cost.container(),
                    cost.size(),
                    only(cost),
                    told(cost),
                    per(cost),
                    cost.hours().map(Decimal::value),
                    cost.amount().map(amount -> amount.value().value()),
                    cost.amount().map(amount -> amount.currency().getCurrencyCode()),
                    cost.unitsPerM2().map(Decimal::value),
                    one.day().toString(),
                    one.order());
        }
        screen.show(sheet.build(), format);
    }

    private static String what(CostListed cost) {
        return cost.task().map(Words::of).or(cost::material).orElse("");
    }

    /** Return what is listed, in words for people. */
    private static String named(CostListed cost) {
        return switch (cost.sort()) {
            case WORK, MATERIAL -> what(cost);
            case HOUR ->
                "an hour" + cost.task().map(task -> ", " + Words.of(task)).orElse("");
            case BENCH -> "bench";
            case SPACE -> "space";
        };
    }

    private static String told(CostListed cost) {
        String sum = String.join(
                " + ",
                Stream.of(cost.hours().map(hours -> hours + " h"), cost.amount().map(Amount::toString))
                        .flatMap(Optional::stream)
                        .toList());
        return switch (cost.sort()) {
            case WORK, MATERIAL ->
                sum
                        + switch (cost.per().orElse(Per.UNIT)) {
                            case TAG -> " a tag";
                            case MOTHER -> " for each mother";
                            case UNIT, HOUR, M2_YEAR -> " each";
                        };
            case HOUR -> sum + " an hour";
            case BENCH -> sum + " a m² and year";
            case SPACE -> cost.unitsPerM2().orElseThrow() + " on a m²";
        };
    }

    private static String only(CostListed cost) {
        return String.join(
                ", ",
                Stream.of(
                                cost.place().map(place -> "at " + place),
                                cost.container().map(pot -> "in " + pot),
                                cost.size())
                        .flatMap(Optional::stream)
                        .toList());
    }

    private static Optional<String> per(CostListed cost) {
        return cost.sort() == CostListed.Sort.SPACE
                ? Optional.empty()
                : Optional.of(Words.of(cost.per().orElse(Per.UNIT)));
    }

    static void prices(Tariff tariff, LocalDate asOf, OutputFormat format, Screen screen) {
        List<Listed> prices = tariff.prices().stream()
                .sorted(Comparator.comparing((Listed one) -> ((PriceListed) one.entry()).size())
                        .thenComparing(one -> ((PriceListed) one.entry())
                                .cultivar()
                                .map(Object::toString)
                                .orElse("")))
                .toList();
        if (prices.isEmpty() && format == OutputFormat.TABLE) {
            screen.prose("no prices are listed as of " + asOf + "; \"help price set\" tells how");
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "prices in force on " + asOf,
                Column.text("size", "size"),
                Column.text("cultivar", "cultivar"),
                Column.number("price", "price", 2),
                Column.text("currency", "currency"),
                Column.text("since", "since"),
                Column.whole("entry", "entry"));
        for (Listed one : prices) {
            PriceListed listed = (PriceListed) one.entry();
            sheet.row(
                    listed.size(),
                    listed.cultivar().map(Object::toString),
                    paid(listed.price()),
                    listed.price().currency().getCurrencyCode(),
                    one.day().toString(),
                    one.order());
        }
        screen.show(sheet.build(), format);
    }

    private static BigDecimal paid(Money price) {
        return new BigDecimal(price.toString().split(" ")[0]);
    }
}
