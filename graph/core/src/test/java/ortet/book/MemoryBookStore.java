package ortet.book;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Folded;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** A book in memory: the slow and obvious store that others are measured against in tests. */
public final class MemoryBookStore implements BookStore {
    private Head head;
    private final List<Chained> entries = new ArrayList<>();
    private final Map<Integer, Person> persons = new TreeMap<>();
    private final Map<Integer, UnitFacts> facts = new TreeMap<>();

    /** Start an empty book. */
    public MemoryBookStore(ZoneId zone) {
        this.head = new Head(UUID.randomUUID(), zone, 0, Chain.START, 0);
    }

    @Override
    public synchronized <T> T read(Function<BookView, T> question) {
        return question.apply(new View());
    }

    @Override
    public synchronized Receipt append(Proposal proposal, Judge judge, Progress progress) {
        Ruling ruling = judge.rule(proposal, new View(), progress);
        apply(ruling);
        return ruling.receipt();
    }

    @Override
    public synchronized Receipt restore(Restoration from, Judge judge, Progress progress) {
        if (head.order() > 0) {
            throw Refused.because("not-empty", "the book is not empty");
        }
        Ruling ruling = judge.restore(from, progress);
        head = new Head(from.bookId(), from.zone(), 0, Chain.START, 0);
        apply(ruling);
        return ruling.receipt();
    }

    @Override
    public synchronized Receipt follow(List<Recorded> more, Judge judge, Progress progress) {
        Ruling ruling = judge.follow(more, new View(), progress);
        apply(ruling);
        return ruling.receipt();
    }

    @Override
    public QueryText.Language language() {
        return QueryText.Language.SQL;
    }

    @Override
    public Rows ask(QueryText question, Parameters parameters, Limits limits) {
        throw new Refused(Fault.of("unknown-question", "a book in memory cannot be asked " + question.name()));
    }

    @Override
    public synchronized Loaded load(EntrySource source, Judge judge, Progress progress) {
        if (head.order() > 0) {
            throw Refused.because("not-empty", "the book is not empty");
        }
        List<Chained> chained = new ArrayList<>();
        List<Person> fresh = new ArrayList<>();
        List<UnitFacts> told = new ArrayList<>();
        LoadSink sink = new LoadSink() {
            @Override
            public Path scratch() {
                return Path.of(System.getProperty("java.io.tmpdir"));
            }

            @Override
            public void entry(Chained entry, String fields) {
                chained.add(entry);
            }

            @Override
            public void persons(List<Person> all) {
                fresh.addAll(all);
            }

            @Override
            public void facts(UnitFacts unit) {
                told.add(unit);
            }
        };
        Loaded loaded = judge.load(source, head, persons.values(), sink, progress);
        entries.addAll(chained);
        fresh.forEach(person -> persons.put(person.number().value(), person));
        told.forEach(unit -> facts.put(unit.unit().value(), unit));
        head = loaded.head();
        return loaded;
    }

    private void apply(Ruling ruling) {
        entries.addAll(ruling.entries());
        ruling.persons().forEach(person -> persons.put(person.number().value(), person));
        ruling.vanished().forEach(unit -> facts.remove(unit.value()));
        ruling.facts().forEach(unit -> facts.put(unit.unit().value(), unit));
        head = ruling.head();
    }

    @Override
    public synchronized void keep(Person person) {
        if (!persons.containsKey(person.number().value())) {
            List<String> known = persons.values().stream()
                    .map(other -> other.number().toString())
                    .toList();
            throw new Refused(Fault.of("unknown-person", "no person " + person.number() + " in the book")
                    .nearest(Nearest.of(person.number().toString(), known)));
        }
        for (Person other : persons.values()) {
            boolean another = !other.number().equals(person.number());
            if (another
                    && person.name()
                            .flatMap(name -> other.name().filter(name::equalsIgnoreCase))
                            .isPresent()) {
                throw Refused.because("person-in-use", "there is a " + other.shown() + " already, " + other.number());
            }
        }
        persons.put(person.number().value(), person);
    }

    @Override
    public synchronized void rebuild(Judge judge, Progress progress) {
        Ruling ruling = judge.rebuild(new View(), progress);
        facts.clear();
        ruling.facts().forEach(unit -> facts.put(unit.unit().value(), unit));
    }

    /** Return the facts of every unit, by number. */
    public synchronized List<UnitFacts> allFacts() {
        return List.copyOf(facts.values());
    }

    @Override
    public void backup(Path to) {
        throw new Unavailable("a book in memory has no file");
    }

    @Override
    public void close() {}

    private final class View implements BookView {
        @Override
        public Head head() {
            return head;
        }

        private Stream<UnitFacts> bearing(Tag tag) {
            return facts.values().stream()
                    .filter(unit ->
                            unit.tags().stream().anyMatch(use -> use.tag().equals(tag)));
        }

        @Override
        public Optional<UnitNumber> unit(Tag tag) {
            return bearing(tag).map(UnitFacts::unit).findFirst();
        }

        private Stream<Tag> allTags() {
            return facts.values().stream().flatMap(unit -> unit.tags().stream()).map(UnitFacts.TagUse::tag);
        }

        @Override
        public Optional<Tag> alikeButForCase(Tag tag) {
            return allTags()
                    .filter(other -> !other.equals(tag) && other.text().equalsIgnoreCase(tag.text()))
                    .findFirst();
        }

