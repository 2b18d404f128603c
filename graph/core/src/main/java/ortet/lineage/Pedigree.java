package ortet.lineage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.Act;
import ortet.book.Link;
import ortet.book.Lookup;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Acquired;
import ortet.entry.EntryKind;
import ortet.lineage.Kin.Ancestor;
import ortet.lineage.Kin.SameClone;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * The family of two plants as a pedigree of genotypes: all ramets of a clone are one.
 *
 * <p>A genotype begins with a seedling, or with what is the earliest known. A sport is taken for the genotype of its plant:
 * what changed in it cannot be told from a pedigree. A plant that is one of several has several genotypes that may be its
 * own; each way of choosing is gone through, as long as there are not too many.
 */
final class Pedigree {
    /** How many ways of choosing are gone through at most. */
    private static final int MOST_CHOICES = 1024;

    /**
     * A genotype.
     *
     * @param ortet the unit with which it begins, or the batch in which it did
     * @param member the unit that was drawn from that batch; the same as the first for a plant of its own
     */
    private record Genotype(UnitNumber ortet, UnitNumber member) {}

    private final Reading reading;
    private final Map<UnitNumber, List<Genotype>> genotypes = new HashMap<>();
    private final Map<UnitNumber, List<Genotype>> clones = new HashMap<>();
    private final Set<UnitNumber> beingRead = new HashSet<>();

    Pedigree(Reading reading) {
        this.reading = reading;
    }

    Kin kin(Tag first, Tag second) {
        UnitNumber one = Lookup.unit(reading.view(), first);
        UnitNumber other = Lookup.unit(reading.view(), second);
        reading.requireBegun(one, first);
        reading.requireBegun(other, second);
        List<Genotype> mine = of(one);
        List<Genotype> theirs = of(other);
        Map<Genotype, List<List<Genotype>>> parents = parents(mine, theirs);
        Set<UnitNumber> unknown = new TreeSet<>();
        parents.forEach((genotype, both) -> {
            if (both.stream().anyMatch(List::isEmpty)) {
                unknown.add(genotype.member());
            }
        });
        Optional<BigFraction[]> bounds = bounds(one, mine, other, theirs, parents);
        return new Kin(
                first,
                second,
                reading.asOf(),
                sameClone(one, other),
                nearest(one, other),
                bounds.map(ends -> ends[0]),
                bounds.map(ends -> ends[1]),
                unknown.stream().map(reading::tag).sorted().toList());
    }

    // ---- genotypes ----

    private boolean isManyGenotypes(UnitNumber unit) {
        UnitFacts facts = reading.facts(unit);
        return facts.nature() == Nature.BATCH
                && (reading.begun(unit).entry().kind() == EntryKind.SEED_SOWN
                        || reading.begun(unit).entry() instanceof Acquired);
    }

    private boolean isBatch(Genotype genotype) {
        return genotype.ortet().equals(genotype.member()) && isManyGenotypes(genotype.ortet());
    }

    /** Return the genotypes of which one is that of a unit; a batch of many stands for any one of it. */
    private List<Genotype> of(UnitNumber unit) {
        return of(unit, true, genotypes);
    }

    /** Return the clones of which one is that of a unit, each by the genotype with which it begins. */
    private List<Genotype> clones(UnitNumber unit) {
        return of(unit, false, clones);
    }

    private List<Genotype> of(UnitNumber unit, boolean sports, Map<UnitNumber, List<Genotype>> read) {
        List<Genotype> known = read.get(unit);
        if (known == null) {
            if (!beingRead.add(unit)) {
                return List.of(new Genotype(unit, unit)); // a damaged book, in a circle
            }
            Set<Genotype> found = new LinkedHashSet<>();
            List<Link> links = new ArrayList<>(reading.clonal(unit));
            if (sports) {
                reading.facts(unit).links().stream()
                        .filter(link -> link.act() == Act.SPORT_OF)
                        .forEach(links::add);
            }
            for (Link link : links) {
                of(link.mother(), sports, read).forEach(theirs -> found.add(passed(theirs, unit, link)));
            }
            known = found.isEmpty() ? List.of(new Genotype(unit, unit)) : List.copyOf(found);
            beingRead.remove(unit);
            read.put(unit, known);
        }
        return known;
    }

