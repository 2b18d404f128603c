package ortet.lineage;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Naming;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.book.UnitFacts.TagUse;
import ortet.entry.Acquired;
import ortet.entry.Entry;
import ortet.entry.Raised;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.Refused;
import ortet.value.When;

/** A book as it is read for one question on one day; each unit is fetched once. */
final class Reading {
    private final BookView view;
    private final LocalDate asOf;
    private final Map<PersonNumber, String> persons = new HashMap<>();
    private final Map<UnitNumber, UnitFacts> facts = new HashMap<>();
    private final Map<UnitNumber, List<Event>> histories = new HashMap<>();
    private final Map<UnitNumber, Named> named = new HashMap<>();
    private final Map<UnitNumber, List<Founder>> founders = new HashMap<>();
    private final Map<UnitNumber, Known> known = new HashMap<>();
    private final Set<UnitNumber> beingRead = new HashSet<>();

    /**
     * What tells the name of a unit, fetched for many units at one go.
     *
     * @param tags its tags in order, those tied on by the day, and the first
     * @param names its cultivars in order
     * @param links to the units that it comes from
     */
    record Known(List<TagUse> tags, List<Naming> names, List<Link> links) {}

    Reading(BookView view, LocalDate asOf) {
        this.view = view;
        this.asOf = asOf;
    }

    BookView view() {
        return view;
    }

    LocalDate asOf() {
        return asOf;
    }

    UnitFacts facts(UnitNumber unit) {
        return facts.computeIfAbsent(
                unit, wanted -> view.facts(wanted).orElseThrow(() -> new Defect("no facts of unit " + wanted)));
    }

    /** Take what tells the name of a unit from here, rather than fetch all of its facts for it. */
    void know(UnitNumber unit, Known facts) {
        known.put(unit, facts);
    }

    private List<TagUse> tags(UnitNumber unit) {
        Known told = known.get(unit);
        return told == null ? facts(unit).tags() : told.tags();
    }

    private List<Naming> names(UnitNumber unit) {
        Known told = known.get(unit);
        return told == null ? facts(unit).names() : told.names();
    }

    private List<Link> links(UnitNumber unit) {
        Known told = known.get(unit);
        return told == null ? facts(unit).links() : told.links();
    }

    List<Event> history(UnitNumber unit) {
        return histories.computeIfAbsent(unit, wanted -> History.of(view, wanted, asOf));
    }

    /**
     * Return the entry that began a unit, also of a mother whose day is known better than that of her child, so that she
     * seems to be younger.
     */
    Event begun(UnitNumber unit) {
        return history(unit).stream()
                .filter(Event::begins)
                .findFirst()
                .or(() -> History.of(view, unit, LocalDate.MAX).stream()
                        .filter(Event::begins)
                        .findFirst())
                .orElseThrow(() -> new Defect("nothing begins " + tag(unit)));
    }

    /** Refuse a unit that began after the day asked about. */
    void requireBegun(UnitNumber unit, Tag asked) {
        When day = facts(unit).begun().day();
        if (!counts(day)) {
            throw Refused.because("before-it-began", asked + " began on " + day + ", after " + asOf);
        }
    }

    boolean counts(When day) {
        return !day.first().isAfter(asOf);
    }

    /** Return the tags that a unit bore up to the day, the last one borne then. */
    List<TagUse> tagUses(UnitNumber unit) {
        List<TagUse> all = tags(unit);
        List<TagUse> tied = all.stream().filter(use -> counts(use.day())).toList();
        return tied.isEmpty() ? all.subList(0, 1) : tied;
    }

    Tag tag(UnitNumber unit) {
        List<TagUse> uses = tagUses(unit);
        return uses.get(uses.size() - 1).tag();
    }

    List<Tag> earlierTags(UnitNumber unit) {
        List<TagUse> uses = tagUses(unit);
        return uses.subList(0, uses.size() - 1).stream().map(TagUse::tag).toList();
    }

    String shown(PersonNumber person) {
        return persons.computeIfAbsent(
                person, number -> view.person(number).map(Person::shown).orElse(number.toString()));
    }

    // ---- deeds ----

    Deed deed(Event event) {
        return deed(event.order(), event.day(), event.by(), event.entry());
    }

    Deed deed(long order, When day, Optional<PersonNumber> by, Entry entry) {
        return Deed.of(order, day, by, entry, this::shown);
    }

    // ---- cultivar ----

