package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import ortet.value.Refused;

/**
 * Cuts the text of a mapping at separators that stand outside quotation marks.
 *
 * <p>A quotation mark opens a quoted text at the beginning of a piece or after a blank, and one inside it is written
 * twice; anywhere else it stands for itself, as in {@code 12" pot}.
 */
final class Pieces {
    private static final char QUOTE = '"';

    private Pieces() {}

    /** Return the place of the first separator outside quotation marks, -1 where there is none. */
    static int find(String text, char separator) {
        int at = 0;
        boolean mayOpen = true;
        while (at < text.length()) {
            char letter = text.charAt(at);
            if (letter == QUOTE && mayOpen) {
                at = afterQuoted(text, at);
                mayOpen = false;
                continue;
            }
            if (letter == separator) {
                return at;
            }
            mayOpen = Character.isWhitespace(letter);
            at++;
        }
        return -1;
    }

    private static int afterQuoted(String text, int open) {
        int at = open + 1;
        while (at < text.length()) {
            if (text.charAt(at) == QUOTE) {
                if (at + 1 < text.length() && text.charAt(at + 1) == QUOTE) {
                    at += 2;
                    continue;
                }
                return at + 1;
            }
            at++;
        }
        throw Refused.because("bad-quotes", "a quotation mark is opened and not closed");
    }

    /** Return the pieces between separators, quotation marks left on, blanks at their ends taken off. */
    static List<String> cut(String text, char separator) {
        List<String> pieces = new ArrayList<>();
        String rest = text;
        int at = find(rest, separator);
        while (at >= 0) {
            pieces.add(rest.substring(0, at).strip());
            rest = rest.substring(at + 1);
            at = find(rest, separator);
        }
        pieces.add(rest.strip());
        return pieces;
    }

    /** Return the members of a list parted by commas, without their quotation marks. */
    static List<String> list(String text) {
        return cut(text, ',').stream().map(Pieces::plain).collect(Collectors.toList());
    }

    /** Return a piece without the quotation marks around it. */
    static String plain(String piece) {
        String text = piece.strip();
        if (text.isEmpty() || text.charAt(0) != QUOTE) {
            return text;
        }
        int end = afterQuoted(text, 0);
        if (end != text.length()) {
            throw Refused.because(
                    "bad-quotes", "expected nothing after the closing quotation mark, found \"" + text + "\"");
        }
        return text.substring(1, end - 1).replace("\"\"", "\"");
    }

    /** Return a text as it is written in a mapping: with quotation marks where it could not be read back without. */
    static String quoted(String text) {
        boolean bare = !text.isEmpty()
                && text.strip().equals(text)
                && text.indexOf(QUOTE) < 0
                && text.indexOf(',') < 0
                && text.indexOf('=') < 0
                && text.charAt(0) != '#';
        return bare ? text : QUOTE + text.replace("\"", "\"\"") + QUOTE;
    }
}
