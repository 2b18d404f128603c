package ortet.yield;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Cohorts;
import ortet.nursery.TagsOfUnits;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;

/** Puts units into groups by numbers, and names the groups once they are all known. */
final class Grouping {
    private static final int UNKNOWN = -1;

    private final BookView view;
    private final Samples samples;
    private final List<CultivarName> cultivars;
    private final int[] taxa;
    private final List<String> taxonNames = new ArrayList<>();

    Grouping(BookView view, Samples samples) {
        this.view = view;
        this.samples = samples;
        this.cultivars = samples.snapshot().cultivars();
        this.taxa = new int[cultivars.size()];
        Map<String, Integer> numbers = new HashMap<>();
        for (int name = 0; name < taxa.length; name++) {
            taxa[name] = numbers.computeIfAbsent(cultivars.get(name).taxon(), taxon -> {
                taxonNames.add(taxon);
                return taxonNames.size() - 1;
            });
        }
    }

    /** Return the number that a row is grouped by in one respect. */
    int number(TakeBy by, int row) {
        return switch (by) {
            case CULTIVAR -> Math.max(UNKNOWN, samples.cultivar(row));
            case TAXON -> samples.cultivar(row) < 0 ? UNKNOWN : taxa[samples.cultivar(row)];
            case MOTHER -> samples.mother(row);
            case METHOD -> samples.cohorts().method(row).ordinal();
            case SEASON -> samples.season(row);
            case OPERATOR -> samples.cohorts().by(row);
        };
    }

    /** Return what the groups of some numbers are, by number. */
    Map<Integer, GroupKey> keys(TakeBy by, Iterable<Integer> numbers) {
        Map<Integer, GroupKey> keys = new HashMap<>();
        switch (by) {
            case CULTIVAR -> numbers.forEach(number -> keys.put(number, named(by, number, cultivars)));
            case TAXON -> numbers.forEach(number -> keys.put(number, named(by, number, taxonNames)));
            case MOTHER -> mothers(numbers, keys);
            case METHOD -> numbers.forEach(number -> keys.put(number, GroupKey.method(by, Method.values()[number])));
            case SEASON -> numbers.forEach(number -> keys.put(number, GroupKey.season(by, number)));
            case OPERATOR -> {
                Map<Integer, String> names = new HashMap<>();
                view.persons().forEach(person -> names.put(person.number().value(), person.shown()));
                numbers.forEach(number -> keys.put(
                        number,
                        number == Cohorts.NONE
                                ? GroupKey.unknown(by)
                                : GroupKey.operator(
                                        by,
                                        new PersonNumber(number),
                                        names.getOrDefault(number, new PersonNumber(number).toString()))));
            }
        }
        return keys;
    }

    private static GroupKey named(TakeBy by, int number, List<?> names) {
        return number < 0
                ? GroupKey.unknown(by)
                : GroupKey.named(by, names.get(number).toString());
    }

    private void mothers(Iterable<Integer> numbers, Map<Integer, GroupKey> keys) {
        Set<Integer> wanted = new TreeSet<>();
        for (int number : numbers) {
            if (number < 0) {
                wanted.addAll(samples.several(number));
            } else if (number > 0) {
                wanted.add(number);
            }
        }
        Map<Integer, Tag> tags = TagsOfUnits.of(view, wanted, samples.snapshot().asOf());
        for (int number : numbers) {
            List<Integer> units =
                    number < 0 ? samples.several(number) : number == 0 ? List.<Integer>of() : List.of(number);
            keys.put(
                    number,
                    GroupKey.mother(
                            TakeBy.MOTHER,
                            units.stream().map(tags::get).sorted().toList()));
        }
    }
}
