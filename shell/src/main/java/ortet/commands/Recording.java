package ortet.commands;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.shell.core.command.CommandContext;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.book.Proposal;
import ortet.book.Receipt;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Roots;
import ortet.entry.Severed;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tags;
import ortet.screen.Screen;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.When;

/** Writes entries into the book and says back what was understood. */
public final class Recording {
    private static final String PLACE = "place";

    private final Shelf shelf;
    private final Judge judge;
    private final Supplier<LocalDate> today;
    private final Sitting sitting;

    /** Make a hand that writes into the books of a shelf. */
    public Recording(Shelf shelf, Judge judge, Supplier<LocalDate> today, Sitting sitting) {
        this.shelf = shelf;
        this.judge = judge;
        this.today = today;
        this.sitting = sitting;
    }

    /**
     * Write entries at one go. What is not told is taken from what is remembered, where there is something.
     *
     * @param on when they were done; else the day remembered (not for amendments), else today
     * @param by who did it, by name or number; else the person remembered
     */
    void write(List<Entry> entries, Optional<When> on, Optional<String> by, CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        boolean amends = entries.stream().anyMatch(entry -> entry.kind().phase() == EntryKind.Phase.AMENDMENT);
        Optional<When> usedDay = on.isPresent() || amends ? Optional.empty() : sitting.on();
        Optional<String> usedPerson = by.isPresent() ? Optional.empty() : sitting.by();
        When day = on.or(() -> usedDay).orElseGet(() -> When.on(store.read(view -> judge.today(view.head()))));
        Optional<PersonNumber> who =
                by.or(() -> usedPerson).map(name -> person(store, name, "by").number());
        List<Entry> placed = entries.stream().map(this::placed).toList();
        List<Proposed> proposed = placed.stream()
                .map(entry -> new Proposed(EntryId.random(), day, who, entry))
                .toList();
        Receipt receipt = store.append(Proposal.of(proposed), judge);
        sitting.wrote(shelf.path(context), receipt.written());
        List<String> used = new ArrayList<>();
        usedDay.ifPresent(when -> used.add(when.toString()));
        usedPerson.ifPresent(used::add);
        if (!placed.equals(entries)) {
            sitting.place().ifPresent(place -> used.add(place.toString()));
        }
        say(receipt, used, store, screen);
    }

    /** Return an entry with the place remembered, where it can have one and none was told. */
    private Entry placed(Entry entry) {
        boolean nowhere = sitting.place().isEmpty()
                || Form.of(entry.kind()).field(PLACE).isEmpty()
                || entry.kind().phase() == EntryKind.Phase.REGISTER
                || entry instanceof Severed severed
                        && severed.roots().filter(roots -> roots == Roots.NONE).isPresent();
        if (nowhere) {
            return entry;
        }
        Map<String, String> texts = new LinkedHashMap<>(Form.write(entry));
        boolean told = texts.putIfAbsent(PLACE, sitting.place().get().toString()) != null;
        return told ? entry : Form.of(entry.kind()).read(texts);
    }

    /** Take back what the last line wrote, by these crossings out, and forget that it was written. */
    void takeBack(List<Entry> crossings, CommandContext context) {
        BookStore store = shelf.open(context);
        When day = When.on(store.read(view -> judge.today(view.head())));
        Optional<PersonNumber> who =
                sitting.by().map(name -> person(store, name, "by").number());
        store.append(
                Proposal.of(crossings.stream()
                        .map(entry -> new Proposed(EntryId.random(), day, who, entry))
                        .toList()),
                judge);
        sitting.tookBack();
    }

    /** Return when something was done: as told, else the day remembered, else today. */
    LocalDate day(Optional<When> on, BookStore store) {
        return on.or(sitting::on).map(When::first).orElseGet(() -> store.read(view -> judge.today(view.head())));
    }

    /** Remember that a line wrote what "undo" does not take back, in words that follow "the last line". */
    void wroteForGood(String what, CommandContext context) {
        sitting.wroteForGood(shelf.path(context), what);
    }

    /** Write one entry. */
    void write(Draft draft, Optional<When> on, Optional<String> by, CommandContext context, Screen screen) {
        write(List.of(draft.entry()), on, by, context, screen);
    }

    /** Write one entry, by a hand. */
    void write(Draft draft, Hand hand, CommandContext context, Screen screen) {
        write(List.of(draft.entry()), hand.on(), hand.by(), context, screen);
    }