    private Genotype passed(Genotype theirs, UnitNumber child, Link link) {
        boolean stays = link.act() == Act.SPLIT_FROM
                || link.act() == Act.MERGED_FROM
                || link.act() == Act.DRAWN_FROM && reading.facts(child).nature() == Nature.BATCH;
        return isBatch(theirs) && !stays ? new Genotype(theirs.ortet(), child) : theirs;
    }

    /** Return for each genotype of a family those of which one is its seed parent, and its pollen parent; none if unknown. */
    private Map<Genotype, List<List<Genotype>>> parents(List<Genotype> mine, List<Genotype> theirs) {
        Map<Genotype, List<List<Genotype>>> parents = new LinkedHashMap<>();
        List<Genotype> queue = new ArrayList<>(mine);
        queue.addAll(theirs);
        for (int at = 0; at < queue.size(); at++) {
            Genotype genotype = queue.get(at);
            if (!parents.containsKey(genotype)) {
                List<List<Genotype>> both = List.of(parent(genotype, Act.SEED_OF), parent(genotype, Act.POLLEN_OF));
                parents.put(genotype, both);
                both.forEach(queue::addAll);
            }
        }
        return parents;
    }

    private List<Genotype> parent(Genotype genotype, Act act) {
        List<Genotype> found = new ArrayList<>();
        for (Link link : reading.facts(genotype.ortet()).links()) {
            if (link.act() == act) {
                for (Genotype theirs : of(link.mother())) {
                    found.add(isBatch(theirs) ? new Genotype(theirs.ortet(), genotype.ortet()) : theirs);
                }
            }
        }
        return List.copyOf(found);
    }

    // ---- the coefficient ----

    /** Return the least and the greatest coefficient over all ways of choosing, unless there are too many. */
    private Optional<BigFraction[]> bounds(
            UnitNumber one,
            List<Genotype> mine,
            UnitNumber other,
            List<Genotype> theirs,
            Map<Genotype, List<List<Genotype>>> parents) {
        List<List<Genotype>> choices = new ArrayList<>(List.of(mine, theirs));
        parents.values().forEach(choices::addAll);
        long ways = 1;
        for (List<Genotype> choice : choices) {
            ways *= Math.max(1, choice.size());
            if (ways > MOST_CHOICES) {
                return Optional.empty();
            }
        }
        BigFraction least = BigFraction.ONE;
        BigFraction most = BigFraction.ZERO;
        for (long way = 0; way < ways; way++) {
            for (boolean apart : new boolean[] {false, true}) {
                BigFraction found = coefficient(way, one, mine, other, theirs, parents, apart);
                least = found.compareTo(least) < 0 ? found : least;
                most = found.compareTo(most) > 0 ? found : most;
            }
        }
        return Optional.of(new BigFraction[] {least, most});
    }

    /**
     * Return the coefficient by one way of choosing.
     *
     * @param way its number
     * @param apart whether two units that may share a genotype or not do not
     */
    private BigFraction coefficient(
            long way,
            UnitNumber one,
            List<Genotype> mine,
            UnitNumber other,
            List<Genotype> theirs,
            Map<Genotype, List<List<Genotype>>> parents,
            boolean apart) {
        long[] rest = {way};
        Genotype ours = pick(mine, rest).orElseThrow();
        Genotype others = pick(theirs, rest).orElseThrow();
        Map<Genotype, List<Optional<Genotype>>> chosen = new HashMap<>();
        parents.forEach((genotype, both) ->
                chosen.put(genotype, List.of(pick(both.get(0), rest), pick(both.get(1), rest))));
        Coancestry coancestry = new Coancestry();
        Map<Genotype, Integer> numbers = new HashMap<>();
        int first = number(ours, chosen, coancestry, numbers, new HashSet<>()).orElseThrow();
        int second =
                number(others, chosen, coancestry, numbers, new HashSet<>()).orElseThrow();
        boolean isSurelyApart = isBatch(ours) && isEachItsOwn(ours);
        if (ours.equals(others) && mayDiffer(one, other, ours) && (apart || isSurelyApart)) {
            List<Optional<Genotype>> both = chosen.get(ours);
            second = coancestry.add(both.get(0).map(numbers::get), both.get(1).map(numbers::get));
        }
        return coancestry.of(first, second);
    }

