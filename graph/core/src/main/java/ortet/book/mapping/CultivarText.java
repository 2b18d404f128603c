package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.plant.CultivarName;
import ortet.value.Refused;

/**
 * Brings the names of cultivars into the form of the ICNCP: the genus with a capital, the rest of the botanical name
 * small, the epithet in single quotes.
 *
 * <p>Takes double quotes, {@code cv.} and an epithet that begins with a capital for an epithet; in a name all in capitals
 * or all small, what follows the second word. An epithet all in capitals or all small gets a capital for each word.
 */
final class CultivarText {
    private static final Pattern QUOTED = Pattern.compile("([^']*)'(.+)'\\s*");
    private static final Pattern MARKED = Pattern.compile("(.*?)\\s+cv\\.?\\s+(.+)", Pattern.CASE_INSENSITIVE);
    private static final Map<String, String> RANKS = Map.of(
            "var", "var.", "var.", "var.", "subsp", "subsp.", "subsp.", "subsp.", "ssp", "subsp.", "ssp.", "subsp.",
            "f.", "f.", "f", "f.", "forma", "f.");

    private CultivarText() {}

    /**
     * Return a whole name in its form.
     *
     * @throws Refused when it is no botanical name
     */
    static String whole(String text) {
        String plain = plain(text);
        Matcher quoted = QUOTED.matcher(plain);
        Matcher marked = MARKED.matcher(plain);
        if (quoted.matches()) {
            return checked(taxonOf(quoted.group(1)) + " '" + epithet(quoted.group(2)) + "'", text);
        }
        if (marked.matches()) {
            return checked(taxonOf(marked.group(1)) + " '" + epithet(marked.group(2)) + "'", text);
        }
        return checked(unquoted(plain), text);
    }

    /**
     * Return a botanical name without an epithet in its form.
     *
     * @throws Refused when it is none
     */
    static String taxon(String text) {
        return checked(taxonOf(plain(text)), text);
    }

    /** Return an epithet without quotation marks, in its form. */
    static String epithet(String text) {
        String bare = plain(text);
        if (bare.length() > 1 && bare.startsWith("'") && bare.endsWith("'")) {
            bare = bare.substring(1, bare.length() - 1).strip();
        }
        boolean flat = bare.equals(bare.toLowerCase(Locale.ROOT)) || bare.equals(bare.toUpperCase(Locale.ROOT));
        if (!flat || bare.length() < 3) {
            return bare;
        }
        StringBuilder words = new StringBuilder();
        boolean first = true;
        for (char letter : bare.toCharArray()) {
            words.append(first ? Character.toUpperCase(letter) : Character.toLowerCase(letter));
            first = letter == ' ' || letter == '-';
        }
        return words.toString();
    }

    private static String plain(String text) {
        return Folded.clean(text).replaceAll("[\"“”„‘’`´]", "'").replace("''", "'");
    }

    private static String checked(String name, String text) {
        try {
            return CultivarName.parse(name).toString();
        } catch (Refused refused) {
            throw Refused.because(
                    "bad-cultivar",
                    "expected a botanical name such as Acer palmatum 'Deshojo', found \"" + text.strip()
                            + "\"; a line of words in the mapping can say what it stands for");
        }
    }

    private static String taxonOf(String text) {
        List<String> words = new ArrayList<>(Arrays.asList(text.strip().split("\\s+")));
        StringBuilder name = new StringBuilder();
        boolean genus = true;
        for (String word : words) {
            String small = word.toLowerCase(Locale.ROOT);
            if (small.equals("x") || word.equals("×")) {
                append(name, "×");
            } else if (genus) {
                append(name, capital(word));
                genus = false;
            } else {
                append(name, RANKS.getOrDefault(small, small));
            }
        }
        return name.toString();
    }

    private static void append(StringBuilder name, String word) {
        if (name.length() > 0) {
            name.append(' ');
        }
        name.append(word);
    }

    private static String capital(String word) {
        return word.isEmpty()
                ? word
                : word.substring(0, 1).toUpperCase(Locale.ROOT)
                        + word.substring(1).toLowerCase(Locale.ROOT);
    }

    private static String unquoted(String plain) {
        String[] words = plain.split(" ");
        boolean flat = plain.equals(plain.toLowerCase(Locale.ROOT)) || plain.equals(plain.toUpperCase(Locale.ROOT));
        int begins = 1;
        int species = 0;
        while (begins < words.length) {
            String word = words[begins];
            String small = word.toLowerCase(Locale.ROOT);
            boolean isRank = RANKS.containsKey(small) && begins + 1 < words.length;
            boolean isHybridSign = small.equals("x") || word.equals("×");
            if (isRank) {
                begins += 2;
                continue;
            }
            boolean isEpithet = flat ? species > 0 : Character.isUpperCase(word.charAt(0));
            if (isEpithet && !isHybridSign) {
                break;
            }
            species += isHybridSign ? 0 : 1;
            begins++;
        }
        String taxon = taxonOf(String.join(" ", Arrays.copyOfRange(words, 0, Math.min(begins, words.length))));
        if (begins >= words.length) {
            return taxon;
        }
        return taxon + " '" + epithet(String.join(" ", Arrays.copyOfRange(words, begins, words.length))) + "'";
    }
}
