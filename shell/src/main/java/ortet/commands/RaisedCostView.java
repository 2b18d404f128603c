package ortet.commands;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ortet.entry.Words;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.yield.ClassCost;
import ortet.yield.Comparison;
import ortet.yield.ComparisonTable;
import ortet.yield.Grown;
import ortet.yield.SideCost;
import ortet.yield.SideYield;

/** Shows what a saleable tree costs on the sides of a comparison, and what it sells for. */
final class RaisedCostView {
    private static final String DASH = "–";
    private static final String UNGRADED = "sold ungraded";

    private RaisedCostView() {}

    private record Side(SideYield yield, SideCost cost) {}

    private static List<Side> sides(Comparison row) {
        List<Side> sides = new ArrayList<>();
        row.firstCost().ifPresent(cost -> sides.add(new Side(row.first(), cost)));
        row.secondCost().ifPresent(cost -> sides.add(new Side(row.second(), cost)));
        return sides;
    }

    // ---- for people ----

    static void words(Comparison row, Screen screen) {
        List<Side> sides = sides(row);
        if (sides.stream().allMatch(side -> side.cost().classes().isEmpty())) {
            return;
        }
        String currency = sides.stream()
                .flatMap(side -> currency(side.cost()).stream())
                .findFirst()
                .orElse("");
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("size", "one saleable tree"),
                Column.text("side", "of"),
                Column.whole("saleable", "trees"),
                Column.text("cost", "cost").in(currency),
                Column.text("price", "price"),
                Column.text("margin", "margin"));
        sides.stream()
                .flatMap(side -> side.cost().classes().stream())
                .map(RaisedCostView::size)
                .distinct()
                .sorted(Comparator.comparing((String size) -> size.equals(UNGRADED))
                        .thenComparing(size -> size))
                .forEach(size -> sides.forEach(side -> side.cost().classes().stream()
                        .filter(one -> size(one).equals(size))
                        .forEach(one -> sheet.row(
                                size,
                                side.yield().name(),
                                one.saleable(),
                                range(one.least(), one.most()),
                                one.price().map(RaisedCostView::plain).orElse(DASH),
                                range(one.marginLeast(), one.marginMost())))));
        screen.show(sheet.build(), OutputFormat.TABLE);
        screen.println();
        screen.hanging(
                "",
                "  ",
                "Cost and margin from: if all that grow on become saleable, to: if none does; counted, with no interval and so"
                        + " no verdict.");
        String missing = sides.stream()
                .flatMap(side -> side.cost().classes().stream())
                .flatMap(one -> one.missing().stream())
                .distinct()
                .collect(Collectors.joining("; "));
        if (sides.stream()
                .flatMap(side -> side.cost().classes().stream())
                .anyMatch(one -> one.size().isEmpty() && one.price().isEmpty())) {
            screen.hanging(
                    "", "  ", "No price is listed for what is sold ungraded; to list it: ortet price set ungraded.");
        }
        if (!missing.isEmpty()) {
            screen.hanging(
                    "",
                    "  ",
                    "A dash where it is not listed: " + missing
                            + ". To list it: ortet cost (work, material, hour, bench, space), ortet price set.");
        }
    }

    static void none(ComparisonTable table, Screen screen) {
        table.noCosts()
                .ifPresent(why -> screen.hanging(
                        "",
                        "  ",
                        "No cost of a saleable tree: " + why
                                + " (ortet cost work, material, hour, bench, space; ortet price set)."));
    }

    static String rule() {
        return "Cost of a saleable tree, by what is listed on the cut-off day: its share of setting all of that side; its own"
                + " growing on until it was graded or sold; and its share of those that grew on and are not saleable. Growing"
                + " on is read from the diaries of at most 20 tags of a kind.";
    }

    static List<String> explanations(Comparison row) {
        List<String> lines = new ArrayList<>();
        for (Side side : sides(row)) {
            if (side.cost().classes().isEmpty()) {
                continue;
            }
            lines.add(side.yield().name() + ", setting " + side.cost().set() + " for "
                    + side.cost().saleable() + " saleable and " + side.cost().open() + " open: "
                    + side.cost().settingCost().map(Cost::toString).orElse(DASH) + "; "
                    + charges(side.cost().setting()));
            side.cost().carried().forEach(grown -> lines.add(side.yield().name() + ", " + told(grown)));
            side.cost()
                    .classes()
                    .forEach(one -> one.grown()
                            .forEach(grown -> lines.add(side.yield().name() + ", " + size(one) + ", " + told(grown))));
        }
        return lines;
    }

    private static String told(Grown grown) {
        return grown.count() + " " + Words.of(grown.which()) + " by " + Words.of(grown.method()) + ", "
                + grown.weeks() + " weeks on the bench on average; from the diaries of " + grown.looked() + " of "
                + Counts.of(grown.tags(), "tag", "tags") + ", each "
                + grown.cost().map(Cost::toString).orElse(DASH) + ": "
                + grown.parts().entrySet().stream()
                        .map(part -> part.getKey() + " "
                                + part.getValue()
                                        .cost()
                                        .map(RaisedCostView::plain)
                                        .orElse(DASH))
                        .collect(Collectors.joining(", "));
    }

    private static String charges(List<Charge> charges) {
        return charges.stream()
                .map(charge -> charge.what() + " "
                        + charge.cost()
                                .map(cost -> plain(cost) + " (" + charge.how() + ")")
                                .orElse(DASH))
                .collect(Collectors.joining(", "));
    }

    private static String size(ClassCost one) {
        return one.size().orElse(UNGRADED);
    }

    private static String range(Optional<Cost> from, Optional<Cost> to) {
        if (from.isEmpty() || to.isEmpty()) {
            return DASH;
        }
        String low = plain(from.get());
        String high = plain(to.get());
        return low.equals(high) ? low : low + " to " + high;
    }

    private static String plain(Cost cost) {
        return cost.rounded().toPlainString().replace("-", "−");
    }

    // ---- for programs ----

    static Optional<SideCost> of(Comparison row, SideYield side) {
        return side == row.first() ? row.firstCost() : row.secondCost();
    }

    static Optional<String> currency(SideCost cost) {
        return cost.classes().stream()
                .flatMap(one -> Stream.of(one.most(), one.price()))
                .flatMap(Optional::stream)
                .findFirst()
                .map(one -> one.currency().getCurrencyCode());
    }

    static void json(SideCost cost, Json json) {
        json.field("set", cost.set())
                .field("saleable", cost.saleable())
                .field("open", cost.open())
                .fieldIfAny("currency", currency(cost))
                .field("setting", cost.settingCost().map(Cost::fine))
                .field("least", cost.least().map(Cost::fine))
                .field("most", cost.most().map(Cost::fine))
                .array("carried", all -> cost.carried().forEach(some -> all.object(each -> grown(some, each))))
                .array("sizes", sizes -> cost.classes().forEach(one -> sizes.object(each -> ofClass(one, each))));
    }

    private static void ofClass(ClassCost one, Json json) {
        json.fieldIfAny("size", one.size())
                .field("count", one.saleable())
                .field("cost_least", one.least().map(Cost::fine))
                .field("cost_most", one.most().map(Cost::fine))
                .field("price", one.price().map(Cost::fine))
                .field("margin_least", one.marginLeast().map(Cost::fine))
                .field("margin_most", one.marginMost().map(Cost::fine))
                .array("missing", missing -> one.missing().forEach(missing::value))
                .array("grown", grown -> one.grown().forEach(some -> grown.object(each -> grown(some, each))));
    }

    private static void grown(Grown grown, Json json) {
        json.field("method", Words.of(grown.method()))
                .field("which", Words.of(grown.which()))
                .field("count", grown.count())
                .field("tags", grown.tags())
                .field("looked_at", grown.looked())
                .field("weeks", grown.weeks().value())
                .field("cost", grown.cost().map(Cost::fine));
    }
}
