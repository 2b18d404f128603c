package ortet.commands;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.entry.Recorded;
import ortet.plant.Place;
import ortet.value.When;

/**
 * What is remembered while somebody sits at the prompt, or while a file of lines is run: the person, day, place and book of
 * the lines to come, and what was written. Not safe to share between threads.
 */
public final class Sitting {
    /**
     * What one line wrote.
     *
     * @param book where the book is
     * @param entries the entries; none when it wrote something else
     * @param lasting why it cannot be taken back, in the words that follow "the last line"; empty where it can
     */
    record Written(Whereabouts book, List<Recorded> entries, Optional<String> lasting) {
        Written {
            Objects.requireNonNull(book);
            entries = List.copyOf(entries);
            Objects.requireNonNull(lasting);
        }
    }

    private final Deque<Written> written = new ArrayDeque<>();
    private Optional<String> by = Optional.empty();
    private Optional<When> on = Optional.empty();
    private Optional<Place> place = Optional.empty();
    private Optional<Whereabouts> book = Optional.empty();

    /** Begin with nothing remembered. */
    public Sitting() {}

    Optional<String> by() {
        return by;
    }

    void by(Optional<String> person) {
        by = person;
    }

    Optional<When> on() {
        return on;
    }

    void on(Optional<When> day) {
        on = day;
    }

    Optional<Place> place() {
        return place;
    }

    void place(Optional<Place> where) {
        place = where;
    }

    Optional<Whereabouts> book() {
        return book;
    }

    void book(Optional<Whereabouts> file) {
        book = file;
    }

    /** Remember the entries that a line wrote. */
    void wrote(Whereabouts file, List<Recorded> entries) {
        if (!entries.isEmpty()) {
            written.push(new Written(file, entries, Optional.empty()));
        }
    }

    /** Remember that a line wrote what cannot be taken back. */
    void wroteForGood(Whereabouts file, String what) {
        written.push(new Written(file, List.of(), Optional.of(what)));
    }

    /** Return what the last line that wrote anything wrote. */
    Optional<Written> last() {
        return Optional.ofNullable(written.peek());
    }

    /** Forget what the last line wrote, since it is taken back. */
    void tookBack() {
        written.pop();
    }
}
