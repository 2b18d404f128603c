package ortet.book.daybook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import ortet.book.Progress;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.Form.Nature;
import ortet.entry.Proposed;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.When;
import ortet.value.Where;

/** Turns the rows of one day book into entries. */
final class RowReader {
    /** Finds the person that a cell names. */
    @FunctionalInterface
    interface PersonFinder {
        PersonNumber find(String cell, Role role, Where where);
    }

    /** Is handed every row that is right, with its line, and knows those that it was handed. */
    interface Taker {
        /** Take an entry, and return its number, from 1: that of the same entry where it was taken before. */
        int take(Proposed proposed, Row row);

        /** Return the identity of an entry that was taken. */
        EntryId id(int number);

        /** Return the number of the entry with an identity that was taken; 0 when there is none. */
        int number(EntryId id);
    }

    private static final Columns COLUMNS = Columns.OF_DAY_BOOK;
    private static final int ENTRY = COLUMNS.at(Columns.ENTRY);
    private static final int DAY = COLUMNS.at(Columns.DAY);
    private static final int BY = COLUMNS.at(Columns.BY);
    private static final int KIND = COLUMNS.at(Columns.KIND);
    private static final int TAGS = COLUMNS.at("tags");
    private static final int TARGET = COLUMNS.at("target");
    private static final int FIELD = COLUMNS.at("field");
    private static final int VALUE = COLUMNS.at("value");
    private static final String LINE = "line:";
    private static final List<String> KEY_COLUMNS = List.of("target", "field", "cultivar", "place");
    private static final List<String> TARIFF_COLUMNS =
            List.of("task", "material", "container", "size", "per", "units_per_m2");
    /** Stand in for what is wrong and has been told, so that it is not told twice. */
    private static final EntryId NOTHING = new EntryId(new UUID(0, 0));

    private static final PersonNumber NOBODY = new PersonNumber(1);
    private static final String SOME_TAG = "A-1";
    private static final Map<EntryKind, Plan> PLANS = plans();

    /**
     * What rows of a kind use.
     *
     * @param form the form of the kind
     * @param places for each field of the form, the place of its column
     * @param persons the places of columns that name a person
     * @param needsTags whether there must be a tag
     * @param uses for each column, whether the kind uses it
     */
    private record Plan(Form form, int[] places, int[] persons, boolean needsTags, boolean[] uses) {}

    private static Map<EntryKind, Plan> plans() {
        Map<EntryKind, Plan> plans = new EnumMap<>(EntryKind.class);
        for (EntryKind kind : EntryKind.values()) {
            Form form = Form.of(kind);
            int[] places = form.fields().stream()
                    .mapToInt(field -> COLUMNS.at(field.name()))
                    .toArray();
            int[] persons = form.fields().stream()
                    .filter(field -> field.nature() == Nature.PERSON)
                    .mapToInt(field -> COLUMNS.at(field.name()))
                    .toArray();
            boolean needsTags = form.field("tags").isPresent() && kind.phase() != Phase.AMENDMENT;
            boolean[] uses = new boolean[COLUMNS.names().size()];
            for (String own :
                    List.of(Columns.ENTRY, Columns.ORDER, Columns.RECORDED, Columns.DAY, Columns.BY, Columns.KIND)) {
                uses[COLUMNS.at(own)] = true;
            }
            for (int place : places) {
                uses[place] = true;
            }
            plans.put(kind, new Plan(form, places, persons, needsTags, uses));
        }
        return plans;
    }

    private final Sheet sheet;
    private final String sourceName;
    private final PersonFinder persons;
    private final Faults faults;
    private final Taker taker;

    private final Map<String, EntryKind> kinds = new HashMap<>();
    private final Map<String, When> days = new HashMap<>();
    private final Map<EntryId, Integer> occurrences = new HashMap<>();
    private final int takenBefore;
    private final Set<String> missingColumns = new HashSet<>();
    private int[] lines = new int[64];
    private int[] numbers = new int[64];
    private int rows;

    /**
     * Make a reader.
     *
     * @param takenBefore how many entries the taker has taken from other sheets
     */
    RowReader(Sheet sheet, String sourceName, PersonFinder persons, Faults faults, Taker taker, int takenBefore) {
        this.sheet = sheet;
        this.sourceName = sourceName;
        this.persons = persons;
        this.faults = faults;
        this.taker = taker;
        this.takenBefore = takenBefore;
    }

    /** Read all rows of the sheet. */
    void readAll(Progress progress) {
        sheet.read(this::read, progress);
    }

