package ortet.commands;

import java.util.List;
import ortet.entry.Words;
import ortet.lineage.Oddities;
import ortet.lineage.Oddity;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.screen.Style;

/** Shows what is odd in the graph, with the lines that would put it right. */
final class OddityView {
    private OddityView() {}

    static void show(Oddities oddities, int most, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> told(oddities, most, screen);
            case CSV -> screen.show(rows(oddities), format);
            case JSON -> screen.json(json -> json(oddities, json));
        }
    }

    private static void told(Oddities oddities, int most, Screen screen) {
        for (Oddity.Kind kind : Oddity.Kind.values()) {
            List<Oddity> some =
                    oddities.all().stream().filter(one -> one.kind() == kind).toList();
            if (!some.isEmpty()) {
                screen.println(screen.styled(Style.STRONG, heading(kind, oddities.months())));
                some.stream().limit(most).forEach(one -> told(one, screen));
                if (some.size() > most) {
                    screen.println("  and " + (some.size() - most) + " more (--most N shows more)");
                }
                screen.println();
            }
        }
        long found = oddities.all().size();
        screen.prose((found == 0 ? "nothing odd found" : Counts.of(found, "oddity", "oddities"))
                + "; plants without a sign of life are told of after " + oddities.months() + " months; as of "
                + oddities.asOf());
    }

    private static String heading(Oddity.Kind kind, int months) {
        return switch (kind) {
            case CULTIVAR_DIFFERS -> "another cultivar than the plant whose clone it keeps";
            case MOTHER_YOUNGER -> "mothers that may be younger than what came from them";
            case TAGS_ALIKE -> "tags that look alike";
            case NOT_SEEN -> "growing by the book, without a sign of life for " + months + " months";
        };
    }

    private static void told(Oddity one, Screen screen) {
        screen.hanging("  ", "    ", one.text());
        one.remedies().forEach(remedy -> screen.hanging("    ", "      ", remedy.condition() + ": " + remedy.line()));
    }

    private static Sheet rows(Oddities oddities) {
        Sheet.Builder sheet = Sheet.titled(
                "what is odd, as of " + oddities.asOf(),
                Column.text("oddity", "oddity"),
                Column.text("tags", "tags"),
                Column.text("day", "day"),
                Column.text("text", "text"),
                Column.text("condition", "condition"),
                Column.text("command", "command"));
        for (Oddity one : oddities.all()) {
            for (Oddity.Remedy remedy : one.remedies()) {
                sheet.row(
                        Words.of(one.kind()),
                        Tags.brief(one.tags()),
                        one.day(),
                        one.text(),
                        remedy.condition(),
                        remedy.line());
            }
        }
        return sheet.build();
    }

    private static void json(Oddities oddities, Json json) {
        json.object(root -> root.field("as_of", oddities.asOf())
                .field("months", oddities.months())
                .array(
                        "oddities",
                        all -> oddities.all()
                                .forEach(one -> all.object(odd -> odd.field("oddity", Words.of(one.kind()))
                                        .array("tags", tags -> one.tags().forEach(tag -> tags.value(tag.text())))
                                        .field("day", one.day())
                                        .field("text", one.text())
                                        .array(
                                                "remedies",
                                                remedies -> one.remedies()
                                                        .forEach(remedy -> remedies.object(
                                                                line -> line.field("condition", remedy.condition())
                                                                        .field("command", remedy.line()))))))));
    }
}
