package ortet.neo4j;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.neo4j.driver.Record;
import org.neo4j.driver.Result;
import org.neo4j.driver.Transaction;
import org.neo4j.driver.Value;
import org.neo4j.driver.Values;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.CanonicalText;
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
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.When;

/**
 * A view of the book within one transaction; for the thread that was handed it.
 *
 * <p>What was read once is not asked for again: the server is a walk away, and the book does not change while it is
 * looked at.
 */
final class Neo4jBookView implements BookView {
    private static final int TAGS_AT_ONCE = 128;
    private static final int FACTS_AHEAD = 256;
    private static final String ADDED = "added";
    private static final Comparator<Link> LINKS = Comparator.comparing(Link::child)
            .thenComparingLong(Link::order)
            .thenComparing(Link::act)
            .thenComparing(Link::mother);

    private static final String TAGS_AFTER = "MATCH (t:Tag) WHERE t.folded > $folded"
            + " RETURN t.folded AS folded, t.tag AS tag ORDER BY t.folded LIMIT " + TAGS_AT_ONCE;

    private static final String FACTS = "UNWIND $units AS number MATCH (u:Unit {unit: number})"
            + " WHERE u.nature IS NOT NULL RETURN u.unit, u.nature, u.position, u.day, u.recorded_order,"
            + " u.method, u.set_day, u.set_order, u.by_person, u.count, u.root,"
            + list("(u)-[:BEARS]->(x:Tag)", "x.tag", "x.position")
            + ", COLLECT { MATCH (e:Entry)-[:NAMES]->(u) RETURN e.recorded_order ORDER BY e.recorded_order },"
            + " COLLECT { MATCH (u)-[x:" + acts() + "]->(m:Unit)"
            + " RETURN [u.unit, m.unit, type(x), x.day, x.recorded_order, x.count] ORDER BY x.position },"
            + list("(u)-[x:NAMED]->(c:Cultivar)", "c.cultivar, x.is_true", "x.position")
            + ","
            + list("(u)-[:CAME_OUT]->(x:Outcome)", "x.fate, x.count, x.cause", "x.position")
            + ","
            + list("(u)-[:STOOD]->(x:Standing)", "x.pending, x.growing", "x.position")
            + ","
            + list("(u)-[:POTTED]->(x:Potting)", "x.container", "x.position")
            + ","
            + list("(u)-[x:STOOD_AT]->(p:Place)", "p.place", "x.position")
            + ","
            + list("(u)-[:LEFT]->(x:Leaving)", "x.reason, x.count, x.person", "x.position");

    private final Transaction transaction;
    private final Head head;
    private final Map<Integer, Optional<UnitFacts>> facts = new HashMap<>();
    private final Set<Integer> kin = new LinkedHashSet<>();
    private final Map<Long, Recorded> entries = new HashMap<>();
    private int lastFacts;
    private boolean leansOnFacts;
    private boolean closed;

    /** Look at the book as a transaction sees it. */
    Neo4jBookView(Transaction transaction, Head head) {
        this.transaction = transaction;
        this.head = head;
    }

    private static String list(String pattern, String values, String order) {
        return " COLLECT { MATCH " + pattern + " RETURN [" + values + ", x.day, x.recorded_order] ORDER BY " + order
                + " }";
    }

    /** Return every kind of link, as a pattern has them. */
    static String acts() {
        return Stream.of(Act.values()).map(Act::name).collect(Collectors.joining("|"));
    }

    /** Tell whether anything was asked that somebody who wrote meanwhile may have changed. */
    boolean leansOnFacts() {
        return leansOnFacts;
    }

    /** End the view. */
    void close() {
        closed = true;
    }

    private void open() {
        if (closed) {
            throw new Defect("a view of the book was used after the question that it was handed to");
        }
    }

    private boolean isBlank() {
        open();
        return head.order() == 0;
    }

    private List<Record> rows(String cypher, Object... parameters) {
        open();
        return transaction.run(cypher, Values.parameters(parameters)).list();
    }

    private List<Record> rows(String question, Map<String, Object> parameters) {
        open();
        return transaction
                .run(Question.named(new QueryName(question)).text().text(), parameters)
                .list();
    }

    private <T> List<T> many(String question, Function<Record, T> reader, Map<String, Object> parameters) {
        leansOnFacts = true;
        return rows(question, parameters).stream().map(row -> read(reader, row)).toList();
    }

    private <T> Optional<T> one(String question, Function<Record, T> reader, Map<String, Object> parameters) {
        leansOnFacts = true;
        return rows(question, parameters).stream().findFirst().map(row -> read(reader, row));
    }

