package ortet.book;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ortet.entry.CultivarListed;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Finds what a question is about, or refuses it with the nearest that may have been meant. */
public final class Lookup {
    private static final int SHOWN = 3;

    private Lookup() {}

    /**
     * Return the unit that bears or bore the tag.
     *
     * @throws Refused by the rule {@code unknown-tag} when there is none
     */
    public static UnitNumber unit(BookView view, Tag tag) {
        return view.unit(tag).orElseThrow(() -> {
            List<String> near = view.nearest(tag);
            return new Refused(Fault.of("unknown-tag", "no plant or batch " + tag)
                    .nearest(near.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", near))));
        });
    }

    /**
     * Return the person of a name or number, upper and lower case alike.
     *
     * @throws Refused by the rule {@code unknown-person} when there is none
     */
    public static Person person(BookView view, String wanted) {
        Optional<Person> person = PersonNumber.isWritten(wanted)
                ? view.persons().stream()
                        .filter(known -> known.number().toString().equals(wanted))
                        .findFirst()
                : view.person(wanted);
        return person.orElseThrow(() -> {
            List<String> names = view.persons().stream()
                    .flatMap(known -> known.name().stream())
                    .toList();
            return new Refused(Fault.of("unknown-person", "no person " + wanted).nearest(Nearest.of(wanted, names)));
        });
    }

    /**
     * Return the cultivars that a text stands for: a name as the book writes it, an epithet alone, or a botanical name for
     * all that is under it; upper and lower case alike.
     *
     * @param used the cultivars in question, besides those that are listed
     * @throws Refused by the rule {@code unknown-cultivar} when there is none
     */
    public static Set<CultivarName> cultivars(BookView view, String wanted, Collection<CultivarName> used) {
        Set<CultivarName> known = new TreeSet<>(used);
        Listings.of(view).cultivars().stream().map(CultivarListed::cultivar).forEach(known::add);
        String plain = plain(wanted);
        Set<CultivarName> found =
                known.stream().filter(cultivar -> answers(cultivar, plain)).collect(Collectors.toUnmodifiableSet());
        if (found.isEmpty()) {
            throw new Refused(
                    Fault.of("unknown-cultivar", "no cultivar " + wanted).nearest(near(plain, known)));
        }
        return found;
    }

    /**
     * Return the cultivar that is meant where one is to be written: an epithet alone, which reads like a botanical name,
     * stands for the one cultivar that bears it; any other name stands for itself.
     *
     * @param used the cultivars that the book knows
     */
    public static CultivarName meant(CultivarName written, Collection<CultivarName> used) {
        boolean isTaxon = used.stream().anyMatch(cultivar -> isUnder(cultivar.taxon(), written.taxon()));
        if (written.epithet().isPresent() || isTaxon) {
            return written;
        }
        List<CultivarName> bearing = used.stream()
                .filter(cultivar -> cultivar.epithet()
                        .filter(written.taxon()::equalsIgnoreCase)
                        .isPresent())
                .distinct()
                .toList();
        return bearing.size() == 1 ? bearing.get(0) : written;
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

    /** Return the refusal of a person's number that is not in the book. */
    public static Refused noSuchPerson(BookView view, PersonNumber number) {
        return new Refused(Fault.of("unknown-person", "no person " + number + " in the book")
                .nearest(Nearest.of(
                        number.toString(),
                        view.persons().stream()
                                .map(known -> known.number().toString())
                                .toList())));
    }
}
