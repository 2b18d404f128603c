package ortet.neo4j;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.neo4j.driver.Record;
import org.neo4j.driver.Transaction;
import ortet.book.Chain;
import ortet.book.Digest;
import ortet.book.Head;

/**
 * Where a book stands on the server, and whether somebody is writing into it.
 *
 * <p>Neo4j shows each reader whatever is committed at that moment, and even parts of what is just being committed. So
 * whoever writes says so first, in a transaction of its own ({@code announced} goes up), writes, and then says that it is
 * done ({@code written} follows). What was read between two looks at which both numbers were the same, and the same as
 * each other, is of one book.
 *
 * @param head where the book stands
 * @param announced how many writings were begun
 * @param written the last of those that was ended
 * @param filling what is being filled in that nobody may look at yet, where a whole book is
 */
record Standing(Head head, long announced, long written, Optional<Filling> filling) {
    private static final String LOOK = "MATCH (b:Book {one: 1}), (p:Pen {one: 1})"
            + " RETURN b.id, b.zone, b.recorded_order, b.digest, b.last_unit, p.announced, p.written,"
            + " b.filling, b.filling_book, duration.inSeconds(b.filling_seen, datetime()).seconds";

    /**
     * A whole book on its way in.
     *
     * @param by who fills it in: a name that nobody else has
     * @param of the identity of the book that is copied; the book's own where it is a new one
     * @param silentSeconds how long nothing was heard of who fills it in
     */
    record Filling(String by, String of, long silentSeconds) {
        static final long GIVEN_UP_SECONDS = 40;

        /** Tell whether whoever began it is most likely gone. */
        boolean isGivenUp() {
            return silentSeconds > GIVEN_UP_SECONDS;
        }
    }

    /** Return where the book stands; empty when there is none in the database. */
    static Optional<Standing> of(Transaction transaction) {
        List<Record> rows = transaction.run(LOOK).list();
        return rows.isEmpty() ? Optional.empty() : Optional.of(of(rows.get(0)));
    }

    private static Standing of(Record row) {
        return new Standing(
                new Head(
                        UUID.fromString(row.get(0).asString()),
                        ZoneId.of(row.get(1).asString()),
                        row.get(2).asLong(),
                        row.get(3).isNull()
                                ? Chain.START
                                : new Digest(row.get(3).asString()),
                        row.get(4).asInt()),
                row.get(5).asLong(),
                row.get(6).asLong(),
                row.get(7).isNull()
                        ? Optional.empty()
                        : Optional.of(new Filling(
                                row.get(7).asString(),
                                row.get(8).asString(""),
                                row.get(9).asLong(0))));
    }

    /** Tell whether nobody is writing. */
    boolean isQuiet() {
        return announced == written;
    }

    /** Tell whether nothing was written between two looks. */
    boolean isSameAs(Standing before) {
        return isQuiet() && announced == before.announced;
    }
}
