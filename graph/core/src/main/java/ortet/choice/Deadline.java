package ortet.choice;

import java.time.Duration;
import java.util.function.LongSupplier;

/** When to stop. */
final class Deadline {
    private static final double NANOS = 1e9;

    private final LongSupplier clock;
    private final long end;

    private Deadline(LongSupplier clock, long end) {
        this.clock = clock;
        this.end = end;
    }

    static Deadline in(Duration time) {
        return in(time, System::nanoTime);
    }

    /** Return a deadline by a clock that tells nanoseconds. */
    static Deadline in(Duration time, LongSupplier clock) {
        return new Deadline(clock, clock.getAsLong() + time.toNanos());
    }

    boolean isOver() {
        return clock.getAsLong() - end >= 0;
    }

    /** Return how many seconds are left, at least a hundredth. */
    double seconds() {
        return Math.max(0.01, (end - clock.getAsLong()) / NANOS);
    }

    /** Return a deadline at which a share of what is left is over. */
    Deadline share(double share) {
        long now = clock.getAsLong();
        return share >= 1 ? this : new Deadline(clock, now + Math.round(share * Math.max(0, end - now)));
    }
}
