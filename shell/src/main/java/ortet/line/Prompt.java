package ortet.line;

import java.io.IOError;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jline.reader.Candidate;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.ParsedLine;
import org.jline.reader.UserInterruptException;
import org.jline.reader.impl.DefaultParser;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import ortet.screen.Screen;

/** The prompt: reads lines at a terminal until Ctrl-D, {@code exit} or {@code quit}; Ctrl-C drops the line begun. */
final class Prompt {
    private static final Set<String> LEAVING = Set.of("exit", "quit");

    private final Commands commands;
    private final Front front;

    Prompt(Commands commands, Front front) {
        this.commands = commands;
        this.front = front;
    }

    int run(Screen screen) {
        try (Terminal terminal = TerminalBuilder.builder()
                .system(true)
                .dumb(true)
                .nativeSignals(true)
                .encoding(StandardCharsets.UTF_8)
                .build()) {
            DefaultParser parser = new DefaultParser();
            parser.setEofOnUnclosedQuote(false);
            LineReader reader = LineReaderBuilder.builder()
                    .terminal(terminal)
                    .parser(parser)
                    .completer((line, typed, candidates) -> complete(typed, candidates))
                    .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                    .option(LineReader.Option.INSERT_TAB, false)
                    .variable(LineReader.DISABLE_HISTORY, true)
                    .build();
            screen.println("\"help\" lists the commands, Ctrl-D leaves.");
            screen.flush();
            return read(reader, terminal, screen);
        } catch (IOException e) {
            screen.aside("ortet: no prompt on this terminal: " + Failure.firstLine(e));
            return Failure.COULD_NOT;
        }
    }

    private int read(LineReader reader, Terminal terminal, Screen screen) {
        while (true) {
            String line;
            try {
                line = reader.readLine("ortet> ");
            } catch (UserInterruptException e) {
                continue;
            } catch (EndOfFileException | IOError e) {
                return Front.DONE;
            }
            if (LEAVING.contains(line.strip())) {
                return Front.DONE;
            }
            Screen now =
                    terminal.getWidth() > 0 ? screen.in(screen.surroundings().withWidth(terminal.getWidth())) : screen;
            front.line(line, now);
            now.flush();
        }
    }

    private void complete(ParsedLine typed, List<Candidate> candidates) {
        List<String> before = typed.words().subList(0, typed.wordIndex());
        String begun = typed.word()
                .substring(0, Math.min(typed.wordCursor(), typed.word().length()));
        for (String proposal : proposals(before, begun)) {
            candidates.add(new Candidate(proposal));
        }
    }

    /** Return what may stand next: words of command names, then options not given yet, then allowed values. */
    Set<String> proposals(List<String> before, String begun) {
        if (!before.isEmpty() && before.get(0).equals("help")) {
            return proposals(before.subList(1, before.size()), begun);
        }
        Set<String> proposals = new TreeSet<>();
        for (String name : commands.names()) {
            List<String> words = List.of(name.split(" "));
            if (words.size() > before.size() && words.subList(0, before.size()).equals(before)) {
                proposals.add(words.get(before.size()));
            }
        }
        for (int taken = Math.min(before.size(), commands.longestName()); taken > 0; taken--) {
            String name = String.join(" ", before.subList(0, taken));
            if (commands.named(name).isPresent()) {
                addOptions(commands.named(name).get(), before.subList(taken, before.size()), begun, proposals);
                break;
            }
        }
        return proposals;
    }

    private static void addOptions(MethodCommand command, List<String> given, String begun, Set<String> proposals) {
        String last = given.isEmpty() ? "" : given.get(given.size() - 1);
        for (Slot slot : command.options()) {
            boolean named = last.equals("--" + slot.longName())
                    || slot.shortName()
                            .filter(letter -> last.equals("-" + letter))
                            .isPresent();
            if (named && slot.kind() == Slot.Kind.OPTION) {
                proposals.addAll(slot.allowed());
                return;
            }
        }
        if (begun.startsWith("-")) {
            for (Slot slot : command.options()) {
                if (slot.many() || !given.contains("--" + slot.longName())) {
                    proposals.add("--" + slot.longName());
                }
            }
        } else {
            command.words().forEach(slot -> proposals.addAll(slot.allowed()));
        }
    }
}
