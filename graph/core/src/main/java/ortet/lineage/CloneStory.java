package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.nursery.PlacesOfUnits;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;
import ortet.value.When;

/**
 * The clone of a unit: all that is of one genotype with it for certain, and, apart from that, what may be.
 *
 * @param asked the tag asked about
 * @param asOf the day
 * @param row the clone at a glance; absent where the unit is a batch of several
 * @param mayBe what the unit, or the first of its clone, is one of; empty where that is known for certain
 * @param members the members by generation, then by day and tag
 * @param names the names that members bear by their own entries, and how many bear them
 * @param alike other clones of which some member is said to be of the same cultivar: not known to be this clone
 * @param places where the living members stand, and how many plants; those of which nobody said under no place
 * @param doubtful tags of units that may be of it: mixed trays, and what was taken from these
 * @param doubtfulLiving how many plants grow under these
 */
public record CloneStory(
        Tag asked,
        LocalDate asOf,
        Optional<CloneRow> row,
        List<MayBe> mayBe,
        List<Member> members,
        List<SaidName> names,
        List<CloneRow> alike,
        List<AtPlace> places,
        List<Tag> doubtful,
        long doubtfulLiving) {

    public CloneStory {
        Objects.requireNonNull(asked);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(row);
        mayBe = List.copyOf(mayBe);
        members = List.copyOf(members);
        names = List.copyOf(names);
        alike = List.copyOf(alike);
        places = List.copyOf(places);
        doubtful = List.copyOf(doubtful);
    }

    /**
     * What something is one of.
     *
     * @param tag the tag of the first unit of a clone, or of a batch
     * @param isEach whether it is one of the plants of that batch, each of which is a clone of its own
     */
    public record MayBe(Tag tag, boolean isEach) {
        public MayBe {
            Objects.requireNonNull(tag);
        }

        @Override
        public String toString() {
            return isEach ? "one of the plants of " + tag : "the clone of " + tag;
        }
    }

    /**
     * A member of the clone.
     *
     * @param unit the unit
     * @param tag its tag on the day
     * @param generation how many acts of propagation it is away from the first
     * @param act how it was raised; absent for the first
     * @param from what it was raised from, one or several of the same clone; empty for the first
     * @param begun when it began
     * @param stands how it stands
     * @param place where it stands, while something of it is there
     * @param own the name that it bears by its own entries
     */
    public record Member(
            UnitNumber unit,
            Tag tag,
            int generation,
            Optional<Act> act,
            List<Tag> from,
            When begun,
            Stands stands,
            Optional<Place> place,
            Optional<CultivarName> own) {
        public Member {
            Objects.requireNonNull(unit);
            Objects.requireNonNull(tag);
            Objects.requireNonNull(act);
            from = List.copyOf(from);
            Objects.requireNonNull(begun);
            Objects.requireNonNull(stands);
            Objects.requireNonNull(place);
            Objects.requireNonNull(own);
        }
    }

    /**
     * A name that members bear.
     *
     * @param cultivar the name
     * @param said how many are said to be it
     * @param determined how many were determined to be it
     */
    public record SaidName(CultivarName cultivar, int said, int determined) {}

    /**
     * A place where members stand.
     *
     * @param place the place; absent where nobody said
     * @param growing how many plants grow there
     * @param pending how many units are pending there
     */
    public record AtPlace(Optional<Place> place, long growing, long pending) {}

    /**
     * Return the clone of a unit.
     *
     * @throws Refused when there is no such unit, or none yet on that day
     */
    public static CloneStory of(BookView view, Snapshot snapshot, Tag asked) {
        UnitNumber unit = Lookup.unit(view, asked);
        if (!snapshot.isThere(unit.value())) {
            throw Refused.because(
                    "before-it-began",
                    asked + " began on "
                            + view.facts(unit)
                                    .map(facts -> facts.begun().day().toString())
                                    .orElse("a later day")
                            + ", after " + snapshot.asOf());
        }
        return new Teller(view, snapshot).story(asked, unit.value());
    }

    private static final class Teller {
        private final BookView view;
        private final Snapshot snapshot;
        private final Clones clones;
        private final CloneTable.Counting counting;

        Teller(BookView view, Snapshot snapshot) {
            this.view = view;
            this.snapshot = snapshot;
            this.clones = Clones.of(snapshot);
            this.counting = new CloneTable.Counting(snapshot, clones);
        }

        CloneStory story(Tag asked, int unit) {
            int first = clones.first(unit);
            if (first == Clones.SEVERAL) {
                return new CloneStory(
                        asked,
                        snapshot.asOf(),
                        Optional.empty(),
                        mayBe(unit),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        0);
            }
            List<Integer> members = new ArrayList<>();
            for (int number = 1; number <= snapshot.lastUnit(); number++) {
                if (snapshot.isThere(number) && clones.first(number) == first) {
                    members.add(number);
                }
            }
            Map<Integer, Place> stands = places(members);
            List<Integer> doubtful = doubtful(members, first);
            Map<Integer, Tag> tags = tags(members, doubtful);
            List<Member> told = members.stream()
                    .map(member -> member(member, first, tags, stands))
                    .sorted(Comparator.comparing(Member::generation)
                            .thenComparing(member -> member.begun().first())
                            .thenComparing(Member::tag))
                    .toList();
            return new CloneStory(
                    asked,
                    snapshot.asOf(),
                    Optional.of(counting.rows(view, List.of(first)).get(0)),
                    clones.kind(first) == CloneKind.ONE_OF_SEVERAL ? mayBe(first) : List.of(),
                    told,
                    names(members),
                    alike(first, Set.copyOf(doubtful)),
                    atPlaces(members, stands),
                    doubtful.stream().map(tags::get).sorted().toList(),
                    doubtful.stream()
                            .mapToLong(one -> Stands.of(snapshot, one).growing())
                            .sum());
        }

        private List<MayBe> mayBe(int unit) {
            Set<Integer> candidates = clones.mayBe(unit);
            Map<Integer, Tag> tags = TagsOfUnits.of(view, candidates, snapshot.asOf());
            return candidates.stream()
                    .map(one -> new MayBe(tags.get(one), clones.isEach(one)))
                    .sorted(Comparator.comparing(MayBe::tag))
                    .toList();
        }

        private Map<Integer, Tag> tags(List<Integer> members, List<Integer> doubtful) {
            Set<Integer> wanted = new LinkedHashSet<>(members);
            wanted.addAll(doubtful);
            for (int member : members) {
                for (int link = snapshot.firstUp(member); link < snapshot.endUp(member); link++) {
                    wanted.add(snapshot.mother(link));
                }
            }
            return TagsOfUnits.of(view, wanted, snapshot.asOf());
        }

        private Member member(int unit, int first, Map<Integer, Tag> tags, Map<Integer, Place> places) {
            Optional<Act> act = Optional.empty();
            List<Tag> from = new ArrayList<>();
            for (int link = snapshot.firstUp(unit); unit != first && link < snapshot.endUp(unit); link++) {
                if (snapshot.act(link).keepsTheClone()) {
                    act = Optional.of(snapshot.act(link));
                    from.add(tags.get(snapshot.mother(link)));
                }
            }
            int own = snapshot.ownName(unit);
            return new Member(
                    new UnitNumber(unit),
                    tags.get(unit),
                    clones.generation(unit),
                    act,
                    from,
                    snapshot.begun(unit),
                    Stands.of(snapshot, unit),
                    Optional.ofNullable(places.get(unit)),
                    own < 0
                            ? Optional.empty()
                            : Optional.of(snapshot.cultivars().get(own)));
        }

        /** Return where those members stand of which something is there. */
        private Map<Integer, Place> places(List<Integer> members) {
            List<Integer> there = members.stream()
                    .filter(member -> Stands.of(snapshot, member).isThere())
                    .toList();
            return PlacesOfUnits.of(view, there, snapshot.asOf());
        }

        private List<AtPlace> atPlaces(List<Integer> members, Map<Integer, Place> places) {
            Map<Optional<String>, long[]> sums =
                    new TreeMap<>(Comparator.comparing((Optional<String> place) -> place.isEmpty())
                            .thenComparing(place -> place.orElse("")));
            for (int member : members) {
                Stands stands = Stands.of(snapshot, member);
                if (stands.growing() > 0 || stands.isPending()) {
                    long[] sum = sums.computeIfAbsent(
                            Optional.ofNullable(places.get(member)).map(Place::name), place -> new long[2]);
                    sum[0] += stands.growing();
                    sum[1] += stands.pending().orElse(0);
                }
            }
            return sums.entrySet().stream()
                    .map(sum -> new AtPlace(sum.getKey().map(Place::new), sum.getValue()[0], sum.getValue()[1]))
                    .toList();
        }

        private List<SaidName> names(List<Integer> members) {
            Map<Integer, int[]> counts = new TreeMap<>();
            for (int member : members) {
                if (snapshot.ownName(member) >= 0) {
                    counts.computeIfAbsent(snapshot.ownName(member), name -> new int[2])[
                            snapshot.isDetermined(member) ? 1 : 0]++;
                }
            }
            return counts.entrySet().stream()
                    .map(count -> new SaidName(
                            snapshot.cultivars().get(count.getKey()), count.getValue()[0], count.getValue()[1]))
                    .toList();
        }

        /** Return other clones of the same name, but for those told of as doubtful already. */
        private List<CloneRow> alike(int first, Set<Integer> doubtful) {
            Set<Integer> names = counting.bears(first);
            List<Integer> others = counting.firsts().stream()
                    .filter(other -> other != first && !doubtful.contains(other))
                    .filter(other -> counting.bears(other).stream()
                            .anyMatch(name -> names.contains(name)
                                    && snapshot.cultivars().get(name).epithet().isPresent()))
                    .toList();
            return counting.rows(view, others).stream()
                    .sorted(Comparator.comparing(CloneRow::tags).reversed().thenComparing(CloneRow::tag))
                    .toList();
        }

        /** Return what comes from members and may be of the clone, but is not for certain. */
        private List<Integer> doubtful(List<Integer> members, int first) {
            Set<Integer> found = new TreeSet<>();
            Set<Integer> met = new HashSet<>(members);
            List<Integer> open = new ArrayList<>(members);
            for (int at = 0; at < open.size(); at++) {
                for (int down = 0; down < snapshot.countDown(open.get(at)); down++) {
                    int link = snapshot.down(open.get(at), down);
                    int child = snapshot.child(link);
                    if (snapshot.act(link).keepsTheClone() && met.add(child)) {
                        open.add(child);
                        if (clones.first(child) != first) {
                            found.add(child);
                        }
                    }
                }
            }
            return List.copyOf(found);
        }
    }
}
