package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Mention.Role;
import ortet.lineage.Oddity.Kind;
import ortet.lineage.Oddity.Remedy;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.PlacesOfUnits;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * What is odd in the graph of a nursery on a day.
 *
 * @param asOf the day
 * @param months after how many months without a sign of life what should be growing is told of
 * @param all the oddities, by kind, then by tag
 */
public record Oddities(LocalDate asOf, int months, List<Oddity> all) {
    /** After how many months unless somebody asks otherwise: two growing seasons without a word (common practice). */
    public static final int MONTHS = 24;

    private static final QueryName LAST_DAYS = new QueryName("all-last-days");

    /** How many units are looked at one by one, to see whether a day that was put right changes the matter. */
    private static final int MOST_VERIFIED = 5_000;

    public Oddities {
        Objects.requireNonNull(asOf);
        all = List.copyOf(all);
    }

    /** Return the parts of a snapshot that are needed. */
    public static Set<Part> parts() {
        return EnumSet.of(Part.LINKS, Part.STANDINGS, Part.LEAVINGS, Part.NAMES);
    }

    /** Return what is odd. */
    public static Oddities of(BookView view, Snapshot snapshot, int months) {
        Finder finder = new Finder(view, snapshot);
        List<Oddity> all = new ArrayList<>();
        all.addAll(finder.cultivars());
        all.addAll(finder.mothers());
        all.addAll(finder.alike());
        all.addAll(finder.notSeen(months));
        return new Oddities(snapshot.asOf(), months, all);
    }

    private static final class Finder {
        private static final Comparator<Oddity> BY_TAG =
                Comparator.comparing(oddity -> oddity.tags().get(0));

        private final BookView view;
        private final Snapshot snapshot;

        Finder(BookView view, Snapshot snapshot) {
            this.view = view;
            this.snapshot = snapshot;
        }

        private Tag tag(int unit) {
            return TagsOfUnits.of(view, List.of(unit), snapshot.asOf()).get(unit);
        }

        private UnitFacts facts(int unit) {
            return view.facts(new UnitNumber(unit)).orElseThrow();
        }

        // ---- cultivars ----

        List<Oddity> cultivars() {
            Names names = Names.of(snapshot);
            List<Oddity> found = new ArrayList<>();
            for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                int own = snapshot.isThere(unit) ? snapshot.ownName(unit) : Snapshot.NONE;
                int other = Snapshot.NONE;
                boolean agrees = own < 0;
                for (int link = snapshot.firstUp(unit); !agrees && link < snapshot.endUp(unit); link++) {
                    if (snapshot.act(link).keepsTheClone()) {
                        int theirs = names.name(snapshot.mother(link));
                        agrees = theirs >= 0 && mayBeOne(own, theirs);
                        other = theirs >= 0 && other < 0 ? link : other;
                    }
                }
                if (!agrees && other >= 0) {
                    found.add(cultivar(unit, own, other, names.name(snapshot.mother(other))));
                }
            }
            found.sort(BY_TAG);
            return found;
        }

        /** Tell whether two names may stand for one plant: one of them may only be less precise. */
        private boolean mayBeOne(int one, int other) {
            CultivarName name = snapshot.cultivars().get(one);
            CultivarName second = snapshot.cultivars().get(other);
            return one == other
                    || (name.epithet().isEmpty() || second.epithet().isEmpty())
                            && name.taxon().equals(second.taxon());
        }

