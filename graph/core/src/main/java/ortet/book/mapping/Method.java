package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** How a plant began, in the words that a mapping uses; the first is the usual one. */
enum Method {
    /** A layer. */
    LAYER(EntryKind.LAYER_SET, "layer", "layers"),
    /** Cuttings. */
    CUTTINGS(EntryKind.CUTTINGS_STRUCK, "cuttings", "cutting"),
    /** A graft. */
    GRAFT(EntryKind.GRAFT_WORKED, "graft", "grafts"),
    /** Seed. */
    SEED(EntryKind.SEED_SOWN, "seed", "seedling", "seedlings"),
    /** A division. */
    DIVISION(EntryKind.DIVIDED, "division", "divisions"),
    /** A sport. */
    SPORT(EntryKind.SPORT_FOUND, "sport"),
    /** Drawn from a batch. */
    DRAWN(EntryKind.DRAWN, "drawn"),
    /** From outside. */
    ACQUIRED(EntryKind.ACQUIRED, "acquired");

    private final EntryKind kind;
    private final List<String> words;

    Method(EntryKind kind, String... words) {
        this.kind = kind;
        this.words = List.of(words);
    }

    /** Return the kind of entry that begins such a plant. */
    EntryKind kind() {
        return kind;
    }

    /** Return the usual word. */
    String word() {
        return words.get(0);
    }

    /** Return the method by which an entry of a kind begins a plant. */
    static Optional<Method> of(EntryKind kind) {
        for (Method method : values()) {
            if (method.kind == kind) {
                return Optional.of(method);
            }
        }
        return Optional.empty();
    }

    /**
     * Read the word for a method.
     *
     * @throws Refused when there is no such word
     */
    static Method parse(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        List<String> usual = new ArrayList<>();
        for (Method method : values()) {
            if (method.words.contains(word) || method.kind.word().equals(word.replace(' ', '-'))) {
                return method;
            }
            usual.add(method.word());
        }
        throw new Refused(Fault.of(
                        "unknown-method",
                        "no method \"" + text.strip() + "\"; expected one of " + String.join(", ", usual)
                                + ", or a line of words in the mapping: word " + Pieces.quoted(text.strip())
                                + " = layer")
                .nearest(Nearest.of(word, usual)));
    }
}
