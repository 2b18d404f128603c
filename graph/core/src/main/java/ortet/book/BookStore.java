package ortet.book;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import ortet.entry.Recorded;

/**
 * Where a book is kept: the port that every store implements.
 *
 * <p>A store keeps the entries, unchanged and in recorded order, with their digests; the persons; and the derived facts
 * of every unit, which it never works out by itself but takes from a {@link Judge}. What goes wrong is
 * {@link ortet.value.Refused} (the proposal cannot be true) or {@link ortet.value.Unavailable} (the book is busy, away,
 * not a book, damaged, or newer than this program).
 */
public interface BookStore extends AutoCloseable {
    /**
     * Return the answer to a question put to one consistent view of the book.
     *
     * @param question does nothing but answer: a store that finds that somebody wrote meanwhile may put it again
     */
    <T> T read(Function<BookView, T> question);

    /**
     * Write a proposal into the book, all of it or nothing: take the writer's lock, let the judge rule on it, and write
     * the ruling.
     *
     * @throws ortet.value.Refused when it cannot be true; nothing is written
     */
    Receipt append(Proposal proposal, Judge judge, Progress progress);

    /** Write the ruling on a proposal without showing progress. */
    default Receipt append(Proposal proposal, Judge judge) {
        return append(proposal, judge, Progress.NONE);
    }

    /**
     * Take a whole book's worth of entries into this book, which must have none, all of them or nothing; needs little memory
     * however many they are.
     *
     * @throws ortet.value.Refused when this book has entries, or those cannot be read or cannot be true; nothing is written
     */
    Loaded load(EntrySource source, Judge judge, Progress progress);

    /**
     * Put another's entries into this book, which must be empty, exactly as they were recorded there: order, instants
     * and digests, and the identity and zone of the book.
     *
     * @throws ortet.value.Refused when this book is not empty, or the chain of digests is broken
     */
    Receipt restore(Restoration from, Judge judge, Progress progress);

    /**
     * Add entries that another copy of this book has after those of this one, exactly as they were recorded there, all of
     * them or nothing.
     *
     * @param entries in recorded order, from the one after this book's last, up to where entries recorded at one go end
     * @throws ortet.value.Refused when they do not follow, or cannot be true
     */
    Receipt follow(List<Recorded> entries, Judge judge, Progress progress);

    /** Tell whether a whole book was being taken in, and that was broken off or is still under way. */
    default boolean isHalfFilled() {
        return false;
    }

    /** Return in which language questions are put to this store. */
    QueryText.Language language();

    /**
     * Put a question that need not be one of the program's own; it cannot write.
     *
     * @param question in the language of this store
     * @throws ortet.value.Refused when its header does not fit, the store cannot read it, or it wants to write
     * @throws ortet.value.Unavailable when it takes too long
     */
    Rows ask(QueryText question, Parameters parameters, Limits limits);

    /**
     * Keep a person's particulars, or erase them; entries are not touched.
     *
     * @throws ortet.value.Refused when the number is not in the book or the name is another's
     */
    void keep(ortet.plant.Person person);

    /** Drop the derived facts and work them out anew from the entries. */
    void rebuild(Judge judge, Progress progress);

    /** Return what the store itself finds damaged in how the book is kept, in words; empty when all is well. */
    default List<String> damage() {
        return List.of();
    }

    /** Copy the book, consistent while in use, to a file that does not exist yet. */
    void backup(Path to);

    @Override
    void close();
}
