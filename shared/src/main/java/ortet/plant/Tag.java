package ortet.plant;

import java.text.Normalizer;
import java.util.Objects;
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
        int mine = 0;
        int theirs = 0;
        while (mine < text.length() && theirs < other.text.length()) {
            if (isDigit(text.charAt(mine)) && isDigit(other.text.charAt(theirs))) {
                int myEnd = endOfNumber(text, mine);
                int theirEnd = endOfNumber(other.text, theirs);
                int byNumber = compareNumbers(text.substring(mine, myEnd), other.text.substring(theirs, theirEnd));
                if (byNumber != 0) {
                    return byNumber;
                }
                mine = myEnd;
                theirs = theirEnd;
            } else {
                int byLetter = Character.compare(text.charAt(mine++), other.text.charAt(theirs++));
                if (byLetter != 0) {
                    return byLetter;
                }
            }
        }
        int byLength = Integer.compare(text.length() - mine, other.text.length() - theirs);
        return byLength != 0 ? byLength : text.compareTo(other.text);
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    private static int endOfNumber(String text, int from) {
        int end = from;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }

    /** Compare two runs of digits by what they count, whatever zeros they begin with. */
    private static int compareNumbers(String one, String other) {
        int from = afterZeros(one);
        int otherFrom = afterZeros(other);
        int byLength = Integer.compare(one.length() - from, other.length() - otherFrom);
        return byLength != 0 ? byLength : one.substring(from).compareTo(other.substring(otherFrom));
    }

    private static int afterZeros(String digits) {
        int at = 0;
        while (at < digits.length() && digits.charAt(at) == '0') {
            at++;
        }
        return at;
    }

    @Override
    public String toString() {
        return text;
    }
}