        @Override
        public List<String> nearest(Tag tag) {
            return Nearest.list(tag.text(), allTags().map(Tag::text).distinct().toList(), 3);
        }

        @Override
        public List<Tag> tagsFrom(String text, int most) {
            int[] from = Folded.of(text).codePoints().toArray();
            return allTags()
                    .distinct()
                    .filter(tag -> Arrays.compare(folded(tag), from) >= 0)
                    .sorted((one, other) -> Arrays.compare(folded(one), folded(other)))
                    .limit(most)
                    .toList();
        }

        private static int[] folded(Tag tag) {
            return Folded.of(tag.text()).codePoints().toArray();
        }

        @Override
        public List<Tag> tags(UnitNumber unit) {
            return facts(unit)
                    .map(found ->
                            found.tags().stream().map(UnitFacts.TagUse::tag).toList())
                    .orElse(List.of());
        }

        @Override
        public Optional<Recorded> entry(EntryId id) {
            return entries.stream()
                    .map(Chained::recorded)
                    .filter(recorded -> recorded.proposed().id().equals(id))
                    .findFirst();
        }

        @Override
        public Optional<Recorded> entry(long order) {
            return order < 1 || order > entries.size()
                    ? Optional.empty()
                    : Optional.of(entries.get((int) order - 1).recorded());
        }

        @Override
        public List<Recorded> amendments(long order) {
            Optional<EntryId> id =
                    entry(order).map(recorded -> recorded.proposed().id());
            return entries.stream()
                    .map(Chained::recorded)
                    .filter(recorded -> recorded.entry() instanceof Corrected corrected
                                    && id.equals(Optional.of(corrected.target()))
                            || recorded.entry() instanceof CrossedOut crossedOut
                                    && id.equals(Optional.of(crossedOut.target())))
                    .toList();
        }

        @Override
        public List<Recorded> entries(UnitNumber unit) {
            return facts(unit)
                    .map(found -> found.entries().stream()
                            .map(order -> entry(order).orElseThrow())
                            .toList())
                    .orElse(List.of());
        }

        @Override
        public Optional<UnitFacts> facts(UnitNumber unit) {
            return Optional.ofNullable(facts.get(unit.value()));
        }

        @Override
        public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
            return facts.values().stream()
                    .flatMap(child -> child.links().stream())
                    .filter(link -> link.mother().equals(unit) && acts.contains(link.act()))
                    .sorted(Comparator.comparing(Link::child).thenComparing(Link::order))
                    .toList();
        }

        @Override
        public Family family(UnitNumber unit, Direction way, int most) {
            Set<UnitNumber> reached = new LinkedHashSet<>(Set.of(unit));
            Set<Link> links = new LinkedHashSet<>();
            List<UnitNumber> queue = new ArrayList<>(List.of(unit));
            boolean whole = true;
            for (int at = 0; at < queue.size(); at++) {
                UnitNumber here = queue.get(at);
                List<Link> next = way == Direction.UP
                        ? facts(here).map(UnitFacts::links).orElse(List.of())
                        : offspring(here, Set.of(Act.values()));
                for (Link link : next) {
                    UnitNumber other = way == Direction.UP ? link.mother() : link.child();
                    if (!reached.contains(other)) {
                        if (reached.size() >= most) {
                            whole = false;
                            continue;
                        }
                        reached.add(other);
                        queue.add(other);
                    }
                    links.add(link);
                }
            }
            List<UnitNumber> others = reached.stream()
                    .filter(other -> !other.equals(unit))
                    .sorted()
                    .toList();
            List<UnitNumber> units = new ArrayList<>(List.of(unit));
            units.addAll(others);
            return new Family(
                    units,
                    links.stream()
                            .sorted(Comparator.comparing(Link::child)
                                    .thenComparing(Link::order)
                                    .thenComparing(Link::act)
                                    .thenComparing(Link::mother))
                            .toList(),
                    whole);
        }

        @Override
        public List<Recorded> listings() {
            return ofKinds(EntryKind.CULTIVAR_LISTED, EntryKind.PLACE_LISTED);
        }

        @Override
        public List<Recorded> tariff() {
            return ofKinds(EntryKind.COST_LISTED, EntryKind.PRICE_LISTED);
        }

        private List<Recorded> ofKinds(EntryKind... kinds) {
            return entries.stream()
                    .map(Chained::recorded)
                    .filter(recorded -> List.of(kinds).contains(recorded.entry().kind()))
                    .toList();
        }

        @Override
        public Collection<Person> persons() {
            return List.copyOf(persons.values());
        }

        @Override
        public Optional<Person> person(String name) {
            return persons.values().stream()
                    .filter(person ->
                            person.name().filter(name.strip()::equalsIgnoreCase).isPresent())
                    .findFirst();
        }

        @Override
        public Stream<Chained> since(long order) {
            return List.copyOf(entries).stream()
                    .filter(entry -> entry.recorded().order() > order);
        }

        @Override
        public Rows ask(QueryName name, Parameters parameters) {
            return questions().ask(name, parameters);
        }

        @Override
        public void stream(QueryName name, Parameters parameters, NumberSink sink) {
            questions().stream(name, parameters, sink);
        }

        private MemoryQuestions questions() {
            return new MemoryQuestions(
                    facts.values(), order -> entry(order).orElseThrow(), this::amendments, head.order());
        }
    }

    /** Return the facts by unit number, for comparison. */
    public synchronized Map<Integer, UnitFacts> factsByUnit() {
        return new HashMap<>(facts);
    }
}
