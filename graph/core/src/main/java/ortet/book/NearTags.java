package ortet.book;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import ortet.value.Folded;
import ortet.value.Nearest;

/**
 * Finds the tags that may have been meant, among as many as there are.
 *
 * <p>Walks the sorted index of tags like a tree of letters: from each tag met, it works out the longest beginning that
 * can still be near enough, and asks for the next tag after all those that share a beginning which cannot. So it looks
 * at those near and their neighbours alone. It looks for tags one letter apart first, and further only while fewer than
 * three were found. What it finds is what {@link Nearest} finds among all tags, with two exceptions: the walk is given up
 * after {@value #MOST_STEPS} steps, which takes tags so long that a third of their letters may be wrong; and of the tags
 * that begin with the one given, it looks at the first {@value #MOST_BEGUN}.
 *
 * @see "Schulz and Mihov 2002, Fast string correction with Levenshtein automata, IJDAR 5:67"
 */
public final class NearTags {
    static final int SHOWN = 3;
    static final int MOST_STEPS = 20_000;
    static final int MOST_BEGUN = 64;
    private static final String AFTER_ALL = new String(Character.toChars(Character.MAX_CODE_POINT));

    /**
     * A tag and its folded form.
     *
     * @param folded the form in which the tags are sorted, by code points
     * @param tag the tag as written
     */
    public record Candidate(String folded, String tag) {}

    private final Function<String, Optional<Candidate>> next;
    private int steps;

    /** Walk tags that are reached by asking for the next one after a text. */
    public NearTags(Function<String, Optional<Candidate>> next) {
        this.next = next;
    }

    /** Return up to three tags near the given one, the nearest first, then by the alphabet. */
    public List<String> near(String tag) {
        String wanted = Folded.of(tag);
        int furthest = Math.max(2, tag.length() / 3);
        List<String> begun = beginWith(wanted);
        List<String> near = List.of();
        for (int distance = 1; distance <= furthest && near.size() < SHOWN && steps < MOST_STEPS; distance++) {
            Set<String> found = new LinkedHashSet<>(begun);
            found.addAll(within(wanted, distance));
            near = Nearest.list(tag, found, SHOWN);
        }
        return near;
    }

    private List<String> beginWith(String wanted) {
        List<String> found = new ArrayList<>();
        Optional<Candidate> here = next.apply(wanted);
        while (here.filter(candidate -> candidate.folded().startsWith(wanted)).isPresent()
                && found.size() < MOST_BEGUN) {
            found.add(here.get().tag());
            here = next.apply(here.get().folded());
        }
        return found;
    }

    private List<String> within(String wanted, int most) {
        List<String> found = new ArrayList<>();
        Optional<Candidate> here = next.apply("");
        String before = "";
        int[][] rows = new int[wanted.length() + most + 2][];
        rows[0] = new int[wanted.length() + 1];
        Arrays.setAll(rows[0], j -> j);
        while (here.isPresent() && steps++ < MOST_STEPS) {
            String folded = here.get().folded();
            int shared = shared(before, folded, rows.length - 1);
            int dead = extend(rows, wanted, folded, shared, most);
            if (dead >= 0) {
                boolean halved = Character.isHighSurrogate(folded.charAt(dead - 1)) && dead < folded.length();
                before = folded.substring(0, halved ? dead + 1 : dead);
                here = next.apply(before + AFTER_ALL);
            } else {
                if (rows[folded.length()][wanted.length()] <= most) {
                    found.add(here.get().tag());
                }
                before = folded;
                here = next.apply(folded);
            }
        }
        return found;
    }

    private static int shared(String a, String b, int most) {
        int length = Math.min(most, Math.min(a.length(), b.length()));
        int at = 0;
        while (at < length && a.charAt(at) == b.charAt(at)) {
            at++;
        }
        return at;
    }

    /**
     * Fill the rows of the distance table for the letters after those shared with the word before.
     *
     * @return the length of the shortest beginning that cannot be near enough, or -1 when the whole word can
     */
    private static int extend(int[][] rows, String wanted, String word, int shared, int most) {
        for (int i = shared + 1; i <= word.length(); i++) {
            if (i >= rows.length) {
                return i;
            }
            int[] row = new int[wanted.length() + 1];
            int[] last = rows[i - 1];
            row[0] = i;
            int best = i;
            for (int j = 1; j <= wanted.length(); j++) {
                int replace = word.charAt(i - 1) == wanted.charAt(j - 1) ? 0 : 1;
                int least = Math.min(Math.min(last[j] + 1, row[j - 1] + 1), last[j - 1] + replace);
                if (i > 1
                        && j > 1
                        && word.charAt(i - 1) == wanted.charAt(j - 2)
                        && word.charAt(i - 2) == wanted.charAt(j - 1)) {
                    least = Math.min(least, rows[i - 2][j - 2] + 1);
                }
                row[j] = least;
                best = Math.min(best, least);
            }
            rows[i] = row;
            if (best > most && least(last) + 1 > most) {
                return i;
            }
        }
        return -1;
    }

    /** Return the least of a row: from there a swap of neighbours can still lead on. */
    private static int least(int[] row) {
        int least = row[0];
        for (int value : row) {
            least = Math.min(least, value);
        }
        return least;
    }
}
