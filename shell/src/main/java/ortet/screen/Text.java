package ortet.screen;

import java.util.ArrayList;
import java.util.List;
import org.jline.utils.AttributedString;

/** Measures and breaks text by the columns it takes on a screen. */
final class Text {
    private Text() {}

    /** Return how many columns the text takes: a wide character two, a combining mark none. */
    static int columns(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c > '~') {
                return new AttributedString(text).columnLength();
            }
        }
        return text.length();
    }

    /** Return how many rows of a screen a text with line ends takes; what steers colours takes no room. */
    static int rows(String text, int width) {
        int rows = 0;
        for (String line : text.split("\n", -1)) {
            int columns = line.length() <= width / 2
                    ? 1
                    : AttributedString.fromAnsi(line).columnLength();
            rows += Math.max(1, (columns + width - 1) / width);
        }
        return text.endsWith("\n") ? rows - 1 : rows;
    }

    /** Return the text on one line, with nothing in it that could steer a terminal. */
    static String printable(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\t' || c == '\n') {
                safe.append(' ');
            } else if (Character.isISOControl(c)) {
                if (c != '\r') {
                    safe.append('\ufffd');
                }
            } else {
                safe.append(c);
            }
        }
        return safe.toString();
    }

    /** Return the text with blanks after it up to the width. */
    static String left(String text, int width) {
        return text + " ".repeat(Math.max(0, width - columns(text)));
    }

    /** Return the text with blanks before it up to the width. */
    static String right(String text, int width) {
        return " ".repeat(Math.max(0, width - columns(text))) + text;
    }

    /** Return the columns of the longest word. */
    static int longestWord(String text) {
        int longest = 0;
        for (String word : text.split(" ")) {
            longest = Math.max(longest, columns(word));
        }
        return longest;
    }

    /** Return the text broken at blanks into lines of at most the width; a longer word is cut. */
    static List<String> wrap(String text, int width) {
        String line = printable(text);
        if (columns(line) <= width) {
            return List.of(line);
        }
        List<String> lines = new ArrayList<>();
        StringBuilder current = new StringBuilder();
        int used = 0;
        for (String word : line.split(" ")) {
            String rest = word;
            int length = columns(rest);
            if (used > 0 && used + 1 + length > width) {
                lines.add(current.toString());
                current.setLength(0);
                used = 0;
            }
            while (length > width) {
                String head = head(rest, width);
                lines.add(head);
                rest = rest.substring(head.length());
                length = columns(rest);
            }
            if (used > 0) {
                current.append(' ');
                used++;
            }
            current.append(rest);
            used += length;
        }
        if (used > 0) {
            lines.add(current.toString());
        }
        return List.copyOf(lines);
    }

    /** Return as much of the beginning as fits, at least one whole character with its marks. */
    private static String head(String text, int width) {
        int end = text.offsetByCodePoints(0, 1);
        while (end < text.length()) {
            int next = text.offsetByCodePoints(end, 1);
            if (columns(text.substring(0, next)) > width) {
                break;
            }
            end = next;
        }
        return text.substring(0, end);
    }
}
