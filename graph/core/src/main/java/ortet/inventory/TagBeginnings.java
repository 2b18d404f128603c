package ortet.inventory;

import java.util.ArrayList;
import java.util.List;
import ortet.book.BookView;
import ortet.plant.Tag;
import ortet.value.Folded;

/**
 * Tells how tags go on from a text, in no more steps than somebody can read.
 *
 * <p>Where few tags begin with the text, they are told whole. Where many do, they are told by the next letter in which they
 * differ: {@code J-}, {@code K-}. Each step asks the sorted index of tags for the next tag after all those that share a
 * beginning, so that the time grows with what is told and not with the number of tags.
 */
public final class TagBeginnings {
    /** Comes after every letter that a tag may have. */
    private static final String AFTER_ALL = new String(Character.toChars(Character.MAX_CODE_POINT));

    /** Comes before every letter that a tag may have. */
    private static final String BEFORE_ALL = " ";

    /**
     * A tag, or the beginning of several.
     *
     * @param text the text
     * @param whole whether it is a tag
     */
    public record Beginning(String text, boolean whole) {}

    private TagBeginnings() {}

    /**
     * Return the tags that begin with a text, upper and lower case alike, or the beginnings that they share.
     *
     * @param text what is written so far; may be empty
     * @param most how many tags may be told whole
     */
    public static List<Beginning> of(BookView view, String text, int most) {
        String begun = Folded.of(text);
        List<Tag> tags = view.tagsFrom(begun.isEmpty() ? BEFORE_ALL : begun, most + 1).stream()
                .filter(tag -> Folded.of(tag.text()).startsWith(begun))
                .toList();
        if (tags.size() <= most) {
            return tags.stream()
                    .sorted()
                    .map(tag -> new Beginning(tag.text(), true))
                    .toList();
        }
        List<Beginning> branches = branches(view, begun);
        while (branches.size() == 1 && !branches.get(0).whole()) {
            branches = branches(view, Folded.of(branches.get(0).text()));
        }
        return branches;
    }

    /** Return how tags go on from a beginning that several share, by the next letter. */
    private static List<Beginning> branches(BookView view, String begun) {
        List<Beginning> branches = new ArrayList<>();
        int letters = begun.codePointCount(0, begun.length());
        String from = begun.isEmpty() ? BEFORE_ALL : begun;
        while (true) {
            List<Tag> next = view.tagsFrom(from, 2);
            if (next.isEmpty() || !startsWith(next, 0, begun)) {
                return branches;
            }
            String tag = next.get(0).text();
            if (tag.codePointCount(0, tag.length()) == letters) {
                branches.add(new Beginning(tag, true));
                from = begun + BEFORE_ALL;
                continue;
            }
            String branch = tag.substring(0, tag.offsetByCodePoints(0, letters + 1));
            String folded = Folded.of(branch);
            boolean alone = !startsWith(next, 1, folded);
            branches.add(alone ? new Beginning(tag, true) : new Beginning(branch, false));
            from = folded + AFTER_ALL;
        }
    }

    private static boolean startsWith(List<Tag> tags, int at, String folded) {
        return at < tags.size() && Folded.of(tags.get(at).text()).startsWith(folded);
    }
}