        private Oddity cultivar(int unit, int own, int link, int theirs) {
            Tag tag = tag(unit);
            Tag mother = tag(snapshot.mother(link));
            String hers = snapshot.cultivars().get(theirs).toString();
            boolean determined = snapshot.isDetermined(unit);
            long entry = facts(unit).begun().order();
            String part = ortet.lineage.Part.of(snapshot.act(link), false);
            List<Remedy> remedies = new ArrayList<>();
            if (!determined) {
                remedies.add(new Remedy(
                        "if " + mother + " is its " + part,
                        "ortet enter redetermined " + tag + " \"cultivar=" + hers + "\""));
            }
            remedies.add(new Remedy(
                    "if it is from another",
                    "ortet correct " + entry + " --field " + field(snapshot.act(link)) + " --value TAG --tags " + tag));
            return new Oddity(
                    Kind.CULTIVAR_DIFFERS,
                    List.of(tag, mother),
                    Optional.of(snapshot.begun(unit).toString()),
                    tag + (determined ? " was determined to be " : " is said to be ")
                            + snapshot.cultivars().get(own) + ", but its " + part + " " + mother + " is " + hers + " ("
                            + snapshot.begun(unit) + ")",
                    remedies);
        }

        private static String field(Act act) {
            return switch (act) {
                case LAYERED_FROM, LAYERED_BELOW, DIVIDED_FROM, SPORT_OF -> "mother";
                case STRUCK_FROM, STRUCK_BELOW -> "mothers";
                case SCION_OF -> "scion";
                case ROOTSTOCK_OF, STOCK_WOOD_OF -> "stock";
                case SEED_OF -> "seed_parent";
                case POLLEN_OF -> "pollen_parent";
                case DRAWN_FROM, SPLIT_FROM -> "source";
                case MERGED_FROM -> "sources";
                case ONE_OF -> "candidates";
            };
        }

        // ---- ages ----

        List<Oddity> mothers() {
            List<Oddity> found = new ArrayList<>();
            for (int link = 0; link < snapshot.linkCount(); link++) {
                int child = snapshot.child(link);
                int mother = snapshot.mother(link);
                if (snapshot.begunDay(mother) > snapshot.begunDay(child) && snapshot.act(link) != Act.STOCK_WOOD_OF) {
                    Tag tag = tag(child);
                    Tag hers = tag(mother);
                    When day = snapshot.begun(child);
                    When born = snapshot.begun(mother);
                    UnitFacts.Begun begun = facts(child).begun();
                    found.add(new Oddity(
                            Kind.MOTHER_YOUNGER,
                            List.of(hers, tag),
                            Optional.of(born.toString()),
                            hers + " began on " + born + ", so that it may be younger than " + tag
                                    + ", which came from it (" + day + ")",
                            List.of(
                                    new Remedy(
                                            "if " + tag + " came later",
                                            "ortet correct " + begun.order() + " --field day --value " + born
                                                    + " --tags " + tag),
                                    new Remedy(
                                            "if " + hers + " is older",
                                            "ortet correct "
                                                    + facts(mother).begun().order() + " --field day --value " + day
                                                    + " --tags " + hers))));
                }
            }
            found.sort(BY_TAG);
            return found;
        }

        // ---- tags ----

        List<Oddity> alike() {
            List<Integer> units = IntStream.rangeClosed(1, snapshot.lastUnit())
                    .filter(snapshot::isThere)
                    .boxed()
                    .toList();
            Map<Integer, Tag> tags = TagsOfUnits.of(view, units, snapshot.asOf());
            Map<String, List<Integer>> seen = new HashMap<>();
            for (int unit : units) {
                seen.computeIfAbsent(TagSkeleton.of(tags.get(unit)), key -> new ArrayList<>(1))
                        .add(unit);
            }
            List<Oddity> found = new ArrayList<>();
            for (List<Integer> twins : seen.values()) {
                for (int at = 1; at < twins.size(); at++) {
                    if (Stands.of(snapshot, twins.get(at)).isThere()
                            || Stands.of(snapshot, twins.get(0)).isThere()) {
                        found.add(alike(tags.get(twins.get(0)), twins.get(at), tags.get(twins.get(at))));
                    }
                }
            }
            found.sort(BY_TAG);
            return found;
        }

