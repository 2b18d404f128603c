package ortet.commands;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.book.BookView;
import ortet.entry.Words;
import ortet.inventory.DayRecord;
import ortet.inventory.Findings;
import ortet.inventory.InUse;
import ortet.inventory.Places;
import ortet.lineage.Glance;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Shows where words were found. */
final class FindView {
    private static final int MOST_NEAR = 5;

    private FindView() {}

    /**
     * What was found.
     *
     * @param findings where the words occur
     * @param near what may have been meant, where they occur nowhere
     */
    record Found(Findings findings, List<String> near) {}

    /** Return names and tags near a word. */
    static List<String> near(BookView view, List<String> words) {
        String word = String.join(" ", words);
        Set<String> near = new LinkedHashSet<>();
        try {
            near.addAll(view.nearest(new Tag(word)));
        } catch (Refused noTag) {
            // It can be a name all the same.
        }
        Set<String> names = new LinkedHashSet<>();
        for (CultivarName name : InUse.cultivars(view)) {
            names.add(name.toString());
            name.epithet().ifPresent(names::add);
        }
        Places.of(view).all().stream().map(Place::name).forEach(names::add);
        view.persons().forEach(person -> person.name().ifPresent(names::add));
        near.addAll(Nearest.list(word, names, MOST_NEAR));
        return near.stream().limit(MOST_NEAR).toList();
    }

    static void show(Found found, OutputFormat format, Screen screen) {
        Findings findings = found.findings();
        String words = String.join(" ", findings.words());
        if (findings.isNothing() && format == OutputFormat.TABLE) {
            screen.prose("nothing with \"" + words + "\" in the book as of " + findings.asOf()
                    + (found.near().isEmpty() ? "" : "; nearest: " + String.join(", ", found.near())));
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("sort", "sort").forPrograms(),
                Column.text("found", "found"),
                Column.text("what", "what it is"),
                Column.whole("entry", "entry").forPrograms());
        List<String> more = new ArrayList<>();
        section("labels", findings.tags(), sheet, more);
        for (Findings.Label label : findings.tags().list()) {
            sheet.row("label", label.tag().text(), unit(label), Optional.empty());
        }
        section("cultivars", findings.cultivars(), sheet, more);
        for (Findings.Known<CultivarName> known : findings.cultivars().list()) {
            sheet.row("cultivar", known.name().toString(), known.otherwise(), Optional.empty());
        }
        section("places", findings.places(), sheet, more);
        for (Findings.Known<Place> known : findings.places().list()) {
            sheet.row("place", known.name().name(), known.otherwise(), Optional.empty());
        }
        section("persons", findings.persons(), sheet, more);
        for (Person person : findings.persons().list()) {
            sheet.row("person", person.shown(), person(person), Optional.empty());
        }
        section("entries", findings.remarks(), sheet, more);
        for (DayRecord.Line line : findings.remarks().list()) {
            sheet.row(
                    "entry",
                    "#" + line.deed().order(),
                    DayView.words(line, false)
                            + line.deed().by().map(by -> "; " + by).orElse(""),
                    line.deed().order());
        }
        sheet.note("as of " + findings.asOf());
        if (!more.isEmpty()) {
            sheet.note("there are more " + String.join(", ", more) + " (--most N shows more)");
        }
        screen.show(sheet.build(), format);
    }

    private static void section(String heading, Findings.Found<?> found, Sheet.Builder sheet, List<String> more) {
        if (!found.list().isEmpty()) {
            sheet.section(heading);
        }
        if (!found.isAll()) {
            more.add(heading);
        }
    }

    private static String unit(Findings.Label label) {
        Glance unit = label.unit();
        return (unit.tag().equals(label.tag()) ? "" : "now " + unit.tag() + ": ") + unit.named() + "  [" + unit.state()
                + "]" + unit.place().map(place -> ", at " + place).orElse("");
    }

    private static String person(Person person) {
        return person.number() + ", " + Words.of(person.role())
                + person.particulars().map(text -> ", " + text).orElse("");
    }
}
