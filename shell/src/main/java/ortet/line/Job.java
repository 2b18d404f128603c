package ortet.line;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A piece of work that is recorded question by question.
 *
 * @param name what was done, in words: {@code layers set}
 * @param command the command that records it
 * @param steps the questions, in order
 */
public record Job(String name, String command, List<Step> steps) {
    /**
     * A question, and where its answer goes.
     *
     * @param place the name of an option without dashes, or what help calls a plain word: {@code TAG}
     * @param question the question
     * @param after the place of another question without whose answer this one is not asked
     */
    public record Step(String place, String question, Optional<String> after) {
        /** Refuse null. */
        public Step {
            Objects.requireNonNull(place);
            Objects.requireNonNull(question);
            Objects.requireNonNull(after);
        }
    }

    /** Keep a copy. */
    public Job {
        Objects.requireNonNull(name);
        Objects.requireNonNull(command);
        steps = List.copyOf(steps);
    }
}
