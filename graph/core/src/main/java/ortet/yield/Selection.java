package ortet.yield;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;

/** A filter whose cultivar, mother and operator have been found in the book. */
final class Selection {
    private final Predicate<Sample> others;
    private final Set<Tag> mother;

    private Selection(Predicate<Sample> others, Set<Tag> mother) {
        this.others = others;
        this.mother = mother;
    }

    static Selection of(BookView view, TakeFilter filter, List<Sample> samples) {
        List<Predicate<Sample>> tests = new ArrayList<>();
        filter.cultivar().ifPresent(name -> tests.add(cultivar(view, name, samples)));
        filter.method().ifPresent(method -> tests.add(sample -> sample.method() == method));
        filter.fromYear().ifPresent(year -> tests.add(sample -> sample.season() >= year));
        filter.toYear().ifPresent(year -> tests.add(sample -> sample.season() <= year));
        filter.operator().ifPresent(name -> {
            Optional<PersonNumber> wanted =
                    Optional.of(Lookup.person(view, name).number());
            tests.add(sample -> sample.by().equals(wanted));
        });
        Set<Tag> mother = filter.mother()
                .map(tag -> Set.copyOf(view.tags(Lookup.unit(view, tag))))
                .orElse(Set.of());
        return new Selection(tests.stream().reduce(sample -> true, Predicate::and), mother);
    }

    /** Tell whether a unit is asked for. */
    boolean keeps(Sample sample) {
        return others.test(sample)
                && (mother.isEmpty()
                        || sample.mothers().size() == 1
                                && mother.contains(sample.mothers().get(0)));
    }

    /** Tell whether a unit would be asked for, but may come from another than the mother asked for. */
    boolean shares(Sample sample) {
        return others.test(sample)
                && sample.mothers().size() > 1
                && sample.mothers().stream().anyMatch(mother::contains);
    }

    private static Predicate<Sample> cultivar(BookView view, String wanted, List<Sample> samples) {
        Set<CultivarName> used = new HashSet<>();
        samples.forEach(sample -> sample.cultivar().ifPresent(used::add));
        Set<CultivarName> found = Lookup.cultivars(view, wanted, used);
        return sample -> sample.cultivar().filter(found::contains).isPresent();
    }
}
