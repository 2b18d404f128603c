package ortet.line;

import java.io.IOError;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.MaskingCallback;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;
import org.jline.terminal.Terminal.Signal;
import org.jline.terminal.Terminal.SignalHandler;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.Signals;
import ortet.screen.Pager;
import ortet.screen.Screen;
import ortet.screen.Surroundings;

/**
 * The prompt: reads lines at a terminal until Ctrl-D, {@code exit} or {@code quit}.
 *
 * <p>Ctrl-C drops the line begun. While a command runs it asks the command's thread to stop, which it does where nothing
 * is lost by it. Several lines pasted at once are run one after the other up to the first that fails; that one and those
 * after it stand at the prompt again.
 */
final class Prompt {
    private static final Set<String> LEAVING = Set.of("exit", "quit");
    private static final int USUAL_WIDTH = 80;

    private final Front front;
    private final Attendant attendant;
    private final Completion completion;

    Prompt(Commands commands, Front front, Attendant attendant) {
        this.front = front;
        this.attendant = attendant;
        this.completion = new Completion(commands, attendant);
    }

    /** Return the terminal that the program was started at. */
    static Terminal terminal() throws IOException {
        return TerminalBuilder.builder()
                .system(true)
                .dumb(true)
                .nativeSignals(true)
                .encoding(StandardCharsets.UTF_8)
                .build();
    }

    /** Read and run lines at the terminal that the program was started at, and keep them for another time. */
    int run(Screen screen, Optional<Path> history) {
        try (Terminal terminal = terminal()) {
            if (terminal.getType().startsWith(Terminal.TYPE_DUMB)) {
                // Such a terminal does not hear of Ctrl-C by itself, and the program would end.
                Signals.register("INT", () -> terminal.raise(Signal.INT));
            }
            return run(terminal, screen, history);
        } catch (IOException e) {
            screen.aside("ortet: no prompt on this terminal: " + Failure.firstLine(e));
            return Failure.COULD_NOT;
        }
    }

    /** Read and run lines at a terminal. */
    int run(Terminal terminal, Screen screen, Optional<Path> history) {
        LineReaderBuilder builder = LineReaderBuilder.builder()
                .terminal(terminal)
                .parser(new PromptLine.Splitting())
                .completionMatcher(new PromptLine.Taking())
                .completer((reader, typed, candidates) -> {
                    candidates.addAll(TerminalTalk.candidates(proposals((PromptLine) typed)));
                })
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                .option(LineReader.Option.INSERT_TAB, false)
                .option(LineReader.Option.AUTO_MENU, false)
                .option(LineReader.Option.LIST_AMBIGUOUS, true)
                .option(LineReader.Option.HISTORY_IGNORE_SPACE, true)
                .option(LineReader.Option.HISTORY_TIMESTAMPED, false)
                .variable(LineReader.BELL_STYLE, "off")
                .variable(LineReader.SECONDARY_PROMPT_PATTERN, "%P > ");
        history.flatMap(HistoryFile::kept).ifPresent(file -> builder.variable(LineReader.HISTORY_FILE, file));
        LineReader reader = builder.build();
        Screen opening = sized(terminal, screen);
        attendant.greeting().forEach(opening::prose);
        opening.prose("\"help\" lists the commands, Tab proposes, Ctrl-D leaves.");
        opening.flush();
        Talk talk = TerminalTalk.at(terminal, line -> reader.getHistory().add(Instant.EPOCH, line));
        return read(reader, terminal, talk, screen);
    }

    private List<Suggestion> proposals(PromptLine typed) {
        try {
            return completion.matching(typed.before(), typed.word());
        } catch (RuntimeException unable) {
            // A proposal is a courtesy: a book that is busy or away is told of when the line is run.
            return List.of();
        }
    }

