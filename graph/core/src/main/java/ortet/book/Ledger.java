package ortet.book;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import ortet.book.Pile.Room;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Standing;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Mention;
import ortet.entry.Mention.Role;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Retagged;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/**
 * A whole book before the judge: what a {@link Docket} is for a proposal, in so little memory that a book of millions of
 * entries can be judged.
 *
 * <p>Entries lie on a {@link Pile}; which of them name which unit is kept as whole numbers; a timeline is read when it is
 * told, unit after unit, and forgotten soon after. The rules are the same, by the same {@link Fold} and {@link Remarks};
 * a property test holds the two to one another. Good for one book; not safe for use by several threads.
 */
final class Ledger implements Witness, Intake, AutoCloseable {
    private static final int NEAREST_COMPARISONS = 4_000_000;
    private static final int SHOWN_EVERY = 10_000;
    private static final int FEW_MENTIONS = 256;
    private static final int LARGE_ENTRIES_KEPT = 8;
    private static final int ROLE_BITS = 4;
    private static final int ROLE_MASK = (1 << ROLE_BITS) - 1;
    private static final Role[] ROLES = Role.values();

    private final Pile pile;
    private final Chain chain = new Chain(Chain.START);
    private final BiConsumer<Chained, String> written;
    private final Optional<LocalDate> today;
    private final Instant now;
    private Digest last = Chain.START;

    private final TagTable tags = new TagTable();
    private final Ints mentions = new Ints();
    private final Ints mentionEnds = new Ints();
    private final Ints beginningOrders = new Ints();
    private final Ints beginningUnits = new Ints();
    private int lastUnit;

    private final List<String> files = new ArrayList<>();
    private final Ints fileBegins = new Ints();
    private final Ints lines = new Ints();

    private final Map<Long, List<Recorded>> amendments = new HashMap<>();
    private final Map<Long, Recorded> amended = new TreeMap<>();
    private final Map<Long, List<Strand>> amendedStrands = new HashMap<>();
    private final BitSet personsNamed = new BitSet();
    private final Map<Integer, Person> persons = new HashMap<>();

    private int[] namingEnds = {};
    private int[] naming = {};
    private final Map<Integer, Optional<Story>> stories;
    private final Map<Integer, List<Event>> timelines;
    private final Map<Integer, Map<Integer, Set<Role>>> rolesOfMany = new Lately<>(LARGE_ENTRIES_KEPT);
    private final Set<Integer> beingTold = new HashSet<>();
    private final BitSet remarkedOn = new BitSet();

    private final List<Fault> faults = new ArrayList<>();
    private final Map<Long, List<Warning>> warnings = new TreeMap<>();
    private final Listings listings = new Listings();
    private long nearestAsked;

    /**
     * Open an empty ledger.
     *
     * @param folder where the pile of entries may have its file
     * @param room how much is kept in memory
     * @param now when entries that were never recorded are recorded
     * @param today the last day on which something can have been done; empty when that was judged before
     * @param written is handed every entry as it is taken in, with the canonical text of its fields
     */
    Ledger(Path folder, Room room, Instant now, Optional<LocalDate> today, BiConsumer<Chained, String> written) {
        this.pile = new Pile(folder, room);
        this.stories = new Lately<>(room.stories());
        this.timelines = new Lately<>(room.stories());
        this.now = now;
        this.today = today;
        this.written = written;
        mentionEnds.add(0);
    }

    // ---- taking in ----

    @Override
    public long size() {
        return pile.size();
    }

    @Override
    public long order(EntryId id) {
        return pile.order(id);
    }

    @Override
    public Recorded entry(long order) {
        return pile.at(order);
    }

    @Override
    public Optional<Where> where(long order) {
        int line = order > lines.size() ? 0 : lines.get((int) order - 1);
        if (line == 0) {
            return Optional.empty();
        }
        int file = fileBegins.floor((int) order);
        return Optional.of(new Where(files.get(file), line, Optional.empty()));
    }

