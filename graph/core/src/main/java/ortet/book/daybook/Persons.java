package ortet.book.daybook;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import ortet.book.Progress;
import ortet.entry.Words;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/**
 * Finds the person that a cell names, and gives a number to everybody who is new.
 *
 * <p>A name is looked up among the persons of the book, those listed in {@code persons.csv} and those met before, upper
 * and lower case alike.
 */
public final class Persons {
    private static final int NEAR = 3;

    /** How many names may be compared to find who was meant, before new persons are told without it. */
    private static final long COMPARISONS = 4_000_000;

    private final Map<PersonNumber, Person> inBook = new HashMap<>();
    private final Map<String, PersonNumber> byName = new HashMap<>();
    private final List<String> names = new ArrayList<>();
    private final Map<PersonNumber, Person> added = new TreeMap<>();
    private final Map<String, PersonNumber> byCell = new HashMap<>();
    private final Map<PersonNumber, String> nearTo = new HashMap<>();
    private final List<Warning> remarks = new ArrayList<>();
    private int highest;
    private long compared;

    /** Begin with the persons of a book. */
    public Persons(Collection<Person> known) {
        for (Person person : known) {
            inBook.put(person.number(), person);
            highest = Math.max(highest, person.number().value());
            person.name().ifPresent(name -> {
                byName.put(folded(name), person.number());
                names.add(name);
            });
        }
    }

    /** Return the persons who are new to the book, by number. */
    public List<Person> added() {
        return List.copyOf(added.values());
    }

    /** Return the names near to that of somebody new, with their numbers. */
    public Optional<String> nearTo(PersonNumber added) {
        return Optional.ofNullable(nearTo.get(added));
    }

    /** Return what should be looked at twice. */
    List<Warning> remarks() {
        return List.copyOf(remarks);
    }

    /**
     * Return the number of the person that a cell names.
     *
     * @param cell a number such as {@code #7}, or a name
     * @param role what somebody new is to the nursery
     * @throws Refused when the cell is neither
     */
    public PersonNumber number(String cell, Role role, Where where) {
        PersonNumber known = byCell.get(cell);
        if (known == null) {
            known = find(cell, role, where);
            byCell.put(cell, known);
        }
        return known;
    }

    private PersonNumber find(String cell, Role role, Where where) {
        if (PersonNumber.isWritten(cell)) {
            return PersonNumber.parse(cell);
        }
        if (cell.startsWith("#") || cell.codePoints().noneMatch(Character::isLetter)) {
            throw Refused.because(
                    "bad-person", "expected a person's number such as #7, or a name, found \"" + cell + "\"");
        }
        PersonNumber known = byName.get(folded(cell));
        if (known != null) {
            return known;
        }
        PersonNumber number = new PersonNumber(++highest);
        compared += names.size();
        List<String> near = compared <= COMPARISONS ? Nearest.list(cell, names, NEAR) : List.of();
        add(new Person(number, Optional.of(cell), role, Optional.empty()));
        if (!near.isEmpty()) {
            nearTo.put(number, withNumbers(near));
        }
        remarks.add(new Warning(
                "new-person",
                where + ": " + added.get(number).shown() + " is new, and becomes " + number + " (" + Words.of(role)
                        + ")" + (near.isEmpty() ? "" : "; near to " + withNumbers(near))));
        return number;
    }

    private String withNumbers(List<String> near) {
        return near.stream().map(name -> name + " " + byName.get(folded(name))).collect(Collectors.joining(", "));
    }

    private void add(Person person) {
        added.put(person.number(), person);
        highest = Math.max(highest, person.number().value());
        person.name().ifPresent(name -> {
            byName.put(folded(name), person.number());
            names.add(name);
        });
    }

    static String folded(String name) {
        return Normalizer.normalize(name.strip(), Normalizer.Form.NFC)
                .toUpperCase(Locale.ROOT)
                .toLowerCase(Locale.ROOT);
    }

    /** Take in a list of persons that stands beside a day book: whoever is new joins the book. */
    void list(Source source, Faults faults, Progress progress) {
        int before = faults.size();
        List<PersonRow> rows = PersonRow.read(source, faults, progress);
        if (faults.size() > before) {
            return;
        }
        List<PersonRow> unnumbered = new ArrayList<>();
        for (PersonRow row : rows) {
            Optional<PersonNumber> known = row.name().map(Persons::folded).map(byName::get);
            if (known.isPresent() && inBook.containsKey(known.get())) {
                checkKnown(row, inBook.get(known.get()), faults);
            } else if (row.number().isPresent()) {
                addNumbered(row, row.number().get(), faults);
            } else {
                unnumbered.add(row);
            }
        }
        for (PersonRow row : unnumbered) {
            add(row.person(new PersonNumber(++highest)));
        }
    }

    private void checkKnown(PersonRow row, Person known, Faults faults) {
        if (row.number().isPresent() && !row.number().get().equals(known.number())) {
            faults.add(
                    "bad-person",
                    row.at(Columns.NUMBER),
                    0,
                    known.shown() + " is " + known.number() + " in the book; expected that or nothing, found "
                            + row.number().get());
        } else if (!row.person(known.number()).equals(known)) {
            remarks.add(new Warning(
                    "known-person",
                    row.where() + ": " + known.shown() + " is in the book as " + known.number()
                            + "; role and particulars stay as they are there"));
        }
    }

    private void addNumbered(PersonRow row, PersonNumber number, Faults faults) {
        Person known = inBook.get(number);
        if (known == null) {
            add(row.person(number));
        } else if (row.name().isPresent()) {
            faults.add(
                    "bad-person",
                    row.at(Columns.NUMBER),
                    0,
                    number + " is " + known.name().orElse("somebody whose name was erased")
                            + " in the book; expected no number for somebody new");
        }
    }
}
