package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ortet.plant.UnitNumber;
import ortet.value.When;

/** Reads out all that a book holds, so that two can be compared. */
public final class Books {
    private static final List<String> QUESTIONS = List.of(
            "all-units",
            "all-links",
            "all-link-counts",
            "all-cohorts",
            "all-outcomes",
            "all-standings",
            "all-leavings",
            "all-names",
            "all-pottings",
            "all-signs",
            "all-treatments");

    private Books() {}

    /** Return every answer of a view to every question of the port, by what was asked. */
    public static Map<String, Object> everything(BookStore store) {
        return store.read(Books::everything);
    }

    private static Map<String, Object> everything(BookView view) {
        Map<String, Object> all = new LinkedHashMap<>();
        Head head = view.head();
        all.put("zone", head.zone());
        all.put("order", head.order());
        all.put("digest", head.digest());
        all.put("last unit", head.lastUnit());
        all.put("entries", entries(view));
        all.put("persons", List.copyOf(view.persons()));
        all.put("listings", view.listings());
        all.put("tariff", view.tariff());
        for (long order = 1; order <= head.order(); order++) {
            all.put("entry " + order, view.entry(order));
            all.put("amendments of " + order, view.amendments(order));
        }
        for (int number = 1; number <= head.lastUnit(); number++) {
            UnitNumber unit = new UnitNumber(number);
            all.put("facts of " + unit, view.facts(unit));
            all.put("tags of " + unit, view.tags(unit));
            all.put("entries of " + unit, view.entries(unit));
            all.put("offspring of " + unit, view.offspring(unit, EnumSet.allOf(Act.class)));
            for (Direction way : Direction.values()) {
                all.put(way + " from " + unit, view.family(unit, way, 1000));
            }
            view.tags(unit).forEach(tag -> {
                all.put("unit of " + tag, view.unit(tag));
                all.put("near " + tag, view.nearest(tag));
            });
        }
        for (String day : List.of("2017-07-01", "2018", "9999-12-31")) {
            for (String question : QUESTIONS) {
                all.put(question + " as of " + day, numbers(view, question, day));
            }
            all.put("tags of all as of " + day, texts(view, "tags-of-units", day));
            all.put("stand of all as of " + day, texts(view, "stand-of-units", day));
            all.put("places of all as of " + day, texts(view, "places-of-units", day));
        }
        for (String question : List.of("sizes-in-use", "treatments-in-use", "amended-signs", "amended-treatments")) {
            all.put(question, view.ask(new QueryName(question), Parameters.NONE).values());
        }
        all.put("beginnings", texts(view, "beginnings", "9999-12-31"));
        return all;
    }

    /** Return the rows of a question in whole numbers as texts. */
    static List<String> numbers(BookView view, String question, String asOf) {
        Parameters parameters =
                question.equals("all-units") ? Parameters.NONE : Parameters.NONE.with("as_of", day(asOf));
        List<String> rows = new ArrayList<>();
        view.stream(
                new QueryName(question),
                parameters,
                numbers -> rows.add(Arrays.toString(numbers).replace(Long.toString(NumberSink.NONE), "none")));
        if (question.startsWith("all-link")) {
            Collections.sort(rows); // a store hands links over as it comes to them
        }
        return rows;
    }

    private static List<List<Object>> texts(BookView view, String question, String asOf) {
        String units = IntStream.rangeClosed(1, view.head().lastUnit())
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(","));
        Parameters parameters = Parameters.NONE.with("units", units);
        return view.ask(
                        new QueryName(question),
                        question.equals("beginnings") ? parameters : parameters.with("as_of", day(asOf)))
                .values();
    }

    private static String day(String asOf) {
        return When.parse(asOf).first().toString();
    }

    private static List<Chained> entries(BookView view) {
        try (Stream<Chained> entries = view.since(0)) {
            return entries.toList();
        }
    }

    /** Return the whole of a book, to be put into another store. */
    public static Restoration whole(BookStore store) {
        return store.read(view -> new Restoration(
                view.head().bookId(),
                view.head().zone(),
                entries(view).stream().map(Chained::recorded).toList(),
                new ArrayList<>(view.persons()),
                view.head().digest()));
    }

    /** Fail unless two books hold the same. */
    public static void assertSame(BookStore expected, BookStore actual) {
        assertSame(everything(expected), everything(actual));
    }

    /** Fail unless the same was read out of two books. */
    public static void assertSame(Map<String, Object> expected, Map<String, Object> actual) {
        expected.forEach((what, value) -> assertEquals(value, actual.get(what), what));
        assertEquals(expected.keySet(), actual.keySet());
    }

    /** Fail unless the digests of a book follow from its entries. */
    public static void assertChained(BookStore store) {
        store.read(view -> {
            Chain chain = new Chain(Chain.START);
            long order = 0;
            Digest last = Chain.START;
            for (Chained entry : entries(view)) {
                assertEquals(++order, entry.recorded().order());
                assertEquals(chain.add(entry.recorded()), entry);
                last = entry.digest();
            }
            assertEquals(view.head().order(), order);
            assertEquals(view.head().digest(), last);
            return order;
        });
    }
}
