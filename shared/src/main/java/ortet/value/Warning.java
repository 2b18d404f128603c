package ortet.value;

import java.util.Objects;

/**
 * Something odd that is possible all the same; it is told and does not stop anything.
 *
 * @param rule the name of the rule, such as {@code ring-width}
 * @param text what is odd, without a full stop
 */
public record Warning(String rule, String text) {
    public Warning {
        Objects.requireNonNull(rule);
        Objects.requireNonNull(text);
    }
}
