package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Words;
import ortet.lineage.Account;
import ortet.lineage.Amendment;
import ortet.lineage.Deed;
import ortet.lineage.DiaryLine;
import ortet.lineage.OffspringTally;
import ortet.lineage.Parent;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.screen.Style;

/** Shows all about one plant: a summary and its diary for people, the diary as rows, or all of it as JSON. */
final class PlantView {
    private static final String INDENT = " ".repeat(14);

    private PlantView() {}

    static void show(Account account, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> page(account, screen);
            case CSV -> screen.show(rows(account), format);
            case JSON -> screen.json(json -> json(account, json));
        }
    }

    // ---- for people ----

    private static void page(Account account, Screen screen) {
        screen.headed("", account.tag().text(), "  ", "  " + account.named() + "  [" + account.state() + "]");
        screen.println();
        line("is", nature(account.nature()) + ", begun on " + account.begun().day(), screen);
        if (account.tags().size() > 1) {
            line(
                    "tags",
                    account.tags().stream()
                            .map(use -> use.tag() + " since " + use.day())
                            .collect(Collectors.joining(", ")),
                    screen);
        }
        line("name", name(account), screen);
        line("stands", stands(account), screen);
        account.stockSince().ifPresent(since -> line("kept", "as stock since " + since, screen));
        account.held().ifPresent(held -> line("HELD", TraceView.words(held) + ", since " + held.day(), screen));
        account.reserved().forEach(deed -> line("reserved", TraceView.words(deed) + ", on " + deed.day(), screen));
        account.graded().ifPresent(deed -> line("graded", TraceView.words(deed) + ", on " + deed.day(), screen));
        account.measured().stream()
                .reduce((first, second) -> second)
                .ifPresent(deed -> line("measured", TraceView.words(deed) + ", on " + deed.day(), screen));
        for (Parent parent : account.parents()) {
            line("from", parent(parent), screen);
        }
        line("clone", account.origin().toString(), screen);
        for (OffspringTally tally : account.offspring()) {
            line("gave", offspring(tally), screen);
        }
        screen.println();
        screen.println(screen.styled(Style.STRONG, "diary"));
        account.diary().forEach(line -> diary(line, account, screen));
        screen.println();
        screen.prose("as of " + account.asOf() + "; #N is the number of an entry, for \"correct\" and \"cross-out\"");
    }

    private static void line(String label, String text, Screen screen) {
        if (!text.isEmpty()) {
            screen.hanging(String.format(Locale.ROOT, "  %-10s  ", label), INDENT, text);
        }
    }

    private static String nature(Nature nature) {
        return switch (nature) {
            case PLANT -> "a plant";
            case LAYER -> "a layer";
            case BATCH -> "a batch";
            case SPORT -> "a sport, a branch of its plant";
        };
    }

    private static String name(Account account) {
        return switch (account.named().how()) {
            case DETERMINED -> account.named() + ", determined";
            case SAID -> account.named() + ", as said";
            case FROM_ITS_SOURCE ->
                account.named()
                        + account.named().through().map(tag -> ", by " + tag).orElse("");
            case ONE_OF_SEVERAL, NOT_KNOWN -> account.named().toString();
        };
    }

    private static String stands(Account account) {
        List<String> parts = new ArrayList<>();
        account.place().ifPresent(place -> parts.add("at " + place.place() + " since " + place.since()));
        account.container()
                .ifPresent(pot -> parts.add("in " + pot.container().orElse("open ground") + " since " + pot.since()));
        return String.join(", ", parts);
    }

    private static String parent(Parent parent) {
        return parent.part() + " " + parent.tag() + " on " + parent.day()
                + parent.count().map(n -> ", " + n + " of them").orElse("") + ": " + parent.named() + " ["
                + parent.state() + "]";
    }

    private static String offspring(OffspringTally tally) {
        List<String> parts = new ArrayList<>();
        if (tally.countsForTake()) {
            parts.add(tally.taken() + " taken");
            parts.add(tally.failed() + " failed");
            if (tally.withdrawn() > 0) {
                parts.add(tally.withdrawn() + " withdrawn");
            }
            parts.add(tally.pending() + " pending");
            if (tally.merged() > 0) {
                parts.add(tally.merged() + " in merged batches");
            }
            if (tally.shared() > 0) {
                parts.add(tally.shared() + " in batches shared with other mothers");
            }
            if (tally.weighed() > 0) {
                parts.add(Counts.of(tally.weighed(), "sowing by weight", "sowings by weight"));
            }
        }
        parts.add(tally.growing() + " growing now");
        return tally.set() + " " + tally.what() + " under " + Counts.of(tally.tags(), "tag", "tags") + ": "
                + String.join(", ", parts);
    }

    private static void diary(DiaryLine line, Account account, Screen screen) {
        Deed deed = line.deed();
        boolean itself = line.tags().isEmpty()
                || line.tags().size() == 1
                        && account.tags().stream()
                                .anyMatch(use -> use.tag().equals(line.tags().get(0)));
        String tags = itself ? "" : " (" + Tags.brief(line.tags()) + ")";
        String mark = switch (line.mark()) {
            case AS_WRITTEN -> "";
            case CORRECTED -> "  [corrected]";
            case CROSSED_OUT -> "  [crossed out]";
            case NO_LONGER_ABOUT_IT -> "  [corrected: no longer about it]";
        };
        screen.hanging(
                String.format(Locale.ROOT, "  %-10s  ", deed.day()),
                INDENT,
                TraceView.words(deed) + tags + "  #" + deed.order() + mark);
        for (Amendment amendment : line.amendments()) {
            screen.hanging(INDENT, INDENT + "  ", amendment(amendment));
        }
    }

    private static String amendment(Amendment amendment) {
        String what = amendment.isCrossingOut()
                ? "crossed out"
                : "corrected: " + amendment.field().orElse("") + " was "
                        + amendment.was().map(text -> "\"" + text + "\"").orElse("empty") + ", is "
                        + amendment.value().map(text -> "\"" + text + "\"").orElse("empty");
        return what + " on " + amendment.day()
                + amendment.by().map(by -> " by " + by).orElse("")
                + amendment.reason().map(reason -> ": " + reason).orElse("") + "  #" + amendment.order();
    }

    // ---- for programs ----

    private static Sheet rows(Account account) {
        Sheet.Builder sheet = Sheet.titled(
                "diary of " + account.tag() + ", as of " + account.asOf(),
                Column.whole("entry", "entry"),
                Column.text("day", "day"),
                Column.text("kind", "kind"),
                Column.text("mark", "mark"),
                Column.text("by", "by"),
                Column.text("tags", "tags"),
                Column.text("container", "container"),
                Column.text("place", "place"),
                Column.text("details", "details"));
        for (DiaryLine line : account.diary()) {
            Deed deed = line.deed();
            sheet.row(
                    deed.order(),
                    deed.day().toString(),
                    deed.kind().word(),
                    Words.of(line.mark()),
                    deed.by(),
                    Tags.brief(line.tags()),
                    deed.container(),
                    deed.place().map(Object::toString),
                    deed.details().entrySet().stream()
                            .map(detail -> detail.getKey() + "=" + detail.getValue())
                            .collect(Collectors.joining("; ")));
        }
        return sheet.build();
    }

    private static void json(Account account, Json json) {
        json.object(root -> root.field("asked", account.asked().text())
                .field("as_of", account.asOf())
                .field("unit", account.unit().value())
                .field("tag", account.tag().text())
                .array(
                        "tags",
                        tags -> account.tags()
                                .forEach(use -> tags.object(
                                        one -> one.field("tag", use.tag().text())
                                                .field("since", use.day().toString())
                                                .field("entry", use.order()))))
                .field("nature", Words.of(account.nature()))
                .field("cultivar", account.named().cultivar().map(Object::toString))
                .field("cultivar_known", Words.of(account.named().how()))
                .field("cultivar_through", account.named().through().map(Tag::text))
                .array(
                        "cultivar_one_of",
                        names -> account.named().oneOf().forEach(name -> names.value(name.toString())))
                .field("state", account.state().toString())
                .field("pending", account.state().pending())
                .field("growing", account.state().growing())
                .field("place", account.place().map(place -> place.place().name()))
                .field("place_since", account.place().map(place -> place.since().toString()))
                .field("container", account.container().flatMap(Account.Container::container))
                .field(
                        "container_since",
                        account.container().map(pot -> pot.since().toString()))
                .field("stock_since", account.stockSince().map(Object::toString))
                .field("held", account.held().isPresent())
                .array(
                        "measured",
                        deeds -> account.measured().forEach(deed -> deeds.object(one -> TraceView.json(deed, one))))
                .field("origin", account.origin().toString())
                .array(
                        "parents",
                        parents -> account.parents()
                                .forEach(parent -> parents.object(one -> one.field("act", Words.of(parent.act()))
                                        .field("part", parent.part())
                                        .field("tag", parent.tag().text())
                                        .field("day", parent.day().toString())
                                        .field("count", parent.count())
                                        .field("one_of_several", parent.isOneOfSeveral()))))
                .array(
                        "offspring",
                        tallies -> account.offspring()
                                .forEach(tally -> tallies.object(one -> one.field("act", Words.of(tally.act()))
                                        .field("tags", tally.tags())
                                        .field("set", tally.set())
                                        .field("taken", tally.taken())
                                        .field("failed", tally.failed())
                                        .field("withdrawn", tally.withdrawn())
                                        .field("pending", tally.pending())
                                        .field("merged", tally.merged())
                                        .field("shared", tally.shared())
                                        .field("weighed", tally.weighed())
                                        .field("growing", tally.growing()))))
                .array(
                        "diary",
                        diary -> account.diary()
                                .forEach(line -> diary.object(one -> {
                                    TraceView.json(line.deed(), one);
                                    one.field("mark", Words.of(line.mark()))
                                            .field("recorded", line.recordedAt().toString())
                                            .array("tags", tags -> line.tags().forEach(tag -> tags.value(tag.text())))
                                            .array(
                                                    "amendments",
                                                    amendments -> line.amendments()
                                                            .forEach(amendment -> amendments.object(it -> it.field(
                                                                            "entry", amendment.order())
                                                                    .field("crossed_out", amendment.isCrossingOut())
                                                                    .field(
                                                                            "day",
                                                                            amendment
                                                                                    .day()
                                                                                    .toString())
                                                                    .field("by", amendment.by())
                                                                    .field("field", amendment.field())
                                                                    .field("was", amendment.was())
                                                                    .field("value", amendment.value())
                                                                    .field("reason", amendment.reason()))));
                                }))));
    }
}
