package ortet.book;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.book.UnitFacts.Standing;
import ortet.entry.Acquired;
import ortet.entry.CuttingsStruck;
import ortet.entry.Drawn;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.FoundUntagged;
import ortet.entry.GraftWorked;
import ortet.entry.LayerSet;
import ortet.entry.Mention;
import ortet.entry.Mention.Role;
import ortet.entry.Merged;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Reserved;
import ortet.entry.Retagged;
import ortet.entry.Returned;
import ortet.entry.SeedSown;
import ortet.entry.Sold;
import ortet.entry.Split;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/**
 * What is before the judge: new entries beside all that the book holds of the units that they touch.
 *
 * <p>First the new entries are taken in and numbered, then tags are resolved as they would then stand, then the
 * timeline of every unit touched is read anew from its beginning. What the proposal does not touch is read from the
 * book only when a rule needs it. Good for one ruling; not safe for use by several threads.
 */
final class Docket implements Witness {
    /** How many tags may be compared to find what was meant, before faults are told without it. */
    private static final int NEAREST_COMPARISONS = 4_000_000;

    /** What asking the book for near tags counts as, in comparisons. */
    private static final int NEAREST_COST = 10_000;

    private final BookView base;
    private final Optional<LocalDate> today;

    private final Map<Long, Where> wheres = new HashMap<>();
    private final Map<Long, Recorded> fresh = new LinkedHashMap<>();
    private final Map<EntryId, Recorded> freshById = new HashMap<>();
    private final Map<Long, Integer> firstUnits = new HashMap<>();
    private final Map<Long, List<Recorded>> freshAmendments = new HashMap<>();
    private final Map<Long, Recorded> amended = new TreeMap<>();
    private final Map<Integer, Person> persons = new HashMap<>();
    private int lastUnit;

    private final Map<Long, List<Strand>> strands = new HashMap<>();
    private final Map<Tag, UnitNumber> tied = new HashMap<>();
    private final Map<String, Tag> tiedFolded = new HashMap<>();
    private final Map<Tag, Long> tiedBy = new HashMap<>();
    private final Map<Tag, Set<Long>> freedUses = new HashMap<>();
    private final Set<Tag> freed = new HashSet<>();
    private final Map<Integer, List<Event>> freshEvents = new HashMap<>();
    private final Map<Integer, Set<Long>> namedOnce = new HashMap<>();
    private final Map<Integer, Long> touchedBy = new HashMap<>();
    private final Map<Integer, List<Event>> timelines = new HashMap<>();
    private final Map<Integer, List<Long>> entriesOf = new HashMap<>();
    private final Map<Integer, Optional<Story>> stories = new HashMap<>();
    private final Set<Integer> beingTold = new HashSet<>();

    private final List<Fault> faults = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();
    private final Listings listings = new Listings();
    private int nearestAsked;

    /**
     * Open a docket on a book.
     *
     * @param base the book as it stands
     * @param today the last day on which something can have been done; empty when that was judged before
     */
    Docket(BookView base, Optional<LocalDate> today) {
        this.base = base;
        this.today = today;
        this.lastUnit = base.head().lastUnit();
        base.persons().forEach(person -> persons.put(person.number().value(), person));
    }

    // ---- taking in ----

    void add(Person person) {
        if (persons.containsKey(person.number().value())) {
            faults.add(Fault.of("person-in-use", "there is a person " + person.number() + " already"));
        }
        for (Person other : persons.values()) {
            if (person.name().isPresent()
                    && other.name()
                            .map(name -> name.equalsIgnoreCase(person.name().get()))
                            .orElse(false)) {
                faults.add(Fault.of("person-in-use", "there is a " + other.shown() + " already, " + other.number()));
            }
        }
        persons.put(person.number().value(), person);
    }

