package ortet.book.daybook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ortet.book.Progress;
import ortet.entry.Words;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.Where;

/**
 * One row of a list of persons.
 *
 * @param number the person's number, where it is told
 * @param name the name; empty once erased
 * @param role what they are to the nursery
 * @param particulars address, telephone and the like
 * @param where the row
 */
record PersonRow(
        Optional<PersonNumber> number, Optional<String> name, Role role, Optional<String> particulars, Where where) {

    private static final Columns COLUMNS = Columns.OF_PERSONS;

    /** Return the person under a number. */
    Person person(PersonNumber as) {
        return new Person(as, name, role, particulars);
    }

    /** Return the place of a cell of the row. */
    Where at(String column) {
        return new Where(where.file(), where.line(), Optional.of(column));
    }

    /** Read a list of persons; no number and no name stands twice in it. */
    static List<PersonRow> read(Source source, Faults faults, Progress progress) {
        List<PersonRow> rows = new ArrayList<>();
        Map<String, Long> seen = new HashMap<>();
        Sheet sheet = new Sheet(source, COLUMNS, faults);
        sheet.read(row -> read(row, sheet, faults, seen).ifPresent(rows::add), progress);
        return rows;
    }

    private static Optional<PersonRow> read(Row row, Sheet sheet, Faults faults, Map<String, Long> seen) {
        int before = faults.size();
        Optional<PersonNumber> number = value(row, sheet, faults, Columns.NUMBER, PersonNumber::parse);
        boolean isErased =
                value(row, sheet, faults, Columns.ERASED, PersonRow::yes).orElse(false);
        Optional<String> name = value(row, sheet, faults, Columns.NAME, text -> Require.text(text, Columns.NAME));
        Optional<Role> role = value(row, sheet, faults, Columns.ROLE, text -> Words.parse(Role.class, text));
        Optional<String> particulars =
                value(row, sheet, faults, Columns.PARTICULARS, text -> Require.text(text, Columns.PARTICULARS));
        if (isErased && name.isPresent()) {
            add(faults, sheet, row, Columns.NAME, "must be empty for a person who is erased");
        }
        if (isErased && number.isEmpty()) {
            add(faults, sheet, row, Columns.NUMBER, "must not be empty for a person who is erased");
        }
        if (!isErased && row.text(COLUMNS.at(Columns.NAME)).isEmpty()) {
            add(faults, sheet, row, Columns.NAME, "must not be empty, unless the person is erased");
        }
        name.filter(PersonNumber::isWritten)
                .ifPresent(text ->
                        add(faults, sheet, row, Columns.NAME, "expected a name, not a number, found \"" + text + "\""));
        once(row, sheet, faults, seen, Columns.NUMBER, number.map(PersonNumber::toString));
        once(row, sheet, faults, seen, Columns.NAME, name.map(text -> text.toLowerCase(Locale.ROOT)));
        return faults.size() > before
                ? Optional.empty()
                : Optional.of(
                        new PersonRow(number, name, role.orElse(Role.OTHER), particulars, sheet.where(row.line())));
    }

    private static void once(
            Row row, Sheet sheet, Faults faults, Map<String, Long> seen, String column, Optional<String> key) {
        key.map(text -> seen.putIfAbsent(column + text, row.line()))
                .ifPresent(line -> add(
                        faults, sheet, row, column, row.cell(COLUMNS.at(column)) + " stands in line " + line + " too"));
    }

    private static void add(Faults faults, Sheet sheet, Row row, String column, String text) {
        faults.add("bad-person", sheet.where(row.line(), column), sheet.position(COLUMNS.at(column)), text);
    }

    private static boolean yes(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw Refused.because("bad-word", "expected yes or no, found \"" + text + "\"");
        };
    }

    private static <T> Optional<T> value(
            Row row, Sheet sheet, Faults faults, String column, java.util.function.Function<String, T> parse) {
        int place = COLUMNS.at(column);
        try {
            return row.text(place).map(parse);
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                faults.add(
                        fault.rule(),
                        sheet.where(row.line(), column),
                        sheet.position(place),
                        fault.text(),
                        fault.nearest());
            }
            return Optional.empty();
        }
    }
}
