package ortet.seeds;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;

/** Everybody whom the book of Sallowfield names; nobody and no firm here exists. */
final class People {
    /**
     * Somebody who works at Sallowfield.
     *
     * @param person who
     * @param from the first year
     * @param to the last year
     * @param skill what this hand adds to the log odds that something takes
     * @param work what kind of work
     */
    record Hand(Person person, int from, int to, double skill, List<Work> work) {}

    /** A kind of work. */
    enum Work {
        BENCH,
        GRAFTS,
        POTS,
        OFFICE
    }

    private static final int CUSTOMERS = 60;
    private static final List<String> FIRST_NAMES = List.of(
            "Aoife",
            "Bertrand",
            "Caoimhe",
            "Diarmuid",
            "Elspeth",
            "Fiachra",
            "Gráinne",
            "Hedwig",
            "Iarla",
            "Jørgen",
            "Kateřina",
            "Lorcan",
            "Muireann",
            "Norbert",
            "Orlaith",
            "Piaras",
            "Róisín",
            "Séamus",
            "Tuathla",
            "Ultan");
    private static final List<String> SURNAMES = List.of(
            "Bramblewick",
            "Thistledown",
            "Furzeley",
            "Moss-Hartley",
            "Ó Driseacháin",
            "Bogmyrtle",
            "Larchmere",
            "Nettlecombe",
            "Pebbleworth",
            "Ní Fhraochlaigh");
    private static final List<String> TRADES = List.of(
            "Ballynowhere Bonsai Club",
            "The Paper Lantern, Dunfiction",
            "Nodham Little Trees",
            "Nullport Garden Rooms",
            "Inchimagined Tree Society",
            "Small Trees of Erewhon",
            "Kilmakebelieve Plants",
            "Jardin de Nullepart",
            "Boomtuin Nergens",
            "Café Bonsai Neverwas",
            "Castlefable Nursery Shop",
            "Moonrath Bonsai Circle",
            "Utopia Terrace Gardens",
            "Galerie Niemandsbaum");

    private final Map<PersonNumber, Person> all = new TreeMap<>();
    private final List<Hand> hands = new ArrayList<>();
    private final List<Person> suppliers = new ArrayList<>();
    private final List<Person> trade = new ArrayList<>();
    private final List<Person> gardeners = new ArrayList<>();

    final Hand maire = hand("Máire Ní Shailigh", 1988, 2026, 0.2, "head grower", List.of(Work.values()));
    final Hand cathal = hand("Cathal Weirstone", 2012, 2019, 0.4, "propagator", List.of(Work.BENCH, Work.GRAFTS));
    final Hand tadhg = hand("Tadhg Fernhollow", 2013, 2016, -0.8, "trainee", List.of(Work.BENCH, Work.POTS));
    final Hand eabha = hand("Éabha Stonecrop", 2014, 2026, 0, "office", List.of(Work.OFFICE));
    final Hand ruaidhri = hand("Ruaidhrí Furzedown", 2012, 2022, -0.1, "pots and beds", List.of(Work.POTS));
    final Hand oksana = hand("Oksana Verbova", 2016, 2024, 0.25, "propagator", List.of(Work.BENCH, Work.POTS));
    final Hand hana = hand("Hana Yanagida (柳田 はな)", 2019, 2026, 0.35, "grafter", List.of(Work.GRAFTS, Work.BENCH));
    final Hand ciaran = hand("Ciarán Sedgeway", 2021, 2026, -0.2, "propagator", List.of(Work.BENCH, Work.POTS));

    final Person liners = supplier("Ballynowhere Liners", "liners and young stock");
    final Person nergens = supplier("Kwekerij Nergensland", "rootstocks and maples");
    final Person maiVisto = supplier("Vivaio Mai Visto", "maples");
    final Person kakuu = supplier("Kakūen (架空園)", "pines and mume");
    final Person seed = supplier("Nowherestown Seed Merchants", "seed");
    final Person pepiniere = supplier("Pépinière de l'Île Rêvée", "conifers");

    /** A customer whose particulars were erased when he asked for it; the number stays. */
    final Person erased;

    People() {
        for (String name : TRADES) {
            trade.add(add(name, Role.CUSTOMER, mail(name)));
        }
        int at = 0;
        while (trade.size() + gardeners.size() < CUSTOMERS - 1) {
            // the step 7 is prime to both lists, so that no pair comes twice
            String first = FIRST_NAMES.get(at % FIRST_NAMES.size());
            String last = SURNAMES.get((at * 7 + at / FIRST_NAMES.size()) % SURNAMES.size());
            gardeners.add(add(first + " " + last, Role.CUSTOMER, mail(first + "." + last)));
            at++;
        }
        erased = new Person(new PersonNumber(all.size() + 1), Optional.empty(), Role.CUSTOMER, Optional.empty());
        all.put(erased.number(), erased);
        gardeners.add(erased);
    }

    private static String mail(String name) {
        String plain = java.text.Normalizer.normalize(name, java.text.Normalizer.Form.NFD)
                .replace("ø", "o")
                .replaceAll("[^A-Za-z. ]", "")
                .strip()
                .replaceAll("[ .]+", ".");
        // the top-level domain "example" is set apart for documentation (RFC 2606)
        return plain.toLowerCase(Locale.ROOT) + "@post.example";
    }

    private Person add(String name, Role role, String particulars) {
        Person person = new Person(new PersonNumber(all.size() + 1), Optional.of(name), role, Optional.of(particulars));
        all.put(person.number(), person);
        return person;
    }

    private Hand hand(String name, int from, int to, double skill, String particulars, List<Work> work) {
        Hand hand = new Hand(add(name, Role.STAFF, particulars), from, to, skill, work);
        hands.add(hand);
        return hand;
    }

    private Person supplier(String name, String particulars) {
        Person person = add(name, Role.SUPPLIER, particulars);
        suppliers.add(person);
        return person;
    }

    /** Return somebody who did that kind of work in that year. */
    Hand hand(Work work, int year, Chance chance) {
        List<Hand> there = hands.stream()
                .filter(hand ->
                        hand.from() <= year && year <= hand.to() && hand.work().contains(work))
                .toList();
        // the head grower does what nobody else is there for, and now and then a little herself
        List<Hand> others = there.stream().filter(hand -> hand != maire).toList();
        return others.isEmpty() || chance.happens(0.15) ? maire : chance.of(others);
    }

    /** Return a customer from the trade. */
    Person trader(Chance chance) {
        return chance.of(trade);
    }

    /** Return a customer who keeps trees at home. */
    Person gardener(Chance chance) {
        return chance.of(gardeners);
    }

    List<Person> trade() {
        return trade;
    }

    List<Person> gardeners() {
        return gardeners;
    }

    boolean isTrade(Person person) {
        return trade.contains(person);
    }

    List<Person> suppliers() {
        return suppliers;
    }

    /** Return everybody by number. */
    Map<PersonNumber, Person> all() {
        return all;
    }

    /** Write the file of persons. */
    void write(Path file) throws IOException {
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(file, StandardCharsets.UTF_8)) {
            csv.writeRecord("number", "name", "role", "particulars", "erased");
            for (Person person : all.values()) {
                csv.writeRecord(
                        person.number().toString(),
                        person.name().orElse(""),
                        person.role().name().toLowerCase(Locale.ROOT),
                        person.particulars().orElse(""),
                        person.name().isEmpty() ? "yes" : "no");
            }
        }
    }
}