    void add(Recorded recorded, Optional<Where> where) {
        where.ifPresent(place -> wheres.put(recorded.order(), place));
        freshById.put(recorded.proposed().id(), recorded);
        Entry entry = recorded.entry();
        if (today.isPresent() && recorded.proposed().day().first().isAfter(today.get())) {
            object(recorded.order(), "future-day", recorded.proposed().day() + " is after today, " + today.get());
        }
        recorded.proposed().by().ifPresent(by -> known(recorded.order(), "by", by));
        person(entry).ifPresent(who -> known(recorded.order(), "person", who));
        if (entry.kind().phase() == Phase.AMENDMENT) {
            amend(recorded);
            return;
        }
        fresh.put(recorded.order(), recorded);
        if (begins(entry)) {
            firstUnits.put(recorded.order(), lastUnit + 1);
            lastUnit += entry.tags().size();
        }
    }

    static boolean begins(Entry entry) {
        return entry.kind().phase() == Phase.ORIGIN
                || entry.kind() == EntryKind.DRAWN
                || entry.kind() == EntryKind.SPLIT
                || entry.kind() == EntryKind.MERGED
                || entry.kind() == EntryKind.FOUND_UNTAGGED;
    }

    private void known(long order, String what, PersonNumber number) {
        if (!persons.containsKey(number.value())) {
            object(order, "unknown-person", what + ": no person " + number + " in the book");
        }
    }

    static Optional<PersonNumber> person(Entry entry) {
        if (entry instanceof Acquired acquired) {
            return acquired.supplier();
        }
        if (entry instanceof SeedSown sown) {
            return sown.supplier();
        }
        if (entry instanceof Reserved reserved) {
            return Optional.of(reserved.customer());
        }
        if (entry instanceof Sold sold) {
            return sold.customer();
        }
        if (entry instanceof Returned returned) {
            return returned.customer();
        }
        return Optional.empty();
    }

