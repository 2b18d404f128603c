package ortet.plant;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Fault;
import ortet.value.Refused;

/**
 * Reads and writes several tags in one line: {@code J-201..J-240 except J-217 J-230..J-232}.
 *
 * <p>Words are parted by blanks or commas. A range has two tags alike but for the last number in them; the number
 * keeps its leading zeros. What follows {@code except} is taken out.
 */
public final class Tags {
    /** The most tags that one line may name. */
    public static final int MOST = 10_000;

    /** The word before the tags to leave out. */
    static final String EXCEPT = "except";

    private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,9})(\\D*)");

    private Tags() {}

    /**
     * Read tags, in the order in which they stand.
     *
     * @throws Refused when a word is no tag, a range runs backwards or is no range, a tag is named twice, or one to be
     *     left out is not there
     */
    public static List<Tag> parse(String text) {
        if (isOneWord(text)) {
            return List.of(new Tag(text));
        }
        return parse(List.of(text.strip().split("[\\s,]+")));
    }

    private static boolean isOneWord(String text) {
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            if (letter <= ' ' || letter == ',' || letter == '.' || letter > '~') {
                return false;
            }
        }
        return !text.isEmpty() && !text.equalsIgnoreCase(EXCEPT);
    }

    /** Read tags from words, as {@link #parse(String)} does. */
    public static List<Tag> parse(List<String> words) {
        Set<Tag> tags = new LinkedHashSet<>();
        boolean leavingOut = false;
        for (String word : words) {
            if (word.isEmpty()) {
                continue;
            }
            if (word.equalsIgnoreCase(EXCEPT)) {
                if (leavingOut || tags.isEmpty()) {
                    throw Refused.because("bad-tags", "expected tags, then \"except\" once and the tags to leave out");
                }
                leavingOut = true;
                continue;
            }
            for (Tag tag : range(word)) {
                boolean changed = leavingOut ? tags.remove(tag) : tags.add(tag);
                if (!changed) {
                    throw Refused.because(
                            "bad-tags", leavingOut ? tag + " is left out but was not named" : tag + " is named twice");
                }
                if (tags.size() > MOST) {
                    throw Refused.because("bad-tags", "more than " + MOST + " tags in one line");
                }
            }
        }
        if (tags.isEmpty()) {
            throw Refused.because("bad-tags", "no tag is left");
        }
        return List.copyOf(tags);
    }

    private static List<Tag> range(String word) {
        int dots = word.indexOf("..");
        if (dots < 0) {
            return List.of(new Tag(word));
        }
        Tag first = new Tag(word.substring(0, dots));
        String end = word.substring(dots + 2);
        Matcher from = NUMBERED.matcher(first.text());
        if (!from.matches()) {
            throw new Refused(
                    Fault.of("bad-range", "\"" + word + "\" is no range: " + first + " has no number to count on"));
        }
        Tag last = end.matches("\\d{1,9}") ? new Tag(from.group(1) + end + from.group(3)) : new Tag(end);
        Matcher to = NUMBERED.matcher(last.text());
        boolean alike = to.matches()
                && from.group(1).equals(to.group(1))
                && from.group(3).equals(to.group(3));
        if (!alike) {
            throw new Refused(Fault.of(
                    "bad-range", "\"" + word + "\" is no range: the ends differ in more than the last number"));
        }
        int low = Integer.parseInt(from.group(2));
        int high = Integer.parseInt(to.group(2));
        if (high < low) {
            throw new Refused(Fault.of("bad-range", "\"" + word + "\" runs backwards"));
        }
        if (high - low >= MOST) {
            throw new Refused(Fault.of("bad-range", "\"" + word + "\" names more than " + MOST + " tags"));
        }
        int width = from.group(2).length();
        List<Tag> tags = new ArrayList<>(high - low + 1);
        for (int number = low; number <= high; number++) {
            String digits = Integer.toString(number);
            tags.add(new Tag(
                    from.group(1) + "0".repeat(Math.max(0, width - digits.length())) + digits + from.group(3)));
        }
        return tags;
    }

    /** Write tags as briefly as they can be read back: neighbours of three and more become a range. */
    public static String brief(Collection<Tag> tags) {
        List<Tag> list = List.copyOf(tags);
        StringBuilder line = new StringBuilder();
        int at = 0;
        while (at < list.size()) {
            int end = at;
            while (end + 1 < list.size() && follows(list.get(end), list.get(end + 1))) {
                end++;
            }
            if (line.length() > 0) {
                line.append(' ');
            }
            if (end - at >= 2) {
                line.append(list.get(at)).append("..").append(list.get(end));
                at = end + 1;
            } else {
                line.append(list.get(at));
                at++;
            }
        }
        return line.toString();
    }

    private static boolean follows(Tag tag, Tag next) {
        Matcher mine = NUMBERED.matcher(tag.text());
        Matcher theirs = NUMBERED.matcher(next.text());
        if (!mine.matches()
                || !theirs.matches()
                || !mine.group(1).equals(theirs.group(1))
                || !mine.group(3).equals(theirs.group(3))) {
            return false;
        }
        String digits = Integer.toString(Integer.parseInt(mine.group(2)) + 1);
        int width = mine.group(2).length();
        return theirs.group(2).equals("0".repeat(Math.max(0, width - digits.length())) + digits);
    }
}
