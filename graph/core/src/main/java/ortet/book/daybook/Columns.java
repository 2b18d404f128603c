package ortet.book.daybook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import ortet.entry.Form;

/** The columns that a file of a kind may have, each known by its place in the list. */
final class Columns {
    static final String ENTRY = "entry";
    static final String ORDER = "order";
    static final String RECORDED = "recorded";
    static final String DAY = "day";
    static final String BY = "by";
    static final String KIND = "kind";

    static final String NUMBER = "number";
    static final String NAME = "name";
    static final String ROLE = "role";
    static final String PARTICULARS = "particulars";
    static final String ERASED = "erased";

    static final String BOOK = "book";
    static final String ZONE = "zone";
    static final String FORMAT = "format";
    static final String ENTRIES = "entries";
    static final String DIGEST = "digest";

    /** Of a day book: its own, then those of every kind of entry. */
    static final Columns OF_DAY_BOOK = ofDayBook();

    /** Of a list of persons. */
    static final Columns OF_PERSONS = new Columns(
            "list of persons", List.of(NUMBER, NAME, ROLE, PARTICULARS, ERASED), List.of(NAME), NAME + ", " + ROLE);

    /** Of the label of an export. */
    static final Columns OF_LABEL = new Columns(
            "label of an export",
            List.of(BOOK, ZONE, FORMAT, ENTRIES, DIGEST),
            List.of(BOOK, ZONE, FORMAT, ENTRIES, DIGEST),
            BOOK + ", " + ZONE);

    private final String what;
    private final List<String> names;
    private final List<String> required;
    private final String example;
    private final Map<String, Integer> places = new HashMap<>();

    private Columns(String what, List<String> names, List<String> required, String example) {
        this.what = what;
        this.names = names;
        this.required = required;
        this.example = example;
        for (String name : names) {
            places.put(name, places.size());
        }
    }

    private static Columns ofDayBook() {
        List<String> names = new ArrayList<>(List.of(ENTRY, ORDER, RECORDED, DAY, BY, KIND));
        names.addAll(Form.columns().keySet());
        return new Columns("day book", List.copyOf(names), List.of(DAY, KIND), DAY + ", " + KIND + ", tags");
    }

    /** Return what a file with these columns is, in words. */
    String what() {
        return what;
    }

    /** Return the names, in order. */
    List<String> names() {
        return names;
    }

    /** Return the columns without which no row can be read. */
    List<String> required() {
        return required;
    }

    /** Return a few columns, in words, to show what is expected. */
    String example() {
        return example;
    }

    /** Return the place of a column in the list. */
    OptionalInt place(String name) {
        Integer place = places.get(name);
        return place == null ? OptionalInt.empty() : OptionalInt.of(place);
    }

    /** Return the place of a column that is known to be in the list. */
    int at(String name) {
        return place(name).orElseThrow();
    }
}