    private void amend(Recorded amendment) {
        EntryId id = Amendment.target(amendment);
        Optional<Recorded> target = Optional.ofNullable(freshById.get(id)).or(() -> base.entry(id));
        List<Strand> amendedStrands;
        try {
            List<Recorded> before = target.isPresent() ? amendments(target.get().order()) : List.of();
            amendedStrands = Amendment.apply(amendment, target, before, today);
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                complain(new Fault(fault.rule(), where(amendment.order()), fault.text(), fault.nearest()));
            }
            return;
        }
        for (Strand strand : amendedStrands) {
            strand.by().ifPresent(by -> known(amendment.order(), "by", by));
            person(strand.entry()).ifPresent(who -> known(amendment.order(), "person", who));
        }
        Recorded found = target.orElseThrow();
        freshAmendments
                .computeIfAbsent(found.order(), order -> new ArrayList<>())
                .add(amendment);
        amended.put(found.order(), found);
    }

    private List<Recorded> amendments(long order) {
        List<Recorded> later = freshAmendments.getOrDefault(order, List.of());
        if (fresh.containsKey(order)) {
            return later;
        }
        List<Recorded> before = base.amendments(order);
        if (later.isEmpty()) {
            return before;
        }
        List<Recorded> all = new ArrayList<>(before);
        all.addAll(later);
        return all;
    }

    private List<Strand> strands(Recorded recorded) {
        List<Strand> known = strands.get(recorded.order());
        if (known == null) {
            known = Strand.of(recorded, amendments(recorded.order()));
            strands.put(recorded.order(), known);
        }
        return known;
    }

    /** Return every entry that the proposal brings or amends, in recorded order. */
    private List<Recorded> dirty() {
        if (amended.isEmpty()) {
            return List.copyOf(fresh.values());
        }
        TreeMap<Long, Recorded> all = new TreeMap<>(amended);
        all.putAll(fresh);
        return List.copyOf(all.values());
    }

    // ---- judging ----

    /** Read every timeline that is touched, and apply every rule. */
    void judge(Progress progress) {
        List<Recorded> dirty = dirty();
        freeTags();
        tieTags(dirty);
        int done = 0;
        for (Recorded recorded : dirty) {
            place(recorded);
            if (++done % 10_000 == 0) {
                progress.at("sorting entries", done, dirty.size());
            }
        }
        list(dirty);
        Deque<Integer> queue = new ArrayDeque<>(touchedBy.keySet());
        done = 0;
        while (!queue.isEmpty()) {
            int unit = queue.poll();
            for (Event event : timeline(new UnitNumber(unit))) {
                for (UnitNumber other : leanOn(new UnitNumber(unit), event)) {
                    if (touchedBy.putIfAbsent(other.value(), touchedBy.get(unit)) == null) {
                        queue.add(other.value());
                    }
                }
            }
        }
        if (comesFromItself(dirty)) {
            return;
        }
        for (int unit : touched()) {
            story(new UnitNumber(unit));
            if (++done % 10_000 == 0) {
                progress.at("judging", done, touchedBy.size());
            }
        }
        layersOn();
        Remarks remarks = new Remarks(this, listings);
        for (Recorded recorded : dirty) {
            strands(recorded).forEach(remarks::on);
        }
    }

    /** Object to units that would come from themselves by way of others, and tell whether there are any. */
    private boolean comesFromItself(List<Recorded> dirty) {
        Circles circles = new Circles(this::sources);
        boolean found = false;
        for (Recorded recorded : dirty) {
            if (!begins(recorded.entry())) {
                continue;
            }
            for (Strand strand : strands(recorded)) {
                for (UnitNumber unit : resolveAll(strand.entry().tags())) {
                    Optional<List<UnitNumber>> circle = circles.from(unit);
                    if (circle.isPresent()) {
                        found = true;
                        List<String> names = circle.get().stream()
                                .map(member -> begunAs(member).map(Tag::text).orElse("?"))
                                .toList();
                        complain(new Fault(
                                "comes-from-itself",
                                whereOfChange(recorded.order()),
                                names.get(0) + " would come from itself by way of "
                                        + String.join(", ", names.subList(1, names.size())),
                                Optional.empty()));
                    }
                }
            }
        }
        return found;
    }

    /** Return the units whose story depends on this event of another. */
    private List<UnitNumber> leanOn(UnitNumber unit, Event event) {
        if (event.entry() instanceof Split split && event.roles().contains(Role.SOURCE)) {
            return resolveAll(split.tags());
        }
        if (event.entry() instanceof Merged merged && event.roles().contains(Role.MERGED)) {
            return resolveAll(merged.tags());
        }
        if (event.begins()) {
            if (event.entry() instanceof GraftWorked graft) {
                return graft.stock().flatMap(this::resolve).map(List::of).orElse(List.of());
            }
            if (event.entry() instanceof Split split) {
                // A graft's failure gives its rootstock back also after the tray was split.
                List<UnitNumber> stocks = new ArrayList<>();
                rootEvent(unit, split)
                        .filter(root -> root instanceof GraftWorked)
                        .flatMap(root -> ((GraftWorked) root).stock())
                        .flatMap(this::resolve)
                        .ifPresent(stocks::add);
                return stocks;
            }
        }
        return belowTheUnion(event);
    }

    private Optional<Entry> rootEvent(UnitNumber unit, Split split) {
        Entry entry = split;
        UnitNumber at = unit;
        for (int depth = 0; depth < 1000 && entry instanceof Split from; depth++) {
            Optional<UnitNumber> source = resolve(from.source());
            if (source.isEmpty() || source.get().equals(at)) {
                return Optional.empty();
            }
            at = source.get();
            Optional<Event> begun = timeline(at).stream().filter(Event::begins).findFirst();
            if (begun.isEmpty()) {
                return Optional.empty();
            }
            entry = begun.get().entry();
        }
        return Optional.of(entry);
    }

    private List<UnitNumber> resolveAll(List<Tag> tags) {
        return tags.stream().map(this::resolve).flatMap(Optional::stream).toList();
    }

    /** Free the tags that an amended entry gave, except those that another entry gives as well. */
    private void freeTags() {
        for (Recorded recorded : amended.values()) {
            if (fresh.containsKey(recorded.order())) {
                continue;
            }
            for (Strand before : Strand.of(recorded, base.amendments(recorded.order()))) {
                List<Tag> given = begins(before.entry())
                        ? before.entry().tags()
                        : before.entry() instanceof Retagged retagged ? List.of(retagged.newTag()) : List.of();
                given.forEach(tag ->
                        freedUses.computeIfAbsent(tag, key -> new HashSet<>()).add(before.tagsOrder()));
            }
        }
        for (Tag tag : freedUses.keySet()) {
            if (base.unit(tag).map(unit -> usesLeft(unit, tag).isEmpty()).orElse(true)) {
                freed.add(tag);
            }
        }
    }

    /** Return the recorded orders of what gives the unit the tag in the book and is not amended. */
    private List<Long> usesLeft(UnitNumber unit, Tag tag) {
        Set<Long> gone = freedUses.getOrDefault(tag, Set.of());
        return base.facts(unit).stream()
                .flatMap(facts -> facts.tags().stream())
                .filter(use -> use.tag().equals(tag))
                .map(UnitFacts.TagUse::order)
                .filter(order -> !gone.contains(order))
                .toList();
    }

    private void tieTags(List<Recorded> dirty) {
        for (Recorded recorded : dirty) {
            if (!begins(recorded.entry())) {
                continue;
            }
            for (Strand strand : strands(recorded)) {
                List<Tag> tags = strand.entry().tags();
                int first = firstUnit(recorded);
                for (int at = 0; at < tags.size(); at++) {
                    tie(
                            tags.get(at),
                            new UnitNumber(first + strand.position(at)),
                            recorded.order(),
                            strand.tagsOrder());
                }
            }
        }
        for (Recorded recorded : dirty) {
            if (recorded.entry() instanceof Retagged) {
                for (Strand strand : strands(recorded)) {
                    Retagged retagged = (Retagged) strand.entry();
                    resolve(retagged.tags().get(0))
                            .ifPresent(unit -> tie(retagged.newTag(), unit, recorded.order(), strand.tagsOrder()));
                }
            }
        }
    }

    /** Return the number of the first unit that an entry began; the others follow. */
    private int firstUnit(Recorded recorded) {
        Integer known = firstUnits.get(recorded.order());
        if (known == null) {
            known = Strand.of(recorded, base.amendments(recorded.order())).stream()
                    .flatMap(strand -> strand.entry().tags().stream())
                    .map(base::unit)
                    .flatMap(Optional::stream)
                    .map(unit -> unit.value()
                            - base.facts(unit).orElseThrow().begun().position())
                    .findFirst()
                    .orElseThrow();
            firstUnits.put(recorded.order(), known);
        }
        return known;
    }

    private void tie(Tag tag, UnitNumber unit, long order, long by) {
        Optional<UnitNumber> holder = resolve(tag);
        if (holder.isPresent() && !holder.get().equals(unit)) {
            object(order, "tag-in-use", tag + " is in use: " + describe(holder.get()) + "; a tag is never given twice");
            return;
        }
        String folded = tag.text().toLowerCase(Locale.ROOT);
        Tag like = tiedFolded.putIfAbsent(folded, tag);
        Optional<Tag> alike = Optional.ofNullable(like)
                .filter(other -> !other.equals(tag))
                .or(() -> base.alikeButForCase(tag).filter(other -> !freed.contains(other)));
        if (alike.isPresent()) {
            object(
                    order,
                    "tag-in-use",
                    tag + " differs from " + alike.get() + " in upper and lower case alone; choose another");
            return;
        }
        tied.put(tag, unit);
        tiedBy.merge(tag, by, Math::min);
    }

    private String describe(UnitNumber unit) {
        Recorded by = firstUnits.entrySet().stream()
                .filter(entry -> fresh.containsKey(entry.getKey()))
                .filter(entry -> unit.value() >= entry.getValue()
                        && unit.value()
                                < entry.getValue()
                                        + fresh.get(entry.getKey())
                                                .entry()
                                                .tags()
                                                .size())
                .map(entry -> fresh.get(entry.getKey()))
                .findFirst()
                .orElse(null);
        if (by != null) {
            return by.entry().kind().word() + " on " + by.proposed().day()
                    + where(by.order()).map(where -> " (" + where + ")").orElse("");
        }
        return base.facts(unit)
                .map(facts -> facts.nature().name().toLowerCase(Locale.ROOT) + ", begun on "
                        + facts.begun().day())
                .orElse("another unit");
    }

    /** Return the unit that the tag names as the book would then stand. */
    @Override
    public Optional<UnitNumber> resolve(Tag tag) {
        UnitNumber unit = tied.get(tag);
        if (unit != null) {
            return Optional.of(unit);
        }
        return freed.contains(tag) ? Optional.empty() : base.unit(tag);
    }

    /** Put the strands of an entry on the timelines of the units that they name. */
    private void place(Recorded recorded) {
        for (Strand strand : strands(recorded)) {
            Map<Integer, Set<Role>> roles = new LinkedHashMap<>();
            int begun = 0;
            for (Mention mention : strand.entry().mentions()) {
                Optional<UnitNumber> unit = resolve(mention.tag());
                if (mention.role() == Role.BEGUN) {
                    int expected = firstUnit(recorded) + strand.position(begun++);
                    unit = unit.filter(found -> found.value() == expected);
                }
                if (unit.isEmpty()) {
                    if (mention.role() != Role.BEGUN) {
                        unknown(recorded.order(), mention.tag());
                    }
                    continue;
                }
                roles.computeIfAbsent(unit.get().value(), key -> new HashSet<>(2))
                        .add(mention.role());
            }
            roles.forEach((unit, played) -> {
                freshEvents
                        .computeIfAbsent(unit, key -> new ArrayList<>())
                        .add(new Event(
                                new UnitNumber(unit),
                                recorded.order(),
                                strand.day(),
                                strand.by(),
                                strand.entry(),
                                played));
                touch(unit, recorded.order());
            });
        }
        List<Recorded> amendments = freshAmendments.getOrDefault(recorded.order(), List.of());
        if (amendments.isEmpty()) {
            return;
        }
        if (!fresh.containsKey(recorded.order())) {
            for (Strand before : Strand.of(recorded, base.amendments(recorded.order()))) {
                for (Mention mention : before.entry().mentions()) {
                    base.unit(mention.tag()).ifPresent(unit -> touch(unit.value(), recorded.order()));
                }
            }
        }
        for (UnitNumber unit : namedInEarlierWords(recorded)) {
            namedOnce.computeIfAbsent(unit.value(), key -> new TreeSet<>()).add(recorded.order());
            touch(unit.value(), recorded.order());
        }
    }

    /**
     * Return the units that an amended entry named as first written, or before it was crossed out, as the tags stood
     * when it was amended.
     */
    private Set<UnitNumber> namedInEarlierWords(Recorded recorded) {
        List<Recorded> amendments = amendments(recorded.order());
        if (amendments.isEmpty()) {
            return Set.of();
        }
        long last = amendments.get(amendments.size() - 1).order();
        Set<UnitNumber> units = new LinkedHashSet<>();
        List<Strand> words = new ArrayList<>(Strand.beforeCrossingOut(recorded, amendments));
        words.add(Strand.asWritten(recorded));
        for (Strand strand : words) {
            for (Mention mention : strand.entry().mentions()) {
                resolve(mention.tag())
                        .filter(unit -> tagOrder(unit, mention.tag()) < last)
                        .ifPresent(units::add);
            }
        }
        return units;
    }

    /** Return every unit touched, by number. */
    private int[] touched() {
        return touchedBy.keySet().stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    private void touch(int unit, long order) {
        touchedBy.merge(unit, order, Math::min);
    }

    private void unknown(long order, Tag tag) {
        Optional<String> nearest = Optional.empty();
        nearestAsked += NEAREST_COST + tied.size();
        if (nearestAsked <= NEAREST_COMPARISONS) {
            Set<String> near = new LinkedHashSet<>(base.nearest(tag));
            near.addAll(Nearest.list(
                    tag.text(), tied.keySet().stream().map(Tag::text).toList(), 3));
            nearest = Nearest.of(tag.text(), near);
        }
        complain(new Fault("unknown-tag", where(order), "no plant or batch " + tag, nearest));
    }

    private void list(Collection<Recorded> dirty) {
        for (Recorded recorded : base.listings()) {
            if (!amended.containsKey(recorded.order())) {
                listings.add(strands(recorded));
            }
        }
        for (Recorded recorded : dirty) {
            if (recorded.entry().kind().phase() == Phase.REGISTER) {
                listings.add(strands(recorded));
            }
        }
    }

    /** Return the timeline of a unit as the book would then stand. */
    @Override
    public List<Event> timeline(UnitNumber unit) {
        List<Event> known = timelines.get(unit.value());
        if (known == null) {
            known = readTimeline(unit);
            timelines.put(unit.value(), known);
        }
        return known;
    }

    private List<Event> readTimeline(UnitNumber unit) {
        List<Event> events = new ArrayList<>(freshEvents.getOrDefault(unit.value(), List.of()));
        List<Recorded> before = base.entries(unit);
        Set<Long> orders = new TreeSet<>(namedOnce.getOrDefault(unit.value(), Set.of()));
        events.forEach(event -> orders.add(event.order()));
        if (!before.isEmpty()) {
            Set<Tag> tagsBefore = new HashSet<>(base.tags(unit));
            Set<Tag> tags = new HashSet<>();
            tagsBefore.stream()
                    .filter(tag -> resolve(tag).equals(Optional.of(unit)))
                    .forEach(tags::add);
            for (Recorded recorded : before) {
                if (amended.containsKey(recorded.order())) {
                    continue;
                }
                for (Strand strand : strands(recorded)) {
                    History.event(unit, strand, tags).ifPresent(event -> {
                        events.add(event);
                        orders.add(event.order());
                    });
                    lostNames(unit, strand, tagsBefore, tags);
                }
                if (!orders.contains(recorded.order())
                        && namedInEarlierWords(recorded).contains(unit)) {
                    orders.add(recorded.order());
                }
            }
        }
        entriesOf.put(unit.value(), List.copyOf(orders));
        return History.inOrder(events);
    }

    /** Object when an entry that stays as it is names the unit by a tag that it would no longer bear. */
    private void lostNames(UnitNumber unit, Strand strand, Set<Tag> tagsBefore, Set<Tag> tags) {
        for (Mention mention : strand.entry().mentions()) {
            if (tagsBefore.contains(mention.tag()) && !tags.contains(mention.tag())) {
                long order =
                        touchedBy.getOrDefault(unit.value(), strand.recorded().order());
                complain(new Fault(
                        "rests-on-it",
                        whereOfChange(order),
                        restingOn(strand.entry(), strand.day().toString()) + ", and names " + mention.tag(),
                        Optional.empty()));
            }
        }
    }

    /** Return the story of a unit; empty when nothing begins it. */
    @Override
    public Optional<Story> story(UnitNumber unit) {
        Optional<Story> known = stories.get(unit.value());
        if (known == null) {
            if (!beingTold.add(unit.value())) {
                return Optional.empty();
            }
            List<Event> events = timeline(unit);
            known = new Fold(this, unit, events).tell(entriesOf.getOrDefault(unit.value(), List.of()));
            stories.put(unit.value(), known);
            beingTold.remove(unit.value());
        }
        return known;
    }

    private Recorded recorded(long order) {
        Recorded found = fresh.get(order);
        if (found == null) {
            found = amended.get(order);
        }
        return found != null ? found : base.entry(order).orElseThrow();
    }

    @Override
    public List<Strand> strands(long order) {
        return strands(recorded(order));
    }

    @Override
    public int firstUnit(long order) {
        Integer known = firstUnits.get(order);
        return known != null ? known : firstUnit(recorded(order));
    }

    private long tagOrder(UnitNumber unit, Tag tag) {
        long order = tiedBy.getOrDefault(tag, Long.MAX_VALUE);
        for (long use : usesLeft(unit, tag)) {
            order = Math.min(order, use);
        }
        return order;
    }

    /** Return a tag that the unit bore before. */
    @Override
    public Tag oldTag(UnitNumber unit) {
        List<Tag> tags = base.tags(unit);
        return tags.isEmpty()
                ? freshEvents.get(unit.value()).get(0).entry().tags().get(0)
                : tags.get(tags.size() - 1);
    }

    // ---- rules between units ----

    private record Carrying(UnitNumber mother, Standing end) {}

    /** Object when a mother went while layers were on her. */
    private void layersOn() {
        Map<Carrying, List<Tag>> carried = new LinkedHashMap<>();
        for (int number : touched()) {
            UnitNumber unit = new UnitNumber(number);
            for (Event event : timeline(unit)) {
                if (event.entry() instanceof LayerSet set) {
                    if (event.begins()) {
                        resolve(set.mother()).ifPresent(mother -> carry(carried, mother, unit));
                    } else if (event.roles().contains(Role.MOTHER) && hasEnded(unit)) {
                        resolveAll(set.tags()).forEach(layer -> carry(carried, unit, layer));
                    }
                }
            }
        }
        carried.forEach((carrying, layers) -> {
            Story story = story(carrying.mother()).orElseThrow();
            List<Tag> sorted = layers.stream().distinct().sorted().toList();
            String text = layersOn(story.facts().tag(), carrying.end(), sorted);
            long order = fresh.containsKey(carrying.end().order())
                    ? carrying.end().order()
                    : touchedBy.getOrDefault(
                            resolve(sorted.get(0)).map(UnitNumber::value).orElse(0),
                            touchedBy.getOrDefault(carrying.mother().value(), 0L));
            complain(new Fault("layers-on", whereOfChange(order), text, Optional.empty()));
        });
    }

    static String layersOn(Tag mother, Standing end, List<Tag> layers) {
        return mother + " was gone on " + end.day() + " with "
                + (layers.size() == 1 ? "a layer" : layers.size() + " layers") + " on her (" + Tags.brief(layers)
                + "): say first what became of them (severed, failed or withdrawn)";
    }

    private boolean hasEnded(UnitNumber unit) {
        return story(unit)
                .map(story -> story.facts().standings().stream().anyMatch(Docket::isEnd))
                .orElse(false);
    }

    static boolean isEnd(Standing standing) {
        return standing.growing() == 0 && standing.pending().map(n -> n == 0).orElse(false);
    }

    private void carry(Map<Carrying, List<Tag>> carried, UnitNumber mother, UnitNumber layer) {
        Optional<Story> hers = story(mother);
        Optional<Story> its = story(layer);
        if (hers.isEmpty() || its.isEmpty()) {
            return;
        }
        for (Standing standing : hers.get().facts().standings()) {
            if (isEnd(standing) && its.get().isPending(standing.day().first())) {
                carried.computeIfAbsent(new Carrying(mother, standing), key -> new ArrayList<>())
                        .add(its.get().facts().tag());
            }
        }
    }

    /** Return what to call a person. */
    @Override
    public String name(PersonNumber number) {
        return Optional.ofNullable(persons.get(number.value()))
                .map(Person::shown)
                .orElse(number.toString());
    }

    // ---- saying so ----

    /** Object to an event of a unit's timeline. */
    @Override
    public void object(UnitNumber unit, Event event, String rule, String text) {
        if (fresh.containsKey(event.order()) && !freshAmendments.containsKey(event.order())) {
            object(event.order(), rule, text);
            return;
        }
        long order = amended.containsKey(event.order())
                ? event.order()
                : touchedBy.getOrDefault(unit.value(), event.order());
        complain(new Fault(
                "rests-on-it",
                whereOfChange(order),
                restingOn(event.entry(), event.day().toString()) + ": " + text,
                Optional.empty()));
    }

    static String restingOn(Entry entry, String day) {
        String tags = Tags.brief(entry.tags());
        return "then this could not be true any more: " + entry.kind().word() + (tags.isEmpty() ? "" : " " + tags)
                + " on " + day;
    }

    private void object(long order, String rule, String text) {
        complain(new Fault(rule, where(order), text, Optional.empty()));
    }

    private void complain(Fault fault) {
        faults.add(fault);
    }

    /** Remark on something odd. */
    @Override
    public void remark(Event event, String rule, String text) {
        if (fresh.containsKey(event.order())) {
            remark(event.order(), rule, text);
        }
    }

    /** Remark on something odd in an entry of the proposal. */
    @Override
    public void remark(long order, String rule, String text) {
        warnings.add(new Warning(rule, where(order).map(where -> where + ": ").orElse("") + text));
    }

    private Optional<Where> where(long order) {
        return Optional.ofNullable(wheres.get(order));
    }

    /** Return the place of a new entry, or of the amendment of an old one. */
    private Optional<Where> whereOfChange(long order) {
        return where(order)
                .or(() -> freshAmendments.getOrDefault(order, List.of()).stream()
                        .map(amendment -> where(amendment.order()))
                        .flatMap(Optional::stream)
                        .findFirst());
    }

    // ---- the ruling ----

    /**
     * Return what follows.
     *
     * @throws Refused with everything objected to
     */
    Ruling ruling(List<Chained> chained, List<Person> newPersons, int alreadyThere) {
        if (!faults.isEmpty()) {
            Set<Fault> distinct = new LinkedHashSet<>(faults);
            List<Fault> sorted = new ArrayList<>(distinct);
            sorted.sort(Comparator.comparing(
                    Fault::where, Comparator.comparing(where -> where.orElse(new Where("", 0, Optional.empty())))));
            throw new Refused(sorted);
        }
        Head before = base.head();
        List<UnitFacts> facts = new ArrayList<>(touchedBy.size());
        List<UnitNumber> vanished = new ArrayList<>();
        for (int number : touched()) {
            UnitNumber unit = new UnitNumber(number);
            Optional<Story> story = story(unit);
            if (story.isPresent()) {
                facts.add(story.get().facts());
            } else {
                vanished.add(unit);
            }
        }
        Head head = chained.isEmpty()
                ? before
                : new Head(
                        before.bookId(),
                        before.zone(),
                        chained.get(chained.size() - 1).recorded().order(),
                        chained.get(chained.size() - 1).digest(),
                        lastUnit);
        return new Ruling(
                head,
                chained,
                newPersons,
                facts,
                vanished,
                alreadyThere,
                lastUnit - before.lastUnit(),
                List.copyOf(new LinkedHashSet<>(warnings)));
    }

    void conflict(Proposed proposed, Recorded before, Optional<Where> where) {
        complain(new Fault("changed-row", where, changes(before.proposed(), proposed), Optional.empty()));
    }

    static String changes(Proposed before, Proposed now) {
        List<String> changes = new ArrayList<>();
        Map<String, String> old = texts(before);
        Map<String, String> fresh = texts(now);
        Set<String> columns = new LinkedHashSet<>(old.keySet());
        columns.addAll(fresh.keySet());
        for (String column : columns) {
            String was = old.getOrDefault(column, "");
            String is = fresh.getOrDefault(column, "");
            if (!was.equals(is)) {
                changes.add(column + " \"" + was + "\" in the book, \"" + is + "\" here");
            }
        }
        return "this entry is in the book with other words: " + String.join("; ", changes)
                + ". Correct the entry in the book instead";
    }

    private static Map<String, String> texts(Proposed proposed) {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("day", proposed.day().toString());
        texts.put("by", proposed.by().map(PersonNumber::toString).orElse(""));
        texts.put("kind", proposed.entry().kind().word());
        texts.putAll(Form.write(proposed.entry()));
        return texts;
    }

    /** Return what has wood from below the union of a unit that an event of it is about. */
    private List<UnitNumber> belowTheUnion(Event event) {
        if (event.roles().contains(Role.MOTHER)) {
            boolean below =
                    event.entry() instanceof LayerSet set && set.belowUnion().orElse(false)
                            || event.entry() instanceof CuttingsStruck struck
                                    && struck.belowUnion().orElse(false);
            return below ? resolveAll(event.entry().tags()) : List.of();
        }
        // Where it comes from a batch of grafts, what is below depends on how that batch was worked.
        boolean from = event.entry() instanceof Drawn && event.roles().contains(Role.SOURCE)
                || event.entry() instanceof FoundUntagged && event.roles().contains(Role.CANDIDATE);
        boolean changed = from
                && amended.values().stream()
                        .anyMatch(recorded ->
                                recorded.entry() instanceof GraftWorked || recorded.entry() instanceof Acquired);
        return changed ? resolveAll(event.entry().tags()) : List.of();
    }
}
