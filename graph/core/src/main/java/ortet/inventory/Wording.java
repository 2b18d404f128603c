package ortet.inventory;

import java.text.Normalizer;
import java.util.Comparator;
import java.util.List;
import ortet.value.Folded;
import ortet.value.Require;

/** Words that are looked for: each must occur, in any order; case and accents do not matter. */
final class Wording {
    private final List<String> plain;
    private final String longest;

    Wording(List<String> words) {
        List<String> some = words.stream()
                .map(String::strip)
                .filter(word -> !word.isEmpty())
                .toList();
        Require.that(!some.isEmpty(), "words", "at least one word");
        this.plain = some.stream().map(Wording::plain).toList();
        this.longest =
                some.stream().max(Comparator.comparingInt(String::length)).orElseThrow();
    }

    private static String plain(String text) {
        return Folded.of(Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("\\p{M}+", ""));
    }

    /** Tell whether every word occurs in a text. */
    boolean isIn(String text) {
        String all = plain(text);
        return plain.stream().allMatch(all::contains);
    }

    /** Return 0 for a text that is the first word, 1 for one that begins with it, 2 for another that has it. */
    int rank(String text) {
        String all = plain(text);
        String first = plain.get(0);
        return all.equals(first) ? 0 : (all.startsWith(first) ? 1 : 2);
    }

    /**
     * Return a pattern of SQL's LIKE for texts in which the longest word may occur: what is no plain letter or digit stands
     * for any one character, since LIKE knows the case of plain letters alone.
     */
    String pattern() {
        StringBuilder pattern = new StringBuilder("%");
        Normalizer.normalize(longest, Normalizer.Form.NFC).codePoints().forEach(letter -> {
            if (letter == '"' || letter == '\\') {
                pattern.append('%');
            } else {
                boolean isPlain = letter < 128 && (Character.isLetterOrDigit(letter) || letter == '-' || letter == ' ');
                pattern.append(isPlain ? Character.toString(letter) : "_");
            }
        });
        return pattern.append('%').toString();
    }
}
