package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import ortet.book.BookStore;
import ortet.book.Diary;
import ortet.lineage.Finding;
import ortet.lineage.Recall;
import ortet.lineage.RecallQuestion;
import ortet.lineage.Route;
import ortet.plant.Person.Role;
import ortet.plant.Tag;
import ortet.value.Refused;

/** Nothing that the book knows to be connected is missing from a recall, and nothing else is in it. */
class RecallPropertiesTests {
    private static final LocalDate START = LocalDate.of(2015, 1, 1);

    /** What a nursery does; few days and few places, so that much meets. */
    private static final class Doings {
        private final Random random;
        private final int days;
        private final List<String> plants = new ArrayList<>();
        private final List<String> batches = new ArrayList<>();
        private final List<String> names = new ArrayList<>();
        private int tags;

        Doings(Random random, int days) {
            this.random = random;
            this.days = days;
        }

        private String pick(String... words) {
            return words[random.nextInt(words.length)];
        }

        private String any(List<String> list) {
            return list.get(random.nextInt(list.size()));
        }

        private String fresh() {
            return "N-" + ++tags;
        }

        private String place() {
            return pick("House", "House bench 1", "House bench 2", "Yard");
        }

        private String maybePlace() {
            return random.nextInt(3) == 0 ? "" : "; place=" + place();
        }

        /** Return one line, and remember what it begins if it is taken. */
        String next(int at) {
            String plant = any(plants);
            String other = any(plants);
            String batch = batches.isEmpty() ? plant : any(batches);
            String second = batches.isEmpty() ? other : any(batches);
            String either = random.nextBoolean() ? plant : batch;
            String fresh = fresh();
            String count = batches.contains(either) ? "; count=" + (1 + random.nextInt(3)) : "";
            String line = switch (random.nextInt(30)) {
                case 0 ->
                    "acquired " + fresh + maybePlace() + "; consignment=" + pick("C-1", "c-1", "C-2")
                            + pick("", "; supplier=#3");
                case 1 -> "acquired " + fresh + "; supplier=#3" + maybePlace();
                case 2 -> "acquired " + fresh + "; count=" + (2 + random.nextInt(5)) + maybePlace();
                case 3, 4 -> "layer-set " + fresh + "; mother=" + plant + pick("", "", "; place=" + place());
                case 5, 6 -> "severed " + plant + maybePlace() + pick("", "", "", "; roots=none");
                case 7 -> "cuttings-struck " + fresh + "; mothers=" + plant + "; count=4" + maybePlace();
                case 8 -> "cuttings-struck " + fresh + "; mothers=" + plant + " " + other + "; count=4" + maybePlace();
                case 9 -> "taken " + batch + "; count=2";
                case 10, 11 -> "drawn " + fresh + "; source=" + batch + maybePlace();
                case 12 -> "split " + fresh + "; source=" + batch + "; count=2" + maybePlace();
                case 13 -> "merged " + fresh + "; sources=" + batch + " " + second + maybePlace();
                case 14 -> "graft-worked " + fresh + "; scion=" + plant + "; stock=" + either + maybePlace();
                case 15 -> "graft-worked " + fresh + "; scion=" + plant + "; stock=" + batch + "; count=2";
                case 16, 17 -> "failed " + either + count;
                case 18 ->
                    "seed-sown " + fresh + "; seed_parent=" + plant + pick("", "; pollen_parent=" + other) + "; count=5"
                            + maybePlace();
                case 19 -> "divided " + fresh + "; mother=" + plant + pick("", "; remainder=used-up") + maybePlace();
                case 20 -> "sport-found " + fresh + "; mother=" + plant;
                case 21 -> "found-untagged " + fresh + "; candidates=" + plant + " " + other + maybePlace();
                case 22 -> "moved " + either + "; place=" + place();
                case 23 -> "potted " + either + "; container=1 L" + maybePlace();
                case 24 -> "sold " + either + count;
                case 25 -> "returned " + either + count + maybePlace();
                case 26 -> "lost " + either + count;
                case 27 ->
                    names.isEmpty()
                            ? "noted " + plant + "; note=x"
                            : "crossed-out; target=" + any(names) + "; reason=no";
                case 28 ->
                    names.isEmpty()
                            ? "noted " + plant + "; note=x"
                            : "corrected; target=" + any(names) + "; field=place; value=" + place();
                default ->
                    names.isEmpty()
                            ? "noted " + plant + "; note=x"
                            : "corrected; target=" + any(names) + "; field=day; value=" + day();
            };
            String by = line.startsWith("cro") || line.startsWith("cor") ? "" : pick("", "; by=#1", "; by=#2");
            return "e" + at + ": " + day() + " " + line + by;
        }

        private String day() {
            return START.plusDays(random.nextInt(days)).toString();
        }

        void taken(String line) {
            String[] words = line.split("[ ;]+");
            if (!line.contains("target=")) {
                names.add(words[0].replace(":", ""));
            }
            if (words[3].equals("N-" + tags)) {
                boolean many = line.contains("count=") || line.contains(" split ") || line.contains(" merged ");
                (many ? batches : plants).add(words[3]);
            }
        }
    }

    private static List<String> beginning() {
        return List.of(
                "2015-01-01 place-listed; place=House; premises=Sallowfield",
                "2015-01-01 place-listed; place=House bench 1; within=House",
                "2015-01-01 place-listed; place=House bench 2; within=House",
                "2015-01-01 acquired K-1 K-2; place=House bench 1",
                "2015-01-01 acquired K-3; place=Yard",
                "2015-01-01 acquired K-4 K-5");
    }

