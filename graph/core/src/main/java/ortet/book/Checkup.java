package ortet.book;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ortet.entry.Recorded;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.OrtetException;
import ortet.value.Refused;

/**
 * What was found when a book was checked from beginning to end.
 *
 * @param head where the book stands
 * @param entries how many entries were read
 * @param units how many units were told anew
 * @param wrong what is wrong, in words; empty when all is well
 */
public record Checkup(Head head, long entries, int units, List<String> wrong) {
    private static final int MOST = 100;
    private static final String GAP = "expected entry ";

    public Checkup {
        wrong = List.copyOf(wrong);
    }

    /** Tell whether nothing is wrong. */
    public boolean isWell() {
        return wrong.isEmpty();
    }

    /**
     * Check a book: whether recorded orders have no gaps, every digest follows from its entry and the one before, every
     * entry can be true, and the facts kept of every unit are those that follow from the entries.
     */
    public static Checkup of(BookView view, Judge judge, Progress progress) {
        List<String> wrong = new ArrayList<>();
        Head head = view.head();
        long read = chain(view, head, wrong, progress);
        int units = 0;
        if (wrong.stream().anyMatch(line -> line.startsWith(GAP))) {
            wrong.add("whether the entries can be true was not looked at, since some are missing");
            return new Checkup(head, read, units, wrong);
        }
        try {
            units = compare(view, head, judge, wrong, progress);
        } catch (Refused refused) {
            refused.faults().stream()
                    .limit(MOST)
                    .map(Fault::line)
                    .map(line -> "by the rules: " + line)
                    .forEach(wrong::add);
        } catch (OrtetException broken) {
            wrong.add("the entries cannot be read through: " + broken.getMessage());
        }
        return new Checkup(head, read, units, wrong);
    }

    private static long chain(BookView view, Head head, List<String> wrong, Progress progress) {
        Chain chain = new Chain(Chain.START);
        long expected = 0;
        Digest last = Chain.START;
        try (Stream<Chained> entries = view.since(0)) {
            for (Chained chained : (Iterable<Chained>) entries::iterator) {
                Recorded recorded = chained.recorded();
                expected++;
                if (recorded.order() != expected && wrong.size() < MOST) {
                    wrong.add(GAP + expected + ", found entry " + recorded.order());
                    expected = recorded.order();
                }
                last = chain.add(recorded).digest();
                if (!last.equals(chained.digest())) {
                    wrong.add(
                            "entry " + recorded.order()
                                    + " is not as it was written: its digest does not follow from it and the entries before it");
                    return expected;
                }
                if (expected % 10_000 == 0) {
                    progress.at("reading entries", expected, head.order());
                }
            }
        }
        if (expected != head.order()) {
            wrong.add("the last entry is " + expected + ", expected " + head.order());
        } else if (!last.equals(head.digest())) {
            wrong.add("the chain ends on " + last.brief() + ", expected "
                    + head.digest().brief());
        }
        return expected;
    }

    private static int compare(BookView view, Head head, Judge judge, List<String> wrong, Progress progress) {
        int[] units = {0};
        BitSet told = new BitSet();
        Head anew = judge.retell(
                view,
                facts -> {
                    units[0]++;
                    told.set(facts.unit().value());
                    Optional<UnitFacts> kept = view.facts(facts.unit());
                    if (!kept.equals(Optional.of(facts)) && wrong.size() < MOST) {
                        wrong.add("what is kept of " + facts.tag()
                                + (kept.isEmpty() ? " is missing, and does not follow" : " does not follow")
                                + " from the entries; \"ortet book rebuild\" mends it");
                    }
                },
                progress);
        for (int unit = 1; unit <= Math.max(head.lastUnit(), anew.lastUnit()); unit++) {
            if (!told.get(unit) && view.facts(new UnitNumber(unit)).isPresent() && wrong.size() < MOST) {
                wrong.add("something is kept of unit " + unit
                        + ", which no entry begins; \"ortet book rebuild\" mends it");
            }
        }
        if (head.lastUnit() != anew.lastUnit()) {
            wrong.add("the last unit number is " + head.lastUnit() + ", expected " + anew.lastUnit());
        }
        return units[0];
    }
}
