package ortet.sqlite;

import java.time.Duration;
import java.util.Timer;
import java.util.TimerTask;

/** Stops the thread that made it after a time, at the next look that SQLite takes, unless it is closed before. */
final class TimeLimit implements AutoCloseable {
    private final Timer timer = new Timer("limit", true);
    private final Thread limited = Thread.currentThread();
    private boolean isOver;
    private boolean isClosed;

    TimeLimit(Duration time) {
        timer.schedule(
                new TimerTask() {
                    @Override
                    public void run() {
                        stop();
                    }
                },
                Math.max(1, time.toMillis()));
    }

    private synchronized void stop() {
        if (!isClosed) {
            isOver = true;
            limited.interrupt();
        }
    }

    /** Tell whether the time ran out. */
    synchronized boolean isOver() {
        return isOver;
    }

    /** Limit no longer; nothing is left of having been stopped. */
    synchronized void lift() {
        timer.cancel();
        if (isOver && !isClosed) {
            Thread.interrupted();
        }
        isClosed = true;
    }

    @Override
    public void close() {
        lift();
    }
}
