package ortet.book.daybook;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.Receipt;
import ortet.book.Restoration;
import ortet.book.Ruling;
import ortet.value.Warning;

/** What was read from files, ready to be checked or written. */
public sealed interface Reading {
    /** Return what should be looked at twice: new persons, rows that stand twice. */
    List<Warning> remarks();

    /** Return how many entries were read. */
    int entries();

    /**
     * Have it judged without writing anything; the ruling's warnings begin with the remarks.
     *
     * @throws ortet.value.Refused with everything that cannot be true
     */
    Ruling check(BookView book, Judge judge, Progress progress);

    /**
     * Write it into the book, all of it or nothing; the receipt's warnings begin with the remarks.
     *
     * @throws ortet.value.Refused with everything that cannot be true; nothing is written
     */
    Receipt writeInto(BookStore store, Judge judge, Progress progress);

    /**
     * Rows to be added to a book.
     *
     * @param proposal the entries and the persons who are new
     * @param repeated how many rows said the same as one before, and are left out
     * @param remarks what should be looked at twice
     */
    record Rows(Proposal proposal, int repeated, List<Warning> remarks) implements Reading {
        public Rows {
            Objects.requireNonNull(proposal);
            remarks = List.copyOf(remarks);
        }

        @Override
        public int entries() {
            return proposal.items().size();
        }

        @Override
        public Ruling check(BookView book, Judge judge, Progress progress) {
            Ruling ruling = judge.rule(proposal, book, progress);
            return new Ruling(
                    ruling.head(),
                    ruling.entries(),
                    ruling.persons(),
                    ruling.facts(),
                    ruling.vanished(),
                    ruling.alreadyThere() + repeated,
                    ruling.begun(),
                    before(ruling.warnings()));
        }

        @Override
        public Receipt writeInto(BookStore store, Judge judge, Progress progress) {
            Receipt receipt = store.append(proposal, judge, progress);
            return new Receipt(
                    receipt.head(),
                    receipt.written(),
                    receipt.alreadyThere() + repeated,
                    receipt.begun(),
                    before(receipt.warnings()));
        }

        private List<Warning> before(List<Warning> warnings) {
            List<Warning> all = new ArrayList<>(remarks);
            all.addAll(warnings);
            return all;
        }
    }

    /**
     * A whole book, to be put into an empty one.
     *
     * @param restoration the book, its digests in agreement with its label
     */
    record WholeBook(Restoration restoration) implements Reading {
        public WholeBook {
            Objects.requireNonNull(restoration);
        }

        @Override
        public List<Warning> remarks() {
            return List.of();
        }

        @Override
        public int entries() {
            return restoration.entries().size();
        }

        @Override
        public Ruling check(BookView book, Judge judge, Progress progress) {
            return judge.restore(restoration, progress);
        }

        @Override
        public Receipt writeInto(BookStore store, Judge judge, Progress progress) {
            return store.restore(restoration, judge, progress);
        }
    }
}
