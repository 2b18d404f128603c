package ortet.lineage;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Reason;

/**
 * How a unit stands on a day.
 *
 * @param kind whether it is there
 * @param pending how many units are neither taken nor failed; absent when nobody counted them
 * @param growing how many units grow on their own roots, or, for a sport, on its plant
 * @param left how many units left for good, by reason; those that came back are taken off
 * @param last why the last of them left; absent while any is there
 * @param end the entry by which the last of them left; absent while any is there
 * @param customer who bought it, where it was sold to somebody
 */
public record State(
        Kind kind,
        Optional<Integer> pending,
        int growing,
        Map<Reason, Integer> left,
        Optional<Reason> last,
        Optional<Deed> end,
        Optional<String> customer) {
    /** Whether a unit is there. */
    public enum Kind {
        /** A layer or a sport that is part of its mother. */
        ON_ITS_MOTHER,
        /** There, and not yet known to have taken; of a batch, some of it. */
        PENDING,
        /** All of it on its own roots. */
        GROWING,
        /** Nothing is left. */
        GONE
    }

    public State {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(pending);
        Map<Reason, Integer> sorted = new EnumMap<>(Reason.class);
        sorted.putAll(left);
        left = Collections.unmodifiableMap(sorted);
        Objects.requireNonNull(last);
        Objects.requireNonNull(end);
        Objects.requireNonNull(customer);
    }

    /** Return the state in words: {@code growing}, {@code sold on 2024-05-03 to Harte}, {@code 12 growing, 48 pending}. */
    @Override
    public String toString() {
        return switch (kind) {
            case ON_ITS_MOTHER -> "on its mother";
            case GROWING -> growing == 1 ? "growing" : growing + " growing";
            case PENDING -> growing == 0 ? undecided() : growing + " growing, " + undecided();
            case GONE ->
                (left.size() > 1 ? parts() : last.map(State::words).orElse("gone"))
                        + end.map(deed -> " on " + deed.day()).orElse("")
                        + customer.map(name -> " to " + name).orElse("");
        };
    }

    /** Return what became of the units of a batch of which nothing is left: {@code none left: 12 failed, 40 … the last}. */
    private String parts() {
        return "none left: "
                + String.join(
                        ", ",
                        left.entrySet().stream()
                                .filter(entry -> entry.getValue() > 0)
                                .map(entry -> entry.getValue() + " " + words(entry.getKey()))
                                .toList())
                + ", the last";
    }

    private String undecided() {
        return pending.map(count -> count == 1 ? "pending" : count + " pending").orElse("pending, not counted");
    }

    /** Return in words why units left: {@code sold}, {@code worked as a rootstock}. */
    public static String words(Reason reason) {
        return switch (reason) {
            case SOLD -> "sold";
            case LOST -> "lost";
            case CULLED -> "culled";
            case SURPLUS -> "culled as surplus";
            case FAILED -> "failed";
            case WITHDRAWN -> "withdrawn";
            case NOT_SEEN -> "closed as not seen";
            case MOVED_ON -> "went on under other tags";
            case WORKED -> "worked as a rootstock";
            case USED_UP -> "used up";
            case RETURNED, UNWORKED -> "gone";
        };
    }
}
