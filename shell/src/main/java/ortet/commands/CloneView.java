package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Words;
import ortet.lineage.CloneKind;
import ortet.lineage.CloneRow;
import ortet.lineage.CloneStory;
import ortet.lineage.CloneTable;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.screen.Style;

/** Shows one clone, or all of them. */
final class CloneView {
    private static final int SHOWN_ALIKE = 8;

    private CloneView() {}

    // ---- one clone ----

    static void show(CloneStory story, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> told(story, screen);
            case CSV -> screen.show(rows(story), format);
            case JSON -> screen.json(json -> json(story, json));
        }
    }

    private static void told(CloneStory story, Screen screen) {
        if (story.row().isEmpty()) {
            screen.headed("", story.asked().text(), "  ", " is of no one clone: each unit of it is of " + oneOf(story));
            screen.prose("as of " + story.asOf());
            return;
        }
        CloneRow clone = story.row().get();
        screen.headed(
                "",
                "clone of " + clone.tag(),
                "  ",
                clone.cultivar().map(name -> "  " + name).orElse(""));
        screen.hanging("", "  ", beginning(clone));
        if (!story.mayBe().isEmpty()) {
            screen.hanging("", "  ", "which of several it is nobody knows: " + oneOf(story));
        }
        screen.hanging("", "  ", sums(clone));
        section("members by generation", screen);
        generations(story.members(), screen);
        if (!story.places().isEmpty()) {
            section("where they stand", screen);
            story.places()
                    .forEach(place -> screen.hanging(
                            "  ",
                            "    ",
                            place.place().map(Place::name).orElse("nobody said where") + ": "
                                    + there(place.growing(), place.pending())));
        }
        if (story.names().size() > 1) {
            section("names that members bear", screen);
            story.names().forEach(name -> screen.hanging("  ", "    ", name.cultivar() + ": " + borne(name)));
        }
        if (!story.doubtful().isEmpty()) {
            section("may be of it too", screen);
            screen.hanging(
                    "  ",
                    "    ",
                    Counts.of(story.doubtful().size(), "tag", "tags") + ", "
                            + Counts.of(story.doubtfulLiving(), "plant growing", "plants growing")
                            + ", from mixed trays or lost labels: " + Tags.brief(story.doubtful()));
        }
        if (!story.alike().isEmpty()) {
            section("said to be the same cultivar, not known to be this clone", screen);
            story.alike().stream()
                    .limit(SHOWN_ALIKE)
                    .forEach(other -> screen.hanging(
                            "  ",
                            "    ",
                            other.kind().words() + " " + other.tag()
                                    + other.cultivar().map(name -> ", " + name).orElse("") + ": "
                                    + Counts.of(other.tags(), "tag", "tags") + ", " + other.living() + " living"));
            if (story.alike().size() > SHOWN_ALIKE) {
                screen.println("  and " + (story.alike().size() - SHOWN_ALIKE) + " more");
            }
        }
        screen.println();
        screen.println("as of " + story.asOf());
    }

    private static void section(String title, Screen screen) {
        screen.println();
        screen.println(screen.styled(Style.STRONG, title));
    }

    private static String beginning(CloneRow clone) {
        String began = " (" + clone.begun() + ")";
        return switch (clone.kind()) {
            case SEEDLING -> "ortet " + clone.tag() + ", a seedling raised here" + began;
            case SPORT -> "ortet " + clone.tag() + ", a sport found here" + began;
            case ACQUIRED ->
                "earliest known " + clone.tag() + ", acquired" + began + ", origin unknown"
                        + (clone.isBatch()
                                ? "; it came as a batch, and whether all in it are one clone is not known"
                                : "");
            case NOT_IN_THE_BOOK ->
                "earliest known " + clone.tag() + ", raised here" + began
                        + " from what is not in the book, origin unknown"
                        + (clone.isBatch() ? "; it is a batch, and whether all in it are one clone is not known" : "");
            case ONE_OF_SEVERAL -> "begins with " + clone.tag() + began + " as far as it is certain";
        };
    }

    private static String oneOf(CloneStory story) {
        List<CloneStory.MayBe> all = story.mayBe();
        if (all.size() == 1) {
            return all.get(0).toString();
        }
        return "one of " + all.size() + ": "
                + String.join("; ", all.stream().map(CloneStory.MayBe::toString).toList());
    }

    private static String sums(CloneRow clone) {
        return Counts.of(clone.tags(), "tag", "tags") + " in all: "
                + there(clone.living(), clone.pending())
                + (clone.sold() > 0 ? ", " + clone.sold() + " sold" : "")
                + (clone.generations() > 0
                        ? "; " + Counts.of(clone.generations(), "generation", "generations") + " after the first"
                        : "");
    }

    private static String there(long growing, long pending) {
        return growing + " growing" + (pending > 0 ? ", " + pending + " pending" : "");
    }

    private static String borne(CloneStory.SaidName name) {
        List<String> parts = new ArrayList<>();
        if (name.said() > 0) {
            parts.add("said of " + Counts.of(name.said(), "tag", "tags"));
        }
        if (name.determined() > 0) {
            parts.add("determined for " + Counts.of(name.determined(), "tag", "tags"));
        }
        return String.join(", ", parts);
    }

    private static void generations(List<CloneStory.Member> members, Screen screen) {
        int at = 0;
        while (at < members.size()) {
            int generation = members.get(at).generation();
            int end = at;
            while (end < members.size() && members.get(end).generation() == generation) {
                end++;
            }
            List<CloneStory.Member> all = members.subList(at, end);
            String label = "  " + generation + "  ";
            String indent = " ".repeat(label.length());
            List<Tag> there = tags(all, true);
            List<Tag> gone = tags(all, false);
            if (!there.isEmpty()) {
                screen.hanging(label, indent, Tags.brief(there) + many(there));
                label = indent;
            }
            if (!gone.isEmpty()) {
                screen.hanging(label, indent, "gone: " + Tags.brief(gone) + many(gone));
            }
            at = end;
        }
    }

    private static List<Tag> tags(List<CloneStory.Member> members, boolean there) {
        return members.stream()
                .filter(member -> member.stands().isThere() == there)
                .map(CloneStory.Member::tag)
                .sorted()
                .toList();
    }

    private static String many(List<Tag> tags) {
        return tags.size() > 2 ? " (" + tags.size() + ")" : "";
    }

    private static Sheet rows(CloneStory story) {
        Sheet.Builder sheet = Sheet.titled(
                "clone of " + story.asked() + ", as of " + story.asOf(),
                Column.whole("generation", "generation"),
                Column.text("tag", "tag"),
                Column.text("act", "act"),
                Column.text("from", "from"),
                Column.text("begun", "begun"),
                Column.text("kind", "kind"),
                Column.text("state", "state"),
                Column.whole("growing", "growing"),
                Column.whole("pending", "pending"),
                Column.whole("sold", "sold"),
                Column.text("place", "place"),
                Column.text("own_cultivar", "own cultivar"));
        for (CloneStory.Member member : story.members()) {
            sheet.row(
                    member.generation(),
                    member.tag().text(),
                    member.act().map(Words::of),
                    String.join(" ", member.from().stream().map(Tag::text).toList()),
                    member.begun().toString(),
                    Words.of(member.stands().nature()),
                    member.stands().toString(),
                    member.stands().growing(),
                    member.stands().pending(),
                    member.stands().sold(),
                    member.place().map(Place::name),
                    member.own().map(CultivarName::toString));
        }
        story.row().ifPresent(clone -> sheet.note(beginning(clone)));
        if (!story.mayBe().isEmpty()) {
            sheet.warning("which of several it is nobody knows: " + oneOf(story));
        }
        if (!story.doubtful().isEmpty()) {
            sheet.warning("may be of it too: " + Tags.brief(story.doubtful()));
        }
        return sheet.build();
    }

    private static void json(CloneStory story, Json json) {
        json.object(root -> root.field("asked", story.asked().text())
                .field("as_of", story.asOf())
                .field("one_clone", story.row().isPresent())
                .array("clone", one -> story.row().ifPresent(row -> one.object(clone -> json(row, clone))))
                .array(
                        "one_of",
                        several -> story.mayBe()
                                .forEach(may -> several.object(one ->
                                        one.field("tag", may.tag().text()).field("each_its_own", may.isEach()))))
                .array(
                        "members",
                        members -> story.members()
                                .forEach(member -> members.object(one -> {
                                    one.field("tag", member.tag().text())
                                            .field("unit", member.unit().value())
                                            .field("generation", member.generation())
                                            .field("act", member.act().map(Words::of))
                                            .array("from", from -> member.from().forEach(tag -> from.value(tag.text())))
                                            .field("begun", member.begun().toString());
                                    OffspringView.stands(member.stands(), one);
                                    one.field("place", member.place().map(Place::name))
                                            .field("own_cultivar", member.own().map(CultivarName::toString));
                                })))
                .array(
                        "names",
                        names -> story.names()
                                .forEach(name -> names.object(one -> one.field(
                                                "cultivar", name.cultivar().toString())
                                        .field("said", name.said())
                                        .field("determined", name.determined()))))
                .array(
                        "places",
                        places -> story.places()
                                .forEach(place -> places.object(
                                        one -> one.field("place", place.place().map(Place::name))
                                                .field("growing", place.growing())
                                                .field("pending", place.pending()))))
                .array("may_be_of_it", tags -> story.doubtful().forEach(tag -> tags.value(tag.text())))
                .field("may_be_of_it_growing", story.doubtfulLiving())
                .array(
                        "said_to_be_the_same_cultivar",
                        rows -> story.alike().forEach(row -> rows.object(one -> json(row, one)))));
    }

    private static void json(CloneRow clone, Json json) {
        json.field("first", clone.tag().text())
                .field("known_as", Words.of(clone.kind()))
                .field("ortet", clone.kind().isOrtet())
                .field("began_as_batch", clone.isBatch())
                .field("begun", clone.begun().toString())
                .field("cultivar", clone.cultivar().map(CultivarName::toString))
                .array("other_cultivars", names -> clone.others().forEach(name -> names.value(name.toString())))
                .field("tags", clone.tags())
                .field("living", clone.living())
                .field("pending", clone.pending())
                .field("sold", clone.sold())
                .field("generations", clone.generations());
    }

    // ---- all clones ----

    static void show(CloneTable table, OutputFormat format, Screen screen) {
        boolean people = format == OutputFormat.TABLE;
        Sheet.Builder sheet = Sheet.titled(
                people ? "" : "clones, as of " + table.asOf(),
                Column.text("first", "first"),
                Column.text("known_as", "known as").forPrograms(),
                Column.text("cultivar", "cultivar"),
                Column.text("other_cultivars", "other names").forPrograms(),
                Column.text("begun", "begun").forPrograms(),
                Column.truth("began_as_batch", "batch").forPrograms(),
                Column.whole("tags", "tags"),
                Column.whole("living", "living"),
                Column.whole("pending", "pend."),
                Column.whole("sold", "sold"),
                Column.whole("generations", "gen."));
        for (CloneRow clone : table.rows()) {
            sheet.row(
                    people ? clone.tag() + known(clone) : clone.tag().text(),
                    Words.of(clone.kind()),
                    people ? named(clone) : clone.cultivar().map(CultivarName::toString),
                    String.join(
                            "; ",
                            clone.others().stream().map(CultivarName::toString).toList()),
                    clone.begun().toString(),
                    clone.isBatch(),
                    clone.tags(),
                    clone.living(),
                    clone.pending(),
                    clone.sold(),
                    clone.generations());
        }
        if (people) {
            sheet.note(
                    "first: the earliest known plant, or the ortet where that is known; (batch): came as a batch, whether all in"
                            + " it are one clone is not known; (one of): one of several clones, nobody knows which");
        }
        notes(table).forEach(sheet::note);
        if (people && table.rows().isEmpty()) {
            notes(table).forEach(screen::prose);
            return;
        }
        screen.show(sheet.build(), format);
    }

    /** Return what to say beside the tag of the first unit; nothing where it is a plant that is the earliest known. */
    private static String known(CloneRow clone) {
        if (clone.kind() == CloneKind.ONE_OF_SEVERAL) {
            return " (one of)";
        }
        if (clone.kind().isOrtet()) {
            return " (ortet)";
        }
        return clone.isBatch() ? " (batch)" : "";
    }

    private static Optional<String> named(CloneRow clone) {
        List<String> names = new ArrayList<>();
        clone.cultivar().ifPresent(name -> names.add(name.toString()));
        clone.others().forEach(name -> names.add((names.isEmpty() ? "" : "also ") + name));
        return names.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", names));
    }

    private static List<String> notes(CloneTable table) {
        List<String> notes = new ArrayList<>();
        notes.add(Counts.of(table.clones(), "clone", "clones")
                + (table.small() == 0
                        ? ""
                        : ", " + table.small() + " of them with fewer tags left out (--least 1 shows them)")
                + ", as of " + table.asOf());
        if (table.several() > 0) {
            notes.add(Counts.of(table.several(), "tag", "tags") + " of no one clone (mixed trays, sowings), "
                    + table.severalLiving() + " growing, in no row");
        }
        return notes;
    }
}
