package ortet.commands;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Words;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.money.CostLine;
import ortet.money.CostPart;
import ortet.money.Total;
import ortet.money.TreeCost;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows what a unit has cost. */
final class CostView {
    private static final int FINE = 6;

    private CostView() {}

    static void show(TreeCost cost, boolean explain, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(cost, explain, screen);
            case CSV -> screen.show(rows(cost), format);
            case JSON -> screen.json(json -> json(cost, json));
        }
    }

    // ---- for people ----

    private static void words(TreeCost cost, boolean explain, Screen screen) {
        screen.headed(
                "",
                cost.tag().text(),
                "  ",
                ", " + stands(cost) + ", as of " + cost.asOf()
                        + cost.priced()
                                .map(day -> ", all priced by the costs in force on " + day)
                                .orElse(", each act priced by the costs in force on its day"));
        screen.println();
        if (cost.parts().isEmpty()) {
            screen.prose("nothing that could cost anything was done to it, and it stood on no bench");
            return;
        }
        table(cost.nature() == Nature.BATCH ? "spent on all of them" : "spent on it", cost.parts(), explain, screen);
        if (!cost.failedParts().isEmpty()) {
            screen.println();
            table("its share of those of its cohort that failed", cost.failedParts(), explain, screen);
        }
        screen.println();
        sums(cost, screen);
        List<CostPart> bare = cost.parts().stream()
                .filter(part -> !part.line().charge().isPriced())
                .toList();
        if (!bare.isEmpty()) {
            screen.hanging(
                    "",
                    "    ",
                    "not priced, and in no sum: "
                            + bare.stream()
                                    .map(part -> part.line().charge().missing().orElseThrow())
                                    .distinct()
                                    .collect(Collectors.joining("; ")));
        }
        if (cost.coarse()) {
            screen.hanging("", "    ", "some days are known to the month or the year only: time on the bench is rough");
        }
    }

    private static String stands(TreeCost cost) {
        if (cost.nature() != Nature.BATCH) {
            return cost.failed() > 0 ? "failed" : Words.of(cost.nature());
        }
        return "batch of " + cost.ever().map(Object::toString).orElse("nobody knows how many")
                + (cost.failed() > 0 ? ", " + cost.failed() + " failed" : "")
                + cost.here().map(here -> ", " + here + " there").orElse("");
    }

    private static void sums(TreeCost cost, Screen screen) {
        boolean batch = cost.nature() == Nature.BATCH;
        if (batch || cost.own().isEmpty()) {
            screen.hanging("spent in all:       ", "                    ", told(cost.spent()));
        }
        if (cost.own().isEmpty()) {
            screen.hanging(
                    "of one:             ",
                    "                    ",
                    cost.ever().isEmpty()
                            ? "– (nobody has counted the units)"
                            : "– (none is left that did not fail; the others of its cohort carry it)");
            return;
        }
        String each = batch ? "own cost of one:    " : "own cost:           ";
        screen.hanging(each, "                    ", told(cost.own().get()));
        screen.hanging("share of failures:  ", "                    ", carried(cost.failures()));
        screen.hanging(
                "with failures:      ",
                "                    ",
                told(cost.whole().orElseThrow()));
        screen.hanging(
                "",
                "    ",
                "own cost: of one that did not fail; with failures: what those of its cohort that"
                        + " failed so far cost is carried alike by those that did not, pending ones among them");
    }

    private static String carried(Total total) {
        return total.cost().isEmpty() && total.notPriced() == 0 ? "none" : told(total);
    }

    private static String told(Total total) {
        return total.cost().map(Cost::toString).orElse("–")
                + (total.hours().equals(BigFraction.ZERO) ? "" : ", " + decimal(total.hours(), 2) + " h")
                + (total.m2Years().equals(BigFraction.ZERO)
                        ? ""
                        : ", " + decimal(total.m2Years(), 4) + " m² years of bench")
                + (total.notPriced() > 0
                        ? ", without " + Counts.of(total.notPriced(), "line", "lines") + " not priced"
                        : "");
    }

    private static void table(String title, List<CostPart> parts, boolean explain, Screen screen) {
        boolean shared = parts.stream().anyMatch(part -> !part.share().equals(BigFraction.ONE));
        Column share = Column.text("share", "share");
        Column how = Column.text("how", "how");
        Sheet.Builder sheet = Sheet.titled(
                title,
                Column.text("day", "day"),
                Column.text("what", "what"),
                Column.text("tag", "tag"),
                shared ? share : share.forPrograms(),
                Column.number("hours", "h", 2),
                amount(parts),
                Column.whole("entry", "entry"),
                explain ? how : how.forPrograms());
        for (CostPart part : parts) {
            CostLine line = part.line();
            Charge charge = line.charge();
            sheet.row(
                    day(line),
                    what(charge),
                    line.tag().text(),
                    part.share().equals(BigFraction.ONE) ? "" : fraction(part.share()),
                    part.hours().equals(BigFraction.ZERO) ? "" : told(part.hours()),
                    part.cost().map(CostView::shown).orElse("–"),
                    line.entry(),
                    charge.isPriced()
                            ? charge.how() + listed(charge)
                            : charge.missing().orElseThrow());
        }
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    /** Return an amount to the minor unit; one that would be nothing by rounding alone is told to be less than that. */
    private static Object shown(Cost cost) {
        BigDecimal rounded = cost.rounded();
        boolean lost = rounded.signum() == 0 && !cost.value().equals(BigFraction.ZERO);
        return lost ? "<" + BigDecimal.ONE.movePointLeft(rounded.scale()).toPlainString() : rounded;
    }

    /** Return hours with two decimals; what would be none by rounding alone is told to be less than that. */
    private static Object told(BigFraction hours) {
        BigDecimal rounded = decimal(hours, 2);
        return rounded.signum() == 0 ? "<0.01" : rounded;
    }

    private static Column amount(List<CostPart> parts) {
        return parts.stream()
                .flatMap(part -> part.cost().stream())
                .findFirst()
                .map(cost -> Column.number(
                                "amount", "amount", Math.max(0, cost.currency().getDefaultFractionDigits()))
                        .in(cost.currency().getCurrencyCode()))
                .orElse(Column.number("amount", "amount", 2));
    }

    private static String listed(Charge charge) {
        return charge.sources().isEmpty()
                ? ""
                : ", listed in "
                        + charge.sources().stream().map(order -> "#" + order).collect(Collectors.joining(" and "));
    }

    private static String day(CostLine line) {
        return line.day() + line.until().map(until -> " – " + until).orElse("");
    }

    private static String what(Charge charge) {
        return charge.sort() == Charge.Sort.BENCH ? "bench, " + charge.what() : charge.what();
    }

    private static String fraction(BigFraction share) {
        return share.getDenominator().bitLength() < 20
                ? share.getNumerator() + "/" + share.getDenominator()
                : decimal(share, FINE).toPlainString();
    }

    private static BigDecimal decimal(BigFraction value, int decimals) {
        return new BigDecimal(value.getNumerator())
                .divide(new BigDecimal(value.getDenominator()), decimals, RoundingMode.HALF_EVEN);
    }

    // ---- for programs ----

    private static Sheet rows(TreeCost cost) {
        Sheet.Builder sheet = Sheet.titled(
                "cost of " + cost.tag() + ", as of " + cost.asOf(),
                Column.text("part", "part"),
                Column.text("tag", "tag"),
                Column.whole("entry", "entry"),
                Column.day("day", "day"),
                Column.day("until", "until"),
                Column.text("sort", "sort"),
                Column.text("what", "what"),
                Column.text("share", "share"),
                Column.number("hours", "hours", FINE),
                Column.number("m2_years", "m² years", FINE),
                Column.number("amount", "amount", FINE),
                Column.text("currency", "currency"),
                Column.text("missing", "missing"),
                Column.text("how", "how"),
                Column.text("listed_in", "listed in"));
        cost.parts().forEach(part -> row(sheet, "own", part));
        cost.failedParts().forEach(part -> row(sheet, "failures", part));
        return sheet.build();
    }

    private static void row(Sheet.Builder sheet, String what, CostPart part) {
        CostLine line = part.line();
        Charge charge = line.charge();
        sheet.row(
                what,
                line.tag().text(),
                line.entry(),
                line.day(),
                line.until(),
                Words.of(charge.sort()),
                charge.what(),
                part.share().getNumerator() + "/" + part.share().getDenominator(),
                decimal(part.hours(), FINE),
                decimal(part.m2Years(), FINE),
                part.cost().map(Cost::fine),
                part.cost().map(price -> price.currency().getCurrencyCode()),
                charge.missing(),
                charge.how(),
                charge.sources().stream().map(Object::toString).collect(Collectors.joining(" ")));
    }

    private static void json(TreeCost cost, Json json) {
        json.object(answer -> {
            answer.field("tag", cost.tag().text())
                    .field("nature", Words.of(cost.nature()))
                    .field("as_of", cost.asOf())
                    .field("priced_on", cost.priced())
                    .field("units", cost.ever())
                    .field("failed", cost.failed())
                    .field("here", cost.here());
            sum(answer, "spent", Optional.of(cost.spent()));
            sum(answer, "lost_with_failures", Optional.of(cost.lost()));
            sum(answer, "own", cost.own());
            sum(answer, "share_of_failures", cost.own().map(own -> cost.failures()));
            sum(answer, "with_failures", cost.whole());
            answer.field("rough_days", cost.coarse());
            answer.array("lines", lines -> cost.parts().forEach(part -> line(lines, part)));
            answer.array("failure_lines", lines -> cost.failedParts().forEach(part -> line(lines, part)));
        });
    }

    private static void sum(Json answer, String name, Optional<Total> total) {
        if (total.isEmpty()) {
            answer.field(name, Optional.empty());
            return;
        }
        Total sum = total.get();
        answer.object(
                name,
                fields -> fields.field("amount", sum.cost().map(Cost::fine))
                        .field(
                                "currency",
                                sum.cost().map(cost -> cost.currency().getCurrencyCode()))
                        .field("hours", decimal(sum.hours(), FINE))
                        .field("m2_years", decimal(sum.m2Years(), FINE))
                        .field("not_priced", sum.notPriced()));
    }

    private static void line(Json lines, CostPart part) {
        CostLine line = part.line();
        Charge charge = line.charge();
        lines.object(fields -> fields.field("tag", line.tag().text())
                .field("entry", line.entry())
                .field("day", line.day())
                .field("until", line.until())
                .field("sort", Words.of(charge.sort()))
                .field("what", charge.what())
                .field("share", part.share().getNumerator() + "/" + part.share().getDenominator())
                .field("hours", decimal(part.hours(), FINE))
                .field("m2_years", decimal(part.m2Years(), FINE))
                .field("amount", part.cost().map(Cost::fine))
                .field("currency", part.cost().map(price -> price.currency().getCurrencyCode()))
                .field("missing", charge.missing())
                .field("how", charge.how())
                .array("listed_in", orders -> charge.sources().forEach(orders::value)));
    }
}
