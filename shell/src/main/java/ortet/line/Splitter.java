package ortet.line;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits a line into words, as a grower types it.
 *
 * <p>Blanks and tabs part words. {@code '…'} keeps everything as it is, {@code "…"} lets a backslash stand before
 * {@code "} and {@code \}; outside quotes a backslash keeps the next character. {@code ''} is an empty word. A
 * {@code #} that begins a word begins a comment, unless a digit follows: {@code #12} is the number of an entry.
 */
final class Splitter {
    private Splitter() {}

    /**
     * Return the words of a line, none for a blank line or a comment.
     *
     * @throws UsageException if a quote is not closed or the line ends with a lone backslash
     */
    static List<String> split(String line) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inWord = false;
        int at = 0;
        while (at < line.length()) {
            char c = line.charAt(at);
            if (!inWord && isComment(line, at)) {
                break;
            }
            if (isBlank(c)) {
                if (inWord) {
                    words.add(word.toString());
                    word.setLength(0);
                    inWord = false;
                }
                at++;
                continue;
            }
            inWord = true;
            if (c == '\'' || c == '"') {
                at = quoted(line, at, word);
            } else if (c == '\\') {
                if (at + 1 == line.length()) {
                    throw new UsageException("the line ends with a backslash and nothing follows");
                }
                word.append(line.charAt(at + 1));
                at += 2;
            } else {
                word.append(c);
                at++;
            }
        }
        if (inWord) {
            words.add(word.toString());
        }
        return List.copyOf(words);
    }

    /** Return the words of a line that is still being typed; quotes need not be closed, and nothing is refused. */
    static Unfinished unfinished(String line) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inWord = false;
        int start = line.length();
        char quote = 0;
        int at = 0;
        while (at < line.length()) {
            char c = line.charAt(at);
            if (quote == 0 && !inWord && isComment(line, at)) {
                return new Unfinished(words, "", line.length());
            }
            if (quote == 0 && isBlank(c)) {
                if (inWord) {
                    words.add(word.toString());
                    word.setLength(0);
                    inWord = false;
                }
                at++;
                continue;
            }
            if (!inWord) {
                inWord = true;
                start = at;
            }
            if (c == '\\' && keepsNext(line, at, quote)) {
                word.append(line.charAt(at + 1));
                at++;
            } else if (quote == 0 && (c == '\'' || c == '"')) {
                quote = c;
            } else if (c == quote) {
                quote = 0;
            } else {
                word.append(c);
            }
            at++;
        }
        return new Unfinished(words, word.toString(), inWord ? start : line.length());
    }

    private static boolean keepsNext(String line, int at, char quote) {
        boolean last = at + 1 == line.length();
        return !last && (quote == 0 || quote == '"' && "\"\\".indexOf(line.charAt(at + 1)) >= 0);
    }

    /** Return a word as it can be typed: as it is, or in quotes where it needs them. */
    static String quoted(String word) {
        return needsQuotes(word) ? "\"" + kept(word) + "\"" : word;
    }

    /** Return the beginning of a word as it can be typed, so that more can follow. */
    static String opened(String word) {
        return needsQuotes(word) && !word.isEmpty() ? "\"" + kept(word) : word;
    }

    private static String kept(String word) {
        return word.replace("\\", "\\\\").replace("\"", "\\\"");
    }

    private static boolean needsQuotes(String word) {
        if (word.isEmpty() || isComment(word, 0)) {
            return true;
        }
        for (int at = 0; at < word.length(); at++) {
            char c = word.charAt(at);
            if (isBlank(c) || c == '\'' || c == '"' || c == '\\') {
                return true;
            }
        }
        return false;
    }

    /**
     * Return whether a line asks to be continued: it ends with a backslash that is not itself kept by another, not in a
     * comment and not between {@code '}.
     */
    static boolean isContinued(String line) {
        char quote = 0;
        boolean inWord = false;
        for (int at = 0; at < line.length(); at++) {
            char c = line.charAt(at);
            if (quote == '\'') {
                quote = c == '\'' ? 0 : quote;
            } else if (c == '\\') {
                if (at + 1 == line.length()) {
                    return true;
                }
                at++;
                inWord = true;
            } else if (quote == '"') {
                quote = c == '"' ? 0 : quote;
            } else if (!inWord && isComment(line, at)) {
                return false;
            } else {
                quote = c == '\'' || c == '"' ? c : quote;
                inWord = !isBlank(c);
            }
        }
        return false;
    }

    private static int quoted(String line, int opened, StringBuilder word) {
        char quote = line.charAt(opened);
        int at = opened + 1;
        while (at < line.length()) {
            char c = line.charAt(at);
            if (c == quote) {
                return at + 1;
            }
            if (quote == '"' && c == '\\' && at + 1 < line.length()) {
                char next = line.charAt(at + 1);
                if (next == '"' || next == '\\') {
                    word.append(next);
                    at += 2;
                    continue;
                }
            }
            word.append(c);
            at++;
        }
        throw new UsageException("the " + quote + " at column " + (opened + 1) + " is not closed");
    }

    private static boolean isComment(String line, int at) {
        boolean numbered = at + 1 < line.length() && Character.isDigit(line.charAt(at + 1));
        return line.charAt(at) == '#' && !numbered;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\u00a0';
    }
}