    private static Optional<Genotype> pick(List<Genotype> choice, long[] rest) {
        if (choice.isEmpty()) {
            return Optional.empty();
        }
        int at = (int) (rest[0] % choice.size());
        rest[0] /= choice.size();
        return Optional.of(choice.get(at));
    }

    private static Optional<Integer> number(
            Genotype genotype,
            Map<Genotype, List<Optional<Genotype>>> chosen,
            Coancestry coancestry,
            Map<Genotype, Integer> numbers,
            Set<Genotype> above) {
        if (numbers.containsKey(genotype)) {
            return Optional.of(numbers.get(genotype));
        }
        if (!above.add(genotype)) {
            return Optional.empty(); // a damaged book, in a circle
        }
        List<Optional<Genotype>> both = chosen.get(genotype);
        Optional<Integer> seed = both.get(0).flatMap(parent -> number(parent, chosen, coancestry, numbers, above));
        Optional<Integer> pollen = both.get(1).flatMap(parent -> number(parent, chosen, coancestry, numbers, above));
        above.remove(genotype);
        int number = coancestry.add(seed, pollen);
        numbers.put(genotype, number);
        return Optional.of(number);
    }

    // ---- one clone or not ----

    private SameClone sameClone(UnitNumber one, UnitNumber other) {
        Set<SameClone> found = new TreeSet<>();
        for (Genotype mine : clones(one)) {
            for (Genotype theirs : clones(other)) {
                found.add(sameClone(one, mine, other, theirs));
            }
        }
        return found.size() == 1 ? found.iterator().next() : SameClone.NOT_KNOWN;
    }

    private SameClone sameClone(UnitNumber one, Genotype mine, UnitNumber other, Genotype theirs) {
        if (mine.equals(theirs)) {
            boolean isOne = !mayDiffer(one, other, mine);
            return isOne ? SameClone.YES : isBatch(mine) && isEachItsOwn(mine) ? SameClone.NO : SameClone.NOT_KNOWN;
        }
        if (mine.ortet().equals(theirs.ortet())) {
            boolean apart = isEachItsOwn(mine) && isDrawn(mine) && isDrawn(theirs);
            return apart ? SameClone.NO : SameClone.NOT_KNOWN;
        }
        return mayBe(mine, theirs) || mayBe(theirs, mine) ? SameClone.NOT_KNOWN : SameClone.NO;
    }

    /** Tell whether two units that share a genotype, as far as the book says, may be of different ones. */
    private boolean mayDiffer(UnitNumber one, UnitNumber other, Genotype genotype) {
        boolean isOnePlant = one.equals(other) && reading.facts(one).nature() != Nature.BATCH;
        boolean isMany = isBatch(genotype)
                || !genotype.member().equals(genotype.ortet())
                        && reading.facts(genotype.member()).nature() == Nature.BATCH;
        return isMany && !isOnePlant;
    }

    /** Tell whether each plant of the batch in which a genotype began is a clone of its own. */
    private boolean isEachItsOwn(Genotype genotype) {
        return switch (reading.origin(genotype.ortet()).founders().get(0).kind()) {
            case EACH_SEEDLING, EACH_ACQUIRED -> true;
            default -> false;
        };
    }

    /** Tell whether a genotype is one plant out of its batch, drawn or still in it, rather than wood taken from the batch. */
    private boolean isDrawn(Genotype genotype) {
        return isBatch(genotype)
                || reading.facts(genotype.member()).links().stream()
                        .anyMatch(link -> link.act() == Act.DRAWN_FROM || link.act() == Act.ONE_OF);
    }

    /** Tell whether the one, of unknown origin, may have come from the other without anybody knowing. */
    private boolean mayBe(Genotype one, Genotype other) {
        return isOfUnknownOrigin(one)
                && (isOfUnknownOrigin(other)
                        || !begun(one.ortet())
                                .last()
                                .isBefore(begun(other.member()).first()));
    }

