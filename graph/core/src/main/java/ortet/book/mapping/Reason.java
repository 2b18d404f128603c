package ortet.book.mapping;

import java.util.Objects;

/**
 * Why some rows were not taken, or are remarked on.
 *
 * @param rule the name of the rule
 * @param count how often
 * @param example the first case in full: where, what, and what was expected
 */
public record Reason(String rule, int count, String example) {
    public Reason {
        Objects.requireNonNull(rule);
        Objects.requireNonNull(example);
    }

    /** Return the rule in plain words, such as {@code unknown tag}. */
    public String words() {
        return rule.replace('-', ' ');
    }
}
