package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import ortet.entry.Words;
import ortet.inventory.Holding;
import ortet.inventory.Holdings;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows which units there are. */
final class InventoryView {
    private InventoryView() {}

    static void show(Holdings holdings, OutputFormat format, Screen screen) {
        String count = count(holdings.count());
        if (holdings.all().isEmpty() && format == OutputFormat.TABLE) {
            screen.prose(count + ", as of " + holdings.asOf());
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("tag", "tag"),
                Column.text("cultivar", "cultivar"),
                Column.text("cultivar_one_of", "one of").forPrograms(),
                Column.text("kind", "kind"),
                Column.text("state", "state"),
                Column.whole("growing", "growing").forPrograms(),
                Column.whole("pending", "pending").forPrograms(),
                shown("place", "place", format, holdings, one -> one.place().isPresent()),
                Column.text("place_since", "since").forPrograms(),
                Column.text("container", "container").forPrograms(),
                shown(
                        "raised_from",
                        "from",
                        format,
                        holdings,
                        one -> !one.from().isEmpty()),
                Column.text("begun", "begun").forPrograms(),
                format == OutputFormat.TABLE
                        ? shown(
                                "marks",
                                "marks",
                                format,
                                holdings,
                                one -> !marks(one).isEmpty())
                        : Column.text("marks", "marks").forPeople(),
                Column.text("stock_since", "stock since").forPrograms(),
                Column.truth("held", "held").forPrograms(),
                Column.truth("reserved", "reserved").forPrograms());
        for (Holding one : holdings.all()) {
            boolean people = format == OutputFormat.TABLE;
            sheet.row(
                    one.tag().text(),
                    people ? one.named() : one.cultivar().map(CultivarName::toString),
                    String.join(
                            "; ",
                            one.oneOf().stream().map(CultivarName::toString).toList()),
                    Words.of(one.nature()),
                    one.state(),
                    one.growing(),
                    one.pending(),
                    one.place().map(Object::toString),
                    one.since().map(Object::toString),
                    one.container(),
                    String.join(
                            people ? ", " : " ",
                            one.from().stream().map(Tag::text).toList()),
                    one.begun().toString(),
                    marks(one),
                    one.stockSince().map(Object::toString),
                    one.held(),
                    one.reserved());
        }
        screen.show(sheet.note(count + ", as of " + holdings.asOf()).build(), format);
    }

    /** Return a column of text that people see only where something stands in it. */
    private static Column shown(
            String name, String heading, OutputFormat format, Holdings holdings, Predicate<Holding> isThere) {
        Column column = Column.text(name, heading);
        boolean empty = format == OutputFormat.TABLE && holdings.all().stream().noneMatch(isThere);
        return empty ? column.forPrograms() : column;
    }

    private static String count(Holdings.Count count) {
        if (count.units() == 0) {
            return "nothing of the kind";
        }
        List<String> parts = new ArrayList<>();
        if (count.growing() > 0) {
            parts.add(Counts.of(count.growing(), "plant growing", "plants growing"));
        }
        if (count.pending() > 0) {
            parts.add(count.pending() + " pending");
        }
        return Counts.of(count.units(), "tag", "tags") + (parts.isEmpty() ? "" : ": " + String.join(", ", parts));
    }

    private static String marks(Holding one) {
        List<String> marks = new ArrayList<>();
        if (one.held()) {
            marks.add("HELD");
        }
        if (one.reserved()) {
            marks.add("reserved");
        }
        if (one.stockSince().isPresent()) {
            marks.add("stock");
        }
        return String.join(", ", marks);
    }
}