    private int read(LineReader reader, Terminal terminal, Talk talk, Screen screen) {
        String again = "";
        while (true) {
            String typed;
            try {
                typed = reader.readLine(mark(terminal), null, (MaskingCallback) null, again);
            } catch (UserInterruptException e) {
                again = "";
                continue;
            } catch (EndOfFileException | IOError e) {
                return Front.DONE;
            }
            Screen now = sized(terminal, screen);
            List<String> lines = lines(typed);
            Optional<String> left = stoppable(terminal, () -> run(lines, talk, now));
            now.flush();
            if (left.isEmpty()) {
                return Front.DONE;
            }
            again = left.get();
        }
    }

    private static Screen sized(Terminal terminal, Screen screen) {
        Surroundings around = screen.surroundings();
        return screen.in(
                terminal.getWidth() > 0 ? around.withSize(terminal.getWidth(), terminal.getHeight()) : around,
                Pager.at(terminal));
    }

    /** Return what the prompt shows: what is remembered, as much of it as leaves room to type. */
    private String mark(Terminal terminal) {
        int width = terminal.getWidth() > 0 ? terminal.getWidth() : USUAL_WIDTH;
        String mark = "ortet";
        for (String part : attendant.lead()) {
            String longer = mark + (mark.equals("ortet") ? " " : ", ") + part;
            if (longer.length() > width / 2) {
                mark = mark + " …";
                break;
            }
            mark = longer;
        }
        return mark + "> ";
    }

    /** Return the lines that were typed or pasted at once, continued ones whole, without blank ones. */
    private static List<String> lines(String typed) {
        List<String> lines = new ArrayList<>();
        StringBuilder whole = new StringBuilder();
        for (String line : typed.split("\n")) {
            whole.append(line);
            if (Splitter.isContinued(line)) {
                whole.append('\n');
                continue;
            }
            if (!whole.toString().isBlank()) {
                lines.add(whole.toString());
            }
            whole.setLength(0);
        }
        if (!whole.toString().isBlank()) {
            lines.add(whole.toString());
        }
        return lines;
    }

    /** Run lines up to the first that fails; return what was not done of several, or nothing at all to leave. */
    private Optional<String> run(List<String> lines, Talk talk, Screen screen) {
        int all = lines.size();
        for (int at = 0; at < all; at++) {
            String line = lines.get(at);
            if (LEAVING.contains(line.strip())) {
                return Optional.empty();
            }
            if (all > 1) {
                screen.prose("> " + line.replace('\n', ' '));
            }
            boolean done = front.line(line, talk, screen) == Front.DONE;
            screen.flush();
            boolean halted = Thread.interrupted();
            if (halted && done) {
                screen.aside("ortet: it was done before it could be stopped");
            }
            int next = done ? at + 1 : at;
            if ((halted || !done) && all > 1 && next < all) {
                screen.aside("ortet: stopped at line " + (at + 1) + " of " + all + "; " + told(next, all));
                return Optional.of(String.join("\n", lines.subList(next, all)));
            }
        }
        return Optional.of("");
    }

    /** Return which of several lines were done, given how many. */
    private static String told(int done, int all) {
        return named(1, done) + (done < 2 ? " was" : " were") + " done, " + named(done + 1, all)
                + (done + 1 == all ? " was" : " were") + " not and "
                + (done + 1 == all ? "stands" : "stand") + " at the prompt again";
    }

    private static String named(int first, int last) {
        return last < first ? "none" : (first == last ? "line " + first : "lines " + first + " to " + last);
    }

    /** Something to do that Ctrl-C may stop. */
    @FunctionalInterface
    private interface Work {
        Optional<String> run();
    }

    private static Optional<String> stoppable(Terminal terminal, Work work) {
        Thread here = Thread.currentThread();
        SignalHandler before = terminal.handle(Signal.INT, signal -> here.interrupt());
        try {
            return work.run();
        } finally {
            terminal.handle(Signal.INT, before);
            Thread.interrupted();
        }
    }
}
