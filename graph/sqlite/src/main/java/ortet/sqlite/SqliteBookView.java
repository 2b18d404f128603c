package ortet.sqlite;

import java.nio.ByteBuffer;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Digest;
import ortet.book.Direction;
import ortet.book.Family;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.NearTags;
import ortet.book.NumberSink;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.entry.Cause;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Words;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.Folded;
import ortet.value.Require;
import ortet.value.When;

/** A view of the book on one connection, within one transaction of it; for the thread that was handed it. */
final class SqliteBookView implements BookView, AutoCloseable {
    private static final Question HEAD = Question.named("head");
    private static final Comparator<Link> LINKS = Comparator.comparing(Link::child)
            .thenComparingLong(Link::order)
            .thenComparing(Link::act)
            .thenComparing(Link::mother);

    private final Session session;
    private final Head head;
    private final List<Stream<Chained>> streams = new ArrayList<>();
    private boolean closed;

    /** Look at the book as the connection's transaction sees it. */
    SqliteBookView(Session session) {
        this.session = session;
        this.head = one(HEAD, SqliteBookView::head).orElseThrow(() -> Trouble.damaged(session.file(), null));
    }

    private static Head head(ResultSet row) throws SQLException {
        byte[] digest = row.getBytes(4);
        return new Head(
                UUID.fromString(row.getString(1)),
                ZoneId.of(row.getString(2)),
                row.getLong(3),
                digest == null ? Chain.START : Digest.of(digest),
                row.getInt(5));
    }

    @Override
    public Head head() {
        open();
        return head;
    }

    /** Tell whether nothing was ever written, so that nothing need be looked for. */
    private boolean isBlank() {
        open();
        return head.order() == 0;
    }

    @Override
    public Optional<UnitNumber> unit(Tag tag) {
        return isBlank()
                ? Optional.empty()
                : one(Question.named("unit-by-tag"), row -> new UnitNumber(row.getInt(1)), tag.text());
    }

    @Override
    public Optional<Tag> alikeButForCase(Tag tag) {
        return isBlank()
                ? Optional.empty()
                : one(Question.named("tag-by-folded"), row -> new Tag(row.getString(1)), Folded.of(tag.text()))
                        .filter(alike -> !alike.equals(tag));
    }

    @Override
    public List<String> nearest(Tag tag) {
        if (isBlank()) {
            return List.of();
        }
        Question next = Question.named("tag-after");
        return new NearTags(
                        after -> one(next, row -> new NearTags.Candidate(row.getString(1), row.getString(2)), after))
                .near(tag.text());
    }

    @Override
    public List<Tag> tagsFrom(String text, int most) {
        Require.atLeast(1, most, "most");
        return many("tags-from", row -> new Tag(row.getString(1)), Folded.of(text), most);
    }

    @Override
    public List<Tag> tags(UnitNumber unit) {
        return many("tags-of-unit", row -> new Tag(row.getString(1)), unit.value());
    }

    @Override
    public Optional<Recorded> entry(EntryId id) {
        return isBlank()
                ? Optional.empty()
                : one(Question.named("entry-by-id"), SqliteBookView::recorded, id.toString());
    }

    @Override
    public Optional<Recorded> entry(long order) {
        return one(Question.named("entry-by-order"), SqliteBookView::recorded, order);
    }

    @Override
    public List<Recorded> amendments(long order) {
        return many("amendments-of", SqliteBookView::recorded, order);
    }

    @Override
    public List<Recorded> entries(UnitNumber unit) {
        return many("entries-of-unit", SqliteBookView::recorded, unit.value());
    }

    private static Recorded recorded(ResultSet row) throws SQLException {
        EntryKind kind = word(EntryKind.class, row.getString(3));
        return new Recorded(
                row.getLong(1),
                CanonicalText.INSTANT.parse(row.getString(6), Instant::from),
                new Proposed(
                        new EntryId(uuid(row.getBytes(2))),
                        When.parse(row.getString(4)),
                        whole(row, 5).map(PersonNumber::new),
                        CanonicalText.read(kind, row.getString(7))));
    }

    private static UUID uuid(byte[] bytes) {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        return new UUID(buffer.getLong(), buffer.getLong());
    }

    private static Optional<Integer> whole(ResultSet row, int column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? Optional.empty() : Optional.of(value);
    }

    private static <E extends Enum<E>> E word(Class<E> choices, String word) {
        return Words.parse(choices, word);
    }