    /** Keep a book of random doings; return the lines that it took. */
    private static List<String> keep(BookStore store, Random random, int lines) {
        Diary diary = new Diary(store);
        diary.person(1, "Aoife", Role.STAFF);
        diary.person(2, "Oksana", Role.STAFF);
        diary.person(3, "A Supplier", Role.SUPPLIER);
        List<String> taken = new ArrayList<>(beginning());
        diary.write(taken.toArray(String[]::new));
        Doings doings = new Doings(random, 60);
        doings.plants.addAll(List.of("K-1", "K-2", "K-3", "K-4", "K-5"));
        for (int at = 0; at < lines; at++) {
            String line = doings.next(at);
            try {
                diary.write(line);
                doings.taken(line);
                taken.add(line);
            } catch (Refused cannotBeTrue) {
                // most random lines cannot be true
            }
        }
        return taken;
    }

    private static RecallQuestion question(DayByDay.Asked asked) {
        return new RecallQuestion(
                asked.tags(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                asked.rounds(),
                asked.tools(),
                asked.since(),
                Route.ALL,
                false,
                asked.sources(),
                asked.everywhere(),
                asked.asOf());
    }

    private static DayByDay.Asked asked(BookStore store, Random random, LocalDate asOf) {
        List<Tag> there = store.read(view -> view.tagsFrom("K", 1000).stream()
                .filter(tag -> !view.facts(view.unit(tag).orElseThrow())
                        .orElseThrow()
                        .begun()
                        .day()
                        .first()
                        .isAfter(asOf))
                .toList());
        Set<Tag> tags = new LinkedHashSet<>();
        for (int at = 0; at <= random.nextInt(2); at++) {
            tags.add(there.get(random.nextInt(there.size())));
        }
        return new DayByDay.Asked(
                List.copyOf(tags),
                random.nextInt(3) == 0
                        ? Optional.of(START.plusDays(random.nextInt(60))).filter(day -> !day.isAfter(asOf))
                        : Optional.empty(),
                random.nextInt(4),
                random.nextInt(4) == 0,
                random.nextInt(4) > 0,
                random.nextInt(4) == 0,
                asOf);
    }

    private static Map<Integer, DayByDay.Found> told(Recall recall) {
        Map<Integer, DayByDay.Found> told = new TreeMap<>();
        recall.all().forEach(one -> told.put(one.unit().value(), new DayByDay.Found(one.isImplicated(), one.since())));
        return told;
    }

    @Property(tries = 12, shrinking = ShrinkingMode.OFF)
    void findsWhatIsFoundByLivingThroughEveryDay(@ForAll Random random) {
        try (Shelf shelf = new Shelf()) {
            BookStore store = shelf.create();
            List<String> lines = keep(store, random, 90);
            for (int at = 0; at < 6; at++) {
                LocalDate asOf = at < 4 ? Diary.TODAY.minusYears(11) : START.plusDays(20 + random.nextInt(40));
                DayByDay.Asked asked = asked(store, random, asOf);
                Map<Integer, DayByDay.Found> expected = store.read(view -> DayByDay.recall(view, asked));
                Recall recall = store.read(view -> Recall.of(view, question(asked)));
                assertEquals(
                        expected,
                        told(recall),
                        () -> asked + "\n" + String.join("\n", lines) + "\n"
                                + recall.all()
                                        .map(one -> one.unit() + " " + one.tag() + " " + one.because())
                                        .toList());
            }
        }
    }

    /** Return the line with its day known to the month alone. */
    private static String coarse(String line) {
        return line.contains(" corrected") || line.contains("crossed-out")
                ? line
                : line.replaceFirst("(^|: )(2015-\\d\\d)-\\d\\d ", "$1$2 ");
    }

    @Property(tries = 12, shrinking = ShrinkingMode.OFF)
    void findsNoLessWhenDaysAreKnownToTheMonthAlone(@ForAll Random random) {
        try (Shelf shelf = new Shelf()) {
            BookStore exact = shelf.create();
            BookStore coarse = shelf.create();
            Diary diary = new Diary(coarse);
            diary.person(1, "Aoife", Role.STAFF);
            diary.person(2, "Oksana", Role.STAFF);
            diary.person(3, "A Supplier", Role.SUPPLIER);
            List<String> lines = keep(exact, random, 90);
            List<String> read = new ArrayList<>();
            for (String line : lines) {
                String known = random.nextInt(3) == 0 ? coarse(line) : line;
                try {
                    diary.write(known);
                    read.add(known);
                } catch (Refused asItWouldBeRead) {
                    try {
                        diary.write(line);
                        read.add(line);
                    } catch (Refused depends) {
                        return; // read by the end of the month, it could not be true
                    }
                }
            }
            for (int at = 0; at < 6; at++) {
                DayByDay.Asked asked = asked(exact, random, Diary.TODAY.minusYears(11));
                Recall more = exact.read(view -> Recall.of(view, question(asked)));
                Recall less = coarse.read(view -> Recall.of(view, question(asked)));
                assertTrue(
                        tags(less.all().toList()).containsAll(tags(more.all().toList())),
                        () -> asked + " " + tags(more.all().toList()) + " but "
                                + tags(less.all().toList()) + "\n" + String.join("\n", read));
                assertTrue(
                        tags(more.implicated()).containsAll(tags(less.implicated())),
                        () -> asked + " " + tags(less.implicated()) + " but " + tags(more.implicated()) + "\n"
                                + String.join("\n", read));
            }
        }
    }

    private static Set<Tag> tags(List<Finding> findings) {
        Set<Tag> tags = new TreeSet<>();
        findings.forEach(one -> tags.add(one.tag()));
        return tags;
    }
}
