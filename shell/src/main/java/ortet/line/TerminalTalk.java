package ortet.line;

import java.io.IOError;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jline.reader.Candidate;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;

/** Asks at a terminal. Answers are no lines, so they are not among those that can be fetched again. */
final class TerminalTalk implements Talk, AutoCloseable {
    /** Opens a terminal. */
    @FunctionalInterface
    interface Opening {
        Terminal open() throws IOException;
    }

    private final Opening opening;
    private final Consumer<String> learned;
    private final boolean closes;
    private Optional<Terminal> terminal = Optional.empty();
    private Optional<LineReader> reader = Optional.empty();
    private Function<String, List<Suggestion>> values = begun -> List.of();

    private TerminalTalk(Opening opening, Consumer<String> learned, boolean closes) {
        this.opening = opening;
        this.learned = learned;
        this.closes = closes;
    }

    /** Return a talk at the terminal of a prompt, which keeps the lines that are to be learned. */
    static TerminalTalk at(Terminal terminal, Consumer<String> learned) {
        return new TerminalTalk(() -> terminal, learned, false);
    }

    /** Return a talk that opens a terminal when the first question is asked, and closes it again. */
    static TerminalTalk opening(Opening opening) {
        return new TerminalTalk(opening, line -> {}, true);
    }

    private LineReader reader() {
        if (reader.isEmpty()) {
            try {
                terminal = Optional.of(opening.open());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            reader = Optional.of(LineReaderBuilder.builder()
                    .terminal(terminal.get())
                    .parser(new AnswerLine.Whole())
                    .completionMatcher(new PromptLine.Taking())
                    .completer((line, typed, candidates) -> {
                        candidates.addAll(candidates(Completion.matching(typed.word(), proposals(typed.word()))));
                    })
                    .variable(LineReader.DISABLE_HISTORY, true)
                    .variable(LineReader.BELL_STYLE, "off")
                    .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                    .option(LineReader.Option.INSERT_TAB, false)
                    .option(LineReader.Option.AUTO_MENU, false)
                    .option(LineReader.Option.LIST_AMBIGUOUS, true)
                    .build());
        }
        return reader.get();
    }

    private List<Suggestion> proposals(String begun) {
        try {
            return values.apply(begun);
        } catch (RuntimeException unable) {
            // A proposal is a courtesy: what is wrong is told when the answer is taken.
            return List.of();
        }
    }

    /** Return suggestions as JLine wants them, to be shown in their order. */
    static List<Candidate> candidates(List<Suggestion> suggestions) {
        List<Candidate> candidates = new ArrayList<>();
        for (Suggestion one : suggestions) {
            boolean whole =
                    one.whole() || one.value().endsWith("=") || one.value().endsWith("/");
            candidates.add(new Candidate(
                    one.value(),
                    whole ? one.value() : one.value() + "…",
                    null,
                    one.meaning().isEmpty() ? null : one.meaning(),
                    null,
                    null,
                    one.whole(),
                    candidates.size() + 1));
        }
        return candidates;
    }

    @Override
    public Optional<String> ask(String mark, Function<String, List<Suggestion>> mayBe) {
        values = mayBe;
        try {
            return Optional.of(reader().readLine(mark).strip());
        } catch (UserInterruptException | EndOfFileException | IOError dropped) {
            return Optional.empty();
        }
    }

    @Override
    public void learn(String line) {
        learned.accept(line);
    }

    @Override
    public void close() {
        if (closes && terminal.isPresent()) {
            try {
                terminal.get().close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