    @Override
    public Optional<UnitFacts> facts(UnitNumber unit) {
        record Begin(UnitFacts.Nature nature, UnitFacts.Begun begun) {}
        int number = unit.value();
        Optional<Begin> begin = one(
                Question.named("unit"),
                row -> new Begin(
                        word(UnitFacts.Nature.class, row.getString(2)),
                        new UnitFacts.Begun(row.getLong(5), row.getInt(3), When.parse(row.getString(4)))),
                number);
        return begin.map(start -> new UnitFacts(
                unit,
                start.nature(),
                start.begun(),
                many(
                        "tags-of-unit",
                        row -> new UnitFacts.TagUse(
                                new Tag(row.getString(1)), When.parse(row.getString(2)), row.getLong(3)),
                        number),
                many("involvements-of-unit", row -> row.getLong(1), number),
                many("links-of-unit", SqliteBookView::link, number),
                many(
                        "namings-of-unit",
                        row -> new UnitFacts.Naming(
                                CultivarName.parse(row.getString(1)),
                                row.getInt(2) != 0,
                                When.parse(row.getString(3)),
                                row.getLong(4)),
                        number),
                one(
                        Question.named("cohort-of-unit"),
                        row -> new UnitFacts.Cohort(
                                word(UnitFacts.Method.class, row.getString(1)),
                                When.parse(row.getString(2)),
                                row.getLong(3),
                                whole(row, 4).map(PersonNumber::new),
                                whole(row, 5),
                                new UnitNumber(row.getInt(6))),
                        number),
                many(
                        "outcomes-of-unit",
                        row -> new UnitFacts.Outcome(
                                word(UnitFacts.Fate.class, row.getString(1)),
                                row.getInt(2),
                                Optional.ofNullable(row.getString(3)).map(cause -> word(Cause.class, cause)),
                                When.parse(row.getString(4)),
                                row.getLong(5)),
                        number),
                many(
                        "standings-of-unit",
                        row -> new UnitFacts.Standing(
                                whole(row, 1), row.getInt(2), When.parse(row.getString(3)), row.getLong(4)),
                        number),
                many(
                        "pottings-of-unit",
                        row -> new UnitFacts.Potting(
                                Optional.ofNullable(row.getString(1)), When.parse(row.getString(2)), row.getLong(3)),
                        number),
                many(
                        "stays-of-unit",
                        row -> new UnitFacts.Stay(
                                new Place(row.getString(1)), When.parse(row.getString(2)), row.getLong(3)),
                        number),
                many(
                        "leavings-of-unit",
                        row -> new UnitFacts.Leaving(
                                word(UnitFacts.Reason.class, row.getString(1)),
                                row.getInt(2),
                                whole(row, 3).map(PersonNumber::new),
                                When.parse(row.getString(4)),
                                row.getLong(5)),
                        number)));
    }

    private static Link link(ResultSet row) throws SQLException {
        return new Link(
                new UnitNumber(row.getInt(1)),
                new UnitNumber(row.getInt(2)),
                word(Act.class, row.getString(3)),
                When.parse(row.getString(4)),
                row.getLong(5),
                whole(row, 6));
    }

