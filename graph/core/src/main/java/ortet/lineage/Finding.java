package ortet.lineage;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import ortet.book.UnitFacts.Nature;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * A plant, layer or batch that a recall finds.
 *
 * @param unit the unit
 * @param tag the tag that it bears
 * @param nature what it is
 * @param named its cultivar
 * @param round how many contacts away from what was asked about it is
 * @param since the first day on which it may have carried the disease; absent when it may always have
 * @param path what ties it to what was asked about, its own tie first
 * @param doubts why it is not implicated; empty when it is
 * @param pending how many units are there that are neither taken nor failed; absent when nobody counted them
 * @param growing how many units grow under its tag
 * @param onMother whether it is a part of another plant
 * @param place where it stands, or its mother does whose part it is
 * @param held whether it is held for plant health
 * @param sales what of it went to customers since it may have carried the disease
 * @param gone what became of it, in words, when nothing of it is here
 */
public record Finding(
        UnitNumber unit,
        Tag tag,
        Nature nature,
        Named named,
        int round,
        Optional<LocalDate> since,
        List<Tie> path,
        Set<Doubt> doubts,
        Optional<Integer> pending,
        int growing,
        boolean onMother,
        Optional<Place> place,
        boolean held,
        List<Sale> sales,
        Optional<String> gone) {
    public Finding {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(named);
        Objects.requireNonNull(since);
        path = List.copyOf(path);
        EnumSet<Doubt> sorted = EnumSet.noneOf(Doubt.class);
        sorted.addAll(doubts);
        doubts = Collections.unmodifiableSet(sorted);
        Objects.requireNonNull(pending);
        Objects.requireNonNull(place);
        sales = List.copyOf(sales);
        Objects.requireNonNull(gone);
    }

    /** Tell whether something of it is here. */
    public boolean isHere() {
        return gone.isEmpty();
    }

    /** Tell whether it is implicated, rather than merely not to be ruled out. */
    public boolean isImplicated() {
        return doubts.isEmpty();
    }

    /**
     * Return what ties it to what was asked about, in words that follow its tag: {@code was layered on 2024-05-03
     * from K-3, which came with consignment 2024-17 on 2024-02-01}.
     */
    public String because() {
        return String.join(
                ", which ",
                IntStream.range(0, path.size())
                        .mapToObj(at -> path.get(at)
                                .words(path.get(Math.min(at + 1, path.size() - 1))
                                        .tag()))
                        .toList());
    }
}
