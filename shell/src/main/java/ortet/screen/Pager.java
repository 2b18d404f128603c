package ortet.screen;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.jline.builtins.Less;
import org.jline.builtins.Source;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/** Shows a long text page by page: with the program named in {@code PAGER}, or else with JLine's own. */
public final class Pager {
    private final Optional<Terminal> terminal;

    private Pager(Optional<Terminal> terminal) {
        this.terminal = terminal;
    }

    /** Return a pager that opens the terminal when it has to show something, and closes it again. */
    public static Pager opening() {
        return new Pager(Optional.empty());
    }

    /** Return a pager at a terminal that is open already. */
    public static Pager at(Terminal terminal) {
        return new Pager(Optional.of(terminal));
    }

    /**
     * Show a text until the user has seen enough of it.
     *
     * @param program the program to show it with; empty for JLine's own
     */
    void show(String text, Optional<String> program) throws IOException {
        if (program.isPresent()) {
            outside(text, program.get());
        } else if (terminal.isPresent()) {
            inside(text, terminal.get());
        } else {
            try (Terminal opened = TerminalBuilder.builder()
                    .system(true)
                    .encoding(StandardCharsets.UTF_8)
                    .build()) {
                inside(text, opened);
            }
        }
    }

    private static void outside(String text, String program) throws IOException {
        ProcessBuilder builder = new ProcessBuilder("sh", "-c", program)
                .redirectOutput(ProcessBuilder.Redirect.INHERIT)
                .redirectError(ProcessBuilder.Redirect.INHERIT);
        Map<String, String> environment = builder.environment();
        // R shows colours, F and X leave what fits on the screen where it is.
        environment.putIfAbsent("LESS", "FRX");
        environment.putIfAbsent("LESSCHARSET", "utf-8");
        Process process = builder.start();
        try (OutputStream in = process.getOutputStream()) {
            in.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException left) {
            // The user has seen enough.
        }
        boolean ended = false;
        while (!ended) {
            try {
                process.waitFor();
                ended = true;
            } catch (InterruptedException ctrlC) {
                // It is meant for the pager, which is at the same terminal.
            }
        }
    }

    private static void inside(String text, Terminal terminal) throws IOException {
        try {
            new Less(terminal, Path.of(""))
                    .run(new Source.InputStreamSource(
                            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                            true,
                            "q leaves, Space and b turn pages, / looks for words"));
        } catch (InterruptedException left) {
            // Ctrl-C leaves as q does.
        }
    }
}
