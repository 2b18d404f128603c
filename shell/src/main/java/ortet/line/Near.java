package ortet.line;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import ortet.value.Nearest;

/** Finds the known word that was probably meant. */
final class Near {
    private static final int SHOWN = 3;

    private Near() {}

    /**
     * Return the first known word that goes on where the typed one ends, or else the nearest, see {@link Nearest}.
     */
    static Optional<String> of(String word, Collection<String> known) {
        return several(word, known, 1).stream().findFirst();
    }

    /** Return the text to end a message with: {@code "; nearest: plant"}, or what is given when nothing is near. */
    static String orElse(String word, Collection<String> known, String otherwise) {
        List<String> near = several(word, known, SHOWN);
        return near.isEmpty() ? otherwise : "; nearest: " + String.join(", ", near);
    }

    private static List<String> several(String word, Collection<String> known, int most) {
        List<String> begun = word.length() < 2
                ? List.of()
                : known.stream()
                        .filter(candidate -> candidate.startsWith(word))
                        .limit(most)
                        .toList();
        return begun.isEmpty() ? Nearest.list(word, known, most) : begun;
    }
}
