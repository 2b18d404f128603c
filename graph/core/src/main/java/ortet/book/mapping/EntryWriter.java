package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.daybook.Persons;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Form.Nature;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.When;
import ortet.value.Where;

/** Turns deeds, once all about them is known, into entries; gathers these, and what is wrong. */
final class EntryWriter {
    private final BookView book;
    private final Persons persons;
    private final Set<PersonNumber> erased;
    private final Map<EntryKind, List<String>> personFields = new EnumMap<>(EntryKind.class);
    private final Map<SheetRow, List<Fault>> faults = new LinkedHashMap<>();
    private final List<Told> told = new ArrayList<>();

    EntryWriter(BookView book, Persons persons) {
        this.book = book;
        this.persons = persons;
        this.erased = book.persons().stream()
                .filter(person -> person.name().isEmpty())
                .map(Person::number)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Put the entries into the order of days. */
    void sort() {
        told.sort(Comparator.comparing(Told::day)
                .thenComparing(one -> one.kind().rank())
                .thenComparing(one -> one.row().number()));
    }

    /** Return the entries. */
    List<Told> told() {
        return told;
    }

    /** Return the rows that do not hold, with what is wrong with them. */
    Map<SheetRow, List<Fault>> faults() {
        return faults;
    }

    /** Return the new persons whom the entries name. */
    List<Person> fresh() {
        Set<PersonNumber> used = new HashSet<>();
        for (Told one : told) {
            one.by().ifPresent(used::add);
            for (String field : personFields(one.kind())) {
                if (one.texts().has(field)) {
                    used.add(PersonNumber.parse(one.texts().get(field)));
                }
            }
        }
        return persons.added().stream()
                .filter(person -> used.contains(person.number()))
                .toList();
    }

    /**
     * Write down what a deed tells.
     *
     * @param kind the kind of the entry, which may be another than the deed's own
     * @param group which of several entries of the deed; "" for the only one
     */
    void write(Deed deed, EntryKind kind, Texts texts, Optional<When> day, String group) {
        if (day.isEmpty()) {
            complain(
                    deed,
                    deed.act(),
                    Meaning.DAY,
                    "no-day",
                    "must not be empty: nothing says when it was " + kind.word().replace('-', ' '));
            return;
        }
        try {
            Optional<PersonNumber> by = deed.by().isEmpty()
                    ? Optional.empty()
                    : Optional.of(person(deed, "", Meaning.BY, deed.by(), Role.STAFF, group));
            Texts numbered = texts;
            for (String field : personFields(kind)) {
                if (texts.has(field)) {
                    Role role = field.equals("supplier") ? Role.SUPPLIER : Role.CUSTOMER;
                    numbered = numbered.with(
                            field,
                            person(deed, deed.act(), field, texts.get(field), role, group)
                                    .toString());
                }
            }
            Told one = new Told(deed, kind, numbered, day.get(), by, group);
            one.entry(); // it is made anew when it is needed; what is wrong with it is told now
            told.add(one);
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                complain(deed, kind, fault);
            }
        }
    }

    private PersonNumber person(Deed deed, String act, String field, String name, Role role, String group) {
        try {
            PersonNumber number = persons.number(name, role, deed.row().where());
            return erased(field, number, deed, group).orElse(number);
        } catch (Refused refused) {
            Fault fault = refused.faults().get(0);
            throw new Refused(new Fault(fault.rule(), Optional.empty(), field + ": " + fault.text(), fault.nearest()));
        }
    }

    /** Return whom the book names in the same place of this very entry, where that name was erased since. */
    private Optional<PersonNumber> erased(String field, PersonNumber number, Deed deed, String group) {
        if (erased.isEmpty()
                || persons.added().stream().noneMatch(person -> person.number().equals(number))) {
            return Optional.empty();
        }
        return book.entry(deed.id(group))
                .flatMap(recorded -> field.equals(Meaning.BY)
                        ? recorded.proposed().by()
                        : Optional.ofNullable(Form.write(recorded.entry()).get(field))
                                .map(PersonNumber::parse))
                .filter(erased::contains);
    }

    private List<String> personFields(EntryKind kind) {
        return personFields.computeIfAbsent(
                kind,
                key -> Form.of(key).fields().stream()
                        .filter(field -> field.nature() == Nature.PERSON)
                        .map(Form.Field::name)
                        .toList());
    }

    private void complain(Deed deed, EntryKind kind, Fault fault) {
        int colon = fault.text().indexOf(": ");
        String field = colon < 0 ? "" : fault.text().substring(0, colon);
        boolean isField = Form.of(kind).field(field).isPresent() || field.equals(Meaning.BY);
        String text = isField ? fault.text().substring(colon + 2) : fault.text();
        if (fault.rule().equals("missing-value")) {
            text = "must not be empty for what was " + kind.word().replace('-', ' ') + ": its "
                    + field.replace('_', ' ');
        }
        String column = isField ? field : Meaning.TAGS;
        Where where =
                deed.row().where(deed.row().file().column(deed.act(), column).isPresent() ? deed.act() : "", column);
        add(deed.row(), new Fault(fault.rule(), Optional.of(where), text, fault.nearest()));
    }

    /** Complain of something that a deed says, or does not say, in a field. */
    void complain(Deed deed, String act, String field, String rule, String text) {
        add(deed.row(), new Fault(rule, Optional.of(deed.row().where(act, field)), text, Optional.empty()));
    }

    private void add(SheetRow row, Fault fault) {
        List<Fault> all = faults.computeIfAbsent(row, key -> new ArrayList<>());
        if (!all.contains(fault)) {
            all.add(fault);
        }
    }
}
