package ortet.book;

import java.util.Optional;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.value.Where;

/** Takes in the entries of a whole book, one after another, and knows those that it has. */
public interface Intake {
    /** Return how many entries were taken in, which is the recorded order of the last one. */
    long size();

    /** Return the digest of the last entry. */
    Digest digest();

    /**
     * Take in an entry that was never recorded before; it is recorded now, after the last one.
     *
     * @param where where it was read, without a column
     */
    void take(Proposed proposed, Where where);

    /** Take in an entry as it was recorded before, in its order. */
    void take(Recorded recorded, Optional<Where> where);

    /** Return the recorded order of the entry with an identity that was taken in; 0 when there is none. */
    long order(EntryId id);

    /** Return an entry that was taken in. */
    Recorded entry(long order);

    /** Return where an entry was read. */
    Optional<Where> where(long order);
}
