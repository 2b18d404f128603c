package ortet.line;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jline.terminal.Terminal;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.ParsedInput;
import ortet.screen.Screen;

/**
 * The front desk: takes what came on the command line, runs a command, a script or the prompt, and tells how it ended.
 *
 * <p>Nothing that a command throws leaves it; failures become lines on the error stream and an exit status.
 */
public final class Front {
    /** Status when all was done. */
    public static final int DONE = 0;

    private static final String NAME = "ortet: ";

    private static final String BOOK = "--book";

    private static final Set<String> OUR_NAMES = Set.of("ortet", "./ortet");

    private final Commands commands;
    private final StrictParser parser;
    private final Supplier<Attendant> attendant;
    private final Map<String, String> environment;

    /**
     * Make a front to these commands.
     *
     * @param attendant who sits beside the prompt; asked for when there is a prompt and not before
     * @param environment where the lines typed at the prompt are kept follows from it
     */
    public Front(Commands commands, Supplier<Attendant> attendant, Map<String, String> environment) {
        this.commands = commands;
        this.parser = new StrictParser(commands);
        this.attendant = attendant;
        this.environment = Map.copyOf(environment);
    }

    /**
     * Do what the arguments ask for: {@code @FILE} or {@code -} is a script, none at all is the prompt at a terminal and
     * a script otherwise, anything else is one command. A book that is named beside a script or beside nothing is taken
     * for every line.
     *
     * @param in where a script comes from when it is not a file; read only then
     * @return 0 done, 1 could not be done, 2 wrong usage
     */
    public int run(List<String> arguments, InputStream in, Screen screen) {
        int status = dispatch(arguments, in, screen);
        Optional<IOException> trouble = screen.trouble();
        if (trouble.isPresent() && status == DONE) {
            screen.aside(NAME + "the answer could not be written: " + Failure.firstLine(trouble.get()));
            return Failure.COULD_NOT;
        }
        return status;
    }

    private int dispatch(List<String> arguments, InputStream in, Screen screen) {
        int named = bookNamed(arguments);
        if (named > 0) {
            String first = arguments.get(0);
            attendant.get().take(named == 1 ? first.substring(BOOK.length() + 1) : arguments.get(1));
            return dispatch(arguments.subList(named, arguments.size()), in, screen);
        }
        if (arguments.isEmpty()) {
            return screen.surroundings().inTerminal()
                    ? new Prompt(commands, this, attendant.get()).run(screen, HistoryFile.in(environment))
                    : script("standard input", in, Talk.NOBODY, screen);
        }
        String first = arguments.get(0);
        if (isScript(first)) {
            if (arguments.size() > 1) {
                return failed(
                        "",
                        new UsageException("\"" + arguments.get(1) + "\" is too much; a script takes no words"),
                        screen);
            }
            return first.equals("-")
                    ? script("standard input", in, Talk.NOBODY, screen)
                    : scriptFile(first.substring(1), Talk.NOBODY, screen);
        }
        if (!screen.surroundings().inTerminal() || !screen.surroundings().outTerminal()) {
            return one("", () -> parser.parse(arguments), Talk.NOBODY, screen);
        }
        try (TerminalTalk talk = TerminalTalk.opening(Prompt::terminal)) {
            return one("", () -> parser.parse(arguments), talk, screen);
        }
    }

    /** Return how many words name a book in front of nothing or of a script; 0 where there is none. */
    private static int bookNamed(List<String> arguments) {
        int words = arguments.isEmpty()
                ? 0
                : arguments.get(0).startsWith(BOOK + "=") ? 1 : arguments.get(0).equals(BOOK) ? 2 : 0;
        boolean alone = words == arguments.size() || (words < arguments.size() && isScript(arguments.get(words)));
        return alone ? words : 0;
    }

    private static boolean isScript(String word) {
        return word.equals("-") || (word.startsWith("@") && word.length() > 1);
    }

