package ortet.inventory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import ortet.book.BookView;
import ortet.book.Listings;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.CultivarListed;
import ortet.entry.Form;
import ortet.entry.PlaceListed;
import ortet.entry.Recorded;
import ortet.lineage.Glance;
import ortet.lineage.Lineage;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;

/**
 * Where some words occur in the book: on labels old and new, in names of cultivars, places and persons, and in what
 * somebody wrote freely. Case does not matter, nor do accents in names.
 *
 * @param words the words, each of which must occur
 * @param asOf the day up to which entries count
 * @param tags labels
 * @param cultivars names, with what else they are called
 * @param places places, with what is known of them
 * @param persons persons
 * @param remarks entries, the latest first
 */
public record Findings(
        List<String> words,
        LocalDate asOf,
        Found<Label> tags,
        Found<Known<CultivarName>> cultivars,
        Found<Known<Place>> places,
        Found<Person> persons,
        Found<DayRecord.Line> remarks) {
    private static final QueryName TAGS = new QueryName("tags-like");
    private static final QueryName ENTRIES = new QueryName("entries-like");

    /** The columns in which somebody wrote freely; the question {@code entries-like} looks into the same. */
    private static final List<String> FREE = List.of(
            "note", "reason", "sign", "sample", "consignment", "invoice", "passport", "licence", "branch", "value");

    /**
     * What was found of one sort.
     *
     * @param list the first of it
     * @param isAll whether that is all
     */
    public record Found<T>(List<T> list, boolean isAll) {
        public Found {
            list = List.copyOf(list);
        }

        static <T> Found<T> of(List<T> all, int most) {
            return new Found<>(all.subList(0, Math.min(most, all.size())), all.size() <= most);
        }
    }

    /**
     * A label.
     *
     * @param tag the label found
     * @param unit the unit that bears or bore it
     */
    public record Label(Tag tag, Glance unit) {}

    /**
     * A name, and what else is known under it.
     *
     * @param name the name
     * @param otherwise other names and remarks of its listing, where it is listed; empty otherwise
     */
    public record Known<T>(T name, String otherwise) {}

    public Findings {
        words = List.copyOf(words);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(tags);
        Objects.requireNonNull(cultivars);
        Objects.requireNonNull(places);
        Objects.requireNonNull(persons);
        Objects.requireNonNull(remarks);
    }

    /** Tell whether the words occur nowhere. */
    public boolean isNothing() {
        return tags.list().isEmpty()
                && cultivars.list().isEmpty()
                && places.list().isEmpty()
                && persons.list().isEmpty()
                && remarks.list().isEmpty();
    }

    /**
     * Look for words.
     *
     * @param words at least one
     * @param most how much of each sort is told
     */
    public static Findings of(BookView view, List<String> words, LocalDate asOf, int most) {
        Wording wanted = new Wording(words);
        List<Person> persons = view.persons().stream()
                .filter(person -> wanted.isIn(
                        person.name().orElse("") + " " + person.particulars().orElse("")))
                .toList();
        return new Findings(
                words,
                asOf,
                tags(view, wanted, asOf, most),
                Found.of(cultivars(view, wanted), most),
                Found.of(places(view, wanted), most),
                Found.of(persons, most),
                remarks(view, wanted, asOf, most));
    }

    private static Found<Label> tags(BookView view, Wording wanted, LocalDate asOf, int most) {
        Map<Tag, UnitNumber> found = new LinkedHashMap<>();
        Rows rows =
                view.ask(TAGS, Parameters.NONE.with("pattern", wanted.pattern()).with("as_of", asOf));
        for (Rows.Row row : rows) {
            Tag tag = new Tag(row.text("tag").orElseThrow());
            if (wanted.isIn(tag.text())) {
                found.put(tag, new UnitNumber(row.whole("unit").orElseThrow().intValue()));
            }
        }
        List<Map.Entry<Tag, UnitNumber>> best = found.entrySet().stream()
                .sorted(Comparator.comparingInt((Map.Entry<Tag, UnitNumber> one) ->
                                wanted.rank(one.getKey().text()))
                        .thenComparing(Map.Entry::getKey))
                .limit(most)
                .toList();
        List<Label> labels = new ArrayList<>();
        for (Map.Entry<Tag, UnitNumber> one : best) {
            Lineage.glances(view, List.of(one.getValue()), asOf)
                    .forEach(glance -> labels.add(new Label(one.getKey(), glance)));
        }
        return new Found<>(labels, found.size() <= most);
    }

    private static List<Known<CultivarName>> cultivars(BookView view, Wording wanted) {
        Map<CultivarName, String> known = new TreeMap<>();
        InUse.cultivars(view).forEach(name -> known.put(name, ""));
        for (CultivarListed listed : Listings.of(view).cultivars()) {
            known.put(
                    listed.cultivar(),
                    joined(List.of(listed.tradeDesignation(), listed.synonyms(), listed.licence(), listed.note())));
        }
        return known(known, wanted);
    }

    private static List<Known<Place>> places(BookView view, Wording wanted) {
        Map<Place, String> known = new TreeMap<>();
        Places.of(view).all().forEach(place -> known.put(place, ""));
        for (PlaceListed listed : Listings.of(view).places()) {
            known.put(
                    listed.place(),
                    joined(List.of(
                            listed.within().map(place -> "in " + place),
                            listed.premises().map(premises -> "at " + premises),
                            listed.note())));
        }
        return known(known, wanted);
    }

    private static String joined(List<Optional<String>> parts) {
        return String.join("; ", parts.stream().flatMap(Optional::stream).toList());
    }

    private static <T> List<Known<T>> known(Map<T, String> known, Wording wanted) {
        List<Known<T>> found = new ArrayList<>();
        known.forEach((name, otherwise) -> {
            if (wanted.isIn(name + " " + otherwise)) {
                found.add(new Known<>(name, otherwise));
            }
        });
        return found;
    }

    private static Found<DayRecord.Line> remarks(BookView view, Wording wanted, LocalDate asOf, int most) {
        Map<PersonNumber, String> persons = DayRecord.persons(view);
        List<DayRecord.Line> found = new ArrayList<>();
        Rows rows = view.ask(
                ENTRIES, Parameters.NONE.with("pattern", wanted.pattern()).with("as_of", asOf));
        for (Rows.Row row : rows) {
            long order = row.whole("recorded_order").orElseThrow();
            Recorded recorded = view.entry(order).orElseThrow(() -> new Defect("no entry " + order + " in the book"));
            Map<String, String> texts = Form.write(recorded.entry());
            String free = String.join(
                    " ",
                    FREE.stream()
                            .map(column -> texts.getOrDefault(column, ""))
                            .filter(text -> !text.isEmpty())
                            .toList());
            if (wanted.isIn(free)) {
                if (found.size() == most) {
                    return new Found<>(found, false);
                }
                found.add(DayRecord.line(view, recorded, persons));
            }
        }
        return new Found<>(found, true);
    }
}