    /** Write entries at one go, by a hand. */
    void write(List<Entry> entries, Hand hand, CommandContext context, Screen screen) {
        write(entries, hand.on(), hand.by(), context, screen);
    }

    /** Return today. */
    LocalDate today() {
        return today.get();
    }

    /**
     * Return the number of a person named in an option, as text.
     *
     * @throws Refused when there is none, with the nearest
     */
    Optional<String> number(Optional<String> name, String option, CommandContext context) {
        return name.map(
                given -> person(shelf.open(context), given, option).number().toString());
    }

    /**
     * Return the person of a name or number.
     *
     * @throws Refused when there is none, with the nearest
     */
    static Person person(BookStore store, String name, String what) {
        return store.read(view -> {
            Optional<Person> found = PersonNumber.isWritten(name)
                    ? view.persons().stream()
                            .filter(person -> person.number().toString().equals(name))
                            .findFirst()
                    : view.person(name);
            return found.orElseThrow(() -> new Refused(Fault.of(
                            "unknown-person",
                            what + ": no person \"" + name + "\" in the book; add one with \"ortet person add\"")
                    .nearest(Nearest.of(
                            name,
                            view.persons().stream()
                                    .map(Person::name)
                                    .flatMap(Optional::stream)
                                    .toList()))));
        });
    }

    private static Map<PersonNumber, String> names(BookStore store) {
        Map<PersonNumber, String> names = new LinkedHashMap<>();
        store.read(view -> {
            view.persons().forEach(person -> names.put(person.number(), person.shown()));
            return names.size();
        });
        return names;
    }

    private static String fields(Entry entry, Map<PersonNumber, String> names) {
        List<String> parts = new ArrayList<>();
        Form.write(entry).forEach((column, text) -> {
            if (!column.equals("tags") && !column.equals("target")) {
                String value = PersonNumber.isWritten(text) ? names.getOrDefault(PersonNumber.parse(text), text) : text;
                parts.add(Labels.of(column, value));
            }
        });
        return String.join(", ", parts);
    }

    private static void say(Receipt receipt, List<String> used, BookStore store, Screen screen) {
        Map<PersonNumber, String> names = names(store);
        for (Recorded recorded : receipt.written()) {
            Entry entry = recorded.entry();
            String head = entry.kind().word()
                    + (entry.tags().isEmpty() ? "" : " " + Tags.brief(entry.tags()))
                    + (entry.tags().size() > 1 ? " (" + entry.tags().size() + ")" : "");
            List<String> parts = new ArrayList<>();
            parts.add(recorded.proposed().day()
                    + recorded.proposed()
                            .by()
                            .map(by -> ", " + names.getOrDefault(by, by.toString()))
                            .orElse(""));
            target(entry, store).ifPresent(order -> parts.add("of entry #" + order));
            String fields = fields(entry, names);
            if (!fields.isEmpty()) {
                parts.add(fields);
            }
            screen.hanging("", "    ", "#" + recorded.order() + "  " + head + "; " + String.join("; ", parts));
        }
        if (!used.isEmpty()) {
            screen.hanging("    ", "    ", "as set by \"use\": " + String.join(", ", used));
        }
        for (Warning warning : receipt.warnings()) {
            screen.hanging("", "    ", "remark: " + warning.text());
        }
        cautions(receipt, screen);
    }

    private static Optional<Long> target(Entry entry, BookStore store) {
        Optional<EntryId> target = entry instanceof Corrected corrected
                ? Optional.of(corrected.target())
                : entry instanceof CrossedOut crossedOut ? Optional.of(crossedOut.target()) : Optional.empty();
        return target.flatMap(id -> store.read(view -> view.entry(id))).map(Recorded::order);
    }

    /** Give the usual cautions, once for each thing written at one go. */
    private static void cautions(Receipt receipt, Screen screen) {
        boolean hormone = false;
        boolean sphagnum = false;
        for (Recorded recorded : receipt.written()) {
            Map<String, String> texts = Form.write(recorded.entry());
            hormone |= texts.containsKey("hormone");
            sphagnum |= texts.getOrDefault("medium", "")
                    .toLowerCase(java.util.Locale.ROOT)
                    .contains("sphagnum");
        }
        if (hormone) {
            screen.hanging(
                    "",
                    "    ",
                    "caution: rooting hormone: the product's own label and local rules come first; gloves, no dust.");
        }
        if (sphagnum) {
            screen.hanging("", "    ", "caution: sphagnum moss: wear gloves and cover cuts.");
        }
    }
}
