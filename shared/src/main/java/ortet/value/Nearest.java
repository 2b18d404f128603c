package ortet.value;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Finds what somebody may have meant to write.
 *
 * <p>Distance is the optimal string alignment distance (insert, delete, replace or swap neighbours, each counts 1),
 * upper and lower case alike. Known words are near up to a third of the word's length, at least 2 apart; one that begins
 * with a word of three letters or more is 1 apart at most.
 *
 * @see "Boytsov 2011, Indexing methods for approximate dictionary searching, J. Exp. Algorithmics 16, section 2.2"
 */
public final class Nearest {
    private static final int SHOWN = 3;

    private Nearest() {}

    /** Return up to three known words near the given one, joined by commas, the nearest first. */
    public static Optional<String> of(String word, Collection<String> known) {
        List<String> near = list(word, known, SHOWN);
        return near.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", near));
    }

    /** Return up to {@code most} known words near the given one, the nearest first, then by the alphabet. */
    public static List<String> list(String word, Collection<String> known, int most) {
        String wanted = word.toLowerCase(Locale.ROOT);
        int limit = Math.max(2, wanted.length() / 3);
        record Near(String word, int distance) {}
        return known.stream()
                .filter(candidate ->
                        Math.abs(candidate.length() - wanted.length()) <= limit || begins(candidate, wanted))
                .map(candidate -> new Near(
                        candidate,
                        begins(candidate, wanted) ? 1 : distance(wanted, candidate.toLowerCase(Locale.ROOT))))
                .filter(near -> near.distance() <= limit && near.distance() < Math.max(2, wanted.length()))
                .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::word))
                .limit(most)
                .map(Near::word)
                .collect(Collectors.toUnmodifiableList());
    }

    private static boolean begins(String candidate, String wanted) {
        return wanted.length() >= 3 && candidate.regionMatches(true, 0, wanted, 0, wanted.length());
    }

    /** Return the optimal string alignment distance of two words. */
    public static int distance(String a, String b) {
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replace = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                int best = Math.min(Math.min(last[j] + 1, row[j - 1] + 1), last[j - 1] + replace);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    best = Math.min(best, before[j - 2] + 1);
                }
                row[j] = best;
            }
            int[] free = before;
            before = last;
            last = row;
            row = free;
        }
        return last[b.length()];
    }
}
