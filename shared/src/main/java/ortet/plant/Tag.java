package ortet.plant;

import java.text.Normalizer;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Fault;
import ortet.value.Refused;

/**
 * What is written on a label, such as {@code J-0140}.
 *
 * <p>Letters, marks, digits and {@code - _ . / #} in Unicode form NFC, up to 40 characters; begins with a letter or
 * digit; no blank, no {@code ..} (which stands between the ends of a range), no {@code : , ;}; not the word
 * {@code except}, which leaves tags out. Upper and lower case differ, but the book refuses two tags that differ in nothing
 * else.
 */
public record Tag(String text) implements Comparable<Tag> {
    private static final Pattern GRAMMAR = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}\\-_./#]{0,39}");
    private static final int LONGEST = 40;
    private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,15})(\\D*)");

    public Tag {
        Objects.requireNonNull(text);
        if (text.strip().equalsIgnoreCase(Tags.EXCEPT)) {
            throw new Refused(Fault.of(
                    "bad-tag", "\"" + text.strip() + "\" is no tag: the word stands before tags to leave out"));
        }
        if (!isPlain(text)) {
            text = Normalizer.normalize(text.strip(), Normalizer.Form.NFC);
            if (!GRAMMAR.matcher(text).matches() || text.contains("..")) {
                throw new Refused(
                        Fault.of(
                                "bad-tag",
                                "\"" + text
                                        + "\" is no tag; expected letters, digits and - _ . / # without blanks, such as J-0140"));
            }
        }
    }

    /** Tell whether a text is a tag of the commonest sort, without asking the whole grammar. */
    private static boolean isPlain(String text) {
        int length = text.length();
        if (length == 0 || length > LONGEST) {
            return false;
        }
        for (int at = 0; at < length; at++) {
            char letter = text.charAt(at);
            boolean plain = letter >= 'A' && letter <= 'Z'
                    || letter >= 'a' && letter <= 'z'
                    || letter >= '0' && letter <= '9'
                    || at > 0 && (letter == '-' || letter == '_');
            if (!plain) {
                return false;
            }
        }
        return true;
    }

    /** Order as people do: by words, and by the numbers in them, so that J-2 comes before J-10. */
    @Override
    public int compareTo(Tag other) {
        Matcher mine = NUMBERED.matcher(text);
        Matcher theirs = NUMBERED.matcher(other.text);
        if (mine.matches() && theirs.matches() && mine.group(1).equals(theirs.group(1))) {
            int byNumber = Long.compare(Long.parseLong(mine.group(2)), Long.parseLong(theirs.group(2)));
            if (byNumber != 0) {
                return byNumber;
            }
        }
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}
