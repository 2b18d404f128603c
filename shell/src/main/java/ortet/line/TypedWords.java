package ortet.line;

import java.util.List;

/**
 * The words that follow a command, as they were typed; a {@code Converter<TypedWords, T>} bean turns all of them into one
 * parameter ({@code J-201..J-240 except J-217}).
 *
 * @param list the words in order, unglued
 */
public record TypedWords(List<String> list) {
    /** Keep a copy. */
    public TypedWords {
        list = List.copyOf(list);
    }
}
