package ortet.value;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * One thing that is wrong, told so that it can be mended.
 *
 * @param rule the name of the rule that is broken, such as {@code unknown-tag}
 * @param where file, line and column or option, where there is such a place
 * @param text what is wrong and what was expected, without a full stop
 * @param nearest what may have been meant
 */
public record Fault(String rule, Optional<Where> where, String text, Optional<String> nearest) {
    private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x1F\\x7F-\\x9F]");

    public Fault {
        Objects.requireNonNull(rule);
        Objects.requireNonNull(where);
        Objects.requireNonNull(text);
        Objects.requireNonNull(nearest);
    }

    /** Make a fault that concerns no particular place. */
    public static Fault of(String rule, String text) {
        return new Fault(rule, Optional.empty(), text, Optional.empty());
    }

    /** Return this fault with what may have been meant. */
    public Fault nearest(Optional<String> known) {
        return new Fault(rule, where, text, known);
    }

    /** Return this fault at the given place. */
    public Fault at(Where place) {
        return new Fault(rule, Optional.of(place), text, nearest);
    }

    /**
     * Return the fault as one line: where, what, and the nearest match. What is quoted in it may hold line ends and other
     * control characters; each becomes a blank.
     */
    public String line() {
        String line = where.map(place -> place + ": ").orElse("")
                + text
                + nearest.map(known -> "; nearest: " + known).orElse("");
        if (line.chars().noneMatch(Character::isISOControl)) {
            return line;
        }
        return CONTROL.matcher(line).replaceAll(" ");
    }
}
