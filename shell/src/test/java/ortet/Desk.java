package ortet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;
import org.springframework.context.ConfigurableApplicationContext;
import ortet.line.Front;
import ortet.screen.Screen;
import ortet.screen.Surroundings;

/** The front with its real wiring, for tests to type at; streams are no terminals, 80 columns wide. */
public final class Desk implements AutoCloseable {
    /** Streams that are no terminals, 80 columns wide. */
    public static final Surroundings PIPES = new Surroundings(false, false, false, 80, true, false, false);

    private final ConfigurableApplicationContext context;

    private Desk(ConfigurableApplicationContext context) {
        this.context = context;
    }

    /** Open a desk with these command classes and configurations besides the real ones. */
    public static Desk open(Class<?>... more) {
        return new Desk(Main.start(more));
    }

    /** What came of it. */
    public record Answer(int status, String out, String err) {}

    /** Type arguments, as the operating system hands them over. */
    public Answer type(String... arguments) {
        return run(PIPES, "", arguments);
    }

    /** Give a script on standard input. */
    public Answer script(String text) {
        return run(PIPES, text, "-");
    }

    /** Type arguments with these surroundings and this input. */
    public Answer run(Surroundings surroundings, String input, String... arguments) {
        return run(surroundings, input.getBytes(StandardCharsets.UTF_8), arguments);
    }

    /** Type arguments with these surroundings and these bytes as input. */
    public Answer run(Surroundings surroundings, byte[] input, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(out, err, surroundings);
        int status = context.getBean(Front.class).run(List.of(arguments), new ByteArrayInputStream(input), screen);
        screen.flush();
        return new Answer(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /**
     * Press keys at the prompt, on a terminal of 80 columns, until they are used up.
     *
     * @param history where lines are kept for another time, if anywhere
     */
    public Answer keys(String keys, Optional<Path> history) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(out, err, PIPES);
        int status;
        try (Terminal terminal = new ExternalTerminal(
                "keys",
                "xterm",
                new ByteArrayInputStream(keys.getBytes(StandardCharsets.UTF_8)),
                OutputStream.nullOutputStream(),
                StandardCharsets.UTF_8)) {
            terminal.setSize(new Size(80, 24));
            status = context.getBean(Front.class).prompt(terminal, screen, history);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        screen.flush();
        return new Answer(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Return a bean of the wiring. */
    public <T> T bean(Class<T> type) {
        return context.getBean(type);
    }

    /** Return whether a bean of this type has been made. */
    public boolean isMade(Class<?> type) {
        return context.getBeanFactory().getBeanNamesForType(type, false, false).length > 0
                && context.getBeanFactory()
                        .containsSingleton(context.getBeanFactory().getBeanNamesForType(type, false, false)[0]);
    }

    @Override
    public void close() {
        context.close();
    }
}
