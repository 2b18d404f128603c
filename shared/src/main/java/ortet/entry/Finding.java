package ortet.entry;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;

/**
 * What was seen, with on how many units where a batch was looked at; written {@code roots-showing:30} or {@code callus}.
 *
 * @param condition what was seen
 * @param count on how many, at least 1
 */
public record Finding(Condition condition, Optional<Integer> count) {
    public Finding {
        Objects.requireNonNull(condition);
        Objects.requireNonNull(count);
        count.ifPresent(n -> Require.atLeast(1, n, "findings"));
    }

    /**
     * Read a finding.
     *
     * @throws ortet.value.Refused when the text is none
     */
    public static Finding parse(String text) {
        int colon = text.indexOf(':');
        String word = colon < 0 ? text : text.substring(0, colon);
        Condition condition = Words.parse(Condition.class, word);
        return new Finding(
                condition, colon < 0 ? Optional.empty() : Optional.of(Counts.parse(text.substring(colon + 1), text)));
    }

    @Override
    public String toString() {
        return Words.of(condition) + count.map(n -> ":" + n).orElse("");
    }
}