    /** Return the cultivar: its own latest true name, else the latest said, else that of what it keeps the clone of. */
    Named named(UnitNumber unit) {
        Named read = named.get(unit);
        if (read == null) {
            if (!beingRead.add(unit)) {
                return Named.NOT_KNOWN;
            }
            read = own(unit).orElseGet(() -> fromSources(unit));
            beingRead.remove(unit);
            named.put(unit, read);
        }
        return read;
    }

    private Optional<Named> own(UnitNumber unit) {
        Optional<Naming> latest = Optional.empty();
        for (Naming naming : names(unit)) {
            if (counts(naming.day())
                    && (naming.isTrue() || latest.filter(Naming::isTrue).isEmpty())) {
                latest = Optional.of(naming);
            }
        }
        return latest.map(naming -> new Named(
                Optional.of(naming.cultivar()),
                naming.isTrue() ? Named.How.DETERMINED : Named.How.SAID,
                Optional.empty(),
                List.of()));
    }

    private Named fromSources(UnitNumber unit) {
        Set<CultivarName> names = new TreeSet<>();
        Optional<Tag> through = Optional.empty();
        boolean unknown = false;
        for (Link link : clonal(unit)) {
            Named theirs = named(link.mother());
            theirs.cultivar().ifPresent(names::add);
            names.addAll(theirs.oneOf());
            unknown |= theirs.cultivar().isEmpty() && theirs.oneOf().isEmpty();
            through = through.or(() -> theirs.through().or(() -> Optional.of(tag(link.mother()))));
        }
        if (names.isEmpty() || unknown) {
            return Named.NOT_KNOWN;
        }
        return names.size() == 1
                ? new Named(Optional.of(names.iterator().next()), Named.How.FROM_ITS_SOURCE, through, List.of())
                : new Named(Optional.empty(), Named.How.ONE_OF_SEVERAL, Optional.empty(), List.copyOf(names));
    }

    /** Return the links to what a unit keeps the clone of. */
    List<Link> clonal(UnitNumber unit) {
        return links(unit).stream().filter(link -> link.act().keepsTheClone()).toList();
    }

    // ---- where a clone begins ----

    Origin origin(UnitNumber unit) {
        return new Origin(founders(unit));
    }

    private List<Founder> founders(UnitNumber unit) {
        List<Founder> read = founders.get(unit);
        if (read == null) {
            if (!beingRead.add(unit)) {
                return List.of();
            }
            List<Link> links = clonal(unit);
            read = links.isEmpty() ? List.of(first(unit)) : through(unit, links);
            beingRead.remove(unit);
            founders.put(unit, read);
        }
        return read;
    }

    private List<Founder> through(UnitNumber unit, List<Link> links) {
        Map<UnitNumber, Founder> found = new TreeMap<>();
        for (Link link : links) {
            for (Founder founder : founders(link.mother())) {
                Founder ours = passed(founder, unit, link);
                found.putIfAbsent(ours.unit(), ours);
            }
        }
        return found.isEmpty()
                ? List.of(founder(Founder.Kind.NOT_IN_THE_BOOK, unit, Optional.empty()))
                : List.copyOf(found.values());
    }

    /** Return a founder as it is for the child: one plant out of many seedlings is the first of its own clone. */
    private Founder passed(Founder founder, UnitNumber child, Link link) {
        boolean seedlings = founder.kind() == Founder.Kind.EACH_SEEDLING;
        if (!seedlings && founder.kind() != Founder.Kind.EACH_ACQUIRED) {
            return founder;
        }
        boolean itself = link.act() == Act.DRAWN_FROM || link.act() == Act.ONE_OF;
        if (itself && facts(child).nature() == Nature.PLANT) {
            return founder(
                    seedlings ? Founder.Kind.SEEDLING : Founder.Kind.ACQUIRED, child, Optional.of(tag(link.mother())));
        }
        if (itself || link.act() == Act.SPLIT_FROM || link.act() == Act.MERGED_FROM) {
            return founder;
        }
        return new Founder(
                seedlings ? Founder.Kind.SOME_SEEDLING : Founder.Kind.SOME_ACQUIRED,
                founder.unit(),
                founder.tag(),
                founder.day(),
                founder.of());
    }

