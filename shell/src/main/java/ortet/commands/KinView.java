package ortet.commands;

import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.entry.Words;
import ortet.lineage.Kin;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows how two plants are related. */
final class KinView {
    private KinView() {}

    static void show(Kin kin, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(kin, screen);
            case CSV -> screen.show(rows(kin), format);
            case JSON -> screen.json(json -> json(kin, json));
        }
    }

    // ---- for people ----

    private static void words(Kin kin, Screen screen) {
        screen.headed("", kin.first() + " and " + kin.second(), "  ", ", as of " + kin.asOf());
        screen.println();
        screen.hanging("one clone:  ", "            ", clone(kin));
        screen.hanging("kinship:    ", "            ", coefficient(kin));
        if (!kin.unknown().isEmpty()) {
            screen.hanging("            ", "            ", "origin unknown: " + Tags.brief(kin.unknown()));
        }
        if (kin.nearest().isEmpty()) {
            screen.hanging("ancestors:  ", "            ", "the book knows of none that they have in common");
            return;
        }
        screen.println();
        Sheet.Builder sheet = Sheet.titled(
                "nearest common ancestors, and generations from there",
                Column.text("ancestor", "ancestor"),
                Column.text("cultivar", "cultivar"),
                Column.text("first", "to " + kin.first()),
                Column.text("second", "to " + kin.second()));
        for (Kin.Ancestor one : kin.nearest()) {
            sheet.row(
                    one.tag().text(),
                    one.named().toString(),
                    generations(one.firstGenerations(), one.firstBySeed()),
                    generations(one.secondGenerations(), one.secondBySeed()));
        }
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private static String clone(Kin kin) {
        return switch (kin.sameClone()) {
            case YES -> "yes";
            case NO -> "no";
            case NOT_KNOWN -> "not known";
        };
    }

    private static String coefficient(Kin kin) {
        if (kin.least().isEmpty()) {
            return "not worked out: the two may come from too many different plants";
        }
        String least = told(kin.least().get());
        String range = kin.isOneOfSeveral()
                ? least + " to " + told(kin.most().orElseThrow()) + ", depending on which of several they come from"
                : least;
        if (kin.unknown().isEmpty()) {
            return range;
        }
        return "unknown, at least " + range + ": exactly that if the plants of unknown origin behind them are unrelated"
                + " and not inbred";
    }

    /** Return a coefficient as a fraction and a number: {@code 1/8 (0.125)}. */
    private static String told(BigFraction value) {
        return value.getDenominatorAsInt() == 1
                ? value.getNumerator().toString()
                : fraction(value) + " ("
                        + value.bigDecimalValue().stripTrailingZeros().toPlainString() + ")";
    }

    private static String fraction(BigFraction value) {
        boolean whole = value.getDenominatorAsInt() == 1;
        return whole ? value.getNumerator().toString() : value.getNumerator() + "/" + value.getDenominator();
    }

    private static String generations(int all, int bySeed) {
        if (all == 0) {
            return "itself";
        }
        return all + (bySeed == 0 ? ", none by seed" : ", " + bySeed + " by seed");
    }

    // ---- for programs ----

    private static Sheet rows(Kin kin) {
        Sheet.Builder sheet = Sheet.titled(
                "kin " + kin.first() + " " + kin.second() + ", as of " + kin.asOf(),
                Column.text("first", "first"),
                Column.text("second", "second"),
                Column.text("same_clone", "one clone"),
                Column.text("kinship_at_least", "kinship at least"),
                Column.text("kinship_at_most_of_several", "at most of several"),
                Column.text("unknown_origin", "origin unknown"),
                Column.text("ancestor", "nearest common ancestor"),
                Column.text("cultivar", "cultivar"),
                Column.whole("first_generations", "generations to the first"),
                Column.whole("first_by_seed", "by seed"),
                Column.whole("second_generations", "generations to the second"),
                Column.whole("second_by_seed", "by seed"));
        if (kin.nearest().isEmpty()) {
            row(sheet, kin, Optional.empty());
        }
        kin.nearest().forEach(one -> row(sheet, kin, Optional.of(one)));
        return sheet.build();
    }

    private static void row(Sheet.Builder sheet, Kin kin, Optional<Kin.Ancestor> ancestor) {
        sheet.row(
                kin.first().text(),
                kin.second().text(),
                Words.of(kin.sameClone()),
                kin.least().map(KinView::fraction),
                kin.most().filter(most -> kin.isOneOfSeveral()).map(KinView::fraction),
                kin.unknown().stream().map(Tag::text).collect(Collectors.joining(" ")),
                ancestor.map(one -> one.tag().text()),
                ancestor.flatMap(one -> one.named().cultivar()).map(CultivarName::toString),
                ancestor.map(Kin.Ancestor::firstGenerations),
                ancestor.map(Kin.Ancestor::firstBySeed),
                ancestor.map(Kin.Ancestor::secondGenerations),
                ancestor.map(Kin.Ancestor::secondBySeed));
    }

    private static void json(Kin kin, Json json) {
        json.object(answer -> answer.field("first", kin.first().text())
                .field("second", kin.second().text())
                .field("as_of", kin.asOf())
                .field("same_clone", Words.of(kin.sameClone()))
                .field("kinship_known", kin.unknown().isEmpty() && !kin.isOneOfSeveral())
                .field("kinship_at_least", kin.least().map(BigFraction::bigDecimalValue))
                .field("kinship_at_least_fraction", kin.least().map(KinView::fraction))
                .field("kinship_at_most_of_several", kin.most().map(BigFraction::bigDecimalValue))
                .array("unknown_origin", list -> kin.unknown().forEach(tag -> list.value(tag.text())))
                .array(
                        "nearest_common_ancestors",
                        list -> kin.nearest()
                                .forEach(one -> list.object(ancestor -> ancestor.field(
                                                "tag", one.tag().text())
                                        .field("nature", Words.of(one.nature()))
                                        .field(
                                                "cultivar",
                                                one.named().cultivar().map(CultivarName::toString))
                                        .field("first_generations", one.firstGenerations())
                                        .field("first_by_seed", one.firstBySeed())
                                        .field("second_generations", one.secondGenerations())
                                        .field("second_by_seed", one.secondBySeed())))));
    }
}