    /** Read a row; words that ortet would never have written mean that the book is damaged. */
    private static <T> T read(Function<Record, T> reader, Record row) {
        try {
            return reader.apply(row);
        } catch (Refused nonsense) {
            throw new Nonsense(nonsense);
        }
    }

    /** Says that something in the book was not written by ortet. */
    static final class Nonsense extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Nonsense(Refused cause) {
            super(cause);
        }
    }

    @Override
    public Head head() {
        open();
        return head;
    }

    @Override
    public Optional<UnitNumber> unit(Tag tag) {
        return isBlank()
                ? Optional.empty()
                : one("unit-by-tag", row -> new UnitNumber(row.get(0).asInt()), Map.of("tag", tag.text()));
    }

    @Override
    public Optional<Tag> alikeButForCase(Tag tag) {
        return isBlank()
                ? Optional.empty()
                : one("tag-by-folded", row -> new Tag(row.get(0).asString()), Map.of("folded", Folded.of(tag.text())))
                        .filter(alike -> !alike.equals(tag));
    }

    @Override
    public List<String> nearest(Tag tag) {
        if (isBlank()) {
            return List.of();
        }
        leansOnFacts = true;
        TreeMap<String, String> known = new TreeMap<>(Neo4jBookView::byCodePoints);
        Map<String, String> upTo = new HashMap<>();
        Set<String> last = new HashSet<>();
        return new NearTags(after -> tagAfter(after, known, upTo, last)).near(tag.text());
    }

    /** Return the first tag after a text, out of those that were fetched with another where they reach so far. */
    private Optional<NearTags.Candidate> tagAfter(
            String after, TreeMap<String, String> known, Map<String, String> upTo, Set<String> last) {
        Map.Entry<String, String> found = known.higherEntry(after);
        Map.Entry<String, String> before = known.floorEntry(after);
        boolean isWithin = found != null
                && before != null
                && upTo.containsKey(before.getKey())
                && byCodePoints(found.getKey(), upTo.get(before.getKey())) <= 0;
        boolean isPastAll = found == null && before != null && last.contains(before.getKey());
        if (!isWithin && !isPastAll) {
            List<Record> rows = rows(TAGS_AFTER, "folded", after);
            String end = rows.isEmpty() ? "" : rows.get(rows.size() - 1).get(0).asString();
            for (Record row : rows) {
                String folded = row.get(0).asString();
                known.put(folded, row.get(1).asString());
                upTo.put(folded, end);
                if (rows.size() < TAGS_AT_ONCE) {
                    last.add(folded);
                }
            }
            found = rows.isEmpty() ? null : known.higherEntry(after);
        }
        return Optional.ofNullable(found).map(entry -> new NearTags.Candidate(entry.getKey(), entry.getValue()));
    }

    private static int byCodePoints(String one, String other) {
        int length = Math.min(one.length(), other.length());
        for (int at = 0; at < length; at++) {
            char a = one.charAt(at);
            char b = other.charAt(at);
            if (a != b) {
                boolean aPair = Character.isSurrogate(a);
                boolean bPair = Character.isSurrogate(b);
                return aPair == bPair ? Character.compare(a, b) : aPair ? 1 : -1;
            }
        }
        return Integer.compare(one.length(), other.length());
    }

    @Override
    public List<Tag> tagsFrom(String text, int most) {
        Require.atLeast(1, most, "most");
        return many(
                "tags-from", row -> new Tag(row.get(0).asString()), Map.of("folded", Folded.of(text), "most", most));
    }

    @Override
    public List<Tag> tags(UnitNumber unit) {
        Optional<UnitFacts> known = facts.getOrDefault(unit.value(), Optional.empty());
        return known.isPresent()
                ? known.get().tags().stream().map(UnitFacts.TagUse::tag).toList()
                : many("tags-of-unit", row -> new Tag(row.get(0).asString()), unit(unit));
    }

    private static Map<String, Object> unit(UnitNumber unit) {
        return Map.of("unit", unit.value());
    }

    @Override
    public Optional<Recorded> entry(EntryId id) {
        return isBlank()
                ? Optional.empty()
                : rows("entry-by-id", Map.of("id", id.toString())).stream()
                        .findFirst()
                        .map(row -> read(this::recorded, row))
                        .filter(recorded -> recorded.order() <= head.order());
    }

    @Override
    public Optional<Recorded> entry(long order) {
        open();
        if (order < 1 || order > head.order()) {
            return Optional.empty();
        }
        Recorded known = entries.get(order);
        return known != null
                ? Optional.of(known)
                : rows("entry-by-order", Map.of("recorded_order", order)).stream()
                        .findFirst()
                        .map(row -> read(this::recorded, row));
    }

    @Override
    public List<Recorded> amendments(long order) {
        return many("amendments-of", this::recorded, Map.of("recorded_order", order));
    }

    @Override
    public List<Recorded> entries(UnitNumber unit) {
        return many("entries-of-unit", this::recorded, unit(unit));
    }

    private Recorded recorded(Record row) {
        Recorded recorded = plain(row);
        entries.put(recorded.order(), recorded);
        return recorded;
    }

    private static Recorded plain(Record row) {
        EntryKind kind = Words.parse(EntryKind.class, row.get(2).asString());
        return new Recorded(
                row.get(0).asLong(),
                CanonicalText.INSTANT.parse(row.get(5).asString(), Instant::from),
                new Proposed(
                        EntryId.parse(row.get(1).asString()),
                        When.parse(row.get(3).asString()),
                        whole(row.get(4)).map(PersonNumber::new),
                        CanonicalText.read(kind, row.get(6).asString())));
    }

    private static Optional<Integer> whole(Value value) {
        return value.isNull() ? Optional.empty() : Optional.of(value.asInt());
    }

    private static Optional<String> text(Value value) {
        return value.isNull() ? Optional.empty() : Optional.of(value.asString());
    }

    @Override
    public Optional<UnitFacts> facts(UnitNumber unit) {
        open();
        leansOnFacts = true;
        int number = unit.value();
        if (!facts.containsKey(number)) {
            fetch(wantedWith(number));
        }
        lastFacts = number;
        return facts.get(number);
    }

    /** Return which facts to fetch: a whole family's, or those that follow where they are asked for by number. */
    private List<Integer> wantedWith(int number) {
        List<Integer> wanted = new ArrayList<>();
        wanted.add(number);
        if (kin.contains(number)) {
            kin.stream().filter(other -> !facts.containsKey(other)).forEach(wanted::add);
            kin.clear();
        } else if (number == lastFacts + 1 && number > 2) {
            if (facts.size() > 4 * FACTS_AHEAD) {
                facts.clear();
            }
            for (int next = number + 1; next < number + FACTS_AHEAD && next <= head.lastUnit(); next++) {
                if (!facts.containsKey(next)) {
                    wanted.add(next);
                }
            }
        }
        return wanted;
    }

    private void fetch(List<Integer> wanted) {
        wanted.forEach(number -> facts.put(number, Optional.empty()));
        for (Record row : rows(FACTS, "units", wanted)) {
            UnitFacts found = read(Neo4jBookView::told, row);
            facts.put(found.unit().value(), Optional.of(found));
        }
    }

    private static UnitFacts told(Record row) {
        UnitNumber unit = new UnitNumber(row.get(0).asInt());
        return new UnitFacts(
                unit,
                Words.parse(UnitFacts.Nature.class, row.get(1).asString()),
                new UnitFacts.Begun(
                        row.get(4).asLong(),
                        row.get(2).asInt(),
                        When.parse(row.get(3).asString())),
                list(row.get(11), x -> new UnitFacts.TagUse(new Tag(x.get(0).asString()), day(x, 1), order(x, 2))),
                list(row.get(12), Value::asLong),
                list(row.get(13), x -> link(x::get)),
                list(
                        row.get(14),
                        x -> new UnitFacts.Naming(
                                CultivarName.parse(x.get(0).asString()),
                                x.get(1).asInt() != 0,
                                day(x, 2),
                                order(x, 3))),
                cohort(row),
                list(
                        row.get(15),
                        x -> new UnitFacts.Outcome(
                                Words.parse(UnitFacts.Fate.class, x.get(0).asString()),
                                x.get(1).asInt(),
                                text(x.get(2)).map(cause -> Words.parse(Cause.class, cause)),
                                day(x, 3),
                                order(x, 4))),
                list(
                        row.get(16),
                        x -> new UnitFacts.Standing(whole(x.get(0)), x.get(1).asInt(), day(x, 2), order(x, 3))),
                list(row.get(17), x -> new UnitFacts.Potting(text(x.get(0)), day(x, 1), order(x, 2))),
                list(row.get(18), x -> new UnitFacts.Stay(new Place(x.get(0).asString()), day(x, 1), order(x, 2))),
                list(
                        row.get(19),
                        x -> new UnitFacts.Leaving(
                                Words.parse(UnitFacts.Reason.class, x.get(0).asString()),
                                x.get(1).asInt(),
                                whole(x.get(2)).map(PersonNumber::new),
                                day(x, 3),
                                order(x, 4))));
    }

    private static <T> List<T> list(Value values, Function<Value, T> reader) {
        return values.asList(reader);
    }

    private static When day(Value list, int at) {
        return When.parse(list.get(at).asString());
    }

    private static long order(Value list, int at) {
        return list.get(at).asLong();
    }

    private static Optional<UnitFacts.Cohort> cohort(Record row) {
        return text(row.get(5))
                .map(method -> new UnitFacts.Cohort(
                        Words.parse(UnitFacts.Method.class, method),
                        When.parse(row.get(6).asString()),
                        row.get(7).asLong(),
                        whole(row.get(8)).map(PersonNumber::new),
                        whole(row.get(9)),
                        new UnitNumber(row.get(10).asInt())));
    }

    /** Reads a value by its place. */
    @FunctionalInterface
    private interface Places {
        Value get(int at);
    }

    private static Link link(Places row) {
        return new Link(
                new UnitNumber(row.get(0).asInt()),
                new UnitNumber(row.get(1).asInt()),
                Words.parse(Act.class, row.get(2).asString()),
                When.parse(row.get(3).asString()),
                row.get(4).asLong(),
                whole(row.get(5)));
    }

    private static Link link(Record row) {
        return link(row::get);
    }

    @Override
    public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
        return many("offspring", Neo4jBookView::link, unit(unit)).stream()
                .filter(link -> acts.contains(link.act()))
                .sorted(LINKS)
                .toList();
    }

    @Override
    public Family family(UnitNumber unit, Direction way, int most) {
        Require.atLeast(1, most, "most");
        boolean down = way == Direction.DOWN;
        Set<Integer> found = new LinkedHashSet<>();
        found.add(unit.value());
        Set<Link> links = new LinkedHashSet<>();
        boolean whole = true;
        List<Integer> generation = List.of(unit.value());
        while (!generation.isEmpty()) {
            List<Integer> next = new ArrayList<>();
            Map<Integer, List<Link>> followed = step(generation, down);
            for (int here : generation) {
                for (Link link : followed.getOrDefault(here, List.of())) {
                    int other = (down ? link.child() : link.mother()).value();
                    if (!found.contains(other)) {
                        if (found.size() >= most) {
                            whole = false;
                            continue;
                        }
                        found.add(other);
                        next.add(other);
                    }
                    links.add(link);
                }
            }
            generation = next;
        }
        if (found.size() <= FACTS_AHEAD) {
            kin.addAll(found);
        }
        List<UnitNumber> units = new ArrayList<>();
        units.add(unit);
        Set<Integer> others = new TreeSet<>(found);
        others.remove(unit.value());
        others.forEach(other -> units.add(new UnitNumber(other)));
        return new Family(units, links.stream().sorted(LINKS).toList(), whole);
    }

    private static final String UP = "UNWIND $units AS number MATCH (u:Unit {unit: number})-[x:" + acts()
            + "]->(o:Unit) RETURN u.unit, o.unit, type(x), x.day, x.recorded_order, x.count"
            + " ORDER BY u.unit, x.position";
    private static final String DOWN = "UNWIND $units AS number MATCH (u:Unit {unit: number})<-[x:" + acts()
            + "]-(o:Unit) RETURN o.unit, u.unit, type(x), x.day, x.recorded_order, x.count"
            + " ORDER BY o.unit, x.position";

    /** Return the links one generation further, by the unit that they were followed from. */
    private Map<Integer, List<Link>> step(List<Integer> units, boolean down) {
        leansOnFacts = true;
        Map<Integer, List<Link>> links = new LinkedHashMap<>();
        for (Record row : rows(down ? DOWN : UP, "units", units)) {
            Link link = read(Neo4jBookView::link, row);
            links.computeIfAbsent((down ? link.mother() : link.child()).value(), from -> new ArrayList<>())
                    .add(link);
        }
        return links;
    }

    @Override
    public List<Recorded> listings() {
        return register("listings");
    }

    @Override
    public List<Recorded> tariff() {
        return register("tariff");
    }

    private List<Recorded> register(String question) {
        return rows(question, Map.of()).stream()
                .map(row -> read(Neo4jBookView::plain, row))
                .filter(recorded -> recorded.order() <= head.order())
                .toList();
    }

    @Override
    public Collection<Person> persons() {
        return rows("persons", Map.of()).stream()
                .map(row -> read(Neo4jBookView::person, row))
                .toList();
    }

    @Override
    public Optional<Person> person(String name) {
        return one(
                "person-by-folded",
                Neo4jBookView::person,
                Map.of(
                        "folded",
                        Folded.of(Require.text(Optional.of(name), "name").orElse(""))));
    }

    @Override
    public Optional<Person> person(PersonNumber number) {
        return one("person-by-number", Neo4jBookView::person, Map.of("number", number.value()));
    }

    private static Person person(Record row) {
        return new Person(
                new PersonNumber(row.get(0).asInt()),
                text(row.get(1)),
                Words.parse(Person.Role.class, row.get(2).asString()),
                text(row.get(3)));
    }

    @Override
    public Stream<Chained> since(long order) {
        open();
        Result result = transaction.run(
                Question.named(new QueryName("entries-since")).text().text(),
                Values.parameters("recorded_order", order));
        return StreamSupport.stream(
                        Spliterators.spliteratorUnknownSize(
                                result, Spliterator.ORDERED | Spliterator.DISTINCT | Spliterator.NONNULL),
                        false)
                .peek(row -> open())
                .map(row -> read(
                        one -> new Chained(plain(one), new Digest(one.get(7).asString())), row))
                .takeWhile(entry -> entry.recorded().order() <= head.order())
                .onClose(() -> {
                    if (!closed) {
                        result.consume();
                    }
                });
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        return ask(Question.named(name), parameters, Integer.MAX_VALUE);
    }

    @Override
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        open();
        leansOnFacts = true;
        Question question = Question.named(name);
        question.text().check(parameters.values().keySet());
        Map<String, Object> values = new HashMap<>();
        parameters.values().forEach((key, value) -> values.put(key, value.orElse(null)));
        Result result = transaction.run(question.text().text(), values);
        if (isGrouped(question, result)) {
            long[] number = new long[1];
            while (result.hasNext()) {
                Record group = result.next();
                long added = group.get(1).asLong();
                for (Value value : group.get(0).values()) {
                    number[0] = value.asLong() + added;
                    sink.row(number);
                }
            }
            return;
        }
        long[] numbers = new long[question.text().out().size()];
        while (result.hasNext()) {
            Record row = result.next();
            for (int at = 0; at < numbers.length; at++) {
                Value value = row.get(at);
                numbers[at] = value.isNull() ? NumberSink.NONE : value.asLong();
            }
            sink.row(numbers);
        }
    }

    /**
     * Tell whether the one column of an answer comes as lists, each with a number beside it that is added to all in it: a
     * list of numbers is handed over many times quicker than a row for each.
     */
    private static boolean isGrouped(Question question, Result result) {
        List<String> keys = result.keys();
        boolean grouped = question.text().isOurs()
                && question.text().out().size() == 1
                && keys.size() == 2
                && keys.get(1).equals(ADDED);
        question.text().requireReturns(grouped ? keys.subList(0, 1) : keys);
        return grouped;
    }

    /** Put a question, and take in so many rows of the answer. */
    Rows ask(Question question, Parameters parameters, int most) {
        open();
        leansOnFacts = true;
        question.text().check(parameters.values().keySet());
        Map<String, Object> values = new HashMap<>();
        parameters.values().forEach((name, value) -> values.put(name, value.orElse(null)));
        Result result = transaction.run(question.text().text(), values);
        List<List<Object>> rows = new ArrayList<>();
        if (isGrouped(question, result)) {
            while (rows.size() < most && result.hasNext()) {
                Record group = result.next();
                long added = group.get(1).asLong();
                for (Value value : group.get(0).values()) {
                    if (rows.size() < most) {
                        rows.add(List.of(value.asLong() + added));
                    }
                }
            }
        }
        while (rows.size() < most && result.hasNext()) {
            List<Object> row = new ArrayList<>();
            for (Value value : result.next().values()) {
                row.add(plain(question, value));
            }
            rows.add(Collections.unmodifiableList(row));
        }
        result.consume();
        return new Rows(question.text().out(), rows);
    }

    private static Object plain(Question question, Value value) {
        Object plain = value.asObject();
        if (plain == null || plain instanceof String || plain instanceof Long || plain instanceof Double) {
            return plain;
        }
        if (plain instanceof Boolean bool) {
            return bool ? 1L : 0L;
        }
        if (question.text().isOurs()) {
            throw question.text().wrong("returns a " + value.type().name());
        }
        return value.toString();
    }
}
