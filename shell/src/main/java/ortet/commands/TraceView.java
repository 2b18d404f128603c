package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Words;
import ortet.lineage.Deed;
import ortet.lineage.Founder;
import ortet.lineage.Later;
import ortet.lineage.Source;
import ortet.lineage.Step;
import ortet.lineage.Trace;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows where a tree comes from: as a tree of steps, as rows, or as JSON. */
final class TraceView {
    private TraceView() {}

    static void show(Trace trace, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> tree(trace, screen);
            case CSV -> screen.show(rows(trace), format);
            case JSON -> screen.json(json -> json(trace, json));
        }
    }

    // ---- for people ----

    private static void tree(Trace trace, Screen screen) {
        step(trace.tree(), Optional.empty(), "", "", screen);
        screen.println();
        screen.headed("", "origin: ", "  ", trace.origin().toString());
        screen.hanging(
                "",
                "  ",
                "as of " + trace.asOf() + "; " + Counts.of(trace.units(), "unit", "units") + " traced"
                        + (trace.isWhole() ? "" : "; there are more, which are left out"));
    }

    private static void step(Step step, Optional<Source> source, String first, String indent, Screen screen) {
        String part = source.map(
                        from -> from.part() + from.count().map(n -> " of " + n).orElse("") + " ")
                .orElse("");
        String tags = step.tag()
                + (step.earlierTags().isEmpty()
                        ? ""
                        : " (before: "
                                + String.join(
                                        ", ",
                                        step.earlierTags().stream()
                                                .map(Tag::text)
                                                .toList())
                                + ")");
        screen.headed(
                first + part,
                tags,
                indent + "  ",
                "  " + step.named() + "  [" + step.state() + "]"
                        + step.founder()
                                .filter(Founder::isOrtet)
                                .map(f -> "  ← the ortet")
                                .orElse(""));
        boolean more = !step.sources().isEmpty();
        String guide = indent + (more ? "│ " : "  ");
        deed(step.begun(), guide, screen);
        for (Deed deed : step.between()) {
            deed(deed, guide, screen);
        }
        later(step.later(), guide, screen);
        for (int at = 0; at < step.sources().size(); at++) {
            Source from = step.sources().get(at);
            boolean last = at == step.sources().size() - 1;
            String branch = indent + (last ? "└ " : "├ ");
            String under = indent + (last ? "  " : "│ ");
            if (from.step().isPresent()) {
                step(from.step().get(), Optional.of(from), branch, under, screen);
            } else {
                screen.hanging(
                        branch,
                        under + "  ",
                        from.part() + " " + from.tag()
                                + (from.isToldElsewhere() ? ", told elsewhere here" : ", left out: too many"));
            }
        }
    }

    private static void deed(Deed deed, String guide, Screen screen) {
        screen.hanging(guide + String.format("%-10s  ", deed.day()), guide + " ".repeat(12), words(deed));
    }

    /** Return what was done in words: {@code potted into 2 L at House 1: purpose pot-up; Aoife}. */
    static String words(Deed deed) {
        StringBuilder text = new StringBuilder(deed.kind().word().replace('-', ' '));
        deed.container().ifPresent(container -> text.append(" into ").append(container));
        String preposition = switch (deed.kind()) {
            case MOVED -> " to ";
            case PLANTED_OUT -> " in ";
            default -> " at ";
        };
        deed.place().ifPresent(place -> text.append(preposition).append(place));
        List<String> details = new ArrayList<>();
        for (Map.Entry<String, String> detail : deed.details().entrySet()) {
            details.add(Labels.of(detail.getKey(), detail.getValue()));
        }
        if (!details.isEmpty()) {
            text.append(": ").append(String.join(", ", details));
        }
        deed.by().ifPresent(by -> text.append("; ").append(by));
        return text.toString();
    }

    private static void later(Later later, String guide, Screen screen) {
        if (later.isNothing()) {
            return;
        }
        List<String> parts = new ArrayList<>();
        if (later.pottings() > 0) {
            parts.add(Counts.of(later.pottings(), "potting", "pottings"));
        }
        if (later.moves() > 0) {
            parts.add(Counts.of(later.moves(), "move", "moves"));
        }
        if (later.others() > 0) {
            parts.add(Counts.of(later.others(), "other entry", "other entries"));
        }
        screen.hanging(guide + "afterwards  ", guide + " ".repeat(12), String.join(", ", parts));
    }

    // ---- for programs ----

    private static Sheet rows(Trace trace) {
        Sheet.Builder sheet = Sheet.titled(
                "trace " + trace.asked() + ", as of " + trace.asOf(),
                Column.whole("depth", "depth"),
                Column.text("part", "part"),
                Column.text("tag", "tag"),
                Column.text("cultivar", "cultivar"),
                Column.text("state", "state"),
                Column.text("day", "day"),
                Column.text("kind", "kind"),
                Column.text("by", "by"),
                Column.text("container", "container"),
                Column.text("place", "place"),
                Column.text("details", "details"),
                Column.whole("entry", "entry"));
        rows(trace.tree(), "asked", 0, sheet);
        sheet.note("origin: " + trace.origin());
        return sheet.build();
    }

    private static void rows(Step step, String part, int depth, Sheet.Builder sheet) {
        List<Deed> deeds = new ArrayList<>();
        deeds.add(step.begun());
        deeds.addAll(step.between());
        for (Deed deed : deeds) {
            List<String> details = deed.details().entrySet().stream()
                    .map(detail -> detail.getKey() + "=" + detail.getValue())
                    .toList();
            sheet.row(
                    depth,
                    part,
                    step.tag().text(),
                    step.named().toString(),
                    step.state().toString(),
                    deed.day().toString(),
                    deed.kind().word(),
                    deed.by(),
                    deed.container(),
                    deed.place().map(Object::toString),
                    String.join("; ", details),
                    deed.order());
        }
        for (Source source : step.sources()) {
            source.step().ifPresent(next -> rows(next, source.part(), depth + 1, sheet));
        }
    }

    private static void json(Trace trace, Json json) {
        json.object(root -> root.field("asked", trace.asked().text())
                .field("as_of", trace.asOf())
                .field("units", trace.units())
                .field("whole", trace.isWhole())
                .field("origin_known", trace.origin().ortet().isPresent())
                .field("origin", trace.origin().toString())
                .array(
                        "founders",
                        founders -> trace.origin()
                                .founders()
                                .forEach(founder -> founders.object(one -> one.field("kind", Words.of(founder.kind()))
                                        .field("tag", founder.tag().text())
                                        .field("day", founder.day().toString())
                                        .field("ortet", founder.isOrtet())
                                        .field("of", founder.of().map(Tag::text)))))
                .object("tree", tree -> json(trace.tree(), tree)));
    }

    private static void json(Step step, Json json) {
        json.field("tag", step.tag().text())
                .array("earlier_tags", tags -> step.earlierTags().forEach(tag -> tags.value(tag.text())))
                .field("unit", step.unit().value())
                .field("nature", Words.of(step.nature()))
                .field("cultivar", step.named().cultivar().map(Object::toString))
                .field("cultivar_known", Words.of(step.named().how()))
                .array("cultivar_one_of", names -> step.named().oneOf().forEach(name -> names.value(name.toString())))
                .field("state", step.state().toString())
                .field("pending", step.state().pending())
                .field("growing", step.state().growing())
                .field("ortet", step.founder().map(Founder::isOrtet).orElse(false))
                .object("begun", deed -> json(step.begun(), deed))
                .array("between", deeds -> step.between().forEach(deed -> deeds.object(one -> json(deed, one))))
                .object(
                        "later",
                        later -> later.field("pottings", step.later().pottings())
                                .field("moves", step.later().moves())
                                .field("others", step.later().others()))
                .array(
                        "sources",
                        sources -> step.sources()
                                .forEach(source -> sources.object(one -> {
                                    one.field("act", Words.of(source.act()))
                                            .field("part", source.part())
                                            .field("tag", source.tag().text())
                                            .field("one_of_several", source.isOneOfSeveral())
                                            .field("count", source.count())
                                            .field("told_elsewhere", source.isToldElsewhere());
                                    source.step().ifPresent(next -> one.object("step", under -> json(next, under)));
                                })));
    }

    /** Write the fields of a deed. */
    static void json(Deed deed, Json json) {
        json.field("entry", deed.order())
                .field("kind", deed.kind().word())
                .field("day", deed.day().toString())
                .field("by", deed.by())
                .field("container", deed.container())
                .field("place", deed.place().map(Object::toString))
                .object("details", details -> deed.details().forEach(details::field));
    }
}