    private void read(Row row) {
        int before = faults.size();
        Optional<EntryId> given = value(row, ENTRY, EntryId::parse);
        Optional<When> day = required(row, DAY, this::day);
        Optional<PersonNumber> by = value(row, BY, cell -> person(cell, BY, row));
        Optional<EntryKind> kind = required(row, KIND, this::kind);
        Optional<Entry> entry = kind.isPresent() ? entry(kind.get(), row) : Optional.empty();
        int number = 0;
        if (faults.size() == before && day.isPresent() && entry.isPresent()) {
            EntryId id = given.isPresent() ? given.get() : derived(day.get(), entry.get());
            number = taker.take(new Proposed(id, day.get(), by, entry.get()), row);
        }
        remember(row.line(), number);
    }

    private void remember(long line, int number) {
        if (rows == lines.length) {
            lines = Arrays.copyOf(lines, rows + (rows >> 1));
            numbers = Arrays.copyOf(numbers, lines.length);
        }
        lines[rows] = (int) line;
        numbers[rows++] = number;
    }

    /** Return the identity of a row that has none of its own; only of rows that are alike is kept how many there were. */
    private EntryId derived(When day, Entry entry) {
        String key = key(day, entry);
        EntryId first = EntryId.derived(sourceName, key, 1);
        int taken = taker.number(first);
        if (taken == 0) {
            return first;
        }
        int before = occurrences.getOrDefault(first, taken > takenBefore ? 1 : 0);
        occurrences.put(first, before + 1);
        return before == 0 ? first : EntryId.derived(sourceName, key, before + 1);
    }

    /**
     * Return what tells a row from others of its source: the kind, the day and the tags in the order of their
     * characters; where there are none, or an entry is amended, also what it is about; for a cost or a price also what
     * costs it.
     */
    static String key(When day, Entry entry) {
        List<Tag> tags = entry.tags();
        StringBuilder key = new StringBuilder(48);
        key.append(entry.kind().word()).append('\n').append(day).append('\n');
        if (tags.size() == 1) {
            key.append(tags.get(0));
        } else {
            key.append(tags.stream().map(Tag::text).sorted().collect(Collectors.joining(" ")));
        }
        if (tags.isEmpty() || entry.kind().phase() == Phase.AMENDMENT) {
            Map<String, String> texts = Form.write(entry);
            for (String column : KEY_COLUMNS) {
                key.append('\n').append(texts.getOrDefault(column, ""));
            }
            if (entry.kind() == EntryKind.COST_LISTED || entry.kind() == EntryKind.PRICE_LISTED) {
                for (String column : TARIFF_COLUMNS) {
                    key.append('\n').append(texts.getOrDefault(column, ""));
                }
            }
        }
        return key.toString();
    }

    private When day(String cell) {
        When known = days.get(cell);
        if (known == null) {
            known = When.parse(cell);
            days.put(cell, known);
        }
        return known;
    }

    private EntryKind kind(String cell) {
        EntryKind known = kinds.get(cell);
        if (known == null) {
            String word = cell.toLowerCase(Locale.ROOT).replace(' ', '-').replace('_', '-');
            known = EntryKind.of(word)
                    .orElseThrow(() -> new Refused(Fault.of(
                                    "unknown-kind",
                                    "no kind of entry \"" + cell
                                            + "\"; expected a word such as acquired, layer-set or potted")
                            .nearest(Nearest.of(word, EntryKind.words()))));
            kinds.put(cell, known);
        }
        return known;
    }

    private PersonNumber person(String cell, int place, Row row) {
        String column = COLUMNS.names().get(place);
        return persons.find(cell, role(column), sheet.where(row.line(), column));
    }

    private static Role role(String column) {
        return switch (column) {
            case Columns.BY -> Role.STAFF;
            case "supplier" -> Role.SUPPLIER;
            case "customer" -> Role.CUSTOMER;
            default -> Role.OTHER;
        };
    }

    private Optional<Entry> entry(EntryKind kind, Row row) {
        Plan plan = PLANS.get(kind);
        checkUnused(kind, plan, row);
        if (plan.needsTags() && row.cell(TAGS).isEmpty()) {
            addMissing(TAGS, kind, row);
            row.fill(TAGS, SOME_TAG);
        }
        for (int place : plan.persons()) {
            putNumber(row, place, place);
        }
        if (kind.phase() == Phase.AMENDMENT) {
            putTarget(row);
            Optional<Integer> person = row.text(FIELD).flatMap(RowReader::personColumn);
            if (person.isPresent()) {
                putNumber(row, VALUE, person.get());
            }
        }
        int[] places = plan.places();
        try {
            return Optional.of(plan.form().read(at -> row.cell(places[at])));
        } catch (Refused refused) {
            refused.faults().forEach(fault -> add(fault, kind, row));
            return Optional.empty();
        }
    }

    /** Return the place of the column that a correction means, where that column names a person. */
    static Optional<Integer> personColumn(String field) {
        boolean isPerson = field.equals(Columns.BY)
                || Optional.ofNullable(Form.columns().get(field))
                        .filter(known -> known.nature() == Nature.PERSON)
                        .isPresent();
        return isPerson ? Optional.of(COLUMNS.at(field)) : Optional.empty();
    }