    @Override
    public void take(Proposed proposed, Where where) {
        take(new Recorded(pile.size() + 1L, now, proposed), Optional.of(where));
    }

    @Override
    public void take(Recorded recorded, Optional<Where> where) {
        if (recorded.order() != pile.size() + 1L) {
            throw Refused.because(
                    "broken-chain", "expected recorded order " + (pile.size() + 1L) + ", found " + recorded.order());
        }
        Entry entry = recorded.entry();
        String fields = CanonicalText.fields(entry);
        place(recorded.order(), where);
        pile.add(recorded, fields);
        Chained chained = chain.add(recorded, fields);
        last = chained.digest();
        written.accept(chained, fields);
        recorded.proposed().by().ifPresent(by -> personsNamed.set(by.value()));
        Docket.person(entry).ifPresent(who -> personsNamed.set(who.value()));
        if (today.isPresent() && recorded.proposed().day().first().isAfter(today.get())) {
            object(recorded.order(), "future-day", recorded.proposed().day() + " is after today, " + today.get());
        }
        if (entry.kind().phase() == Phase.AMENDMENT) {
            amend(recorded);
        } else {
            for (Mention mention : entry.mentions()) {
                mentions.add(
                        tags.number(mention.tag()) << ROLE_BITS | mention.role().ordinal());
            }
            if (Docket.begins(entry)) {
                beginningOrders.add((int) recorded.order());
                beginningUnits.add(lastUnit + 1);
                lastUnit += entry.tags().size();
            }
        }
        mentionEnds.add(mentions.size());
    }

    private void place(long order, Optional<Where> where) {
        if (where.isEmpty()) {
            lines.add(0);
            return;
        }
        if (files.isEmpty() || !files.get(files.size() - 1).equals(where.get().file())) {
            files.add(where.get().file());
            fileBegins.add((int) order);
        }
        lines.add((int) where.get().line());
    }

