package ortet.book;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.entry.Acquired;
import ortet.entry.Drawn;
import ortet.entry.Entry;
import ortet.entry.FoundUntagged;
import ortet.entry.GraftWorked;
import ortet.entry.Merged;
import ortet.entry.Raised;
import ortet.entry.Split;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * What the book knows of the graft union of a plant, and so of the wood below it.
 *
 * @param mayBe whether the plant may be a graft
 * @param isSure whether the book says that it is one
 * @param isWhole whether every rootstock that it may stand on is in the book
 * @param stocks the rootstocks in the book, one of which it is
 * @param names the names of rootstocks that are not in the book
 */
record Union(boolean mayBe, boolean isSure, boolean isWhole, Set<UnitNumber> stocks, Set<CultivarName> names) {
    private static final int DEEPEST = 1000;

    /** No graft. */
    static final Union NONE = new Union(false, false, false, Set.of(), Set.of());

    /** A graft, or what may be one, whose rootstock nobody named. */
    static Union unknown(boolean isSure) {
        return new Union(true, isSure, false, Set.of(), Set.of());
    }

    /** A graft on a rootstock in the book. */
    static Union on(UnitNumber stock) {
        return new Union(true, true, true, Set.of(stock), Set.of());
    }

    /** A graft on a rootstock of which only the name is known. */
    static Union on(CultivarName stock) {
        return new Union(true, true, false, Set.of(), Set.of(stock));
    }

    /** Return what is known of a plant that is one of several. */
    static Union of(List<Union> several) {
        Set<UnitNumber> stocks = new LinkedHashSet<>();
        Set<CultivarName> names = new LinkedHashSet<>();
        boolean mayBe = false;
        boolean isSure = !several.isEmpty();
        boolean isWhole = !several.isEmpty();
        for (Union one : several) {
            mayBe |= one.mayBe;
            isSure &= one.isSure;
            isWhole &= one.isWhole;
            stocks.addAll(one.stocks);
            names.addAll(one.names);
        }
        // A name says what the plant stands on only if nothing else may be below.
        boolean alike = several.stream().allMatch(one -> one.names.equals(names));
        return new Union(mayBe, isSure, isWhole, stocks, alike ? names : Set.of());
    }

    /** Return the name of the rootstock, where it is not in the book and there is but one name. */
    Optional<CultivarName> name() {
        return stocks.isEmpty() && names.size() == 1 ? names.stream().findFirst() : Optional.empty();
    }

    /** Return what is known of a plant: of its own union, or that of the batch that it came from. */
    static Union of(Witness witness, UnitNumber unit) {
        return of(witness, unit, 0);
    }

    private static Union of(Witness witness, UnitNumber unit, int depth) {
        Optional<Entry> begun = depth > DEEPEST
                ? Optional.empty()
                : witness.timeline(unit).stream()
                        .filter(Event::begins)
                        .findFirst()
                        .map(Event::entry);
        if (begun.isEmpty()) {
            return NONE;
        }
        Entry entry = begun.get();
        if (entry instanceof GraftWorked graft) {
            return graft.stock()
                    .flatMap(witness::resolve)
                    .map(Union::on)
                    .or(() -> graft.stockCultivar().map(Union::on))
                    .orElse(unknown(true));
        }
        if (entry instanceof Acquired acquired) {
            Raised raised = acquired.raised().orElse(Raised.UNKNOWN);
            return raised == Raised.GRAFT || raised == Raised.UNKNOWN ? unknown(raised == Raised.GRAFT) : NONE;
        }
        return of(sources(entry).stream()
                .map(witness::resolve)
                .flatMap(Optional::stream)
                .filter(source -> !source.equals(unit))
                .map(source -> of(witness, source, depth + 1))
                .toList());
    }

    private static List<Tag> sources(Entry entry) {
        if (entry instanceof Drawn drawn) {
            return List.of(drawn.source());
        }
        if (entry instanceof Split split) {
            return List.of(split.source());
        }
        if (entry instanceof Merged merged) {
            return merged.sources();
        }
        return entry instanceof FoundUntagged found ? found.candidates() : List.of();
    }
}
