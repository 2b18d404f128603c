package ortet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;
import ortet.line.Front;
import ortet.screen.Screen;
import ortet.screen.Surroundings;

/** Somebody at the prompt, who presses a key only after seeing what it is an answer to. */
public final class PromptDesk implements AutoCloseable {
    private static final int PATIENCE_SECONDS = 30;

    private final ByteArrayOutputStream seen = new ByteArrayOutputStream();
    private final PipedOutputStream keys = new PipedOutputStream();
    private final Terminal terminal;
    private final CompletableFuture<Integer> status;
    private int looked;

    /** Open the prompt of a desk on a terminal of so many columns; all that is written is seen on it. */
    public PromptDesk(Desk desk, int columns) {
        try {
            terminal = new ExternalTerminal(
                    "seen", "xterm", new PipedInputStream(keys, 1 << 16), seen, StandardCharsets.UTF_8);
            terminal.setSize(new Size(columns, 24));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        Screen screen = new Screen(seen, seen, new Surroundings(true, true, true, columns, false, false, false));
        Front front = desk.bean(Front.class);
        status = CompletableFuture.supplyAsync(() -> {
            int ended = front.prompt(terminal, screen, Optional.<Path>empty());
            screen.flush();
            return ended;
        });
    }

    /** Return what is on the screen, without what steers the terminal. */
    public String text() {
        return seen.toString(StandardCharsets.UTF_8).replaceAll("\u001b\\[[0-9;?]*[a-zA-Z]|\u001b[=>]|\r", "");
    }

    /** Wait until a text is seen after all that was waited for before. */
    public PromptDesk sees(String text) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (true) {
            String all = text();
            int at = all.indexOf(text, looked);
            if (at >= 0) {
                looked = at + text.length();
                return this;
            }
            if (System.nanoTime() > end) {
                throw new AssertionError("no \"" + text + "\" in:\n" + all.substring(Math.min(looked, all.length())));
            }
            try {
                Thread.sleep(5);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    /** Press keys. */
    public PromptDesk press(String some) {
        try {
            keys.write(some.getBytes(StandardCharsets.UTF_8));
            keys.flush();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return this;
    }

    /** Type a line and press Enter. */
    public PromptDesk types(String line) {
        return press(line + "\r");
    }

    /** Return the status with which the prompt ended. */
    public int status() {
        try {
            return status.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException | TimeoutException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        try {
            keys.close();
            status();
            terminal.close();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
