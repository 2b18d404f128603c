package ortet.book.mapping;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * What one row of a sheet is.
 *
 * @param sort a plant with its parents and what became of it, an outcome, or an entry
 * @param kind the kind of every row's entry; absent where a column says it
 */
record Shape(Sort sort, Optional<EntryKind> kind) {
    /** The sorts of rows. */
    enum Sort {
        /** A plant, layer or batch: where it comes from and what became of it. */
        PLANT,
        /** What became of a plant, layer or batch that another row tells of. */
        OUTCOME,
        /** One entry of the book. */
        ENTRY
    }

    /** The kinds that begin a unit, though not as its origin. */
    private static final Set<EntryKind> BEGINNINGS =
            EnumSet.of(EntryKind.DRAWN, EntryKind.SPLIT, EntryKind.MERGED, EntryKind.FOUND_UNTAGGED);

    /**
     * Read the word for what a row is.
     *
     * @throws Refused when there is no such word
     */
    static Shape of(String text) {
        String word = word(text);
        switch (word) {
            case "plant" -> {
                return new Shape(Sort.PLANT, Optional.empty());
            }
            case "outcome" -> {
                return new Shape(Sort.OUTCOME, Optional.empty());
            }
            case "entry" -> {
                return new Shape(Sort.ENTRY, Optional.empty());
            }
            default -> {
                return new Shape(Sort.ENTRY, Optional.of(kind(text)));
            }
        }
    }

    /**
     * Read the word for a kind of entry.
     *
     * @throws Refused when there is no such kind, or a sheet cannot tell of it
     */
    static EntryKind kind(String text) {
        Optional<EntryKind> kind = EntryKind.of(word(text)).filter(known -> known.phase() != Phase.AMENDMENT);
        return kind.orElseThrow(() -> new Refused(Fault.of(
                        "unknown-kind",
                        "a row is no \"" + text.strip()
                                + "\"; expected plant, outcome, entry, or a kind of entry such as"
                                + " potted, moved, sold or lost")
                .nearest(Nearest.of(word(text), words()))));
    }

    private static List<String> words() {
        return Stream.concat(
                        Stream.of("plant", "outcome", "entry"),
                        Arrays.stream(EntryKind.values())
                                .filter(kind -> kind.phase() != Phase.AMENDMENT)
                                .map(EntryKind::word))
                .toList();
    }

    private static String word(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
    }

    /** Tell whether an entry of this kind begins units. */
    static boolean begins(EntryKind kind) {
        return kind.phase() == Phase.ORIGIN || BEGINNINGS.contains(kind);
    }

    /** Return the word for this shape. */
    String word() {
        return kind.map(EntryKind::word).orElse(sort.name().toLowerCase(Locale.ROOT));
    }
}
