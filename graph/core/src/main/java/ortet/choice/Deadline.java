package ortet.choice;

import java.time.Duration;

/** When to stop. */
final class Deadline {
    private static final double NANOS = 1e9;

    private final long end;

    private Deadline(long end) {
        this.end = end;
    }

    static Deadline in(Duration time) {
        return new Deadline(System.nanoTime() + time.toNanos());
    }

    boolean isOver() {
        return System.nanoTime() - end >= 0;
    }

    /** Return how many seconds are left, at least a hundredth. */
    double seconds() {
        return Math.max(0.01, (end - System.nanoTime()) / NANOS);
    }
}