    private boolean isOfUnknownOrigin(Genotype genotype) {
        return reading.facts(genotype.ortet()).nature() != Nature.SPORT
                && reading.begun(genotype.ortet()).entry().kind() != EntryKind.SEED_SOWN;
    }

    private When begun(UnitNumber unit) {
        return reading.facts(unit).begun().day();
    }

    // ---- common ancestors ----

    private record Way(int generations, int bySeed) {}

    private List<Ancestor> nearest(UnitNumber one, UnitNumber other) {
        Map<UnitNumber, Way> mine = ways(one);
        Map<UnitNumber, Way> theirs = ways(other);
        Set<UnitNumber> common = new TreeSet<>(mine.keySet());
        common.retainAll(theirs.keySet());
        Set<UnitNumber> nearest = new TreeSet<>(common);
        // a batch that comes from something is on the way to it, and no ancestor itself
        Set<UnitNumber> plants = new TreeSet<>(common);
        plants.removeIf(unit -> isOnTheWay(unit) && !unit.equals(one) && !unit.equals(other));
        for (UnitNumber unit : plants) {
            nearest.removeAll(above(unit));
        }
        nearest.retainAll(plants);
        List<Ancestor> ancestors = new ArrayList<>();
        for (UnitNumber unit : nearest) {
            Way here = mine.get(unit);
            Way there = theirs.get(unit);
            ancestors.add(new Ancestor(
                    reading.tag(unit),
                    reading.facts(unit).nature(),
                    reading.named(unit),
                    here.generations(),
                    here.bySeed(),
                    there.generations(),
                    there.bySeed()));
        }
        ancestors.sort(Comparator.comparing(Ancestor::tag));
        return ancestors;
    }

    private boolean isOnTheWay(UnitNumber unit) {
        return reading.facts(unit).nature() == Nature.BATCH && !inherited(unit).isEmpty();
    }

    private List<Link> inherited(UnitNumber unit) {
        return reading.facts(unit).links().stream()
                .filter(link -> link.act().keepsTheClone() || isSeed(link.act()) || link.act() == Act.SPORT_OF)
                .toList();
    }

    private Set<UnitNumber> above(UnitNumber unit) {
        Set<UnitNumber> above = new HashSet<>();
        List<UnitNumber> queue = new ArrayList<>(List.of(unit));
        for (int at = 0; at < queue.size(); at++) {
            for (Link link : inherited(queue.get(at))) {
                if (above.add(link.mother())) {
                    queue.add(link.mother());
                }
            }
        }
        above.remove(unit);
        return above;
    }

    /** Return every ancestor of a unit, itself too, with the fewest generations and the fewest by seed that lead to it. */
    private Map<UnitNumber, Way> ways(UnitNumber unit) {
        Map<UnitNumber, Way> ways = new TreeMap<>(Map.of(unit, new Way(0, 0)));
        List<UnitNumber> queue = new ArrayList<>(List.of(unit));
        for (int at = 0; at < queue.size(); at++) {
            UnitNumber here = queue.get(at);
            Way way = ways.get(here);
            for (Link link : inherited(here)) {
                Way next = new Way(
                        way.generations() + (isPropagation(link.act()) ? 1 : 0),
                        way.bySeed() + (isSeed(link.act()) ? 1 : 0));
                Way before = ways.get(link.mother());
                Way best = before == null
                        ? next
                        : new Way(
                                Math.min(before.generations(), next.generations()),
                                Math.min(before.bySeed(), next.bySeed()));
                if (!best.equals(before)) {
                    ways.put(link.mother(), best);
                    queue.add(link.mother());
                }
            }
        }
        return ways;
    }

    private static boolean isSeed(Act act) {
        return act == Act.SEED_OF || act == Act.POLLEN_OF;
    }

    private static boolean isPropagation(Act act) {
        return switch (act) {
            case LAYERED_FROM,
                    LAYERED_BELOW,
                    STRUCK_FROM,
                    STRUCK_BELOW,
                    STOCK_WOOD_OF,
                    SCION_OF,
                    ROOTSTOCK_OF,
                    SEED_OF,
                    POLLEN_OF,
                    DIVIDED_FROM,
                    SPORT_OF -> true;
            case DRAWN_FROM, SPLIT_FROM, MERGED_FROM, ONE_OF -> false;
        };
    }
}
