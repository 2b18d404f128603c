package ortet.seeds;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.entry.MakeUp;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.seeds.Troubles.Story;
import ortet.value.Defect;
import ortet.value.When;

/**
 * The demo nursery: invented from its first bench to its last customer, in the west of Ireland.
 *
 * <p>{@link #dayBook()} and {@link #persons()} give the files as they lie in this jar; {@link #write(Path)} makes them
 * again, byte for byte.
 */
public final class Sallowfield {
    /** The last day of the book; the demo takes it for today. */
    public static final LocalDate LAST_DAY = LocalDate.of(2026, 10, 31);

    /** The time zone of the book. */
    public static final ZoneId ZONE = ZoneId.of("Europe/Dublin");

    /** The name of the book. */
    public static final String NAME = "Sallowfield";

    /** A tree worth tracing: sold, a layer of a graft of a seedling raised here. */
    public static final Tag SHOWPIECE = new Tag("L-0452");

    private static final String DAY_BOOK = "day-book.csv";
    private static final String PERSONS = "persons.csv";
    private static final int FIRST_YEAR = 2012;
    private static final long SEED = 20261031;

    private Sallowfield() {}

    /** Open the day book as it lies in this jar. */
    public static InputStream dayBook() {
        return open(DAY_BOOK);
    }

    /** Open the list of persons as it lies in this jar. */
    public static InputStream persons() {
        return open(PERSONS);
    }

    private static InputStream open(String name) {
        InputStream stream = Sallowfield.class.getResourceAsStream("/sallowfield/" + name);
        if (stream == null) {
            throw new Defect("no /sallowfield/" + name + " on the class path");
        }
        return stream;
    }

    /** What a making of the nursery gives. */
    record Made(Nursery nursery, Unit showpiece, List<Story> stories) {}

    /** Make the nursery from its seed. */
    static Made make() {
        Agenda agenda = new Agenda(LAST_DAY);
        Chance chance = new Chance(SEED);
        Nursery nursery = new Nursery(agenda);
        Mothers mothers = new Mothers(nursery, chance.branch("mothers"));
        Growing growing = new Growing(nursery, mothers, chance.branch("growing"));
        Layering layering = new Layering(nursery, growing, chance.branch("layering"));
        Cutting cutting = new Cutting(nursery, growing, mothers, chance.branch("cutting"));
        Grafting grafting = new Grafting(nursery, growing, mothers, chance.branch("grafting"));
        Sowing sowing = new Sowing(nursery, mothers, cutting, grafting, chance.branch("sowing"));
        Troubles troubles =
                new Troubles(nursery, mothers, layering, cutting, grafting, growing, chance.branch("troubles"));
        Showpiece showpiece = new Showpiece(nursery, mothers, layering, grafting, growing);

        registers(nursery);
        new Tariff(nursery).plan();
        new Plans(nursery).plan();
        mothers.oldStock();
        mothers.laterStock();
        showpiece.plan();
        troubles.plan();
        agenda.on(LocalDate.of(FIRST_YEAR, 1, 9), mothers::begin);
        for (int year = FIRST_YEAR; year <= LAST_DAY.getYear(); year++) {
            int now = year;
            agenda.on(LocalDate.of(year, 1, 10), () -> {
                mothers.year(now, mother -> spring(nursery, layering, mother, chance));
                cutting.year(now);
                grafting.year(now);
                sowing.year(now);
            });
        }
        agenda.run();
        return new Made(nursery, showpiece.tree(), troubles.told());
    }

    private static void spring(Nursery nursery, Layering layering, Unit mother, Chance chance) {
        LocalDate day = LocalDate.of(nursery.year(), 4, 12).plusDays(chance.between(0, 60));
        nursery.later(day, () -> {
            if (mother.givesWood()) {
                layering.set(mother, layering.usualCount());
            }
        });
    }

    private static void registers(Nursery nursery) {
        for (Grounds.Spot spot : nursery.grounds.spots()) {
            nursery.agenda.on(
                    LocalDate.of(spot.year(), 1, 1),
                    () -> nursery.book
                            .on(When.parse(Integer.toString(spot.year())), Optional.empty(), EntryKind.PLACE_LISTED)
                            .set("place", spot.place())
                            .set("within", spot.within())
                            .set("premises", spot.premises())
                            .set("area_m2", spot.areaM2())
                            .set("note", spot.note())
                            .write());
        }
        for (Variety variety : Variety.values()) {
            if (variety != Variety.SALLAN && variety != Variety.SALLOWFIELD_TIDE) {
                nursery.agenda.on(
                        LocalDate.of(1988, 1, 1),
                        () -> nursery.book
                                .on(When.parse("1988"), Optional.empty(), EntryKind.CULTIVAR_LISTED)
                                .set("cultivar", variety.cultivar())
                                .set("synonyms", synonyms(variety))
                                .set("make_up", variety == Variety.KOTOBUKI ? MakeUp.SEVERAL_CLONES : variety.makeUp())
                                .set("chimera", isChimera(variety) ? "yes" : "")
                                .set("growth_mm", variety.growthMm())
                                .write());
            }
        }
    }

    private static boolean isChimera(Variety variety) {
        return variety == Variety.FROSTY || variety == Variety.GOSHIKI_KAEDE;
    }

    private static String synonyms(Variety variety) {
        return switch (variety) {
            case GOLDEN_HORNET -> "Malus 'Golden Hornet'";
            case SHISHIGASHIRA -> "Acer palmatum 'Cristatum'";
            case ITOIGAWA -> "Juniperus chinensis var. sargentii 'Itoigawa'";
            case KISHU -> "Juniperus chinensis var. sargentii 'Kishu'";
            default -> "";
        };
    }

    /** Write day-book.csv and persons.csv into a folder, which is made where there is none. */
    public static void write(Path folder) throws IOException {
        Files.createDirectories(folder);
        Made made = make();
        made.nursery()
                .book
                .write(folder.resolve(DAY_BOOK), made.nursery().people.all());
        made.nursery().people.write(folder.resolve(PERSONS));
    }

    /** Write the files into the folder named first; with {@code --stories} also tell the list of troubles. */
    public static void main(String[] arguments) throws IOException {
        List<String> words = new ArrayList<>(List.of(arguments));
        boolean stories = words.remove("--stories");
        if (words.size() != 1) {
            System.err.println("expected: ortet.seeds.Sallowfield FOLDER [--stories]");
            System.exit(2);
        }
        write(Path.of(words.get(0)));
        if (stories) {
            Made made = make();
            System.out.println("showpiece " + made.showpiece());
            made.stories().forEach(story -> System.out.println(line(story)));
        }
    }

    /** Return a story as a row of the table in the README. */
    static String line(Story story) {
        return "| " + Tags.brief(story.tags()) + " | " + story.what() + " |";
    }
}
