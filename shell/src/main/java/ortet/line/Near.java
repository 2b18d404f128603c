package ortet.line;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that was probably meant. */
final class Near {
    private Near() {}

    /**
     * Return the known word nearest to a mistyped one, if one is near enough.
     *
     * <p>Counts insertions, deletions, substitutions and swaps of neighbours (optimal string alignment). Near enough is
     * one slip in up to five letters and one more for every three further. A known word that goes on where the typed
     * one ends counts as near too, but only when nothing is nearer. Ties go to the first in the given order.
     */
    static Optional<String> of(String word, Collection<String> known) {
        String typed = word.toLowerCase(Locale.ROOT);
        String best = "";
        int least = Integer.MAX_VALUE;
        int allowed = typed.length() < 2 ? 0 : Math.max(1, (typed.length() + 1) / 3);
        for (String candidate : known) {
            String other = candidate.toLowerCase(Locale.ROOT);
            int distance = distance(typed, other);
            if (distance > allowed) {
                boolean begins = typed.length() >= 2 && other.startsWith(typed);
                distance = begins ? allowed + 1 : Integer.MAX_VALUE;
            }
            if (distance < least) {
                least = distance;
                best = candidate;
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(best);
    }

    /** Return the text to end a message with: {@code "; nearest: plant"}, or what is given when nothing is near. */
    static String orElse(String word, Collection<String> known, String otherwise) {
        return of(word, known).map(near -> "; nearest: " + near).orElse(otherwise);
    }

    static int distance(String first, String second) {
        int columns = second.length() + 1;
        int[] beforeLast = new int[columns];
        int[] last = new int[columns];
        int[] row = new int[columns];
        for (int j = 0; j < columns; j++) {
            last[j] = j;
        }
        for (int i = 1; i <= first.length(); i++) {
            row[0] = i;
            for (int j = 1; j < columns; j++) {
                int change = first.charAt(i - 1) == second.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
                if (i > 1
                        && j > 1
                        && first.charAt(i - 1) == second.charAt(j - 2)
                        && first.charAt(i - 2) == second.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            int[] spare = beforeLast;
            beforeLast = last;
            last = row;
            row = spare;
        }
        return last[second.length()];
    }
}
