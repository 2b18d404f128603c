package ortet.sqlite;

import java.nio.ByteBuffer;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import ortet.book.CanonicalText;
import ortet.book.Chained;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.Progress;
import ortet.book.Ruling;
import ortet.book.UnitFacts;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Words;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.UnitNumber;
import ortet.value.Folded;
import ortet.value.When;

/**
 * Writes rulings, within the transaction that its connection is in.
 *
 * <p>What is derived of a unit is taken out whole and written anew, except for the entries that name it, of which there
 * can be many: there only the difference is written.
 */
final class Scribe {
    /** The tables of derived facts, all of which name the unit that a row belongs to. */
    private enum Table {
        UNIT("unit", "unit", "nature", "position", "day", "recorded_order"),
        TAG("tag", "unit", "position", "tag", "folded", "day", "recorded_order"),
        INVOLVEMENT("involvement", "unit", "recorded_order"),
        LINK("link", "child", "position", "act", "mother", "count", "day", "recorded_order"),
        NAMING("naming", "unit", "position", "cultivar", "is_true", "day", "recorded_order"),
        COHORT("cohort", "unit", "method", "by_person", "count", "root", "day", "recorded_order"),
        OUTCOME("outcome", "unit", "position", "fate", "count", "cause", "day", "recorded_order"),
        STANDING("standing", "unit", "position", "pending", "growing", "day", "recorded_order"),
        POTTING("potting", "unit", "position", "container", "day", "recorded_order"),
        STAY("stay", "unit", "position", "place", "day", "recorded_order"),
        LEAVING("leaving", "unit", "position", "reason", "count", "person", "day", "recorded_order");

        private final String word;
        private final String key;
        private final Insert insert;

        Table(String word, String... columns) {
            this.word = word;
            this.key = columns[0];
            this.insert = new Insert(word, columns);
        }

        String deleteOfUnit() {
            return "DELETE FROM " + word + " WHERE " + key + " = ?";
        }

        String deleteAll() {
            return "DELETE FROM " + word;
        }
    }

    /** From so many units on, an empty book is written without its secondary indexes, which are made at the end. */
    private static final int MANY = 1000;

    /** How many rows go into one statement. */
    private static final int AT_ONCE = 16;

    private static final String STEP = "writing";

    private static final Insert INSERT_ENTRY =
            new Insert("entry", "recorded_order", "id", "kind", "day", "by_person", "recorded_at", "fields", "digest");
    private static final String INSERT_AMENDMENT =
            "INSERT INTO amendment (target, amendment)" + " SELECT recorded_order, ? FROM entry WHERE id = ?";
    private static final String INSERT_PERSON =
            "INSERT INTO person (number, name, folded, role, particulars) VALUES (?, ?, ?, ?, ?)";
    private static final String UPDATE_PERSON =
            "UPDATE person SET name = ?, folded = ?, role = ?, particulars = ? WHERE number = ?";
    private static final String UPDATE_LAST_UNIT = "UPDATE book SET last_unit = ? WHERE last_unit IS NOT ?";
    private static final String INSERT_BOOK = "INSERT INTO book (one, id, zone, created) VALUES (1, ?, ?, ?)";
    private static final String UPDATE_BOOK = "UPDATE book SET id = ?, zone = ?";
    private static final String REBUILD_AMENDMENTS = "INSERT INTO amendment (target, amendment)"
            + " SELECT t.recorded_order, a.recorded_order FROM entry a"
            + " JOIN entry t ON t.id = unhex(json_extract(a.fields, '$.target'), '-')"
            + " WHERE a.kind IN ('corrected', 'crossed-out')";

    private static final String ENTRY_INDEXES =
            "tbl_name = 'entry' AND (type = 'index' OR name = 'entry_is_written_once')";
    private static final String ENTRY_LOAD = "(tbl_name = 'entry' AND (type = 'index'"
            + " OR name IN ('entry_is_written_once', 'entry_follows_the_last')) OR name = 'book_keeps_its_identity')";
    private static final String DERIVED_INDEXES = "type = 'index' AND tbl_name IN ("
            + Arrays.stream(Table.values()).map(table -> "'" + table.word + "'").collect(Collectors.joining(", "))
            + ")";

