package ortet.line;

import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A place of a line that wants a value.
 *
 * @param command the whole name of the command
 * @param option the name of the option without dashes; empty where a plain word is wanted
 * @param shown how help shows the value, in capitals: {@code TAG}
 * @param type the type of one value
 * @param begins whether what is named is new and begins with this line
 * @param words the plain words that stand before it
 * @param options the values of the options that stand before it, by name; of several the last
 * @param begun what is typed of the value so far, without quotes
 */
public record Wanted(
        String command,
        String option,
        String shown,
        Class<?> type,
        boolean begins,
        List<String> words,
        Map<String, String> options,
        String begun) {
    /** Keep copies. */
    public Wanted {
        Objects.requireNonNull(command);
        Objects.requireNonNull(option);
        Objects.requireNonNull(shown);
        Objects.requireNonNull(type);
        Objects.requireNonNull(begun);
        words = List.copyOf(words);
        options = Map.copyOf(options);
    }

    /** Return whether a plain word is wanted. */
    public boolean isWord() {
        return option.isEmpty();
    }
}