    /** Put the number in place of a person's name. */
    private void putNumber(Row row, int place, int column) {
        if (!row.cell(place).isEmpty()) {
            Optional<PersonNumber> number = value(row, place, cell -> person(cell, column, row));
            row.replace(place, number.orElse(NOBODY).toString());
        }
    }

    /** Put the identity of a row in place of its line. */
    private void putTarget(Row row) {
        if (!row.cell(TARGET).isEmpty()) {
            Optional<EntryId> id = value(row, TARGET, this::target);
            row.replace(TARGET, id.orElse(NOTHING).toString());
        }
    }

    private EntryId target(String cell) {
        if (!cell.regionMatches(true, 0, LINE, 0, LINE.length())) {
            try {
                return EntryId.parse(cell);
            } catch (Refused none) {
                throw Refused.because(
                        "bad-target",
                        "expected an entry's identity of 36 characters, or a line of this file such as line:12, found \""
                                + cell + "\"");
            }
        }
        String digits = cell.substring(LINE.length()).strip();
        if (!digits.matches("[1-9]\\d{0,8}")) {
            throw Refused.because("bad-target", "expected a line of this file such as line:12, found \"" + cell + "\"");
        }
        long line = Long.parseLong(digits);
        int at = Arrays.binarySearch(lines, 0, rows, (int) line);
        if (at < 0) {
            List<String> near = new ArrayList<>();
            int after = -at - 1;
            if (after > 0) {
                near.add(LINE + lines[after - 1]);
            }
            if (after < rows) {
                near.add(LINE + lines[after]);
            }
            throw new Refused(Fault.of(
                            "bad-target",
                            "no row above this one begins in line " + line
                                    + "; an entry is amended below the row that tells it")
                    .nearest(near.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", near))));
        }
        return numbers[at] == 0 ? NOTHING : taker.id(numbers[at]);
    }

    private void checkUnused(EntryKind kind, Plan plan, Row row) {
        for (int n = 0; n < row.filled(); n++) {
            int place = row.filled(n);
            if (!plan.uses()[place]) {
                faults.add(
                        "unused-column",
                        sheet.where(row.line(), COLUMNS.names().get(place)),
                        sheet.position(place),
                        "must be empty, for " + kind.word() + " has no such column; it has "
                                + plan.form().fields().stream()
                                        .map(Form.Field::name)
                                        .collect(Collectors.joining(", ")));
            }
        }
    }

    private <T> Optional<T> required(Row row, int place, Function<String, T> parse) {
        if (row.cell(place).isEmpty()) {
            add("missing-value", row, place, "must not be empty", Optional.empty());
            return Optional.empty();
        }
        return value(row, place, parse);
    }

    private <T> Optional<T> value(Row row, int place, Function<String, T> parse) {
        String cell = row.cell(place);
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(parse.apply(cell));
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                String column = COLUMNS.names().get(place) + ": ";
                String text = fault.text();
                String told = text.startsWith(column) ? text.substring(column.length()) : text;
                add(fault.rule(), row, place, told, fault.nearest());
            }
            return Optional.empty();
        }
    }

    private void add(Fault fault, EntryKind kind, Row row) {
        String text = fault.text();
        int colon = text.indexOf(": ");
        OptionalInt place = colon < 0 ? OptionalInt.empty() : COLUMNS.place(text.substring(0, colon));
        if (place.isEmpty()) {
            faults.add(fault.rule(), sheet.where(row.line()), -1, text, fault.nearest());
            return;
        }
        boolean isMissing = row.cell(place.getAsInt()).isEmpty()
                && (fault.rule().equals("missing-value") || text.endsWith(", found 0"));
        if (isMissing) {
            addMissing(place.getAsInt(), kind, row);
        } else {
            add(fault.rule(), row, place.getAsInt(), text.substring(colon + 2), fault.nearest());
        }
    }

    /** Tell that a cell is empty; where there is no such column, once for each kind, if the header has not told it. */
    private void addMissing(int place, EntryKind kind, Row row) {
        String column = COLUMNS.names().get(place);
        if (sheet.has(column)) {
            add("missing-value", row, place, "must not be empty for " + kind.word(), Optional.empty());
        } else if (!sheet.isMisspelt(column) && missingColumns.add(kind.word() + " " + column)) {
            faults.add(
                    "missing-column",
                    sheet.where(sheet.headerLine(), column),
                    Integer.MAX_VALUE,
                    "the header has no such column; " + kind.word() + " in line " + row.line() + " must have it");
        }
    }

    private void add(String rule, Row row, int place, String text, Optional<String> nearest) {
        faults.add(rule, sheet.where(row.line(), COLUMNS.names().get(place)), sheet.position(place), text, nearest);
    }
}