    private final Session session;
    private final List<String> madeAgain = new ArrayList<>();
    private final Map<Table, Batch> loadedFacts = new EnumMap<>(Table.class);
    private Optional<Batch> loadedEntries = Optional.empty();
    private boolean amendmentsLoaded;
    private Instant lastInstant = Instant.MIN;
    private String lastInstantText = "";

    Scribe(Session session) {
        this.session = session;
    }

    /** Write the first row of a new book. */
    void begin(UUID bookId, String zone, String created) throws SQLException {
        PreparedStatement insert = session.write(INSERT_BOOK);
        insert.setString(1, bookId.toString());
        insert.setString(2, zone);
        insert.setString(3, created);
        insert.executeUpdate();
    }

    /** Give an empty book the identity of another. */
    void become(Head head) throws SQLException {
        PreparedStatement update = session.write(UPDATE_BOOK);
        update.setString(1, head.bookId().toString());
        update.setString(2, head.zone().getId());
        update.executeUpdate();
    }

    /** Write a ruling into a book that stood at {@code before}. */
    void write(Ruling ruling, Head before, Progress progress) throws SQLException {
        Steps steps = new Steps(progress, rows(ruling));
        List<Person> persons = ruling.persons();
        for (Person person : persons) {
            insert(person);
        }
        boolean manyAtOnce = before.order() == 0 && ruling.entries().size() >= MANY;
        List<String> entryIndexes = manyAtOnce ? setAside(ENTRY_INDEXES) : List.of();
        List<String> indexes = manyAtOnce ? setAside(DERIVED_INDEXES) : List.of();
        entries(ruling.entries(), steps);
        create(entryIndexes);
        amendments(ruling.entries());
        replace(ruling.facts(), ruling.vanished(), before.lastUnit(), steps);
        create(indexes);
        lastUnit(ruling.head());
        steps.finish();
    }

    private static long rows(Ruling ruling) {
        return ruling.entries().size()
                + Table.values().length * (long) ruling.facts().size();
    }

    /** Make ready to write a whole book into one that has no entries, row by row, without what slows that down. */
    void beginLoad() throws SQLException {
        madeAgain.addAll(setAside(ENTRY_LOAD));
        madeAgain.addAll(setAside(DERIVED_INDEXES));
        loadedEntries = Optional.of(new Batch(INSERT_ENTRY));
        for (Table table : Table.values()) {
            loadedFacts.put(table, new Batch(table.insert));
        }
    }

    /** Write an entry whose fields are known as canonical text. */
    void load(Chained chained, String fields) throws SQLException {
        entry(loadedEntries.orElseThrow(), chained, fields);
        target(chained.recorded().entry()).ifPresent(target -> amendmentsLoaded = true);
    }

    /** Write the facts of a unit of which nothing is written yet. */
    void load(UnitFacts facts) throws SQLException {
        for (Map.Entry<Table, Batch> batch : loadedFacts.entrySet()) {
            rows(batch.getKey(), batch.getValue(), facts);
        }
    }

    /** Write what is left, and make again what was set aside. */
    void endLoad(List<Person> persons, Head head, Progress progress) throws SQLException {
        for (Person person : persons) {
            insert(person);
        }
        loadedEntries.orElseThrow().finish();
        for (Batch batch : loadedFacts.values()) {
            batch.finish();
        }
        int done = 0;
        for (String statement : madeAgain) {
            progress.at("making indexes", done++, madeAgain.size());
            session.run(statement);
        }
        if (amendmentsLoaded) {
            session.run(REBUILD_AMENDMENTS);
        }
        lastUnit(head);
        progress.at("making indexes", done, madeAgain.size());
    }

    /** Make ready to write anew what is derived, row by row. */
    void beginRewrite() throws SQLException {
        madeAgain.addAll(setAside(DERIVED_INDEXES));
        for (Table table : Table.values()) {
            session.run(table.deleteAll());
            loadedFacts.put(table, new Batch(table.insert));
        }
        session.run("DELETE FROM amendment");
        session.run(REBUILD_AMENDMENTS);
    }

