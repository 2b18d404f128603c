package ortet.book;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;
import ortet.value.When;

/**
 * Writes entries into a book as a test tells them: {@code 2020-05-01 layer-set J-1..J-3; mother=K-1; stem_mm=12}. A
 * name before the day ({@code a: 2020-05-01 …}) lets a later entry amend it ({@code target=a}).
 */
public final class Diary {
    /** Today, in every test that uses a diary. */
    public static final LocalDate TODAY = LocalDate.of(2026, 6, 15);

    private final BookStore store;
    private final Judge judge = new Judge(Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC));
    private final Map<String, EntryId> names = new LinkedHashMap<>();

    /** Keep a diary in an empty book in memory. */
    public Diary() {
        this(new MemoryBookStore(ZoneId.of("Europe/Dublin")));
    }

    /** Keep a diary in a book. */
    public Diary(BookStore store) {
        this.store = store;
    }

    /** Return the book. */
    public BookStore store() {
        return store;
    }

    /** Return the judge, whose today is {@link #TODAY}. */
    public Judge judge() {
        return judge;
    }

    /** Write lines into the book at one go. */
    public Receipt write(String... lines) {
        return store.append(proposal(lines), judge);
    }

    /** Return lines as a proposal. */
    public Proposal proposal(String... lines) {
        List<Proposed> entries = new ArrayList<>();
        for (String line : lines) {
            entries.add(read(line));
        }
        return new Proposal(
                entries.stream()
                        .map(entry -> new Proposal.Item(entry, Optional.empty()))
                        .toList(),
                List.of());
    }

    private Proposed read(String line) {
        String[] parts = line.split(";");
        String[] words = parts[0].strip().split(" ", 3);
        EntryId id = EntryId.random();
        if (words[0].endsWith(":")) {
            names.put(words[0].substring(0, words[0].length() - 1), id);
            words = parts[0].strip().substring(words[0].length()).strip().split(" ", 3);
        }
        Map<String, String> texts = new LinkedHashMap<>();
        if (words.length > 2) {
            texts.put("tags", words[2]);
        }
        Optional<PersonNumber> by = Optional.empty();
        for (int at = 1; at < parts.length; at++) {
            String[] field = parts[at].strip().split("=", 2);
            if (field[0].equals("by")) {
                by = Optional.of(PersonNumber.parse(field[1]));
            } else if (field[0].equals("target") && names.containsKey(field[1])) {
                texts.put("target", names.get(field[1]).toString());
            } else {
                texts.put(field[0], field[1]);
            }
        }
        Entry entry = Form.of(EntryKind.of(words[1]).orElseThrow()).read(texts);
        return new Proposed(id, When.parse(words[0]), by, entry);
    }

    /** Return the identity of a named entry. */
    public EntryId id(String name) {
        return names.get(name);
    }

    /** Return what the book says when it refuses lines: each fault as {@code rule: text}. */
    public List<String> refusal(String... lines) {
        Head before = store.read(BookView::head);
        try {
            write(lines);
        } catch (Refused refused) {
            if (!store.read(BookView::head).equals(before)) {
                throw new AssertionError("the book was changed by what it refused", refused);
            }
            return refused.faults().stream()
                    .map(fault -> fault.rule() + ": " + fault.line())
                    .toList();
        }
        throw new AssertionError("not refused: " + String.join(" / ", lines));
    }

    /** Return the names and texts of the remarks on lines. */
    public List<String> remarks(String... lines) {
        return write(lines).warnings().stream()
                .map(warning -> warning.rule() + ": " + warning.text())
                .toList();
    }

    /** Make a person known. */
    public Person person(int number, String name, Person.Role role) {
        Person person = new Person(new PersonNumber(number), Optional.of(name), role, Optional.empty());
        store.append(new Proposal(List.of(), List.of(person)), judge);
        return person;
    }

    /** Return the facts of a unit. */
    public UnitFacts facts(String tag) {
        return store.read(view -> view.facts(unit(tag)).orElseThrow());
    }

    /** Return the number of a unit. */
    public UnitNumber unit(String tag) {
        return store.read(view -> view.unit(new Tag(tag)).orElseThrow(() -> new AssertionError("no unit " + tag)));
    }

    /** Return how many are pending and growing under a tag at the end, as {@code 3+2}. */
    public String standing(String tag) {
        List<UnitFacts.Standing> standings = facts(tag).standings();
        UnitFacts.Standing last = standings.get(standings.size() - 1);
        return last.pending().map(Object::toString).orElse("?") + "+" + last.growing();
    }

    /** Return the outcomes of a cohort, as {@code TAKEN 3, FAILED 2}. */
    public String outcomes(String tag) {
        return String.join(
                ", ",
                facts(tag).outcomes().stream()
                        .map(outcome -> outcome.fate() + " " + outcome.count())
                        .toList());
    }
}
