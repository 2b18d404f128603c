package ortet.entry;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A mother with how many cuttings she gave, where that is known; written {@code K-12:30} or {@code K-12}.
 *
 * @param tag the mother
 * @param count how many, at least 1
 */
public record Share(Tag tag, Optional<Integer> count) {
    public Share {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(count);
        count.ifPresent(n -> Require.atLeast(1, n, "mothers"));
    }

    /**
     * Read a mother with or without a count.
     *
     * @throws Refused when the text is neither
     */
    public static Share parse(String text) {
        int colon = text.indexOf(':');
        if (colon < 0) {
            return new Share(new Tag(text), Optional.empty());
        }
        return new Share(new Tag(text.substring(0, colon)), Optional.of(Counts.parse(text.substring(colon + 1), text)));
    }

    @Override
    public String toString() {
        return tag + count.map(n -> ":" + n).orElse("");
    }
}