        private Oddity alike(Tag first, int unit, Tag tag) {
            UnitFacts.Begun begun = facts(unit).begun();
            int together =
                    view.entry(begun.order()).orElseThrow().entry().tags().size();
            String drop = together == 1
                    ? "ortet cross-out " + begun.order() + " --reason \"the same plant as " + first + "\""
                    : "ortet correct " + begun.order() + " --field tags --tags " + tag;
            return new Oddity(
                    Kind.TAGS_ALIKE,
                    List.of(tag, first),
                    Optional.of(begun.day().toString()),
                    tag + " (" + begun.day() + ") looks like " + first + " ("
                            + snapshot.begun(view.unit(first).orElseThrow().value()) + ")",
                    List.of(
                            new Remedy("if they are two plants", "ortet retag " + tag + " --to TAG"),
                            new Remedy("if they are one", drop)));
        }

        // ---- not seen ----

        private record Seen(String day, Optional<String> place) {}

        List<Oddity> notSeen(int months) {
            LocalDate before = snapshot.asOf().minusMonths(months);
            List<Integer> units = new ArrayList<>();
            Map<Integer, Integer> days = new HashMap<>();
            view.stream(LAST_DAYS, Parameters.NONE.with("as_of", snapshot.asOf()), row -> {
                int unit = (int) row[0];
                if (row[1] < before.toEpochDay()
                        && snapshot.isThere(unit)
                        && snapshot.growing(unit) > 0
                        && snapshot.nature(unit) != Nature.SPORT) {
                    units.add(unit);
                    days.put(unit, (int) row[1]);
                }
            });
            Map<Integer, Place> places = PlacesOfUnits.of(view, units, snapshot.asOf());
            Map<Integer, Tag> tags = TagsOfUnits.of(view, units, snapshot.asOf());
            Map<Seen, List<Tag>> groups = new LinkedHashMap<>();
            int verified = 0;
            for (int unit : units) {
                Optional<When> last = verified++ < MOST_VERIFIED
                        ? lastSign(unit)
                        : Optional.of(When.on(LocalDate.ofEpochDay(days.get(unit))));
                last.filter(day -> day.last().isBefore(before))
                        .ifPresent(day -> groups.computeIfAbsent(
                                        new Seen(
                                                day.toString(),
                                                Optional.ofNullable(places.get(unit))
                                                        .map(Place::name)),
                                        key -> new ArrayList<>())
                                .add(tags.get(unit)));
            }
            List<Oddity> found = new ArrayList<>();
            new TreeMap<>(groups.entrySet().stream()
                            .collect(Collectors.groupingBy(
                                    group -> group.getKey().day())))
                    .values()
                    .forEach(sameDay -> sameDay.forEach(group -> found.add(notSeen(group.getKey(), group.getValue()))));
            return found;
        }

        private static Oddity notSeen(Seen seen, List<Tag> tags) {
            List<Tag> sorted = tags.stream().sorted().toList();
            String brief = Tags.brief(sorted);
            return new Oddity(
                    Kind.NOT_SEEN,
                    sorted,
                    Optional.of(seen.day()),
                    brief + (sorted.size() > 1 ? " (" + sorted.size() + ")" : "") + ": last sign of life " + seen.day()
                            + seen.place().map(place -> ", at " + place).orElse(", no place told"),
                    List.of(
                            new Remedy(
                                    sorted.size() == 1 ? "if it is there" : "if they are there",
                                    "ortet enter seen " + brief),
                            new Remedy("if not", "ortet lose " + brief + " --cause mislaid")));
        }

        /** Return the last day on which an entry shows that a unit was alive, with what was put right since. */
        private Optional<When> lastSign(int unit) {
            return History.of(view, new UnitNumber(unit), snapshot.asOf()).stream()
                    .filter(event ->
                            event.roles().stream().anyMatch(role -> role != Role.BESIDE && role != Role.CANDIDATE))
                    .map(Event::day)
                    .max(Comparator.comparing(When::last));
        }
    }
}