    private Founder first(UnitNumber unit) {
        UnitFacts all = facts(unit);
        Entry entry = begun(unit).entry();
        return switch (entry.kind()) {
            case SPORT_FOUND ->
                founder(
                        Founder.Kind.SPORT,
                        unit,
                        all.links().stream()
                                .filter(link -> link.act() == Act.SPORT_OF)
                                .map(link -> tag(link.mother()))
                                .findFirst());
            case SEED_SOWN -> founder(Founder.Kind.EACH_SEEDLING, unit, Optional.empty());
            case ACQUIRED -> {
                Optional<Raised> raised = ((Acquired) entry).raised();
                boolean each = all.nature() == Nature.BATCH
                        && raised.filter(how -> how == Raised.SEED || how == Raised.COLLECTED)
                                .isPresent();
                yield founder(each ? Founder.Kind.EACH_ACQUIRED : Founder.Kind.ACQUIRED, unit, Optional.empty());
            }
            default -> founder(Founder.Kind.NOT_IN_THE_BOOK, unit, Optional.empty());
        };
    }

    private Founder founder(Founder.Kind kind, UnitNumber unit, Optional<Tag> of) {
        UnitFacts all = facts(unit);
        return new Founder(kind, unit, tag(unit), all.begun().day(), of);
    }

    // ---- how it stands ----

    State state(UnitNumber unit) {
        UnitFacts all = facts(unit);
        Optional<Standing> standing = standing(all);
        Optional<Integer> pending = standing.flatMap(Standing::pending);
        boolean pendingKnown = standing.isEmpty() || pending.isPresent();
        int growing = standing.map(Standing::growing).orElse(0);
        Map<Reason, Integer> left = left(all);
        if (!pendingKnown || pending.orElse(0) > 0) {
            State.Kind kind = all.nature() == Nature.LAYER ? State.Kind.ON_ITS_MOTHER : State.Kind.PENDING;
            return new State(kind, pending, growing, left, Optional.empty(), Optional.empty(), Optional.empty());
        }
        if (growing > 0 && all.nature() == Nature.SPORT) {
            return sport(unit, pending, left);
        }
        if (growing > 0) {
            return new State(
                    State.Kind.GROWING, pending, growing, left, Optional.empty(), Optional.empty(), Optional.empty());
        }
        Optional<Leaving> last = leavings(all).stream()
                .filter(leaving -> leaving.reason() != Reason.RETURNED && leaving.reason() != Reason.UNWORKED)
                .reduce((before, after) -> after);
        return new State(
                State.Kind.GONE,
                pending,
                0,
                left,
                last.map(Leaving::reason),
                last.flatMap(leaving -> deed(unit, leaving.order())),
                last.flatMap(Leaving::person).map(this::shown));
    }

    private Optional<Standing> standing(UnitFacts all) {
        return all.standings().stream().filter(change -> counts(change.day())).reduce((before, after) -> after);
    }

    /** Return how many plants grow under the tag of a unit; a sport is none. */
    int growing(UnitNumber unit) {
        UnitFacts all = facts(unit);
        return all.nature() == Nature.SPORT
                ? 0
                : standing(all).map(Standing::growing).orElse(0);
    }

    /** Return the state of a sport, which stands and falls with its plant. */
    private State sport(UnitNumber unit, Optional<Integer> pending, Map<Reason, Integer> left) {
        Optional<State> plant = facts(unit).links().stream()
                .filter(link -> link.act() == Act.SPORT_OF)
                .map(link -> state(link.mother()))
                .findFirst();
        return plant.filter(state -> state.kind() == State.Kind.GONE)
                .orElseGet(() -> new State(
                        State.Kind.ON_ITS_MOTHER,
                        pending,
                        1,
                        left,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }

    private List<Leaving> leavings(UnitFacts all) {
        return all.leavings().stream().filter(leaving -> counts(leaving.day())).toList();
    }

    private Map<Reason, Integer> left(UnitFacts all) {
        Map<Reason, Integer> left = new EnumMap<>(Reason.class);
        for (Leaving leaving : leavings(all)) {
            switch (leaving.reason()) {
                case RETURNED -> left.merge(Reason.SOLD, -leaving.count(), Integer::sum);
                case UNWORKED -> left.merge(Reason.WORKED, -leaving.count(), Integer::sum);
                default -> left.merge(leaving.reason(), leaving.count(), Integer::sum);
            }
        }
        left.values().removeIf(count -> count <= 0);
        return left;
    }

    /** Return what an entry says of a unit, where it still names it. */
    Optional<Deed> deed(UnitNumber unit, long order) {
        return history(unit).stream()
                .filter(event -> event.order() == order)
                .findFirst()
                .map(this::deed);
    }
}
