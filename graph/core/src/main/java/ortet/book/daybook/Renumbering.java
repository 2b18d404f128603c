package ortet.book.daybook;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import ortet.book.BookView;
import ortet.book.Proposal;
import ortet.book.Restoration;
import ortet.entry.Corrected;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Form.Nature;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.value.Where;

/**
 * Turns the entries of an export into rows for a book that has entries of its own, where persons may bear other numbers.
 *
 * <p>A person is the one in the book with the same name; else the one with the same number, where it is the same book
 * and the name has been erased in one of the two; else new. Who is erased in the export of another book is the person
 * whom the book names in the same entry, or new.
 */
final class Renumbering {
    private static final String VALUE = "value";
    private static final Map<EntryKind, List<String>> PERSON_COLUMNS = personColumns();

    private static Map<EntryKind, List<String>> personColumns() {
        Map<EntryKind, List<String>> columns = new EnumMap<>(EntryKind.class);
        for (EntryKind kind : EntryKind.values()) {
            columns.put(
                    kind,
                    Form.of(kind).fields().stream()
                            .filter(field -> field.nature() == Nature.PERSON)
                            .map(Form.Field::name)
                            .toList());
        }
        return columns;
    }

    private final BookView book;
    private final boolean isSameBook;
    private final Map<PersonNumber, Person> inBook = new HashMap<>();
    private final Map<String, PersonNumber> byName = new HashMap<>();
    private final Map<PersonNumber, Person> exported = new HashMap<>();
    private final Map<PersonNumber, PersonNumber> found = new HashMap<>();
    private final List<Person> added = new ArrayList<>();
    private int highest;

    private Renumbering(Restoration whole, BookView book) {
        this.book = book;
        this.isSameBook = whole.bookId().equals(book.head().bookId());
        for (Person person : book.persons()) {
            inBook.put(person.number(), person);
            person.name().ifPresent(name -> byName.put(Persons.folded(name), person.number()));
            highest = Math.max(highest, person.number().value());
        }
        for (Person person : whole.persons()) {
            exported.put(person.number(), person);
        }
    }

    static Reading.Rows rows(Restoration whole, List<Where> places, BookView book) {
        Renumbering renumbering = new Renumbering(whole, book);
        List<Proposal.Item> items = new ArrayList<>(whole.entries().size());
        for (int at = 0; at < places.size(); at++) {
            Proposed proposed = renumbering.renumbered(whole.entries().get(at));
            items.add(new Proposal.Item(proposed, Optional.of(places.get(at))));
        }
        whole.persons().stream()
                .filter(person -> person.name().isPresent())
                .forEach(person -> renumbering.number(person.number(), Optional::empty));
        return new Reading.Rows(new Proposal(items, renumbering.added), 0, List.of());
    }

    private Proposed renumbered(Recorded recorded) {
        Proposed proposed = recorded.proposed();
        EntryId id = proposed.id();
        Optional<PersonNumber> by = proposed.by().map(number -> number(number, () -> theirs(id, Columns.BY)));
        Entry entry = proposed.entry();
        List<String> columns = personColumns(entry);
        if (!columns.isEmpty()) {
            Map<String, String> texts = new LinkedHashMap<>(Form.write(entry));
            for (String column : columns) {
                texts.computeIfPresent(
                        column,
                        (name, text) -> PersonNumber.isWritten(text)
                                ? number(PersonNumber.parse(text), () -> theirs(id, name))
                                        .toString()
                                : text);
            }
            entry = Form.of(entry.kind()).read(texts);
        }
        return new Proposed(id, proposed.day(), by, entry);
    }

    private static List<String> personColumns(Entry entry) {
        if (entry instanceof Corrected corrected) {
            return RowReader.personColumn(corrected.field()).isPresent() ? List.of(VALUE) : List.of();
        }
        return PERSON_COLUMNS.get(entry.kind());
    }

    private PersonNumber number(PersonNumber number, Supplier<Optional<PersonNumber>> theirs) {
        PersonNumber known = found.get(number);
        if (known == null) {
            known = find(exported.getOrDefault(number, unlisted(number)), theirs);
            found.put(number, known);
        }
        return known;
    }

    private static Person unlisted(PersonNumber number) {
        return new Person(number, Optional.empty(), Person.Role.OTHER, Optional.empty());
    }

    private PersonNumber find(Person person, Supplier<Optional<PersonNumber>> theirs) {
        PersonNumber sameName =
                person.name().map(name -> byName.get(Persons.folded(name))).orElse(null);
        if (sameName != null) {
            return sameName;
        }
        Person sameNumber = inBook.get(person.number());
        boolean oneIsErased = sameNumber != null
                && (person.name().isEmpty() || sameNumber.name().isEmpty());
        if (isSameBook && oneIsErased) {
            return person.number();
        }
        if (person.name().isEmpty()) {
            Optional<PersonNumber> sameEntry = theirs.get();
            if (sameEntry.isPresent()) {
                return sameEntry.get();
            }
        }
        boolean isFree = !inBook.containsKey(person.number()) && person.number().value() > highest;
        PersonNumber number = isFree ? person.number() : new PersonNumber(highest + 1);
        highest = number.value();
        added.add(new Person(number, person.name(), person.role(), person.particulars()));
        return number;
    }

    /** Return the person, whose name is erased, in the same column of the same entry of the book. */
    private Optional<PersonNumber> theirs(EntryId id, String column) {
        return book.entry(id)
                .flatMap(recorded -> column.equals(Columns.BY)
                        ? recorded.proposed().by()
                        : Optional.ofNullable(Form.write(recorded.entry()).get(column))
                                .filter(PersonNumber::isWritten)
                                .map(PersonNumber::parse))
                .filter(number ->
                        inBook.containsKey(number) && inBook.get(number).name().isEmpty());
    }
}