    @Override
    public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
        return many("offspring", SqliteBookView::link, unit.value()).stream()
                .filter(link -> acts.contains(link.act()))
                .sorted(LINKS)
                .toList();
    }

    @Override
    public Family family(UnitNumber unit, Direction way, int most) {
        Require.atLeast(1, most, "most");
        boolean down = way == Direction.DOWN;
        List<Link> links =
                many(down ? "descendant-links" : "ancestor-links", SqliteBookView::link, unit.value(), most).stream()
                        .sorted(LINKS)
                        .toList();
        Set<UnitNumber> found = new TreeSet<>();
        links.forEach(link -> found.add(down ? link.child() : link.mother()));
        found.remove(unit);
        List<UnitNumber> units = new ArrayList<>();
        units.add(unit);
        units.addAll(found);
        boolean whole = units.size() < most
                || many(down ? "descendants" : "ancestors", row -> row.getInt(1), unit.value(), most + 1L)
                                .size()
                        <= most;
        return new Family(units, links, whole);
    }

    @Override
    public List<Recorded> listings() {
        return many("listings", SqliteBookView::recorded);
    }

    @Override
    public List<Recorded> tariff() {
        return many("tariff", SqliteBookView::recorded);
    }

    @Override
    public Collection<Person> persons() {
        return many("persons", SqliteBookView::person);
    }

    @Override
    public Optional<Person> person(String name) {
        return one(
                Question.named("person-by-folded"),
                SqliteBookView::person,
                Folded.of(Require.text(Optional.of(name), "name").orElse("")));
    }

    @Override
    public Optional<Person> person(PersonNumber number) {
        return one(Question.named("person-by-number"), SqliteBookView::person, number.value());
    }

    private static Person person(ResultSet row) throws SQLException {
        return new Person(
                new PersonNumber(row.getInt(1)),
                Optional.ofNullable(row.getString(2)),
                word(Person.Role.class, row.getString(3)),
                Optional.ofNullable(row.getString(4)));
    }

    @Override
    public Stream<Chained> since(long order) {
        open();
        Question question = Question.named("entries-since");
        try {
            PreparedStatement statement = session.prepare(question);
            Session.bind(statement, question, order);
            ResultSet rows = statement.executeQuery();
            Stream<Chained> stream = StreamSupport.stream(new Entries(rows), false)
                    .onClose(() -> {
                        try {
                            rows.close();
                            statement.close();
                        } catch (SQLException trouble) {
                            throw Trouble.with(session.file(), trouble);
                        }
                    });
            streams.add(stream);
            return stream;
        } catch (SQLException trouble) {
            throw Trouble.with(session.file(), trouble);
        }
    }

    private final class Entries extends Spliterators.AbstractSpliterator<Chained> {
        private final ResultSet rows;

        Entries(ResultSet rows) {
            super(Long.MAX_VALUE, Spliterator.ORDERED | Spliterator.DISTINCT | Spliterator.NONNULL);
            this.rows = rows;
        }

        @Override
        public boolean tryAdvance(Consumer<? super Chained> action) {
            open();
            try {
                if (!rows.next()) {
                    return false;
                }
                action.accept(session.read(row -> new Chained(recorded(row), Digest.of(row.getBytes(8))), rows));
                return true;
            } catch (SQLException trouble) {
                throw Trouble.with(session.file(), trouble);
            }
        }
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        Question question = Question.named(name);
        question.check(parameters.values().keySet());
        return new Rows(question.out(), many(question, row -> row(question, row), values(question, parameters)));
    }

    private static Object[] values(Question question, Parameters parameters) {
        return question.in().stream()
                .map(wanted -> parameters.values().get(wanted).orElse(null))
                .toArray();
    }

    private static List<Object> row(Question question, ResultSet row) throws SQLException {
        List<Object> list = new ArrayList<>(question.out().size());
        for (int at = 1; at <= question.out().size(); at++) {
            list.add(plain(row.getObject(at)));
        }
        return Collections.unmodifiableList(list);
    }

    /** Put a question, and take in so many rows of the answer. */
    Rows ask(Question question, Parameters parameters, int most) {
        open();
        List<List<Object>> rows = new ArrayList<>();
        try (PreparedStatement statement = session.prepare(question)) {
            Session.bind(statement, question, values(question, parameters));
            try (ResultSet found = statement.executeQuery()) {
                while (rows.size() < most && found.next()) {
                    rows.add(row(question, found));
                }
            }
            return new Rows(question.out(), rows);
        } catch (SQLException trouble) {
            throw Trouble.isOfTheQuestion(trouble) && !question.text().isOurs()
                    ? question.text().wrong("cannot be put: " + Trouble.firstLine(trouble))
                    : Trouble.with(session.file(), trouble);
        }
    }

    @Override
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        open();
        Question question = Question.named(name);
        question.check(parameters.values().keySet());
        Object[] values = question.in().stream()
                .map(wanted -> parameters.values().get(wanted).orElse(null))
                .toArray();
        try {
            session.stream(question, sink, values);
        } catch (SQLException trouble) {
            throw Trouble.with(session.file(), trouble);
        }
    }

    private static Object plain(Object value) {
        if (value instanceof Integer whole) {
            return whole.longValue();
        }
        if (value instanceof byte[] bytes) {
            return bytes.length == 2 * Long.BYTES
                    ? uuid(bytes).toString()
                    : HexFormat.of().formatHex(bytes);
        }
        return value;
    }

    private void open() {
        if (closed) {
            throw new Defect("a view of the book was used after the question that it was handed to");
        }
    }

    private <T> Optional<T> one(Question question, Session.Reader<T> reader, Object... values) {
        open();
        try {
            return session.first(question, reader, values);
        } catch (SQLException trouble) {
            throw Trouble.with(session.file(), trouble);
        }
    }

    private <T> List<T> many(String question, Session.Reader<T> reader, Object... values) {
        return many(Question.named(question), reader, values);
    }

    private <T> List<T> many(Question question, Session.Reader<T> reader, Object... values) {
        open();
        try {
            return session.list(question, reader, values);
        } catch (SQLException trouble) {
            throw Trouble.with(session.file(), trouble);
        }
    }

    /** End the view, and whatever is still being read through it. */
    @Override
    public void close() {
        closed = true;
        streams.forEach(Stream::close);
    }
}
