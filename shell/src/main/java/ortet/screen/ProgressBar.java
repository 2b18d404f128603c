package ortet.screen;

import java.io.PrintWriter;
import java.util.function.LongSupplier;

/**
 * A bar on the error stream that shows how far long work has come, at most twelve times a second for each step; nothing
 * where nobody could see it. Closing erases it. Not safe to share between threads.
 */
public final class ProgressBar implements AutoCloseable {
    private static final long PAUSE_NANOS = 80_000_000L;
    private static final int BAR = 24;

    private final PrintWriter err;
    private final boolean shown;
    private final int width;
    private final LongSupplier nanos;
    private long lastShown;
    private String lastStep = "";
    private int lastColumns;

    ProgressBar(PrintWriter err, boolean shown, int width, LongSupplier nanos) {
        this.err = err;
        this.shown = shown;
        this.width = width;
        this.nanos = nanos;
        this.lastShown = nanos.getAsLong() - PAUSE_NANOS;
    }

    /**
     * Say how far the work is.
     *
     * @param step what is being done, in a word or two
     * @param done what is done
     * @param total all that is to do; 0 or less if that is not known
     * @throws Stopped when the user asked for it
     */
    public void at(String step, long done, long total) {
        Stopped.check();
        if (!shown) {
            return;
        }
        long now = nanos.getAsLong();
        if (now - lastShown < PAUSE_NANOS && step.equals(lastStep)) {
            return;
        }
        lastShown = now;
        lastStep = step;
        show(total > 0 ? line(step, done, total) : step + "  " + done);
    }

    private String line(String step, long done, long total) {
        double share = Math.min(1, Math.max(0, (double) done / total));
        int full = (int) (share * BAR);
        return step + "  " + "█".repeat(full) + "░".repeat(BAR - full) + "  " + (int) (share * 100) + " %  " + done
                + " of " + total;
    }

    private void show(String line) {
        String fitting = Text.columns(line) < width
                ? line
                : Text.wrap(line, Math.max(1, width - 1)).get(0);
        int columns = Text.columns(fitting);
        err.print("\r" + fitting + " ".repeat(Math.max(0, lastColumns - columns)));
        err.flush();
        lastColumns = columns;
    }

    @Override
    public void close() {
        if (lastColumns > 0) {
            err.print("\r" + " ".repeat(lastColumns) + "\r");
            err.flush();
            lastColumns = 0;
        }
    }
}
