package ortet.yield;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.plant.CultivarName;

/** A filter whose cultivar, mother and operator have been found in the book. */
final class Selection {
    private final Samples samples;
    private final IntPredicate others;
    private final Optional<Integer> mother;

    private Selection(Samples samples, IntPredicate others, Optional<Integer> mother) {
        this.samples = samples;
        this.others = others;
        this.mother = mother;
    }

    static Selection of(BookView view, TakeFilter filter, Samples samples) {
        IntPredicate tests = samples::isThere;
        if (filter.cultivar().isPresent()) {
            tests = tests.and(cultivar(view, filter.cultivar().get(), samples));
        }
        if (filter.method().isPresent()) {
            tests = tests.and(
                    row -> samples.cohorts().method(row) == filter.method().get());
        }
        if (filter.fromYear().isPresent()) {
            int year = filter.fromYear().get();
            tests = tests.and(row -> samples.season(row) >= year);
        }
        if (filter.toYear().isPresent()) {
            int year = filter.toYear().get();
            tests = tests.and(row -> samples.season(row) <= year);
        }
        if (filter.operator().isPresent()) {
            int person = Lookup.person(view, filter.operator().get()).number().value();
            tests = tests.and(row -> samples.cohorts().by(row) == person);
        }
        Optional<Integer> mother =
                filter.mother().map(tag -> Lookup.unit(view, tag).value());
        return new Selection(samples, tests, mother);
    }

    /** Tell whether a unit is asked for. */
    boolean keeps(int row) {
        return others.test(row)
                && mother.map(unit -> samples.mother(row) == unit).orElse(true);
    }

    /** Tell whether a unit would be asked for, but may come from another than the mother asked for. */
    boolean shares(int row) {
        return mother.isPresent() && samples.isOneOf(row, mother.get()) && others.test(row);
    }

    private static IntPredicate cultivar(BookView view, String wanted, Samples samples) {
        List<CultivarName> all = samples.snapshot().cultivars();
        boolean[] used = new boolean[all.size()];
        for (int row = 0; row < samples.cohorts().size(); row++) {
            if (samples.isThere(row) && samples.cultivar(row) >= 0) {
                used[samples.cultivar(row)] = true;
            }
        }
        Set<CultivarName> names = new HashSet<>();
        for (int name = 0; name < used.length; name++) {
            if (used[name]) {
                names.add(all.get(name));
            }
        }
        Set<CultivarName> found = Lookup.cultivars(view, wanted, names);
        boolean[] asked = new boolean[all.size()];
        for (int name = 0; name < asked.length; name++) {
            asked[name] = found.contains(all.get(name));
        }
        return row -> samples.cultivar(row) >= 0 && asked[samples.cultivar(row)];
    }
}
