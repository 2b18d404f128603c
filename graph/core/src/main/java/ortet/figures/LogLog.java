package ortet.figures;

import java.util.Optional;

/** Limits of a share that are symmetric on the scale log(−log): F^exp(∓z se / (F log F)), always within (0, 1). */
final class LogLog {
    private LogLog() {}

    /** Return the limits; absent where the share is 0 or 1, or its standard error not known. */
    static Optional<Interval> limits(double share, Optional<Double> error, double confidence) {
        if (!(share > 0 && share < 1) || error.isEmpty()) {
            return Optional.empty();
        }
        double reach = Wilson.quantile(confidence) * error.get() / (share * Math.abs(Math.log(share)));
        return Optional.of(new Interval(
                Math.pow(share, Math.exp(reach)),
                Math.pow(share, Math.exp(-reach)),
                confidence,
                Interval.Method.LOG_LOG));
    }
}
