package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.book.UnitFacts.Nature;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * The clones of a nursery on a day.
 *
 * @param asOf the day
 * @param rows those asked for, the largest first
 * @param clones how many clones there are in all, under the cultivar asked for
 * @param small how many of them were left out because they have fewer tags than asked for
 * @param several how many tags are of no one clone: mixed trays, and sowings
 * @param severalLiving how many plants grow under these
 */
public record CloneTable(LocalDate asOf, List<CloneRow> rows, int clones, int small, int several, long severalLiving) {
    public CloneTable {
        Objects.requireNonNull(asOf);
        rows = List.copyOf(rows);
    }

    /** Return the parts of a snapshot that are needed. */
    public static Set<Part> parts() {
        Set<Part> parts = EnumSet.of(Part.STANDINGS, Part.LEAVINGS, Part.NAMES);
        parts.addAll(Clones.parts());
        return parts;
    }

    /**
     * Return the clones of a nursery.
     *
     * @param cultivar only those with a member that bears this name, by its epithet, its whole name or its taxon
     * @param least how many tags a clone must have
     * @throws ortet.value.Refused when the book knows no such cultivar
     */
    public static CloneTable of(BookView view, Snapshot snapshot, Optional<String> cultivar, int least) {
        return new Counting(snapshot).table(view, cultivar, least);
    }

    /** Counts the members of every clone. */
    static final class Counting {
        private final Snapshot snapshot;
        private final Clones clones;
        private final int[] place;
        private final List<Integer> firsts = new ArrayList<>();
        private final int[] tags;
        private final long[] living;
        private final long[] pending;
        private final long[] sold;
        private final int[] generations;
        private final Map<Integer, Set<Integer>> names = new HashMap<>();
        private final Names known;
        private int several;
        private long severalLiving;

        Counting(Snapshot snapshot) {
            this(snapshot, Clones.of(snapshot));
        }

        Counting(Snapshot snapshot, Clones clones) {
            this.snapshot = snapshot;
            this.clones = clones;
            this.known = Names.of(snapshot);
            this.place = new int[snapshot.lastUnit() + 1];
            for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                if (snapshot.isThere(unit) && clones.first(unit) == unit) {
                    place[unit] = firsts.size();
                    firsts.add(unit);
                }
            }
            tags = new int[firsts.size()];
            living = new long[firsts.size()];
            pending = new long[firsts.size()];
            sold = new long[firsts.size()];
            generations = new int[firsts.size()];
            for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                if (snapshot.isThere(unit)) {
                    count(unit);
                }
            }
        }

        private void count(int unit) {
            long growing = snapshot.nature(unit) == Nature.SPORT ? 0 : snapshot.growing(unit);
            int first = clones.first(unit);
            if (first == Clones.SEVERAL) {
                several++;
                severalLiving += growing;
                return;
            }
            int at = place[first];
            tags[at]++;
            living[at] += growing;
            pending[at] += Math.max(0, snapshot.pending(unit));
            sold[at] += snapshot.sold(unit);
            generations[at] = Math.max(generations[at], clones.generation(unit));
            if (snapshot.ownName(unit) >= 0) {
                names.computeIfAbsent(first, key -> new TreeSet<>()).add(snapshot.ownName(unit));
            }
        }

        /** Return the first units of all clones. */
        List<Integer> firsts() {
            return firsts;
        }

        /** Return the names that members of a clone bear by their own entries. */
        Set<Integer> names(int first) {
            return names.getOrDefault(first, Set.of());
        }

        Clones clones() {
            return clones;
        }

        CloneTable table(BookView view, Optional<String> cultivar, int least) {
            List<Integer> wanted = new ArrayList<>(firsts);
            cultivar.ifPresent(name -> {
                Set<CultivarName> found = Lookup.cultivars(view, name, snapshot.cultivars());
                wanted.removeIf(first ->
                        bears(first).stream().map(snapshot.cultivars()::get).noneMatch(found::contains));
            });
            int all = wanted.size();
            wanted.removeIf(first -> tags[place[first]] < least);
            List<CloneRow> rows = new ArrayList<>(rows(view, wanted));
            rows.sort(Comparator.comparing(CloneRow::tags)
                    .reversed()
                    .thenComparing(Comparator.comparing(CloneRow::living).reversed())
                    .thenComparing(CloneRow::tag));
            return new CloneTable(snapshot.asOf(), rows, all, all - wanted.size(), several, severalLiving);
        }

        /** Return every name that a clone goes by: that of its first unit, and those that members bear. */
        Set<Integer> bears(int first) {
            Set<Integer> all = new LinkedHashSet<>(names(first));
            int own = known.name(first);
            if (own >= 0) {
                all.add(own);
            }
            return all;
        }

        /** Return clones at a glance, in the order of their first units given. */
        List<CloneRow> rows(BookView view, List<Integer> wanted) {
            Map<Integer, Tag> shown = TagsOfUnits.of(view, wanted, snapshot.asOf());
            return wanted.stream().map(first -> row(first, shown.get(first))).toList();
        }

        private CloneRow row(int first, Tag tag) {
            int own = known.name(first);
            List<CultivarName> others = new ArrayList<>();
            for (int name : names(first)) {
                if (name != own) {
                    others.add(snapshot.cultivars().get(name));
                }
            }
            int at = place[first];
            return new CloneRow(
                    new UnitNumber(first),
                    tag,
                    clones.kind(first),
                    !snapshot.isSingle(first),
                    snapshot.begun(first),
                    own >= 0 ? Optional.of(snapshot.cultivars().get(own)) : Optional.empty(),
                    others,
                    tags[at],
                    living[at],
                    pending[at],
                    sold[at],
                    generations[at]);
        }
    }
}
