package ortet.line;

import java.util.List;
import java.util.Optional;

/**
 * Whoever sits beside the prompt: knows the values that the book holds, and what is remembered for the lines to come.
 *
 * <p>Asked at each Tab and before each line, so it answers at once or not at all; nothing that it throws may end the
 * prompt.
 */
public interface Attendant {
    /** Nobody: proposes nothing and remembers nothing. */
    Attendant NOBODY = new Attendant() {};

    /** Take a book for the lines to come. */
    default void take(String book) {}

    /** Return what is to be told when the prompt opens, a line each. */
    default List<String> greeting() {
        return List.of();
    }

    /** Return what stands before the mark of the prompt, part by part, the most telling first. */
    default List<String> lead() {
        return List.of();
    }

    /** Return values that may stand in a place of the line. */
    default List<Suggestion> values(Wanted wanted) {
        return List.of();
    }

    /** Return the value that is taken where none is given, because it was set for the lines to come. */
    default Optional<String> remembered(Wanted wanted) {
        return Optional.empty();
    }

    /** Return why values cannot be right, in one line, where that can be told before the whole line is known. */
    default Optional<String> doubt(Wanted wanted, List<String> values) {
        return Optional.empty();
    }

    /** Return what may help to answer a question, in one line: the next free tag, say. */
    default Optional<String> hint(Wanted wanted) {
        return Optional.empty();
    }
}
