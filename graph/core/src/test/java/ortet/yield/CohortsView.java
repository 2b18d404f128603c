package ortet.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Chained;
import ortet.book.Direction;
import ortet.book.Family;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.entry.EntryId;
import ortet.entry.Recorded;
import ortet.entry.Words;
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
        if (!name.equals(new QueryName("cohorts"))) {
            throw new UnsupportedOperationException(name.name());
        }
        asked = parameters.values().get("as_of").map(day -> LocalDate.parse((String) day));
        return new Rows(
                COLUMNS,
                rows.stream()
                        .map(row -> Arrays.asList(COLUMNS.stream().map(row::get).toArray()))
                        .toList());
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
        throw new UnsupportedOperationException();
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
