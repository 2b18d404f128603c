package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Words;
import ortet.lineage.Branch;
import ortet.lineage.Progeny;
import ortet.lineage.Stands;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows what was raised from a unit: as a tree, as rows, or as JSON. */
final class OffspringView {
    private OffspringView() {}

    static void show(Progeny progeny, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> tree(progeny, screen);
            case CSV -> screen.show(rows(progeny), format);
            case JSON -> screen.json(json -> json(progeny, json));
        }
    }

    // ---- for people ----

    private static void tree(Progeny progeny, Screen screen) {
        screen.headed(
                "",
                progeny.tag().text(),
                "  ",
                progeny.own().map(name -> "  " + name).orElse("") + "  [" + progeny.stands() + "]");
        below(progeny.below(), progeny.own(), "", screen);
        screen.println();
        List<String> sums = new ArrayList<>();
        sums.add(Counts.of(progeny.units(), "tag", "tags") + " raised from " + progeny.tag());
        sums.add(Counts.of(progeny.growing(), "plant growing", "plants growing"));
        if (progeny.pending() > 0) {
            sums.add(progeny.pending() + " pending");
        }
        if (progeny.sold() > 0) {
            sums.add(progeny.sold() + " sold");
        }
        screen.hanging(
                "",
                "  ",
                String.join(", ", sums) + ", as of " + progeny.asOf()
                        + (progeny.isWhole() ? "" : "; there are more, which are left out"));
    }

    /** A line of the tree: one unit, or several alike of which nothing was raised. */
    private record Line(Branch first, List<Tag> tags) {
        static List<Line> of(List<Branch> branches) {
            List<Line> lines = new ArrayList<>();
            for (Branch branch : branches) {
                Optional<Line> last = lines.isEmpty() ? Optional.empty() : Optional.of(lines.get(lines.size() - 1));
                if (last.filter(line -> line.takes(branch)).isPresent()) {
                    last.get().tags().add(branch.tag());
                } else {
                    lines.add(new Line(branch, new ArrayList<>(List.of(branch.tag()))));
                }
            }
            return lines;
        }

        private boolean takes(Branch other) {
            return first.below().isEmpty()
                    && other.below().isEmpty()
                    && first.begun().equals(other.begun())
                    && first.how().equals(other.how())
                    && first.stands().equals(other.stands())
                    && first.own().equals(other.own())
                    && first.count().equals(other.count())
                    && first.isAskedFor() == other.isAskedFor()
                    && first.isToldElsewhere() == other.isToldElsewhere();
        }

        /** Return the line; its own name only where it is another than that of what it comes from. */
        String text(Optional<CultivarName> above) {
            String more = tags.size() > 1 ? " (" + tags.size() + ")" : "";
            String what = Tags.brief(tags) + more + "  " + first.how()
                    + first.count().map(count -> " (" + count + ")").orElse("") + ", " + first.begun() + "  ["
                    + first.stands() + "]"
                    + first.own()
                            .filter(name -> !above.equals(Optional.of(name)))
                            .map(name -> ": " + name)
                            .orElse("")
                    + (first.isToldElsewhere() ? ", told elsewhere" : "");
            return first.isAskedFor() ? what : "(" + what + ")";
        }
    }

    private static void below(List<Branch> branches, Optional<CultivarName> above, String indent, Screen screen) {
        List<Line> lines = Line.of(branches);
        for (int at = 0; at < lines.size(); at++) {
            boolean last = at == lines.size() - 1;
            Line line = lines.get(at);
            String under = indent + (last ? "   " : "│  ");
            screen.hanging(indent + (last ? "└─ " : "├─ "), under, line.text(above));
            Optional<CultivarName> known =
                    line.first().own().or(() -> line.first().act().keepsTheClone() ? above : Optional.empty());
            below(line.first().below(), known, under, screen);
        }
    }

    // ---- for programs ----

    private static Sheet rows(Progeny progeny) {
        Sheet.Builder sheet = Sheet.titled(
                "offspring of " + progeny.tag() + ", as of " + progeny.asOf(),
                Column.whole("depth", "depth"),
                Column.text("tag", "tag"),
                Column.text("from", "from"),
                Column.text("act", "act"),
                Column.text("begun", "begun"),
                Column.whole("count", "count"),
                Column.truth("one_of_several", "one of several"),
                Column.text("kind", "kind"),
                Column.text("state", "state"),
                Column.whole("growing", "growing"),
                Column.whole("pending", "pending"),
                Column.whole("sold", "sold"),
                Column.text("own_cultivar", "own cultivar"),
                Column.truth("told_elsewhere", "told elsewhere"));
        rows(progeny.below(), progeny.tag(), sheet);
        if (!progeny.isWhole()) {
            sheet.warning("there are more, which are left out");
        }
        return sheet.build();
    }

    private static void rows(List<Branch> branches, Tag from, Sheet.Builder sheet) {
        for (Branch branch : branches) {
            if (branch.isAskedFor()) {
                Stands stands = branch.stands();
                sheet.row(
                        branch.depth(),
                        branch.tag().text(),
                        from.text(),
                        Words.of(branch.act()),
                        branch.begun().toString(),
                        branch.count(),
                        branch.isOneOfSeveral(),
                        Words.of(stands.nature()),
                        stands.toString(),
                        stands.growing(),
                        stands.pending(),
                        stands.sold(),
                        branch.own().map(Object::toString),
                        branch.isToldElsewhere());
            }
            rows(branch.below(), branch.tag(), sheet);
        }
    }

    private static void json(Progeny progeny, Json json) {
        json.object(root -> {
            root.field("asked", progeny.asked().text())
                    .field("tag", progeny.tag().text())
                    .field("as_of", progeny.asOf())
                    .field("units", progeny.units())
                    .field("growing", progeny.growing())
                    .field("pending", progeny.pending())
                    .field("sold", progeny.sold())
                    .field("whole", progeny.isWhole());
            branches(progeny.below(), root);
        });
    }

    private static void branches(List<Branch> branches, Json json) {
        json.array("offspring", array -> {
            for (Branch branch : branches) {
                array.object(one -> {
                    one.field("tag", branch.tag().text())
                            .field("unit", branch.unit().value())
                            .field("act", Words.of(branch.act()))
                            .field("begun", branch.begun().toString())
                            .field("count", branch.count())
                            .field("one_of_several", branch.isOneOfSeveral());
                    stands(branch.stands(), one);
                    one.field("own_cultivar", branch.own().map(Object::toString))
                            .field("asked_for", branch.isAskedFor())
                            .field("told_elsewhere", branch.isToldElsewhere());
                    branches(branch.below(), one);
                });
            }
        });
    }

    /** Write how a unit stands. */
    static void stands(Stands stands, Json json) {
        json.field("nature", Words.of(stands.nature()))
                .field("state", stands.toString())
                .field("growing", stands.growing())
                .field("pending", stands.pending())
                .field("sold", stands.sold());
    }
}
