package ortet.yield;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Direction;
import ortet.book.Family;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.NumberSink;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Method;
import ortet.book.UnitFacts.Nature;
import ortet.entry.EntryId;
import ortet.entry.Recorded;
import ortet.entry.Words;
import ortet.nursery.Packed;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Nearest;
import ortet.value.When;

/** A book cut down to what a question about take asks of it, so that each row can be written by hand. */
final class CohortsView implements BookView {
    static final List<String> COLUMNS = List.of(
            "unit",
            "tag",
            "method",
            "day",
            "precision",
            "by_person",
            "count",
            "cultivar",
            "mothers",
            "taken",
            "failed",
            "withdrawn",
            "not_seen",
            "moved_on",
            "found_more",
            "still_on_day",
            "last_seen_day");

    private static final int MOTHERS = 1000;

    private final List<Map<String, Object>> rows = new ArrayList<>();
    private final List<Link> links = new ArrayList<>();
    private final List<Person> persons = new ArrayList<>();
    private final Map<Tag, UnitNumber> plants = new LinkedHashMap<>();
    private Optional<LocalDate> asked = Optional.empty();

    /** One row being written. */
    final class Line {
        private final Map<String, Object> row = new LinkedHashMap<>();

        private Line and(String column, Object value) {
            row.put(column, value);
            return this;
        }

        Line by(int person) {
            return and("by_person", (long) person);
        }

        Line cultivar(String name) {
            return and("cultivar", name);
        }

        Line from(String mothers) {
            return and("mothers", mothers);
        }

        Line taken(int units) {
            return and("taken", (long) units);
        }

        Line failed(int units) {
            return and("failed", (long) units);
        }

        Line withdrawn(int units) {
            return and("withdrawn", (long) units);
        }

        Line notSeen(int units) {
            return and("not_seen", (long) units);
        }

        Line movedOn(int units) {
            return and("moved_on", (long) units);
        }

        Line foundMore(int units) {
            return and("found_more", (long) units);
        }

        Line stillOn(String day) {
            return and("still_on_day", day);
        }

        Line lastSeen(String day) {
            return and("last_seen_day", day);
        }

        UnitNumber unit() {
            return new UnitNumber(((Long) row.get("unit")).intValue());
        }
    }

    Line set(String tag, UnitFacts.Method method, String when, int count) {
        return weighed(tag, method, when).and("count", (long) count);
    }

    Line weighed(String tag, UnitFacts.Method method, String when) {
        When day = When.parse(when);
        Line line = new Line()
                .and("unit", (long) rows.size() + 1)
                .and("tag", tag)
                .and("method", Words.of(method))
                .and("day", day.first().toString())
                .and("precision", Words.of(day.precision()));
        for (String column : List.of("taken", "failed", "withdrawn", "not_seen", "moved_on", "found_more")) {
            line.and(column, 0L);
        }
        rows.add(line.row);
        return line;
    }

    void link(Act act, Line child, Line mother, String day) {
        links.add(new Link(child.unit(), mother.unit(), act, When.parse(day), links.size() + 1L, Optional.empty()));
    }

    void person(int number, Optional<String> name) {
        persons.add(new Person(new PersonNumber(number), name, Person.Role.STAFF, Optional.empty()));
    }

    /** Add a plant that is in the book, by all the tags that it bore. */
    void plant(int number, String... tags) {
        for (String tag : tags) {
            plants.put(new Tag(tag), new UnitNumber(number));
        }
    }

    Optional<LocalDate> asked() {
        return asked;
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        return switch (name.name()) {
            case "cultivars-in-use" -> new Rows(List.of("cultivar"), single(cultivars()));
            case "tags-of-units" ->
                new Rows(
                        List.of("unit", "tag"),
                        Arrays.stream(parameters
                                        .values()
                                        .get("units")
                                        .orElseThrow()
                                        .toString()
                                        .split(","))
                                .filter(unit -> !unit.isEmpty())
                                .map(unit -> List.<Object>of(Long.valueOf(unit), tag(Integer.parseInt(unit))))
                                .toList());
            default -> throw new UnsupportedOperationException(name.name());
        };
    }

    private static List<List<Object>> single(List<String> texts) {
        List<List<Object>> lists = new ArrayList<>();
        texts.forEach(text -> lists.add(List.of(text)));
        return lists;
    }

    private List<String> cultivars() {
        return rows.stream()
                .map(row -> row.get("cultivar"))
                .filter(Objects::nonNull)
                .map(Object::toString)
                .distinct()
                .sorted()
                .toList();
    }

    private String tag(int unit) {
        if (unit <= rows.size()) {
            return rows.get(unit - 1).get("tag").toString();
        }
        return mothers().entrySet().stream()
                .filter(mother -> mother.getValue() == unit)
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    private static Stream<String> mothers(Map<String, Object> row) {
        return row.get("mothers") == null
                ? Stream.empty()
                : Stream.of(row.get("mothers").toString().split(" \\+ "));
    }

    /** Return the mothers that rows name, by tag: plants in the book with their numbers, others with numbers of their own. */
    private Map<String, Integer> mothers() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        rows.stream().flatMap(CohortsView::mothers).distinct().forEach(tag -> {
            UnitNumber known = plants.get(new Tag(tag));
            numbers.put(tag, known != null ? known.value() : MOTHERS + numbers.size());
        });
        return numbers;
    }

