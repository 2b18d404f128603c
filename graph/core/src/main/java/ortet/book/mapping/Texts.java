package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * The texts of an entry's fields by their names, immutable and small: a nursery has a million of them.
 *
 * <p>Names are those of {@link ortet.entry.Form}, always the same objects. A text is never blank.
 */
final class Texts {
    /** No texts. */
    static final Texts NONE = new Texts(new String[0]);

    private final String[] pairs;

    private Texts(String[] pairs) {
        this.pairs = pairs;
    }

    /** Return the text of a field, "" where there is none. */
    String get(String field) {
        for (int at = 0; at < pairs.length; at += 2) {
            if (pairs[at].equals(field)) {
                return pairs[at + 1];
            }
        }
        return "";
    }

    /** Tell whether a field has a text. */
    boolean has(String field) {
        return !get(field).isEmpty();
    }

    /** Return these texts with another one; a blank one takes the field out. */
    Texts with(String field, String text) {
        Builder builder = new Builder();
        each(builder::put);
        builder.put(field, text);
        return builder.build();
    }

    /** Call for each field and its text, in order. */
    void each(BiConsumer<String, String> reader) {
        for (int at = 0; at < pairs.length; at += 2) {
            reader.accept(pairs[at], pairs[at + 1]);
        }
    }

    /** Return the names of the fields. */
    List<String> fields() {
        List<String> fields = new ArrayList<>();
        each((field, text) -> fields.add(field));
        return fields;
    }

    /** Tell whether another has the same texts in the same order. */
    boolean isSameAs(Texts other) {
        return Arrays.equals(pairs, other.pairs);
    }

    /** Tell whether another has the same texts, in whatever order. */
    @Override
    public boolean equals(Object other) {
        if (!(other instanceof Texts texts) || texts.pairs.length != pairs.length) {
            return false;
        }
        for (int at = 0; at < pairs.length; at += 2) {
            if (!texts.get(pairs[at]).equals(pairs[at + 1])) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        int sum = 0;
        for (int at = 0; at < pairs.length; at += 2) {
            sum += pairs[at].hashCode() ^ pairs[at + 1].hashCode();
        }
        return sum;
    }

    @Override
    public String toString() {
        return Arrays.toString(pairs);
    }

    /** Gathers texts. */
    static final class Builder {
        private final List<String> pairs = new ArrayList<>();

        /** Put a text; a blank one takes the field out. */
        void put(String field, String text) {
            for (int at = 0; at < pairs.size(); at += 2) {
                if (pairs.get(at).equals(field)) {
                    if (text.isEmpty()) {
                        pairs.remove(at);
                        pairs.remove(at);
                    } else {
                        pairs.set(at + 1, text);
                    }
                    return;
                }
            }
            if (!text.isEmpty()) {
                pairs.add(field);
                pairs.add(text);
            }
        }

        /** Return the text of a field, "" where there is none. */
        String get(String field) {
            for (int at = 0; at < pairs.size(); at += 2) {
                if (pairs.get(at).equals(field)) {
                    return pairs.get(at + 1);
                }
            }
            return "";
        }

        Texts build() {
            return pairs.isEmpty() ? NONE : new Texts(pairs.toArray(String[]::new));
        }
    }
}
