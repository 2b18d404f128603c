package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Direction;
import ortet.book.Family;
import ortet.book.Link;
import ortet.book.Lookup;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/**
 * Everything that was raised from a unit, through every link.
 *
 * <p>Reads the rows of the family alone. Each unit is told once; reached by another way, it is named with a reference.
 *
 * @param asked the tag asked about
 * @param tag the tag that the unit bears on the day
 * @param asOf the day
 * @param stands how the unit itself stands
 * @param own the name that the unit bears by its own entries
 * @param below what was raised from it
 * @param units how many units were raised from it and pass the filters
 * @param growing how many plants grow under these
 * @param pending how many units of them are neither taken nor failed
 * @param sold how many of them were sold and have not come back
 * @param isWhole whether nothing was left out because there was too much
 */
public record Progeny(
        Tag asked,
        Tag tag,
        LocalDate asOf,
        Stands stands,
        Optional<CultivarName> own,
        List<Branch> below,
        int units,
        long growing,
        long pending,
        long sold,
        boolean isWhole) {
    /** How many units are told of at most. */
    public static final int MOST_UNITS = 200_000;

    private static final Comparator<Branch> ORDER = Comparator.comparing(
                    (Branch branch) -> branch.begun().first())
            .thenComparing(Branch::act)
            .thenComparing(Branch::tag);

    public Progeny {
        Objects.requireNonNull(asked);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(stands);
        Objects.requireNonNull(own);
        below = List.copyOf(below);
    }

    /** How a unit stands, as it can be asked for. */
    public enum Standing {
        /** Some of it grows. */
        GROWING,
        /** Some of it is neither taken nor failed. */
        PENDING,
        /** Some of it was sold. */
        SOLD,
        /** Nothing of it is there. */
        GONE;

        boolean isOf(Stands stands) {
            return switch (this) {
                case GROWING -> stands.growing() > 0;
                case PENDING -> stands.isPending();
                case SOLD -> stands.sold() > 0;
                case GONE -> !stands.isThere();
            };
        }
    }

    /**
     * What of it is asked for.
     *
     * @param depth how many links down at most; all unless given
     * @param standings how they stand, any of these; all when empty
     * @param acts how they were raised, any of these; all when empty
     */
    public record Filter(Optional<Integer> depth, Set<Standing> standings, Set<Act> acts) {
        /** Everything. */
        public static final Filter ALL = new Filter(Optional.empty(), Set.of(), Set.of());

        public Filter {
            if (depth.filter(links -> links < 1).isPresent()) {
                throw Refused.because("bad-value", "depth: expected at least 1, found " + depth.get());
            }
            standings = Set.copyOf(standings);
            acts = Set.copyOf(acts);
        }

        boolean keeps(Act act, Stands stands) {
            return (acts.isEmpty() || acts.contains(act))
                    && (standings.isEmpty() || standings.stream().anyMatch(standing -> standing.isOf(stands)));
        }
    }

    /**
     * Return what was raised from a unit.
     *
     * @throws Refused when there is no such unit, or none yet on that day
     */
    public static Progeny of(BookView view, Tag asked, LocalDate asOf, Filter filter) {
        UnitNumber unit = Lookup.unit(view, asked);
        new Reading(view, asOf).requireBegun(unit, asked);
        Family family = view.family(unit, Direction.DOWN, MOST_UNITS);
        Map<Integer, List<Link>> down = new HashMap<>();
        for (Link link : family.links()) {
            if (!link.day().first().isAfter(asOf)) {
                down.computeIfAbsent(link.mother().value(), mother -> new ArrayList<>())
                        .add(link);
            }
        }
        Set<Integer> reached = new HashSet<>(Set.of(unit.value()));
        List<Integer> open = new ArrayList<>(reached);
        for (int at = 0; at < open.size(); at++) {
            for (Link link : down.getOrDefault(open.get(at), List.of())) {
                if (reached.add(link.child().value())) {
                    open.add(link.child().value());
                }
            }
        }
        Teller teller = new Teller(view, filter, down, Stands.of(view, open, asOf));
        List<Branch> below = teller.below(unit.value(), 1);
        return new Progeny(
                asked,
                teller.known.get(unit.value()).tag(),
                asOf,
                teller.known.get(unit.value()).stands(),
                teller.known.get(unit.value()).own(),
                below,
                teller.units,
                teller.growing,
                teller.pending,
                teller.sold,
                family.whole());
    }

    private static final class Teller {
        private final BookView view;
        private final Filter filter;
        private final Map<Integer, List<Link>> down;
        private final Map<Integer, Stands.Known> known;
        private final Set<Integer> told = new HashSet<>();
        private final Set<Integer> counted = new HashSet<>();
        private int units;
        private long growing;
        private long pending;
        private long sold;

        Teller(BookView view, Filter filter, Map<Integer, List<Link>> down, Map<Integer, Stands.Known> known) {
            this.view = view;
            this.filter = filter;
            this.down = down;
            this.known = known;
        }

        List<Branch> below(int mother, int depth) {
            List<Branch> branches = new ArrayList<>();
            if (filter.depth().filter(most -> depth > most).isPresent()) {
                return branches;
            }
            for (Link link : down.getOrDefault(mother, List.of())) {
                int child = link.child().value();
                Stands.Known unit = known.get(child);
                boolean asked = filter.keeps(link.act(), unit.stands());
                boolean elsewhere = !told.add(child);
                List<Branch> more = elsewhere ? List.of() : below(child, depth + 1);
                if (asked && counted.add(child)) {
                    count(unit.stands());
                }
                if (asked || !more.isEmpty()) {
                    branches.add(new Branch(
                            link.child(),
                            unit.tag(),
                            link.act(),
                            link.day(),
                            link.count(),
                            link.act().isOneOfSeveral() && isOneOfSeveral(link),
                            unit.stands(),
                            unit.own(),
                            depth,
                            asked,
                            elsewhere,
                            more));
                }
            }
            branches.sort(ORDER);
            return branches;
        }

        private void count(Stands stands) {
            units++;
            growing += stands.growing();
            pending += stands.pending().orElse(0);
            sold += stands.sold();
        }

        private boolean isOneOfSeveral(Link link) {
            return view.facts(link.child()).stream()
                            .flatMap(facts -> facts.links().stream())
                            .filter(other -> other.act() == link.act())
                            .count()
                    > 1;
        }
    }
}
