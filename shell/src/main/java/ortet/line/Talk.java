package ortet.line;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.shell.core.InputReader;
import org.springframework.shell.core.command.CommandContext;

/** Whoever can be asked back while a command runs: the user at a terminal, or nobody. */
public interface Talk extends InputReader {
    /** Nobody: a script, or a program at the other end. */
    Talk NOBODY = new Talk() {
        @Override
        public Optional<String> ask(String mark, Function<String, List<Suggestion>> values) {
            throw new UsageException("there is nobody to ask: this needs somebody at a terminal");
        }

        @Override
        public void learn(String line) {}
    };

    /** Return the talk that a command was called with. */
    static Talk in(CommandContext context) {
        return context.inputReader() instanceof Talk talk ? talk : NOBODY;
    }

    /**
     * Ask for a line.
     *
     * @param mark what stands before the answer
     * @param values what may be answered, for the text typed so far; proposed at Tab
     * @return what was typed, without blanks around it; empty where the user dropped the matter (Ctrl-C, Ctrl-D)
     * @throws UsageException where there is nobody to ask
     */
    Optional<String> ask(String mark, Function<String, List<Suggestion>> values);

    /** Put a line where the user finds it again, as if it had been typed. */
    void learn(String line);
}