    private static long number(Map<String, Object> row, String column) {
        return row.get(column) == null ? NumberSink.NONE : (long) row.get(column);
    }

    private static long day(Object text) {
        return LocalDate.parse(text.toString()).toEpochDay();
    }

    private static Act act(Map<String, Object> row) {
        return switch (row.get("method").toString()) {
            case "layer" -> Act.LAYERED_FROM;
            case "cutting" -> Act.STRUCK_FROM;
            case "graft" -> Act.SCION_OF;
            default -> Act.SEED_OF;
        };
    }

    @Override
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        parameters
                .values()
                .getOrDefault("as_of", Optional.empty())
                .ifPresent(day -> asked = Optional.of(LocalDate.parse((String) day)));
        for (Map<String, Object> row : rows) {
            long unit = number(row, "unit");
            long day = day(row.get("day"));
            switch (name.name()) {
                case "all-units" -> sink.row(new long[] {unit(unit, Nature.BATCH, day)});
                case "all-links" -> {
                    mothers(row)
                            .forEach(tag -> sink.row(
                                    new long[] {link(unit, act(row), mothers().get(tag))}));
                    links.stream()
                            .filter(link -> link.child().value() == unit
                                    && !link.day().first().isAfter(asked.orElseThrow()))
                            .forEach(link -> sink.row(new long[] {
                                link(unit, link.act(), link.mother().value())
                            }));
                }
                case "all-link-counts" -> {}
                case "all-cohorts" ->
                    sink.row(new long[] {
                        unit,
                        Words.parse(Method.class, row.get("method").toString()).ordinal(),
                        day,
                        Words.parse(When.Precision.class, row.get("precision").toString())
                                .ordinal(),
                        number(row, "by_person"),
                        number(row, "count"),
                        unit
                    });
                case "all-outcomes" -> {
                    for (Fate fate : Fate.values()) {
                        long count = fate == Fate.STILL_ON
                                ? 0
                                : number(row, Words.of(fate).replace('-', '_'));
                        if (count > 0) {
                            sink.row(new long[] {unit, fate.ordinal(), count, day, 0});
                        }
                    }
                    for (String column : List.of("still_on_day", "last_seen_day")) {
                        if (row.get(column) != null) {
                            sink.row(new long[] {unit, Fate.STILL_ON.ordinal(), 1, day(row.get(column)), 0});
                        }
                    }
                }
                case "all-names" -> {
                    if (row.get("cultivar") != null) {
                        sink.row(new long[] {
                            unit, cultivars().indexOf(row.get("cultivar").toString()), 0
                        });
                    }
                }
                default -> throw new UnsupportedOperationException(name.name());
            }
        }
        if (name.name().equals("all-units")) {
            mothers().values().stream().sorted().forEach(unit -> sink.row(new long[] {unit(unit, Nature.PLANT, 0)}));
        }
    }

    private static long unit(long unit, Nature nature, long day) {
        return Packed.unit(new UnitNumber((int) unit), nature, When.on(LocalDate.ofEpochDay(day)));
    }

    private static long link(long child, Act act, long mother) {
        return Packed.link(new UnitNumber((int) child), act, new UnitNumber((int) mother));
    }

    @Override
    public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
        return links.stream()
                .filter(link -> link.mother().equals(unit) && acts.contains(link.act()))
                .toList();
    }

    @Override
    public Optional<UnitNumber> unit(Tag tag) {
        return Optional.ofNullable(plants.get(tag));
    }

    @Override
    public List<Tag> tags(UnitNumber unit) {
        return plants.entrySet().stream()
                .filter(plant -> plant.getValue().equals(unit))
                .map(Map.Entry::getKey)
                .toList();
    }

    @Override
    public List<Tag> tagsFrom(String text, int most) {
        return List.of();
    }

    @Override
    public List<String> nearest(Tag tag) {
        return Nearest.list(tag.text(), plants.keySet().stream().map(Tag::text).toList(), 3);
    }

    @Override
    public List<Recorded> tariff() {
        return List.of();
    }

    @Override
    public List<Recorded> listings() {
        return List.of();
    }

    @Override
    public Collection<Person> persons() {
        return persons;
    }

    @Override
    public Optional<Person> person(String name) {
        return persons.stream()
                .filter(person -> person.name().filter(name::equalsIgnoreCase).isPresent())
                .findFirst();
    }

    @Override
    public Head head() {
        int last = mothers().values().stream().mapToInt(Integer::intValue).max().orElse(0);
        return new Head(UUID.randomUUID(), ZoneId.of("Europe/Dublin"), 1, Chain.START, Math.max(last, rows.size()));
    }

    @Override
    public Optional<Tag> alikeButForCase(Tag tag) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Optional<Recorded> entry(EntryId id) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Optional<Recorded> entry(long order) {
        throw new UnsupportedOperationException();
    }

    @Override
    public List<Recorded> amendments(long order) {
        throw new UnsupportedOperationException();
    }

    @Override
    public List<Recorded> entries(UnitNumber unit) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Optional<UnitFacts> facts(UnitNumber unit) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Family family(UnitNumber unit, Direction way, int most) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Stream<Chained> since(long order) {
        throw new UnsupportedOperationException();
    }
}
