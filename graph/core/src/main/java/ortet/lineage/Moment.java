package ortet.lineage;

import java.time.LocalDate;
import java.util.Comparator;
import ortet.book.Event;

/**
 * A place on a timeline: a day, the rank of a kind within it, a recorded order.
 *
 * <p>What is known to the month or year alone is taken to be at its end, unless it begins the unit.
 */
record Moment(LocalDate day, int rank, long order) implements Comparable<Moment> {
    /** After everything. */
    static final Moment NEVER = new Moment(LocalDate.MAX, Integer.MAX_VALUE, Long.MAX_VALUE);

    private static final Comparator<Moment> ORDER =
            Comparator.comparing(Moment::day).thenComparingInt(Moment::rank).thenComparingLong(Moment::order);

    static Moment of(Event event) {
        return event.begins()
                ? new Moment(event.day().first(), -1, event.order())
                : new Moment(event.day().last(), event.entry().kind().rank(), event.order());
    }

    @Override
    public int compareTo(Moment other) {
        return ORDER.compare(this, other);
    }
}
