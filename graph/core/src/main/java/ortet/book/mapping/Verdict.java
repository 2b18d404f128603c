package ortet.book.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.Words;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * What became of a plant, in the words that a mapping uses: {@code taken}, {@code failed rotted}, {@code culled surplus}.
 *
 * @param word what became of it
 * @param why a cause, or the reason for culling, as the book writes it
 */
record Verdict(Word word, Optional<String> why) {
    /** The words. */
    enum Word {
        /** It took: a layer was severed with roots, a cutting rooted, a graft held, seed came up. */
        TAKEN,
        /** It is alive, so it took; seen on that day. */
        GROWING,
        /** Nobody knows yet. */
        PENDING,
        /** It came to nothing before it stood on its own roots. */
        FAILED,
        /** It counts for nothing. */
        WITHDRAWN,
        /** It failed or was lost, as the other rows tell. */
        DEAD,
        /** It was lost after it stood on its own roots. */
        LOST,
        /** It was sold. */
        SOLD,
        /** It was culled. */
        CULLED
    }

    /**
     * Read words for an outcome.
     *
     * @throws Refused when they are none
     */
    static Verdict parse(String text) {
        String bare = text.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        int blank = bare.indexOf(' ');
        String first = blank < 0 ? bare : bare.substring(0, blank);
        String rest = blank < 0 ? "" : bare.substring(blank + 1);
        Word word = Arrays.stream(Word.values())
                .filter(known -> known.name().toLowerCase(Locale.ROOT).equals(first))
                .findFirst()
                .orElseThrow(() -> unknown(text, first));
        switch (word) {
            case FAILED, DEAD, LOST -> {
                return new Verdict(
                        word,
                        rest.isEmpty() ? Optional.empty() : Optional.of(Words.of(Words.parse(Cause.class, rest))));
            }
            case CULLED -> {
                if (rest.isEmpty()) {
                    throw Refused.because(
                            "unknown-outcome", "expected culled quality or culled surplus, found \"culled\" alone");
                }
                return new Verdict(word, Optional.of(Words.of(Words.parse(CullReason.class, rest))));
            }
            default -> {
                if (!rest.isEmpty()) {
                    throw unknown(text, first);
                }
                return new Verdict(word, Optional.empty());
            }
        }
    }

    private static Refused unknown(String text, String first) {
        List<String> words = Arrays.stream(Word.values())
                .map(word -> word.name().toLowerCase(Locale.ROOT))
                .toList();
        return new Refused(Fault.of(
                        "unknown-outcome",
                        "no outcome \"" + text.strip() + "\"; expected one of "
                                + words.stream().collect(Collectors.joining(", "))
                                + ", or a line of words in the mapping: word " + Pieces.quoted(text.strip())
                                + " = taken")
                .nearest(Nearest.of(first, words)));
    }

    /** Return the words. */
    @Override
    public String toString() {
        return word.name().toLowerCase(Locale.ROOT)
                + why.map(cause -> " " + cause).orElse("");
    }
}
