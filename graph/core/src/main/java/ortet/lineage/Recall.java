package ortet.lineage;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.book.Head;
import ortet.plant.Tag;

/**
 * Every plant and batch that a suspect may have got a disease from, or may have given it to.
 *
 * <p>First up to every possible source, then down to everything raised from these, by every act that the book knows; with
 * contacts, also to what stood in the same place at the same time as a suspect, as many rounds as asked, never backwards
 * in time. The rules and what they rest on are in {@code docs/methods/recall.md}.
 *
 * @param question what was asked
 * @param head where the book stood
 * @param began how many units it began with
 * @param implicated what is implicated, by tag
 * @param notRuledOut what is not, and cannot be ruled out, by tag
 * @param unplaced suspects of which nobody knows where they stood for a time, by tag; asked for with contacts alone
 * @param nobodys how many entries on suspects do not say who did it; asked for with tools alone
 * @param older units that were left alone because what ties them is older than the day asked for, by tag
 */
public record Recall(
        RecallQuestion question,
        Head head,
        int began,
        List<Finding> implicated,
        List<Finding> notRuledOut,
        List<Unplaced> unplaced,
        int nobodys,
        List<Tag> older) {
    /**
     * A suspect of which nobody knows where it stood.
     *
     * @param tag the suspect
     * @param from the first day
     * @param to the last day; absent for now
     */
    public record Unplaced(Tag tag, Optional<LocalDate> from, Optional<LocalDate> to) {
        public Unplaced {
            Objects.requireNonNull(tag);
            Objects.requireNonNull(from);
            Objects.requireNonNull(to);
        }
    }

    public Recall {
        Objects.requireNonNull(question);
        Objects.requireNonNull(head);
        implicated = List.copyOf(implicated);
        notRuledOut = List.copyOf(notRuledOut);
        unplaced = List.copyOf(unplaced);
        older = List.copyOf(older);
    }

    /**
     * Recall.
     *
     * @throws ortet.value.Refused when there is no such plant, consignment, supplier or place
     */
    public static Recall of(BookView view, RecallQuestion question) {
        return new Recaller(view, question).recall();
    }

    /** Return both lists, the implicated first. */
    public Stream<Finding> all() {
        return Stream.concat(implicated.stream(), notRuledOut.stream());
    }
}