    /** Write what is left of what is derived. */
    void endRewrite(Head head, Progress progress) throws SQLException {
        loadedEntries = Optional.of(new Batch(INSERT_ENTRY));
        endLoad(List.of(), head, progress);
    }

    private void lastUnit(Head head) throws SQLException {
        PreparedStatement update = session.write(UPDATE_LAST_UNIT);
        update.setInt(1, head.lastUnit());
        update.setInt(2, head.lastUnit());
        update.executeUpdate();
    }

    /**
     * Drop what SQLite would have to keep up to date or look into for every row, and return what makes it again.
     *
     * <p>In a book that was empty, the unique index over the identities of entries makes the check that its trigger makes
     * otherwise, at one go, before the transaction ends.
     */
    private List<String> setAside(String which) throws SQLException {
        String found = " FROM sqlite_schema WHERE sql IS NOT NULL AND " + which + " ORDER BY type, name";
        List<String> drops = session.texts("SELECT 'DROP ' || type || ' ' || name" + found);
        List<String> statements = session.texts("SELECT sql" + found);
        for (String drop : drops) {
            session.run(drop);
        }
        return statements;
    }

    private void create(List<String> indexes) throws SQLException {
        for (String index : indexes) {
            session.run(index);
        }
    }

    private void insert(Person person) throws SQLException {
        PreparedStatement insert = session.write(INSERT_PERSON);
        insert.setInt(1, person.number().value());
        text(insert, 2, person.name());
        text(insert, 3, person.name().map(Folded::of));
        insert.setString(4, Words.of(person.role()));
        text(insert, 5, person.particulars());
        insert.executeUpdate();
    }

    /** Write a person's particulars over those that were kept before. */
    void keep(Person person) throws SQLException {
        PreparedStatement update = session.write(UPDATE_PERSON);
        text(update, 1, person.name());
        text(update, 2, person.name().map(Folded::of));
        update.setString(3, Words.of(person.role()));
        text(update, 4, person.particulars());
        update.setInt(5, person.number().value());
        update.executeUpdate();
    }

    private void entries(List<Chained> entries, Steps steps) throws SQLException {
        Batch batch = new Batch(INSERT_ENTRY);
        for (Chained chained : entries) {
            entry(batch, chained, CanonicalText.fields(chained.recorded().entry()));
            steps.done();
        }
        batch.finish();
    }

    private void entry(Batch batch, Chained chained, String fields) throws SQLException {
        Recorded recorded = chained.recorded();
        Proposed proposed = recorded.proposed();
        batch.put(recorded.order())
                .put(bytes(proposed.id()))
                .put(recorded.entry().kind().word())
                .put(proposed.day())
                .person(proposed.by())
                .put(instant(recorded.recordedAt()))
                .put(fields)
                .put(chained.digest().bytes())
                .add();
    }

    private String instant(Instant at) {
        if (!at.equals(lastInstant)) {
            lastInstant = at;
            lastInstantText = CanonicalText.INSTANT.format(at);
        }
        return lastInstantText;
    }

    private void amendments(List<Chained> entries) throws SQLException {
        PreparedStatement insert = session.write(INSERT_AMENDMENT);
        for (Chained chained : entries) {
            Optional<EntryId> target = target(chained.recorded().entry());
            if (target.isPresent()) {
                insert.setLong(1, chained.recorded().order());
                insert.setBytes(2, bytes(target.get()));
                insert.executeUpdate();
            }
        }
    }

    private static Optional<EntryId> target(Entry entry) {
        if (entry instanceof Corrected corrected) {
            return Optional.of(corrected.target());
        }
        return entry instanceof CrossedOut crossedOut ? Optional.of(crossedOut.target()) : Optional.empty();
    }

    private static byte[] bytes(EntryId id) {
        return ByteBuffer.allocate(2 * Long.BYTES)
                .putLong(id.value().getMostSignificantBits())
                .putLong(id.value().getLeastSignificantBits())
                .array();
    }

