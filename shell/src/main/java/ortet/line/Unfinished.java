package ortet.line;

import java.util.List;

/**
 * A line as far as it is typed.
 *
 * @param words the words that are finished
 * @param begun the word that is being typed, without its quotes; empty after a blank
 * @param start where that word begins in the line
 */
record Unfinished(List<String> words, String begun, int start) {
    Unfinished {
        words = List.copyOf(words);
    }
}
