package ortet.yield;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Listings;
import ortet.book.Lookup;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** A filter whose cultivar, mother and operator have been found in the book. */
final class Selection {
    private static final int SHOWN = 3;

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
            Optional<PersonNumber> wanted = Optional.of(operator(view, name));
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
        TreeMap<String, CultivarName> known = new TreeMap<>();
        samples.forEach(sample -> sample.cultivar().ifPresent(cultivar -> known.put(cultivar.toString(), cultivar)));
        Listings.of(view)
                .cultivars()
                .forEach(listed -> known.put(listed.cultivar().toString(), listed.cultivar()));
        String plain = plain(wanted);
        Set<CultivarName> found = known.values().stream()
                .filter(cultivar -> answers(cultivar, plain))
                .collect(Collectors.toSet());
        if (found.isEmpty()) {
            throw new Refused(
                    Fault.of("unknown-cultivar", "no cultivar " + wanted).nearest(near(plain, known.values())));
        }
        return sample -> sample.cultivar().filter(found::contains).isPresent();
    }

    /** Return a name as the book would write it, or an epithet without its quotes. */
    private static String plain(String wanted) {
        try {
            return CultivarName.parse(wanted).toString();
        } catch (Refused noName) {
            String plain = wanted.replace('\u2018', '\'').replace('\u2019', '\'');
            return plain.replaceFirst("^'([^']+)'$", "$1");
        }
    }

    private static boolean answers(CultivarName cultivar, String plain) {
        return cultivar.toString().equalsIgnoreCase(plain)
                || isUnder(cultivar.taxon(), plain)
                || cultivar.epithet().filter(plain::equalsIgnoreCase).isPresent();
    }

    /** Tell whether a taxon is the one named or belongs to it: Acer palmatum var. dissectum to Acer palmatum. */
    private static boolean isUnder(String taxon, String plain) {
        return taxon.equalsIgnoreCase(plain)
                || taxon.length() > plain.length()
                        && taxon.charAt(plain.length()) == ' '
                        && taxon.regionMatches(true, 0, plain, 0, plain.length());
    }

    private static Optional<String> near(String plain, Iterable<CultivarName> known) {
        Set<String> names = new HashSet<>();
        TreeMap<String, String> byEpithet = new TreeMap<>();
        for (CultivarName cultivar : known) {
            names.add(cultivar.toString());
            cultivar.epithet().ifPresent(epithet -> byEpithet.put(epithet, cultivar.toString()));
        }
        List<String> near = new ArrayList<>(Nearest.list(plain, names, SHOWN));
        Nearest.list(plain, byEpithet.keySet(), SHOWN).stream()
                .map(byEpithet::get)
                .filter(name -> !near.contains(name))
                .forEach(near::add);
        return near.isEmpty()
                ? Optional.empty()
                : Optional.of(String.join(", ", near.subList(0, Math.min(SHOWN, near.size()))));
    }

    private static PersonNumber operator(BookView view, String wanted) {
        Optional<Person> person = PersonNumber.isWritten(wanted)
                ? view.persons().stream()
                        .filter(known -> known.number().toString().equals(wanted))
                        .findFirst()
                : view.person(wanted);
        return person.map(Person::number).orElseThrow(() -> {
            List<String> names = view.persons().stream()
                    .flatMap(known -> known.name().stream())
                    .toList();
            return new Refused(Fault.of("unknown-person", "no person " + wanted).nearest(Nearest.of(wanted, names)));
        });
    }
}