    /**
     * Run the prompt at a terminal until it is left.
     *
     * @param history where lines are kept for another time, if anywhere
     */
    public int prompt(Terminal terminal, Screen screen, Optional<Path> history) {
        return new Prompt(commands, this, attendant.get()).run(terminal, screen, history);
    }

    /** Run one line as typed at the prompt; a blank one does nothing. */
    int line(String line, Talk talk, Screen screen) {
        String bare = line.strip();
        if (bare.startsWith("@") && bare.length() > 1) {
            return scriptFile(bare.substring(1), talk, screen);
        }
        Optional<List<String>> words;
        try {
            words = new ScriptLines(new ByteArrayInputStream(line.getBytes(StandardCharsets.UTF_8))).next();
        } catch (IOException | UsageException e) {
            return failed("", e, screen);
        }
        return words.isEmpty() ? DONE : words(words.get(), talk, screen);
    }

    /**
     * Run a line whose words are split already, as a command does that puts together another.
     *
     * @return 0 done, 1 could not be done, 2 wrong usage
     */
    public int words(List<String> words, Talk talk, Screen screen) {
        return one("", () -> parser.parse(withoutOurName(words)), talk, screen);
    }

    /** Return whether a word is the program's own name, which people copy with a line from a page. */
    static boolean isOurName(String word) {
        return OUR_NAMES.contains(word);
    }

    private static List<String> withoutOurName(List<String> words) {
        return words.size() > 1 && isOurName(words.get(0)) ? words.subList(1, words.size()) : words;
    }

    private int scriptFile(String file, Talk talk, Screen screen) {
        try (InputStream in = Files.newInputStream(Path.of(file))) {
            return script(file, in, talk, screen);
        } catch (IOException | RuntimeException e) {
            return failed("", e, screen);
        }
    }

    private int script(String name, InputStream in, Talk talk, Screen screen) {
        ScriptLines lines = new ScriptLines(new BufferedInputStream(in));
        int done = 0;
        while (true) {
            int status;
            try {
                Optional<List<String>> words = lines.next();
                if (words.isEmpty()) {
                    return DONE;
                }
                List<String> own = withoutOurName(words.get());
                status = one(name + ":" + lines.firstLine() + ": ", () -> parser.parse(own), talk, screen);
            } catch (IOException | UsageException e) {
                status = failed(name + ":" + lines.firstLine() + ": ", e, screen);
            }
            if (status != DONE) {
                screen.aside(NAME + name + ": stopped at line " + lines.firstLine() + "; "
                        + (done == 1 ? "1 command was" : (done == 0 ? "no command was" : done + " commands were"))
                        + " done before it, none after");
                return status;
            }
            done++;
        }
    }

    private int one(String where, Parsing parsing, Talk talk, Screen screen) {
        try {
            ParsedInput input = parsing.parse();
            String name = String.join(
                    " ",
                    input.subCommands().isEmpty()
                            ? List.of(input.commandName())
                            : List.of(input.commandName(), String.join(" ", input.subCommands())));
            MethodCommand command = commands.named(name)
                    .orElseThrow(() -> new UsageException("no command \"" + name + "\"; \"help\" lists them"));
            int code = command.execute(new CommandContext(input, commands.registry(), screen, talk))
                    .code();
            screen.flush();
            return Math.min(Math.abs(code), Failure.WRONG_USAGE);
        } catch (Exception | StackOverflowError | OutOfMemoryError | LinkageError e) {
            return failed(where, e, screen);
        }
    }

    /**
     * Tell a failure that kept the program from starting, as any other is told.
     *
     * @return the status to end with
     */
    public static int couldNotStart(Throwable thrown, Screen screen) {
        return failed("", thrown, screen);
    }

    private static int failed(String where, Throwable thrown, Screen screen) {
        Failure failure = Failure.of(thrown);
        for (String line : failure.lines()) {
            screen.aside(NAME + where + line);
        }
        if (screen.surroundings().trace()) {
            screen.trace(thrown);
        }
        return failure.status();
    }

    @FunctionalInterface
    private interface Parsing {
        ParsedInput parse();
    }
}