    private void replace(List<UnitFacts> facts, List<UnitNumber> vanished, int lastUnit, Steps steps)
            throws SQLException {
        List<UnitFacts> sorted = new ArrayList<>(facts);
        sorted.sort(Comparator.comparing(UnitFacts::unit));
        for (Table table : Table.values()) {
            PreparedStatement delete = session.write(table.deleteOfUnit());
            for (UnitNumber unit : vanished) {
                delete(delete, unit);
            }
            if (table != Table.INVOLVEMENT) {
                for (UnitFacts unit : sorted) {
                    if (unit.unit().value() <= lastUnit) {
                        delete(delete, unit.unit());
                    }
                }
            }
        }
        for (Table table : Table.values()) {
            Batch batch = new Batch(table.insert);
            for (UnitFacts unit : sorted) {
                if (table == Table.INVOLVEMENT && unit.unit().value() <= lastUnit) {
                    difference(batch, unit);
                } else {
                    rows(table, batch, unit);
                }
                steps.done();
            }
            batch.finish();
        }
    }

    private static void delete(PreparedStatement delete, UnitNumber unit) throws SQLException {
        delete.setInt(1, unit.value());
        delete.executeUpdate();
    }

    /** Write which entries name a unit, where some of it is written already. */
    private void difference(Batch batch, UnitFacts unit) throws SQLException {
        List<Long> missing = new ArrayList<>(unit.entries());
        List<Long> kept = session.list(
                Question.named("involvements-of-unit"),
                row -> row.getLong(1),
                unit.unit().value());
        Set<Long> known = new HashSet<>(kept);
        missing.removeIf(known::remove);
        if (!known.isEmpty()) {
            PreparedStatement delete = session.write("DELETE FROM involvement WHERE unit = ? AND recorded_order = ?");
            for (long gone : known) {
                delete.setInt(1, unit.unit().value());
                delete.setLong(2, gone);
                delete.executeUpdate();
            }
        }
        for (long order : missing) {
            batch.put(unit.unit().value()).put(order).add();
        }
    }

    private static void rows(Table table, Batch batch, UnitFacts facts) throws SQLException {
        int unit = facts.unit().value();
        int position = 0;
        switch (table) {
            case UNIT ->
                batch.put(unit)
                        .put(Words.of(facts.nature()))
                        .put(facts.begun().position())
                        .put(facts.begun().day())
                        .put(facts.begun().order())
                        .add();
            case TAG -> {
                for (UnitFacts.TagUse use : facts.tags()) {
                    batch.put(unit)
                            .put(position++)
                            .put(use.tag().text())
                            .put(Folded.of(use.tag().text()))
                            .put(use.day())
                            .put(use.order())
                            .add();
                }
            }
            case INVOLVEMENT -> {
                for (long order : facts.entries()) {
                    batch.put(unit).put(order).add();
                }
            }
            case LINK -> {
                for (Link link : facts.links()) {
                    batch.put(unit)
                            .put(position++)
                            .put(link.act().name())
                            .put(link.mother().value())
                            .whole(link.count())
                            .put(link.day())
                            .put(link.order())
                            .add();
                }
            }
            case NAMING -> {
                for (UnitFacts.Naming naming : facts.names()) {
                    batch.put(unit)
                            .put(position++)
                            .put(naming.cultivar().toString())
                            .put(naming.isTrue() ? 1 : 0)
                            .put(naming.day())
                            .put(naming.order())
                            .add();
                }
            }
            case COHORT -> {
                if (facts.cohort().isPresent()) {
                    UnitFacts.Cohort cohort = facts.cohort().get();
                    batch.put(unit)
                            .put(Words.of(cohort.method()))
                            .person(cohort.by())
                            .whole(cohort.count())
                            .put(cohort.root().value())
                            .put(cohort.day())
                            .put(cohort.order())
                            .add();
                }
            }
            case OUTCOME -> {
                for (UnitFacts.Outcome outcome : facts.outcomes()) {
                    batch.put(unit)
                            .put(position++)
                            .put(Words.of(outcome.fate()))
                            .put(outcome.count())
                            .words(outcome.cause().map(Words::of))
                            .put(outcome.day())
                            .put(outcome.order())
                            .add();
                }
            }
            case STANDING -> {
                for (UnitFacts.Standing standing : facts.standings()) {
                    batch.put(unit)
                            .put(position++)
                            .whole(standing.pending())
                            .put(standing.growing())
                            .put(standing.day())
                            .put(standing.order())
                            .add();
                }
            }
            case POTTING -> {
                for (UnitFacts.Potting potting : facts.pottings()) {
                    batch.put(unit)
                            .put(position++)
                            .words(potting.container())
                            .put(potting.day())
                            .put(potting.order())
                            .add();
                }
            }
            case STAY -> {
                for (UnitFacts.Stay stay : facts.stays()) {
                    batch.put(unit)
                            .put(position++)
                            .put(stay.place().name())
                            .put(stay.day())
                            .put(stay.order())
                            .add();
                }
            }
            case LEAVING -> {
                for (UnitFacts.Leaving leaving : facts.leavings()) {
                    batch.put(unit)
                            .put(position++)
                            .put(Words.of(leaving.reason()))
                            .put(leaving.count())
                            .person(leaving.person())
                            .put(leaving.day())
                            .put(leaving.order())
                            .add();
                }
            }
        }
    }

