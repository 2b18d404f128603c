package ortet.line;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.InputReader;
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

    private final Commands commands;
    private final StrictParser parser;

    /** Make a front to these commands. */
    public Front(Commands commands) {
        this.commands = commands;
        this.parser = new StrictParser(commands);
    }

    /**
     * Do what the arguments ask for: {@code @FILE} or {@code -} is a script, none at all is the prompt at a terminal and
     * a script otherwise, anything else is one command.
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
        if (arguments.isEmpty()) {
            return screen.surroundings().inTerminal()
                    ? new Prompt(commands, this).run(screen)
                    : script("standard input", in, screen);
        }
        String first = arguments.get(0);
        if (first.equals("-") || (first.startsWith("@") && first.length() > 1)) {
            if (arguments.size() > 1) {
                return failed(
                        "",
                        new UsageException("\"" + arguments.get(1) + "\" is too much; a script takes no words"),
                        screen);
            }
            return first.equals("-") ? script("standard input", in, screen) : scriptFile(first.substring(1), screen);
        }
        return one("", () -> parser.parse(arguments), screen);
    }

    /** Run one line as typed at the prompt; a blank one does nothing. */
    int line(String line, Screen screen) {
        String bare = line.strip();
        if (bare.startsWith("@") && bare.length() > 1) {
            return scriptFile(bare.substring(1), screen);
        }
        try {
            List<String> words = Splitter.split(line);
            return words.isEmpty() ? DONE : one("", () -> parser.parse(words), screen);
        } catch (UsageException e) {
            return failed("", e, screen);
        }
    }

    private int scriptFile(String file, Screen screen) {
        try (InputStream in = Files.newInputStream(Path.of(file))) {
            return script(file, in, screen);
        } catch (IOException | RuntimeException e) {
            return failed("", e, screen);
        }
    }

    private int script(String name, InputStream in, Screen screen) {
        ScriptLines lines = new ScriptLines(new BufferedInputStream(in));
        int done = 0;
        while (true) {
            int status;
            try {
                Optional<List<String>> words = lines.next();
                if (words.isEmpty()) {
                    return DONE;
                }
                status = one(name + ":" + lines.firstLine() + ": ", () -> parser.parse(words.get()), screen);
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

    private int one(String where, Parsing parsing, Screen screen) {
        try {
            ParsedInput input = parsing.parse();
            String name = String.join(
                    " ",
                    input.subCommands().isEmpty()
                            ? List.of(input.commandName())
                            : List.of(input.commandName(), String.join(" ", input.subCommands())));
            MethodCommand command = commands.named(name)
                    .orElseThrow(() -> new UsageException("no command \"" + name + "\"; \"help\" lists them"));
            int code = command.execute(new CommandContext(input, commands.registry(), screen, new NoInput()))
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

    /** Commands ask nothing back: everything is on the line. */
    private static final class NoInput implements InputReader {}
}
