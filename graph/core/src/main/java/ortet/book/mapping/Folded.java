package ortet.book.mapping;

import java.text.Normalizer;
import java.util.Locale;

/** Makes texts alike that people take for alike: blanks at the ends, several blanks, upper and lower case. */
final class Folded {
    private Folded() {}

    /** Return a text without blanks at its ends, with one blank for several, in lower case and Unicode form NFC. */
    static String of(String text) {
        return clean(text).toLowerCase(Locale.ROOT);
    }

    /** Return a text without blanks at its ends, with one blank for several, in Unicode form NFC. */
    static String clean(String text) {
        if (isClean(text)) {
            return text;
        }
        StringBuilder clean = new StringBuilder(text.length());
        boolean blank = false;
        boolean plain = true;
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            if (isBlank(letter)) {
                blank = true;
                continue;
            }
            if (blank && clean.length() > 0) {
                clean.append(' ');
            }
            blank = false;
            plain &= letter < 128;
            clean.append(letter);
        }
        String result = clean.toString();
        return plain ? result : Normalizer.normalize(result, Normalizer.Form.NFC);
    }

    /** Tell whether a text is plain ASCII and has no blank but single ones between others, as most texts are. */
    private static boolean isClean(String text) {
        boolean wasBlank = true;
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            boolean blank = letter == ' ';
            if (letter > 126 || letter < ' ' || blank && wasBlank) {
                return false;
            }
            wasBlank = blank;
        }
        return !wasBlank;
    }

    /** Tell whether a letter is a blank of some sort, also one that spreadsheets and web pages leave behind. */
    static boolean isBlank(char letter) {
        return letter <= ' '
                || letter == '\u00A0'
                || letter == '\u200B'
                || letter == '\uFEFF'
                || letter > 127 && Character.isSpaceChar(letter);
    }

    /** Return a text without blanks of any sort at its ends. */
    static String strip(String text) {
        int begin = 0;
        int end = text.length();
        while (begin < end && isBlank(text.charAt(begin))) {
            begin++;
        }
        while (begin < end && isBlank(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(begin, end);
    }
}