    private static void text(PreparedStatement statement, int at, Optional<String> value) throws SQLException {
        if (value.isPresent()) {
            statement.setString(at, value.get());
        } else {
            statement.setNull(at, Types.VARCHAR);
        }
    }

    /** Counts what is written, and tells now and then. */
    private static final class Steps {
        private static final int SHOWN_EVERY = 4096;
        private final Progress progress;
        private final long total;
        private long done;

        Steps(Progress progress, long total) {
            this.progress = progress;
            this.total = total;
        }

        void done() {
            if (++done % SHOWN_EVERY == 0) {
                progress.at(STEP, done, total);
            }
        }

        void finish() {
            progress.at(STEP, total, total);
        }
    }

    /** Rows on their way into a table, written several with one statement. */
    private final class Batch {
        private final Insert insert;
        private final Object[] values;
        private int at;

        Batch(Insert insert) {
            this.insert = insert;
            this.values = new Object[insert.width() * AT_ONCE];
        }

        Batch put(long value) {
            values[at++] = value;
            return this;
        }

        Batch put(int value) {
            values[at++] = value;
            return this;
        }

        Batch put(String value) {
            values[at++] = value;
            return this;
        }

        Batch put(byte[] value) {
            values[at++] = value;
            return this;
        }

        Batch put(When day) {
            return put(day.toString());
        }

        Batch words(Optional<String> value) {
            values[at++] = value.orElse(null);
            return this;
        }

        Batch whole(Optional<Integer> value) {
            values[at++] = value.orElse(null);
            return this;
        }

        Batch person(Optional<PersonNumber> person) {
            return whole(person.map(PersonNumber::value));
        }

        /** End a row. */
        void add() throws SQLException {
            if (at == values.length) {
                write(insert.ofRows(AT_ONCE), 0, at);
                at = 0;
            }
        }

        /** Write what is left. */
        void finish() throws SQLException {
            for (int from = 0; from < at; from += insert.width()) {
                write(insert.ofRows(1), from, insert.width());
            }
            at = 0;
        }

        private void write(String sql, int from, int count) throws SQLException {
            PreparedStatement statement = session.write(sql);
            for (int column = 0; column < count; column++) {
                statement.setObject(column + 1, values[from + column]);
            }
            statement.executeUpdate();
        }
    }

    /**
     * What writes rows into a table.
     *
     * @param one the statement for one row
     * @param several the statement for several rows
     * @param width how many columns
     */
    private record Insert(String one, String several, int width) {
        Insert(String table, String... columns) {
            this(statement(table, columns, 1), statement(table, columns, AT_ONCE), columns.length);
        }

        private static String statement(String table, String[] columns, int rows) {
            String row = "(?" + ", ?".repeat(columns.length - 1) + ")";
            return "INSERT INTO " + table + " (" + String.join(", ", columns) + ") VALUES " + row
                    + (", " + row).repeat(rows - 1);
        }

        String ofRows(int rows) {
            return rows == 1 ? one : several;
        }
    }
}
