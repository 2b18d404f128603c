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
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
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
    private final Shelf shelf;
    private final Judge judge;
    private final Supplier<LocalDate> today;

    /** Make a hand that writes into the books of a shelf. */
    public Recording(Shelf shelf, Judge judge, Supplier<LocalDate> today) {
        this.shelf = shelf;
        this.judge = judge;
        this.today = today;
    }

    /**
     * Write entries at one go.
     *
     * @param on when they were done; today when not told
     * @param by who did it, by name or number
     */
    void write(List<Entry> entries, Optional<When> on, Optional<String> by, CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        When day = on.orElseGet(() -> When.on(store.read(view -> judge.today(view.head()))));
        Optional<PersonNumber> who = by.map(name -> person(store, name, "by").number());
        List<Proposed> proposed = entries.stream()
                .map(entry -> new Proposed(EntryId.random(), day, who, entry))
                .toList();
        Receipt receipt = store.append(Proposal.of(proposed), judge);
        say(receipt, store, screen);
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

    private static void say(Receipt receipt, BookStore store, Screen screen) {
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