    private void amend(Recorded amendment) {
        long order = pile.order(Amendment.target(amendment));
        Optional<Recorded> target =
                order == 0 || order == amendment.order() ? Optional.empty() : Optional.of(pile.at(order));
        List<Recorded> before = amendments.getOrDefault(order, List.of());
        try {
            for (Strand strand : Amendment.apply(amendment, target, before, today)) {
                strand.by().ifPresent(by -> personsNamed.set(by.value()));
                Docket.person(strand.entry()).ifPresent(who -> personsNamed.set(who.value()));
            }
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                complain(new Fault(fault.rule(), where(amendment.order()), fault.text(), fault.nearest()));
            }
            return;
        }
        amendments.computeIfAbsent(order, key -> new ArrayList<>()).add(amendment);
        amended.put(order, target.orElseThrow());
    }

    /** Take in the persons of the book, after all entries. */
    void persons(List<Person> all) {
        Map<String, Person> byName = new HashMap<>();
        for (Person person : all) {
            if (persons.put(person.number().value(), person) != null) {
                faults.add(Fault.of("person-in-use", "there is a person " + person.number() + " already"));
            }
            Optional<Person> other = person.name()
                    .flatMap(name -> Optional.ofNullable(byName.put(
                            name.toUpperCase(java.util.Locale.ROOT).toLowerCase(java.util.Locale.ROOT), person)));
            other.ifPresent(same ->
                    faults.add(Fault.of("person-in-use", "there is a " + same.shown() + " already, " + same.number())));
        }
        BitSet unknown = (BitSet) personsNamed.clone();
        persons.keySet().forEach(unknown::clear);
        if (!unknown.isEmpty()) {
            for (long order = 1; order <= pile.size(); order++) {
                objectToUnknownPersons(order, unknown);
            }
        }
    }

    private void objectToUnknownPersons(long order, BitSet unknown) {
        for (Strand strand : strands(order)) {
            strand.by()
                    .filter(by -> unknown.get(by.value()))
                    .ifPresent(by -> object(order, "unknown-person", "by: no person " + by + " in the book"));
            Docket.person(strand.entry())
                    .filter(who -> unknown.get(who.value()))
                    .ifPresent(who -> object(order, "unknown-person", "person: no person " + who + " in the book"));
        }
    }

    @Override
    public Digest digest() {
        return last;
    }

    /** Return the number of the last unit. */
    int lastUnit() {
        return lastUnit;
    }

    // ---- judging ----

    /** Is handed the facts of each unit. */
    @FunctionalInterface
    interface Teller {
        void tell(UnitFacts facts);
    }

    /** Read the timeline of every unit and apply every rule; once anything is refused no more facts are told. */
    void judge(Teller teller, Progress progress) {
        tieTags();
        sort(progress);
        list();
        if (comesFromItself()) {
            return;
        }
        Carried carried = new Carried();
        Remarks remarks = new Remarks(this, listings);
        for (int number = 1; number <= lastUnit; number++) {
            UnitNumber unit = new UnitNumber(number);
            Optional<Story> story = story(unit);
            if (story.isPresent()) {
                carried.note(story.get());
                if (faults.isEmpty()) {
                    teller.tell(story.get().facts());
                }
            }
            remark(number, remarks);
            if (number % SHOWN_EVERY == 0) {
                progress.at("judging", number, lastUnit);
            }
        }
        carried.judge();
        progress.at("judging", lastUnit, lastUnit);
    }

    /** Return what is odd, in the order of the entries. */
    List<Warning> warnings() {
        return warnings.values().stream().flatMap(List::stream).distinct().toList();
    }

    /** Refuse with everything objected to, if there is anything. */
    void refuse() {
        if (!faults.isEmpty()) {
            List<Fault> sorted = new ArrayList<>(new LinkedHashSet<>(faults));
            sorted.sort(Comparator.comparing(
                    Fault::where, Comparator.comparing(where -> where.orElse(new Where("", 0, Optional.empty())))));
            throw new Refused(sorted);
        }
    }

    @Override
    public List<Strand> strands(long order) {
        List<Recorded> after = amendments.getOrDefault(order, List.of());
        return after.isEmpty()
                ? List.of(Strand.asWritten(pile.at(order)))
                : amendedStrands.computeIfAbsent(order, key -> Strand.of(amended.get(key), after));
    }

    private int mentionBegin(long order) {
        return mentionEnds.get((int) order - 1);
    }

    private int mentionEnd(long order) {
        return mentionEnds.get((int) order);
    }

    private void tieTags() {
        for (int at = 0; at < beginningOrders.size(); at++) {
            int order = beginningOrders.get(at);
            int first = beginningUnits.get(at);
            if (amendments.containsKey((long) order)) {
                for (Strand strand : strands(order)) {
                    List<Tag> given = strand.entry().tags();
                    for (int place = 0; place < given.size(); place++) {
                        tie(tags.number(given.get(place)), first + strand.position(place), order, (int)
                                strand.tagsOrder());
                    }
                }
                continue;
            }
            int unit = first;
            for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                if (ROLES[mentions.get(mention) & ROLE_MASK] == Role.BEGUN) {
                    tie(mentions.get(mention) >>> ROLE_BITS, unit++, order, order);
                }
            }
        }
        for (int order = 1; order <= pile.size(); order++) {
            if (pile.kind(order) == EntryKind.RETAGGED) {
                for (Strand strand : strands(order)) {
                    Retagged retagged = (Retagged) strand.entry();
                    int holder = unitOf(retagged.tags().get(0));
                    if (holder > 0) {
                        tie(tags.number(retagged.newTag()), holder, order, (int) strand.tagsOrder());
                    }
                }
            }
        }
    }

    private void tie(int tag, int unit, int order, int giver) {
        int holder = tags.unit(tag);
        if (holder > 0 && holder != unit) {
            object(
                    order,
                    "tag-in-use",
                    tags.tag(tag) + " is in use: " + describe(holder) + "; a tag is never given twice");
            return;
        }
        int alike = tags.alikeButForCase(tag);
        if (alike >= 0) {
            object(
                    order,
                    "tag-in-use",
                    tags.tag(tag) + " differs from " + tags.tag(alike)
                            + " in upper and lower case alone; choose another");
            return;
        }
        tags.tie(tag, unit, giver);
    }

    private String describe(int unit) {
        Recorded by = pile.at(beginning(unit));
        return by.entry().kind().word() + " on " + by.proposed().day()
                + where(by.order()).map(where -> " (" + where + ")").orElse("");
    }

    /** Return the recorded order of the entry that began a unit. */
    private int beginning(int unit) {
        return beginningOrders.get(beginningUnits.floor(unit));
    }

    @Override
    public int firstUnit(long order) {
        return beginningUnits.get(beginningOrders.floor((int) order));
    }

    private int unitOf(Tag tag) {
        OptionalInt number = tags.find(tag);
        return number.isEmpty() ? 0 : tags.unit(number.getAsInt());
    }

    /** Sort out which entries name which unit. */
    private void sort(Progress progress) {
        int[] counts = new int[lastUnit + 2];
        int[] met = new int[lastUnit + 1];
        eachNaming((unit, order) -> {
            if (met[unit] != order) {
                met[unit] = order;
                counts[unit + 1]++;
            }
        });
        for (int unit = 1; unit < counts.length; unit++) {
            counts[unit] += counts[unit - 1];
        }
        naming = new int[counts[counts.length - 1]];
        namingEnds = counts;
        int[] filled = Arrays.copyOf(counts, lastUnit + 1);
        Arrays.fill(met, 0);
        eachNaming((unit, order) -> {
            if (met[unit] != order) {
                met[unit] = order;
                naming[filled[unit]++] = order;
            }
        });
        objectToUnknownTags();
        progress.at("sorting entries", pile.size(), pile.size());
    }

    @FunctionalInterface
    private interface Naming {
        void names(int unit, int order);
    }

    private void eachNaming(Naming taker) {
        for (int order = 1; order <= pile.size(); order++) {
            if (amendments.containsKey((long) order)) {
                for (int unit : namedByAmended(order)) {
                    taker.names(unit, order);
                }
                continue;
            }
            int begun = 0;
            for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                int unit = tags.unit(mentions.get(mention) >>> ROLE_BITS);
                boolean begins = ROLES[mentions.get(mention) & ROLE_MASK] == Role.BEGUN;
                if (unit > 0 && (!begins || unit == firstUnit(order) + begun)) {
                    taker.names(unit, order);
                }
                begun += begins ? 1 : 0;
            }
        }
    }

    /** Return the units that an amended entry names now or named before. */
    private Set<Integer> namedByAmended(long order) {
        Set<Integer> units = new TreeSet<>();
        for (Strand strand : strands(order)) {
            eachRole(order, strand, (unit, role) -> units.add(unit));
        }
        List<Recorded> after = amendments.get(order);
        long latest = after.get(after.size() - 1).order();
        List<Strand> words = new ArrayList<>(Strand.beforeCrossingOut(amended.get(order), after));
        words.add(Strand.asWritten(amended.get(order)));
        for (Strand strand : words) {
            for (Mention mention : strand.entry().mentions()) {
                OptionalInt number = tags.find(mention.tag());
                if (number.isPresent() && tags.unit(number.getAsInt()) > 0 && tags.giver(number.getAsInt()) < latest) {
                    units.add(tags.unit(number.getAsInt()));
                }
            }
        }
        return units;
    }

    private void eachRole(long order, Strand strand, BiConsumer<Integer, Role> taker) {
        int begun = 0;
        for (Mention mention : strand.entry().mentions()) {
            int unit = unitOf(mention.tag());
            boolean begins = mention.role() == Role.BEGUN;
            if (unit > 0 && (!begins || unit == firstUnit(order) + strand.position(begun))) {
                taker.accept(unit, mention.role());
            }
            begun += begins ? 1 : 0;
        }
    }

    private void objectToUnknownTags() {
        for (int order = 1; order <= pile.size(); order++) {
            if (amendments.containsKey((long) order)) {
                for (Strand strand : strands(order)) {
                    for (Mention mention : strand.entry().mentions()) {
                        if (mention.role() != Role.BEGUN && unitOf(mention.tag()) == 0) {
                            unknown(order, mention.tag());
                        }
                    }
                }
                continue;
            }
            for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                int number = mentions.get(mention) >>> ROLE_BITS;
                if (tags.unit(number) == 0 && ROLES[mentions.get(mention) & ROLE_MASK] != Role.BEGUN) {
                    unknown(order, tags.tag(number));
                }
            }
        }
    }

    private void unknown(long order, Tag tag) {
        Optional<String> nearest = Optional.empty();
        nearestAsked += tags.size();
        if (nearestAsked <= NEAREST_COMPARISONS) {
            nearest = Nearest.of(tag.text(), Nearest.list(tag.text(), tags.tied(), 3));
        }
        complain(new Fault("unknown-tag", where(order), "no plant or batch " + tag, nearest));
    }

    private void list() {
        for (int order = 1; order <= pile.size(); order++) {
            if (pile.kind(order).phase() == Phase.REGISTER) {
                listings.add(strands(order));
            }
        }
    }

    /** Object to units that would come from themselves by way of others, and tell whether there are any. */
    private boolean comesFromItself() {
        if (isEveryMotherBefore()) {
            return false;
        }
        Circles circles = new Circles(this::sources);
        boolean found = false;
        for (int number = 1; number <= lastUnit; number++) {
            Optional<List<UnitNumber>> circle = circles.from(new UnitNumber(number));
            if (circle.isPresent()) {
                found = true;
                List<String> names = circle.get().stream()
                        .map(member -> begunAs(member).map(Tag::text).orElse("?"))
                        .toList();
                complain(new Fault(
                        "comes-from-itself",
                        whereOfChange(beginning(number)),
                        names.get(0) + " would come from itself by way of "
                                + String.join(", ", names.subList(1, names.size())),
                        Optional.empty()));
            }
        }
        return found;
    }

    /** Tell whether every unit was begun before all that come from it, so that there can be no circle. */
    private boolean isEveryMotherBefore() {
        for (int at = 0; at < beginningOrders.size(); at++) {
            int order = beginningOrders.get(at);
            if (amendments.containsKey((long) order)) {
                return false;
            }
            for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                Role role = ROLES[mentions.get(mention) & ROLE_MASK];
                if (role != Role.BEGUN
                        && role != Role.BESIDE
                        && tags.unit(mentions.get(mention) >>> ROLE_BITS) >= beginningUnits.get(at)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Remark on the entries that name a unit and that nobody has remarked on. */
    private void remark(int unit, Remarks remarks) {
        for (int at = namingEnds[unit]; at < namingEnds[unit + 1]; at++) {
            int order = naming[at];
            if (!remarkedOn.get(order)) {
                remarkedOn.set(order);
                strands(order).forEach(remarks::on);
            }
        }
    }

    /** Mothers who went, and layers that were on them. */
    private final class Carried {
        private final Map<Integer, List<Standing>> ends = new HashMap<>();
        private final BitSet mothers = new BitSet();
        private final Ints layers = new Ints();
        private final Ints pendingFrom = new Ints();
        private final Ints pendingTo = new Ints();

        Carried() {
            for (int order = 1; order <= pile.size(); order++) {
                if (pile.kind(order) == EntryKind.LAYER_SET) {
                    if (amendments.containsKey((long) order)) {
                        strands(order)
                                .forEach(strand ->
                                        mothers.set(unitOf(((ortet.entry.LayerSet) strand.entry()).mother())));
                        continue;
                    }
                    for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                        if (ROLES[mentions.get(mention) & ROLE_MASK] == Role.MOTHER) {
                            mothers.set(tags.unit(mentions.get(mention) >>> ROLE_BITS));
                        }
                    }
                }
            }
        }

        void note(Story story) {
            int unit = story.facts().unit().value();
            if (mothers.get(unit)) {
                List<Standing> ended =
                        story.facts().standings().stream().filter(Docket::isEnd).toList();
                if (!ended.isEmpty()) {
                    ends.put(unit, ended);
                }
            }
            if (story.facts().nature() == Nature.LAYER) {
                int from = 0;
                boolean pending = false;
                for (Standing standing : story.facts().standings()) {
                    boolean is = standing.pending().map(n -> n > 0).orElse(true);
                    int day = (int) standing.day().first().toEpochDay();
                    if (is && !pending) {
                        from = day;
                    } else if (pending && !is) {
                        add(unit, from, day);
                    }
                    pending = is;
                }
                if (pending) {
                    add(unit, from, Integer.MAX_VALUE);
                }
            }
        }

        private void add(int unit, int from, int to) {
            if (to > from) {
                layers.add(unit);
                pendingFrom.add(from);
                pendingTo.add(to);
            }
        }

        private record Carrying(int mother, Standing end) {}

        /** Object when a mother went while layers were on her. */
        void judge() {
            if (ends.isEmpty()) {
                return;
            }
            Map<Carrying, List<Tag>> carried = new LinkedHashMap<>();
            for (int at = 0; at < layers.size(); at++) {
                int layer = layers.get(at);
                for (int mother : mothersOf(layer)) {
                    for (Standing end : ends.getOrDefault(mother, List.of())) {
                        int day = (int) end.day().first().toEpochDay();
                        if (day >= pendingFrom.get(at) && day < pendingTo.get(at)) {
                            carried.computeIfAbsent(new Carrying(mother, end), key -> new ArrayList<>())
                                    .add(story(new UnitNumber(layer))
                                            .orElseThrow()
                                            .facts()
                                            .tag());
                        }
                    }
                }
            }
            carried.forEach((carrying, on) -> {
                Tag mother = story(new UnitNumber(carrying.mother()))
                        .orElseThrow()
                        .facts()
                        .tag();
                List<Tag> sorted = on.stream().distinct().sorted().toList();
                complain(new Fault(
                        "layers-on",
                        whereOfChange(carrying.end().order()),
                        Docket.layersOn(mother, carrying.end(), sorted),
                        Optional.empty()));
            });
        }

        private List<Integer> mothersOf(int layer) {
            long order = beginning(layer);
            if (!amendments.containsKey(order)) {
                for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                    if (ROLES[mentions.get(mention) & ROLE_MASK] == Role.MOTHER) {
                        return List.of(tags.unit(mentions.get(mention) >>> ROLE_BITS));
                    }
                }
                return List.of();
            }
            return timeline(new UnitNumber(layer)).stream()
                    .filter(Event::begins)
                    .map(event -> unitOf(((ortet.entry.LayerSet) event.entry()).mother()))
                    .toList();
        }
    }

    // ---- what is told of units ----

    @Override
    public Optional<UnitNumber> resolve(Tag tag) {
        int unit = unitOf(tag);
        return unit == 0 ? Optional.empty() : Optional.of(new UnitNumber(unit));
    }

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
        List<Event> events = new ArrayList<>();
        for (int at = namingEnds[unit.value()]; at < namingEnds[unit.value() + 1]; at++) {
            for (Strand strand : strands(naming[at])) {
                Set<Role> roles = roles(unit, naming[at], strand);
                if (!roles.isEmpty()) {
                    events.add(new Event(
                            unit, strand.recorded().order(), strand.day(), strand.by(), strand.entry(), roles));
                }
            }
        }
        return History.inOrder(events);
    }

    private Set<Role> roles(UnitNumber unit, long order, Strand strand) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        if (!amendments.containsKey(order) && mentionEnd(order) - mentionBegin(order) > FEW_MENTIONS) {
            return rolesOfMany
                    .computeIfAbsent((int) order, key -> rolesByUnit(order, strand))
                    .getOrDefault(unit.value(), roles);
        }
        if (!amendments.containsKey(order)) {
            int begun = 0;
            for (int mention = mentionBegin(order); mention < mentionEnd(order); mention++) {
                Role role = ROLES[mentions.get(mention) & ROLE_MASK];
                if (tags.unit(mentions.get(mention) >>> ROLE_BITS) == unit.value()
                        && (role != Role.BEGUN || unit.value() == firstUnit(order) + begun)) {
                    roles.add(role);
                }
                begun += role == Role.BEGUN ? 1 : 0;
            }
            return roles;
        }
        eachRole(order, strand, (named, role) -> {
            if (named == unit.value()) {
                roles.add(role);
            }
        });
        return roles;
    }

    /** Return the parts that units play in an entry that names many. */
    private Map<Integer, Set<Role>> rolesByUnit(long order, Strand strand) {
        Map<Integer, Set<Role>> roles = new HashMap<>();
        eachRole(
                order,
                strand,
                (unit, role) -> roles.computeIfAbsent(unit, key -> EnumSet.noneOf(Role.class))
                        .add(role));
        return roles;
    }

    @Override
    public Optional<Story> story(UnitNumber unit) {
        Optional<Story> known = stories.get(unit.value());
        if (known == null) {
            if (!beingTold.add(unit.value())) {
                return Optional.empty();
            }
            List<Long> entries = new ArrayList<>(namingEnds[unit.value() + 1] - namingEnds[unit.value()]);
            for (int at = namingEnds[unit.value()]; at < namingEnds[unit.value() + 1]; at++) {
                entries.add((long) naming[at]);
            }
            known = new Fold(this, unit, timeline(unit)).tell(entries);
            stories.put(unit.value(), known);
            beingTold.remove(unit.value());
        }
        return known;
    }

    @Override
    public Tag oldTag(UnitNumber unit) {
        return pile.at(beginning(unit.value())).entry().tags().get(unit.value() - firstUnit(beginning(unit.value())));
    }

    @Override
    public String name(PersonNumber number) {
        return Optional.ofNullable(persons.get(number.value()))
                .map(Person::shown)
                .orElse(number.toString());
    }

    // ---- saying so ----

    @Override
    public void object(UnitNumber unit, Event event, String rule, String text) {
        if (!amendments.containsKey(event.order())) {
            object(event.order(), rule, text);
            return;
        }
        complain(new Fault(
                "rests-on-it",
                whereOfChange(event.order()),
                Docket.restingOn(event.entry(), event.day().toString()) + ": " + text,
                Optional.empty()));
    }

    private void object(long order, String rule, String text) {
        complain(new Fault(rule, where(order), text, Optional.empty()));
    }

    private void complain(Fault fault) {
        faults.add(fault);
    }

    @Override
    public void remark(Event event, String rule, String text) {
        remark(event.order(), rule, text);
    }

    @Override
    public void remark(long order, String rule, String text) {
        warnings.computeIfAbsent(order, key -> new ArrayList<>())
                .add(new Warning(rule, where(order).map(where -> where + ": ").orElse("") + text));
    }

    /** Return the place of an entry, or of its amendment. */
    private Optional<Where> whereOfChange(long order) {
        return where(order)
                .or(() -> amendments.getOrDefault(order, List.of()).stream()
                        .map(amendment -> where(amendment.order()))
                        .flatMap(Optional::stream)
                        .findFirst());
    }

    @Override
    public void close() {
        pile.close();
    }
}
