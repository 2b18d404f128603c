package ortet.book.mapping;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Decimal;
import ortet.value.Refused;
import ortet.value.Strength;

/**
 * A rooting hormone as it is written in one cell: {@code IBA 3000 ppm talc}, {@code none}.
 *
 * @param substance the active substance; empty for none
 * @param strength its strength, as the book writes it
 * @param carrier what carries it, as the book writes it
 */
record Hormone(String substance, String strength, String carrier) {
    private static final Pattern STRENGTH =
            Pattern.compile("([0-9][0-9.,]*)\\s*(%|ppm|mg/l)", Pattern.CASE_INSENSITIVE);
    private static final Pattern WITH_UNIT = Pattern.compile("(.*?)\\s*(%|ppm|mg/l)?", Pattern.CASE_INSENSITIVE);
    private static final Set<String> NONE = Set.of("none", "no", "nil", "nothing", "without", "0", "untreated", "n");
    private static final Map<String, String> CARRIERS = Map.of(
            "powder", "powder", "talc", "powder", "liquid", "liquid", "dip", "liquid", "gel", "gel", "paste", "paste");

    /** Read a cell. */
    static Hormone of(String cell, Numbers numbers) {
        String text = Folded.clean(cell);
        if (NONE.contains(text.toLowerCase(Locale.ROOT))) {
            return new Hormone("", "", "");
        }
        String strength = "";
        Matcher matcher = STRENGTH.matcher(text);
        if (matcher.find()) {
            strength = strength(matcher.group(), Optional.empty(), numbers);
            text = Folded.clean(text.substring(0, matcher.start()) + " " + text.substring(matcher.end()));
        }
        String carrier = "";
        StringBuilder substance = new StringBuilder();
        for (String word : text.split("[ ,;()]+")) {
            String known = CARRIERS.get(word.toLowerCase(Locale.ROOT));
            if (known != null && carrier.isEmpty()) {
                carrier = known;
            } else if (!word.isEmpty()) {
                substance.append(substance.length() > 0 ? " " : "").append(word);
            }
        }
        return new Hormone(substance.toString(), strength, carrier);
    }

    /**
     * Read a strength; one of 0 is none.
     *
     * @param unit {@code %} or {@code ppm}, where the cell names neither
     * @throws Refused when the cell is none
     */
    static String strength(String cell, Optional<String> unit, Numbers numbers) {
        Matcher matcher = WITH_UNIT.matcher(cell.strip());
        if (!matcher.matches()) {
            throw Refused.because("bad-strength", "expected a strength in one line");
        }
        Decimal number = numbers.parse(matcher.group(1));
        if (number.signum() == 0) {
            return "";
        }
        String in = Optional.ofNullable(matcher.group(2))
                .or(() -> unit)
                .orElseThrow(() -> Refused.because(
                        "bad-strength",
                        "expected a strength with % or ppm, found \"" + cell.strip()
                                + "\"; the mapping can say which: = strength in ppm"));
        // A milligram in a litre of water is one part per million by weight.
        String ppm = in.equalsIgnoreCase("mg/l") ? "ppm" : in.toLowerCase(Locale.ROOT);
        return Strength.parse(number + " " + ppm).toString();
    }
}
