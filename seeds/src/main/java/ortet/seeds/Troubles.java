package ortet.seeds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import ortet.entry.Carrier;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.GraftKind;
import ortet.entry.Ownership;
import ortet.entry.Purpose;
import ortet.entry.Raised;
import ortet.entry.ReleasedFrom;
import ortet.entry.Remainder;
import ortet.entry.Rest;
import ortet.entry.Roots;
import ortet.entry.Wood;
import ortet.entry.Wound;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Row;
import ortet.seeds.People.Hand;
import ortet.value.When;

/** What went wrong at Sallowfield, or was out of the ordinary; each with the tags to look it up by. */
final class Troubles {
    /**
     * One of them.
     *
     * @param what what happened
     * @param tags the units to look at
     */
    record Story(String what, List<Tag> tags) {}

    private final Nursery nursery;
    private final Mothers mothers;
    private final Layering layering;
    private final Cutting cutting;
    private final Grafting grafting;
    private final Growing growing;
    private final Chance chance;
    private final List<Story> stories = new ArrayList<>();

    Troubles(
            Nursery nursery,
            Mothers mothers,
            Layering layering,
            Cutting cutting,
            Grafting grafting,
            Growing growing,
            Chance chance) {
        this.nursery = nursery;
        this.mothers = mothers;
        this.layering = layering;
        this.cutting = cutting;
        this.grafting = grafting;
        this.growing = growing;
        this.chance = chance;
    }

    /** Return all that was told, in the order of their days. */
    List<Story> told() {
        return stories;
    }

    private void tell(String what, Unit... about) {
        tell(what, Arrays.asList(about));
    }

    private void tell(String what, Collection<Unit> about) {
        stories.add(new Story(what, Nursery.tags(about)));
    }

    private void on(String day, Runnable work) {
        nursery.agenda.on(When.parse(day).first(), work);
    }

    private Unit buy(String day, Variety variety, double stemMm, Person supplier) {
        return mothers.buy(When.parse(day), variety, stemMm, Optional.of(supplier), Nursery.PLAIN);
    }

    /** Plan all of them. */
    void plan() {
        oldHistory();
        mislabelledMother();
        sport();
        reversion();
        badHormone();
        dampingOff();
        diseasedConsignment();
        lostLabel();
        mergedTrays();
        splitTray();
        motherDies();
        motherSold();
        crossedOut();
        corrected();
        retagged();
        returned();
        recounts();
        oddRings();
        woundBelow();
        nameTroubles();
        oddGrafts();
        usedUp();
        pottedPending();
        promisedTwice();
        silence();
        forgottenTray();
        divisions();
        elsewhereWood();
        openHold();
        erasedCustomer();
        withdrawn();
    }

    // ---- before the book ------------------------------------------------------------------------------------------

    private DayBook.Draft old(String when, EntryKind kind, List<Unit> about) {
        return nursery.book.on(When.parse(when), Optional.empty(), kind).tags(Nursery.tags(about));
    }

    private Unit begin(String letter, Unit.Nature nature, Unit mother) {
        Unit unit = nursery.unit(nature, nursery.nextTags(letter, 1).get(0), mother.variety);
        unit.mother = Optional.of(mother);
        unit.generation = mother.generation + 1;
        unit.vigour = mother.vigour;
        return unit;
    }

    /** Write down what was remembered when the book was begun: only what took, so that it counts in no rate. */
    private void oldHistory() {
        on("2003", () -> {
            Unit mother = mothers.giving(Variety.DESHOJO).get(0);
            List<Unit> layers = List.of(begin("L", Unit.Nature.LAYER, mother), begin("L", Unit.Nature.LAYER, mother));
            old("2003", EntryKind.LAYER_SET, layers)
                    .set("mother", mother.tag)
                    .set("set_unrecorded", "yes")
                    .write();
            old("2003", EntryKind.SEVERED, layers).write();
            layers.forEach(layer -> keepOld(layer, 34));
            on(
                    "2006-04",
                    () -> old("2006-04", EntryKind.PLANTED_OUT, layers)
                            .set("place", nursery.grounds.stockRows.get(2))
                            .write());
            tell("old layers known to the year only; those that did not take were never written down (2003)", layers);
        });
        on("2004", () -> {
            Unit mother = mothers.giving(Variety.ITOIGAWA).get(0);
            Unit tray = begin("T", Unit.Nature.BATCH, mother);
            old("2004", EntryKind.CUTTINGS_STRUCK, List.of(tray))
                    .set("mothers", mother.tag)
                    .set("count", 20)
                    .set("set_unrecorded", "yes")
                    .write();
            on("2005", () -> {
                Unit drawn = begin("P", Unit.Nature.PLANT, tray);
                old("2005", EntryKind.DRAWN, List.of(drawn))
                        .set("source", tray.tag)
                        .write();
                keepOld(drawn, 30);
                old("2005", EntryKind.CLOSED, List.of(tray))
                        .set("rest", Rest.NOT_SEEN)
                        .set("note", "nobody remembers how many there were")
                        .write();
            });
        });
        on("2002-02", () -> {
            Unit scion = mothers.giving(Variety.BENI_CHIDORI).get(0);
            Unit graft = begin("G", Unit.Nature.PLANT, scion);
            old("2002-02", EntryKind.GRAFT_WORKED, List.of(graft))
                    .set("scion", scion.tag)
                    .set("stock_cultivar", Variety.PRUNUS_MUME.cultivar())
                    .set("set_unrecorded", "yes")
                    .write();
            old("2002", EntryKind.TAKEN, List.of(graft))
                    .set("note", "remembered, not written down at the time")
                    .write();
            keepOld(graft, 33);
        });
    }

    private void keepOld(Unit unit, double stemMm) {
        unit.pending = 0;
        unit.growing = 1;
        unit.stemMm = stemMm;
        unit.heightMm = 1100;
        unit.stock = true;
        unit.inGround = true;
        mothers.enlist(unit);
    }

    // ---- identity -------------------------------------------------------------------------------------------------

    private boolean comesFrom(Unit unit, Unit mother) {
        for (Optional<Unit> up = unit.mother; up.isPresent(); up = up.get().mother) {
            if (up.get() == mother) {
                return true;
            }
        }
        return false;
    }

    private List<Unit> living(Unit mother) {
        return nursery.units().stream()
                .filter(unit -> !unit.isGone() && comesFrom(unit, mother) && unit.variety == mother.variety)
                .toList();
    }

    private void mislabelledMother() {
        Unit[] mother = new Unit[1];
        on("2009-03-24", () -> mother[0] = buy("2009-03-24", Variety.KISHU, 30, nursery.people.pepiniere));
        for (String day : List.of("2013-05-07", "2015-05-12", "2017-05-16")) {
            on(day, () -> layering.set(mother[0], 5));
        }
        for (String day : List.of("2014-08-12", "2016-08-16")) {
            on(day, () -> cutting.plan(tray(List.of(mother[0]), Wood.SEMI_RIPE, 40), Wood.SEMI_RIPE));
        }
        on("2019-05-20", () -> {
            List<Unit> found = new ArrayList<>(List.of(mother[0]));
            found.addAll(living(mother[0]));
            nursery.row(nursery.people.maire, EntryKind.REDETERMINED, found)
                    .set("cultivar", Variety.ITOIGAWA.cultivar())
                    .set(
                            "note",
                            "compared with the old plants leaf by leaf: never 'Kishu'; ten years under a wrong name")
                    .write();
            found.forEach(unit -> unit.variety = Variety.ITOIGAWA);
            mothers.enlist(mother[0]);
            tell(
                    "mislabelled mother: bought as 'Kishu' in 2009, layered and cut for years, found to be 'Itoigawa' in"
                            + " 2019; her offspring sold before then went out under the wrong name",
                    mother[0]);
        });
    }

    private Unit tray(List<Unit> from, Wood wood, int count) {
        return cutting.strike(from, wood, count, nursery.hand(People.Work.BENCH, chance), Nursery.PLAIN);
    }

    private Unit sport(Unit on, String branch, Optional<Variety> name, String note) {
        Unit sport = nursery.unit(Unit.Nature.SPORT, nursery.nextTags("B", 1).get(0), name.orElse(on.variety));
        sport.growing = 1;
        sport.mother = Optional.of(on);
        sport.stemMm = 20;
        sport.heightMm = 300;
        sport.place = on.place;
        nursery.row(nursery.people.maire, EntryKind.SPORT_FOUND, List.of(sport))
                .set("mother", on.tag)
                .set("branch", branch)
                .set("cultivar", name.map(Variety::cultivar))
                .set("note", note)
                .write();
        return sport;
    }

    private void sport() {
        Unit[] actors = new Unit[2];
        on(
                "1999-05-18",
                () -> actors[0] = mothers.enlist(buy("1999-05-18", Variety.ITOIGAWA, 36, nursery.people.kakuu)));
        on(
                "2014-06-10",
                () -> actors[1] = sport(
                        actors[0],
                        "second left branch",
                        Optional.empty(),
                        "tighter and bluer than the rest, like a wave"));
        on("2015-05-05", () -> layering.set(actors[1], 3));
        on("2016-05-11", () -> layering.set(actors[1], 2));
        on("2018-04-16", () -> {
            nursery.row(nursery.people.maire, EntryKind.CULTIVAR_LISTED)
                    .set("cultivar", Variety.SALLOWFIELD_TIDE.cultivar())
                    .set("make_up", Variety.SALLOWFIELD_TIDE.makeUp())
                    .set("right", "none")
                    .set("growth_mm", Variety.SALLOWFIELD_TIDE.growthMm())
                    .set("note", "sport of 'Itoigawa' found here in 2014; invented for this book")
                    .write();
            List<Unit> named = new ArrayList<>(List.of(actors[1]));
            named.addAll(living(actors[1]));
            nursery.row(nursery.people.maire, EntryKind.REDETERMINED, named)
                    .set("cultivar", Variety.SALLOWFIELD_TIDE.cultivar())
                    .write();
            named.forEach(unit -> unit.variety = Variety.SALLOWFIELD_TIDE);
            mothers.enlist(actors[1]);
            tell("a sport found on a branch in 2014, layered, and named 'Sallowfield Tide' in 2018", actors);
        });
        on("2019-05-14", () -> layering.set(actors[1], 2));
    }

    private void reversion() {
        on("2021-07-06", () -> {
            Unit on = mothers.giving(Variety.SEIJU).get(0);
            Unit sport = sport(
                    on,
                    "low on the back",
                    Optional.of(Variety.HOKKAIDO),
                    "gone back to 'Hokkaido', of which 'Seiju' is said to be a sport");
            tell("a branch of 'Seiju' gone back to 'Hokkaido', found in 2021 and layered in 2022", on, sport);
            on("2022-05-17", () -> layering.set(sport, 1));
        });
    }

    private void lostLabel() {
        Unit[] mother = new Unit[1];
        List<Unit> layers = new ArrayList<>();
        on(
                "2014-03-04",
                () -> mother[0] = mothers.enlist(buy("2014-03-04", Variety.KIYOHIME, 26, nursery.people.nergens)));
        on(
                "2016-05-04",
                () -> layers.addAll(
                        layering.set(mother[0], 4, nursery.people.cathal).layers()));
        on("2016-09-13", () -> {
            layering.sever(nursery.people.cathal, layers, Optional.of(Roots.FAIR), Remainder.KEPT, Nursery.PLAIN);
            growing.raise(layers.subList(2, 4), true);
        });
        on(
                "2016-09-19",
                () -> nursery.pot(
                        nursery.people.ruaidhri,
                        layers.subList(0, 2),
                        "1.5 L",
                        Purpose.POT_UP,
                        "bark and grit",
                        Optional.of(nursery.grounds.benches.get(4)),
                        Nursery.PLAIN));
        on(
                "2018-03-20",
                () -> nursery.pot(
                        nursery.people.ruaidhri,
                        layers.subList(0, 2),
                        "3 L",
                        Purpose.POT_ON,
                        "bark and grit",
                        Optional.of(nursery.grounds.standings.get(2)),
                        Nursery.PLAIN));
        on("2020-02-11", () -> {
            Tag tag = nursery.nextTags("F", 1).get(0);
            Unit found = nursery.unit(Unit.Nature.PLANT, tag, Variety.KIYOHIME);
            found.growing = 1;
            found.generation = layers.get(0).generation;
            found.container = "3 L";
            found.stemMm = 17;
            found.heightMm = 310;
            nursery.row(nursery.people.oksana, EntryKind.FOUND_UNTAGGED, List.of(found))
                    .set("candidates", layers.get(0).tag + " " + layers.get(1).tag)
                    .set("place", nursery.grounds.standings.get(2))
                    .set("note", "after the storm; one pot of two left, both labels gone")
                    .write();
            on(
                    "2020-03-02",
                    () -> nursery.lose(
                            nursery.people.oksana,
                            layers.subList(0, 2),
                            Cause.MISLAID,
                            draft -> draft.set("note", "one of them is the tree without a label, the other is gone")));
            on(
                    "2020-03-24",
                    () -> nursery.pot(
                            nursery.people.oksana,
                            List.of(found),
                            "5 L",
                            Purpose.POT_ON,
                            "akadama and pumice",
                            Optional.empty(),
                            Nursery.PLAIN));
            on(
                    "2021-10-05",
                    () -> nursery.grade(nursery.people.maire, List.of(found), "medium", "second", Nursery.PLAIN));
            on(
                    "2022-04-12",
                    () -> nursery.sell(
                            nursery.people.eabha,
                            List.of(found),
                            nursery.people.gardeners().get(11),
                            48,
                            Nursery.PLAIN));
            tell("a lost label: found untagged after a storm in 2020, one of two", found, layers.get(0), layers.get(1));
        });
    }

    private void retagged() {
        on("2019-11-12", () -> {
            Unit tree = aTree(Variety.CATLIN);
            Tag old = tree.tag;
            retag(tree, new Tag("Cré-7"), "label broken by the frost; crann den chéad scoth");
            stories.add(new Story("a tree with a new tag, in Irish, in 2019", List.of(old, tree.tag)));
        });
        on("2023-02-20", () -> {
            Unit tree = aTree(Variety.CHOJUBAI);
            Tag old = tree.tag;
            retag(tree, nursery.nextTags("P", 1).get(0), "名札が読めない");
            stories.add(new Story(
                    "another tree with a new tag in 2023; the old label could not be read", List.of(old, tree.tag)));
        });
    }

    private void retag(Unit tree, Tag tag, String note) {
        nursery.row(nursery.people.maire, EntryKind.RETAGGED, List.of(tree))
                .set("new_tag", tag)
                .set("note", note)
                .write();
        tree.tag = tag;
    }

    /** Return a young tree of that cultivar that stands about and is promised to nobody. */
    private Unit aTree(Variety variety) {
        return trees(variety, 1).get(0);
    }

    private List<Unit> trees(Variety variety, int count) {
        List<Unit> free = nursery.units().stream()
                .filter(unit -> unit.variety == variety
                        && unit.isStanding()
                        && !unit.stock
                        && !unit.held
                        && !unit.inGround
                        && !unit.container.isEmpty()
                        && unit.layersOn().isEmpty()
                        && unit.begun.isBefore(nursery.today().minusDays(150))
                        && unit.promisedTo.isEmpty())
                .toList();
        if (free.size() < count) {
            throw new IllegalStateException("not " + count + " of " + variety + " on " + nursery.today());
        }
        return free.subList(0, count);
    }

    private void nameTroubles() {
        // a supplier's spelling: unlisted, remarked on, put right
        on("2017-03-15", () -> {
            Unit mother =
                    nursery.unit(Unit.Nature.PLANT, nursery.nextTags("K", 1).get(0), Variety.DESHOJO);
            mother.growing = 1;
            mother.stemMm = 24;
            mother.heightMm = 700;
            mother.container = "10 L";
            mother.place = Optional.of(nursery.grounds.benches.get(2));
            Row row = nursery.row(nursery.people.eabha, EntryKind.ACQUIRED, List.of(mother))
                    .set("cultivar", "Acer palmatum 'Deshojyo'")
                    .set("supplier", nursery.people.maiVisto)
                    .set("consignment", "MV-0317")
                    .set("raised", Raised.GRAFT)
                    .mm("stem_mm", 24)
                    .set("height_mm", 700)
                    .set("container", "10 L")
                    .set("place", mother.place)
                    .set("passport", "MV-0317/4")
                    .write();
            on(
                    "2017-03-17",
                    () -> correct(
                            nursery.people.maire,
                            row,
                            List.of(),
                            "cultivar",
                            Variety.DESHOJO.cultivar(),
                            "spelling of the invoice"));
            on("2017-03-29", () -> nursery.keep(nursery.people.maire, List.of(mother), Nursery.PLAIN));
            mothers.enlist(mother);
            tell("a cultivar misspelt on the invoice, and corrected (2017)", mother);
        });
        // a bench that there is not
        on("2018-06-05", () -> {
            Unit tree = aTree(Variety.SEIJU);
            tree.place = Optional.of(nursery.grounds.benches.get(1));
            Row row = nursery.row(nursery.people.ruaidhri, EntryKind.MOVED, List.of(tree))
                    .set("place", "House 1 bnech 2")
                    .write();
            on(
                    "2018-06-06",
                    () -> correct(
                            nursery.people.ruaidhri,
                            row,
                            List.of(),
                            "place",
                            nursery.grounds.benches.get(1),
                            "slip of the pen"));
            tell("a place misspelt and corrected the day after (2018)", tree);
        });
        // another, which nobody has put right
        on("2021-06-08", () -> {
            Unit tree = aTree(Variety.CATLIN);
            nursery.move(nursery.people.ciaran, List.of(tree), new Place("Standing gruond 3"), Nursery.PLAIN);
            tell("a place misspelt that nobody has put right (2021)", tree);
        });
        // a tray under the wrong name
        on("2014-06-24", () -> {
            Unit mother = mothers.giving(Variety.SEIJU).get(0);
            Unit tray = cutting.strike(
                    List.of(mother),
                    Wood.SOFTWOOD,
                    40,
                    nursery.people.tadhg,
                    draft -> draft.set("cultivar", Variety.CATLIN.cultivar()));
            cutting.plan(tray, Wood.SOFTWOOD);
            tell("a tray labelled 'Catlin' by the trainee whose mother is a 'Seiju' (2014)", mother, tray);
        });
        // seed of a named clone sown under its name
        on("2015-11-03", () -> {
            Unit seed = mothers.giving(Variety.GOLDEN_HORNET).get(0);
            Unit pan = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("S", 1).get(0), Variety.MALUS_ZUMI);
            pan.pending = 40;
            pan.mother = Optional.of(seed);
            pan.place = Optional.of(nursery.grounds.frames.get(2));
            nursery.row(nursery.people.tadhg, EntryKind.SEED_SOWN, List.of(pan))
                    .set("count", 40)
                    .set("seed_parent", seed.tag)
                    .set("cultivar", Variety.GOLDEN_HORNET.cultivar())
                    .set("place", pan.place)
                    .set("container", "pan 30 cm")
                    .write();
            on("2016-04-26", () -> cutting.take(pan, nursery.people.tadhg, 23));
            on("2016-06-28", () -> cutting.fail(pan, nursery.people.tadhg, 17, Cause.NOT_GERMINATED));
            on("2017-03-07", () -> {
                List<Unit> seedlings = cutting.draw(nursery.people.oksana, pan, 9, Variety.MALUS_ZUMI, Nursery.PLAIN);
                on(
                        "2017-03-10",
                        () -> nursery.row(nursery.people.maire, EntryKind.REDETERMINED, seedlings)
                                .set("cultivar", Variety.MALUS_ZUMI.cultivar())
                                .set("note", "seedlings are no 'Golden Hornet'")
                                .write());
            });
            tell(
                    "seed of 'Golden Hornet' sown under the name of the clone by the trainee (2015); the seedlings renamed"
                            + " in 2017",
                    pan);
        });
        // root cuttings of a variegated elm
        on("2018-02-20", () -> {
            Unit mother = mothers.giving(Variety.FROSTY).get(0);
            Unit tray = tray(List.of(mother), Wood.ROOT, 24);
            on("2018-06-12", () -> cutting.check(tray));
            on("2018-09-18", () -> {
                int rooted = Math.max(6, Math.min(tray.rooting, tray.pending));
                List<Unit> green = cutting.draw(nursery.people.oksana, tray, rooted);
                if (tray.pending > 0) {
                    cutting.fail(tray, nursery.people.oksana, tray.pending, Cause.NO_ROOTS);
                }
                on("2019-05-28", () -> {
                    List<Unit> standing =
                            green.stream().filter(Unit::isStanding).toList();
                    nursery.row(nursery.people.maire, EntryKind.REDETERMINED, standing)
                            .set("cultivar", Variety.ULMUS_PARVIFOLIA.cultivar())
                            .set("note", "all came up plain green")
                            .write();
                    standing.forEach(plant -> plant.variety = Variety.ULMUS_PARVIFOLIA);
                });
            });
            tell("root cuttings of the variegated elm 'Frosty' (2018); all came up green", mother, tray);
        });
    }

    // ---- plant health ---------------------------------------------------------------------------------------------

    private void badHormone() {
        on("2016-11-28", () -> {
            List<Unit> burnt = nursery.units().stream()
                    .filter(unit -> unit.nature == Unit.Nature.LAYER
                            && unit.begun.getYear() == Layering.BAD_YEAR
                            && unit.isGone()
                            && unit.cause == Cause.HORMONE_BURN)
                    .toList();
            Unit first = burnt.get(0);
            nursery.row(
                            nursery.people.maire,
                            EntryKind.NOTED,
                            first.mother.stream().toList())
                    .set(
                            "note",
                            "the strong IBA of this spring had gone off: stems blackened above the ring, \"like a"
                                    + " burn\"; tin thrown out")
                    .write();
            tell(
                    "a bad hormone year: the strong IBA (0.8%, liquid) of 2016 burnt layers and cuttings; these layers"
                            + " among them",
                    burnt.subList(0, Math.min(6, burnt.size())));
        });
    }

    private void dampingOff() {
        on("2017-06-09", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.CATLIN).get(0)), Wood.SOFTWOOD, 104);
            on(
                    "2017-06-30",
                    () -> nursery.row(nursery.people.oksana, EntryKind.CHECKED, List.of(tray))
                            .set("findings", "nothing:41 dead:63")
                            .set("note", "grey fluff over half of the tray, mist left on over the weekend")
                            .write());
            on("2017-07-04", () -> cutting.fail(tray, nursery.people.oksana, 104, Cause.DAMPED_OFF));
            tell("a tray of 104 'Catlin' that damped off within four weeks (2017)", tray);
        });
    }

    private void diseasedConsignment() {
        List<Unit> trees = new ArrayList<>();
        on("2019-02-12", () -> {
            Place place = nursery.grounds.benches.get(5);
            for (Tag tag : nursery.nextTags("K", 24)) {
                Unit tree = nursery.unit(Unit.Nature.PLANT, tag, Variety.ARAKAWA);
                tree.growing = 1;
                tree.stemMm = 13 + 4 * chance.share();
                tree.heightMm = 420;
                tree.container = "1.5 L";
                tree.place = Optional.of(place);
                trees.add(tree);
            }
            nursery.row(nursery.people.maire, EntryKind.ACQUIRED, trees)
                    .set("cultivar", Variety.ARAKAWA.cultivar())
                    .set("supplier", nursery.people.maiVisto)
                    .set("consignment", "MV-0219")
                    .set("raised", Raised.GRAFT)
                    .set("born", "2016")
                    .set("container", "1.5 L")
                    .set("place", place)
                    .set("passport", "MV-0219/7")
                    .write();
        });
        on(
                "2019-03-26",
                () -> nursery.pot(
                        nursery.people.ruaidhri,
                        trees,
                        "3 L",
                        Purpose.POT_ON,
                        "bark and grit",
                        Optional.empty(),
                        Nursery.PLAIN));
        on("2019-05-07", () -> {
            nursery.grade(nursery.people.maire, trees.subList(0, 5), "medium", "first", Nursery.PLAIN);
            nursery.sell(
                    nursery.people.eabha,
                    trees.subList(0, 3),
                    nursery.people.trade().get(4),
                    34,
                    Nursery.PLAIN);
        });
        on(
                "2019-05-25",
                () -> nursery.sell(
                        nursery.people.eabha,
                        trees.subList(3, 5),
                        nursery.people.gardeners().get(7),
                        36,
                        Nursery.PLAIN));
        on("2019-06-18", () -> {
            List<Unit> there = trees.subList(5, 24);
            nursery.move(
                    nursery.people.oksana,
                    there,
                    nursery.grounds.quarantine,
                    draft -> draft.set("note", "own knife, own boots, foot bath at the gate"));
            nursery.hold(
                    nursery.people.maire,
                    there.subList(0, 18),
                    "dying back from the tips, dark streaks in the wood",
                    "P19-0144",
                    "the plant health office was told the same day");
        });
        on("2019-07-02", () -> nursery.lose(nursery.people.oksana, trees.subList(5, 8), Cause.DISEASE, Nursery.PLAIN));
        on(
                "2019-07-16",
                () -> nursery.cull(
                        nursery.people.maire,
                        trees.subList(8, 14),
                        CullReason.QUALITY,
                        draft -> draft.set("note", "burnt behind the tunnel")));
        on("2019-10-21", () -> {
            List<Unit> left = trees.subList(14, 24);
            nursery.clear(
                    nursery.people.maire,
                    left,
                    "second sample clean; the last pot of the row had been moved but never written down as held");
            growing.raise(left, true);
        });
        on("2019-10-29", () -> {
            nursery.move(
                    nursery.people.ruaidhri, trees.subList(14, 24), nursery.grounds.standings.get(0), Nursery.PLAIN);
            tell(
                    "a diseased consignment (MV-0219, 24 'Arakawa', 2019): five sold before anybody saw it, the rest held,"
                            + " three lost, six culled, ten cleared",
                    trees);
        });
    }

    private void openHold() {
        on("2026-10-12", () -> {
            List<Unit> trees = trees(Variety.BENI_CHIDORI, 3);
            nursery.hold(nursery.people.maire, trees, "rings on the leaves, odd for this late", "P26-0091", "");
            tell("held on the book's last day, the sample still away (2026)", trees);
        });
    }

    // ---- trays and batches ----------------------------------------------------------------------------------------

    private void mergedTrays() {
        on("2018-06-12", () -> {
            List<Unit> mothersOfIt = mothers.giving(Variety.CATLIN);
            Unit one = tray(List.of(mothersOfIt.get(0)), Wood.SOFTWOOD, 40);
            Unit other = tray(List.of(mothersOfIt.get(1)), Wood.SOFTWOOD, 30);
            on("2018-07-24", () -> {
                Unit both =
                        nursery.unit(Unit.Nature.BATCH, nursery.nextTags("T", 1).get(0), Variety.CATLIN);
                both.pending = one.pending + other.pending;
                both.rooting = one.rooting + other.rooting;
                both.generation = Math.max(one.generation, other.generation);
                both.mother = one.mother;
                one.pending = 0;
                other.pending = 0;
                both.place = Optional.of(nursery.grounds.secondMist);
                nursery.row(nursery.people.cathal, EntryKind.MERGED, List.of(both))
                        .set("sources", one.tag + " " + other.tag)
                        .set("place", both.place)
                        .set("container", "tray of 84")
                        .set("note", "bench wanted for maples; nobody kept the two apart")
                        .write();
                on("2018-08-28", () -> cutting.lift(both));
                tell("two trays merged (2018): each plant from it is of one mother or the other", one, other, both);
            });
        });
    }

    private void splitTray() {
        on("2019-06-11", () -> {
            List<Unit> mothersOfIt = mothers.giving(Variety.SEIJU);
            Unit tray = tray(mothersOfIt.subList(0, 2), Wood.SOFTWOOD, 84);
            on("2019-07-16", () -> {
                Unit part =
                        nursery.unit(Unit.Nature.BATCH, nursery.nextTags("T", 1).get(0), Variety.SEIJU);
                part.pending = 40;
                part.mother = tray.mother;
                part.generation = tray.generation;
                part.rooting = tray.rooting * 40 / 84;
                tray.pending -= 40;
                tray.rooting -= part.rooting;
                part.place = Optional.of(nursery.grounds.frames.get(0));
                nursery.row(nursery.people.oksana, EntryKind.SPLIT, List.of(part))
                        .set("source", tray.tag)
                        .set("count", 40)
                        .set("place", part.place)
                        .set("container", "tray of 60")
                        .set("note", "half into the cold frame, to see whether they want the mist")
                        .write();
                on("2019-09-10", () -> cutting.lift(tray));
                on("2019-09-11", () -> cutting.lift(part));
                tell("a tray split in two for a trial (2019)", tray, part);
            });
        });
    }

    private void recounts() {
        on("2015-08-20", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.NANA).get(0)), Wood.SEMI_RIPE, 60);
            on("2016-01-19", () -> {
                int missing = 9;
                tray.pending -= missing;
                tray.rooting = Math.min(tray.rooting, tray.pending);
                nursery.row(nursery.people.cathal, EntryKind.COUNTED, List.of(tray))
                        .set("count", tray.pending)
                        .set("reason", "mice had been in the tray")
                        .write();
            });
            on("2016-04-12", () -> cutting.lift(tray));
            tell("a recount: nine fewer than were struck, mice (2016)", tray);
        });
        on("2020-08-18", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.KISHU).get(0)), Wood.SEMI_RIPE, 30);
            on("2020-10-06", () -> {
                tray.pending += 2;
                nursery.row(nursery.people.hana, EntryKind.COUNTED, List.of(tray))
                        .set("count", tray.pending)
                        .set("reason", "two more than written on the label")
                        .set("note", "数え直した")
                        .write();
            });
            on("2021-04-20", () -> cutting.lift(tray));
            tell("a recount: two more than were written down (2020)", tray);
        });
        on("2017-02-28", () -> {
            Unit pan = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("S", 1).get(0), Variety.PINUS_THUNBERGII);
            pan.place = Optional.of(nursery.grounds.frames.get(1));
            nursery.row(nursery.people.cathal, EntryKind.SEED_SOWN, List.of(pan))
                    .set("grams", "12.5")
                    .set("cultivar", Variety.PINUS_THUNBERGII.cultivar())
                    .set("supplier", nursery.people.seed)
                    .set("consignment", "NS-1702")
                    .set("place", pan.place)
                    .set("container", "pan 30 cm")
                    .write();
            on("2017-06-20", () -> {
                pan.growing = 187;
                nursery.row(nursery.people.oksana, EntryKind.COUNTED, List.of(pan))
                        .set("count", 187)
                        .set("reason", "seedlings up")
                        .write();
            });
            on("2018-03-06", () -> {
                cutting.draw(nursery.people.oksana, pan, 12);
                grafting.addStock(cutting.young(nursery.people.oksana, pan, 60));
                cutting.sellOff(pan);
            });
            tell("seed sown by weight and counted when it was up (2017)", pan);
        });
    }

    private void pottedPending() {
        on("2014-06-17", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.SEIJU).get(1)), Wood.SOFTWOOD, 24);
            on("2014-09-09", () -> {
                tray.growing = tray.pending;
                tray.pending = 0;
                nursery.pot(
                        nursery.people.tadhg,
                        List.of(tray),
                        "7 cm",
                        Purpose.POT_UP,
                        "bark and grit",
                        Optional.of(nursery.grounds.benches.get(6)),
                        draft -> draft.set("note", "all 24, without knocking them out to look"));
                cutting.sellOff(tray);
            });
            tell("a whole tray potted without a look at the roots, by the trainee (2014)", tray);
        });
    }

    private void forgottenTray() {
        on("2024-07-02", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.GOBLIN).get(0)), Wood.SOFTWOOD, 60);
            on(
                    "2024-08-20",
                    () -> nursery.row(nursery.people.ciaran, EntryKind.CHECKED, List.of(tray))
                            .set("findings", "nothing:38 callus:22")
                            .set("note", "féach arís i gceann míosa")
                            .write());
            tell("a tray that nobody has looked at for two years (since August 2024)", tray);
        });
    }

    // ---- mothers and layers ---------------------------------------------------------------------------------------

    private void motherDies() {
        Unit[] mother = new Unit[1];
        List<Unit> layers = new ArrayList<>();
        on("2006-10-17", () -> mother[0] = buy("2006-10-17", Variety.SHISHIGASHIRA, 30, nursery.people.nergens));
        on("2014-05-06", () -> layering.set(mother[0], 5));
        on(
                "2018-05-08",
                () -> layers.addAll(
                        layering.set(mother[0], 6, nursery.people.oksana).layers()));
        on("2018-08-09", () -> {
            Hand oksana = nursery.people.oksana;
            layering.sever(oksana, layers.subList(0, 2), Optional.of(Roots.FEW), Remainder.REMOVED, Nursery.PLAIN);
            layering.fail(oksana, layers.subList(2, 5), Cause.MOTHER_LOST, Nursery.PLAIN);
            layering.fail(
                    oksana,
                    layers.subList(5, 6),
                    Cause.WITHDRAWN,
                    draft -> draft.set("note", "taken off green, only to see how far it had come"));
            nursery.lose(
                    oksana,
                    List.of(mother[0]),
                    Cause.HEAT,
                    draft -> draft.set("note", "the dry summer; hose did not reach the end of the row"));
            growing.raise(layers.subList(0, 2), true);
            tell(
                    "a mother that died in the dry summer of 2018 with six layers on: two saved, three failed with her, one"
                            + " withdrawn",
                    mother[0]);
            stories.add(new Story("her layers", Nursery.tags(layers)));
        });
    }

    private void motherSold() {
        Unit[] mother = new Unit[1];
        List<Unit> layers = new ArrayList<>();
        on("2007-11-06", () -> mother[0] = buy("2007-11-06", Variety.DESHOJO, 34, nursery.people.nergens));
        on("2016-05-17", () -> layering.set(mother[0], 5));
        on(
                "2020-05-12",
                () -> layers.addAll(
                        layering.set(mother[0], 5, nursery.people.hana).layers()));
        on("2020-09-15", () -> {
            layering.sever(
                    nursery.people.hana,
                    layers.subList(0, 4),
                    Optional.of(Roots.FULL),
                    Remainder.REMOVED,
                    Nursery.PLAIN);
            layering.fail(nursery.people.hana, layers.subList(4, 5), Cause.BROKEN, Nursery.PLAIN);
            growing.raise(layers.subList(0, 4), true);
        });
        on("2021-02-16", () -> {
            nursery.row(nursery.people.maire, EntryKind.RELEASED, List.of(mother[0]))
                    .set("from", ReleasedFrom.STOCK)
                    .set("note", "all her low branches have been layered away")
                    .write();
            mother[0].stock = false;
            nursery.lift(
                    nursery.people.ruaidhri,
                    List.of(mother[0]),
                    "wooden box 50 cm",
                    nursery.grounds.standings.get(3),
                    draft -> draft.set("note", "two men and the trolley"));
        });
        on("2021-04-20", () -> {
            mother[0].stemMm = 62;
            mother[0].heightMm = 1100;
            nursery.measure(nursery.people.maire, List.of(mother[0]));
            nursery.grade(nursery.people.maire, List.of(mother[0]), "specimen", "first", Nursery.PLAIN);
            nursery.sell(
                    nursery.people.eabha,
                    List.of(mother[0]),
                    nursery.people.trade().get(1),
                    480,
                    Nursery.PLAIN);
            tell("a mother sold after her last layers were off (2021)", mother[0]);
        });
    }

    private void usedUp() {
        Unit[] mother = new Unit[2];
        on("2004-04-20", () -> mother[0] = buy("2004-04-20", Variety.SAN_JOSE, 28, nursery.people.pepiniere));
        on("2012-05-22", () -> {
            Unit top =
                    layering.set(mother[0], 1, nursery.people.cathal).layers().get(0);
            on("2013-06-18", () -> {
                layering.sever(
                        nursery.people.cathal,
                        List.of(top),
                        Optional.of(Roots.FULL),
                        Remainder.USED_UP,
                        draft -> draft.set("note", "the stump thrown away"));
                mother[0].growing = 0;
                growing.raise(List.of(top), true);
            });
            tell("a mother used up: her whole top was the layer (2013)", mother[0], top);
        });
        on("2008-11-11", () -> mother[1] = buy("2008-11-11", Variety.CHOJUBAI, 14, nursery.people.liners));
        on("2019-03-12", () -> {
            List<Unit> parts = divide(mother[1], 4, Remainder.USED_UP);
            mother[1].growing = 0;
            tell("a mother divided until nothing was left of her (2019)", mother[1]);
            stories.add(new Story("her divisions", Nursery.tags(parts)));
        });
    }

    private List<Unit> divide(Unit mother, int count, Remainder remainder) {
        List<Unit> parts = new ArrayList<>();
        for (Tag tag : nursery.nextTags("D", count)) {
            Unit part = nursery.unit(Unit.Nature.PLANT, tag, mother.variety);
            part.growing = 1;
            part.mother = Optional.of(mother);
            part.generation = mother.generation + 1;
            part.vigour = mother.vigour;
            part.stemMm = 7 + 3 * chance.share();
            part.heightMm = 160;
            part.container = "1.5 L";
            part.place = Optional.of(nursery.grounds.benches.get(3));
            parts.add(part);
        }
        nursery.row(nursery.hand(People.Work.BENCH, chance), EntryKind.DIVIDED, parts)
                .set("mother", mother.tag)
                .set("remainder", remainder)
                .set("place", nursery.grounds.benches.get(3))
                .set("container", "1.5 L")
                .set("note", chance.happens(0.4) ? "suckers with roots of their own" : "")
                .write();
        growing.raise(parts, false);
        return parts;
    }

    private void divisions() {
        for (int year = 2012; year <= 2026; year++) {
            on(year + "-03-" + (10 + year % 7), () -> {
                if (chance.happens(0.75)) {
                    Unit mother = chance.of(mothers.giving(Variety.CHOJUBAI));
                    divide(
                            mother,
                            chance.between(3, 5),
                            chance.any(Remainder.KEPT, Remainder.KEPT, Remainder.CUT_BACK));
                }
            });
        }
    }

    private void elsewhereWood() {
        on("2017-08-08", () -> {
            Unit far = nursery.units().stream()
                    .filter(unit -> unit.variety == Variety.SAN_JOSE && unit.stemMm > 100)
                    .findFirst()
                    .orElseThrow();
            cutting.plan(tray(List.of(far), Wood.HEEL, 60), Wood.HEEL);
            tell("wood from a plant that stands elsewhere and is not the nursery's (2017)", far);
        });
        on("2016-03-02", () -> {
            // cuttings handed over the counter: no mother in the book
            Unit tray = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("T", 1).get(0), Variety.BONIN_ISLES);
            tray.pending = 20;
            tray.rooting = 13;
            nursery.row(nursery.people.cathal, EntryKind.CUTTINGS_STRUCK, List.of(tray))
                    .set("count", 20)
                    .set("cultivar", Variety.BONIN_ISLES.cultivar())
                    .set("wood", Wood.HARDWOOD)
                    .set("hormone", "NAA")
                    .set("strength", "2000 ppm")
                    .set("carrier", Carrier.GEL)
                    .set("medium", "perlite")
                    .set("place", nursery.grounds.frames.get(1))
                    .set("container", "tray of 60")
                    .set("note", "brought in by a customer, in a wet newspaper")
                    .write();
            cutting.plan(tray, Wood.HARDWOOD);
            tell("cuttings whose mother is not in the book (2016)", tray);
        });
    }

    private void oddRings() {
        on("2014-05-20", () -> {
            Unit mother = mothers.giving(Variety.MINO_YATSUBUSA).get(0);
            Unit narrow =
                    one(mother, 18, "9", Wound.FULL_RING, "branch over the path", "", "knife slipped, left as it is");
            Unit wide = one(mother, 10, "32", Wound.FULL_RING, "branch to the wall", "", "");
            tell("rings far from one stem diameter: 9 mm on an 18 mm stem, 32 mm on 10 mm (2014)", narrow, wide);
        });
        on("2022-05-24", () -> {
            Unit mother = mothers.giving(Variety.CATLIN).get(1);
            Unit wide = one(mother, 8, "24", Wound.FULL_RING, "branch over the path", "", "");
            tell("a ring of three stem diameters (2022)", wide);
        });
    }

    private Unit one(Unit mother, int stemMm, String ringMm, Wound wound, String branch, String below, String note) {
        Unit layer = nursery.unit(Unit.Nature.LAYER, nursery.nextTags("L", 1).get(0), mother.variety);
        layer.pending = 1;
        layer.mother = Optional.of(mother);
        layer.generation = mother.generation + 1;
        layer.vigour = mother.vigour;
        layer.stemMm = stemMm;
        layer.heightMm = 260;
        layer.takes = chance.happens(0.6);
        layer.cause = Cause.BARK_BRIDGED;
        layer.rootedOn = nursery.today().plusDays(80);
        layer.branch = branch;
        layer.woundMm = 400;
        mother.layers.add(layer);
        Hand by = nursery.hand(People.Work.BENCH, chance);
        nursery.row(by, EntryKind.LAYER_SET, List.of(layer))
                .set("mother", mother.tag)
                .set("branch", branch)
                .set("below", below)
                .set("height_mm", 400)
                .set("branch_order", 1)
                .set("stem_mm", stemMm)
                .set("ring_mm", ringMm)
                .set("wound", wound)
                .set("hormone", "IBA")
                .set("strength", "0.3%")
                .set("carrier", Carrier.POWDER)
                .set("medium", "sphagnum moss")
                .set("wrap", "black film")
                .set("note", note)
                .write();
        layering.plan(new Layering.Session(mother, by, List.of(layer), List.of()));
        return layer;
    }

    private void woundBelow() {
        on("2017-05-23", () -> {
            Unit mother = mothers.giving(Variety.ITOIGAWA).get(0);
            Unit upper = one(mother, 12, "14", Wound.FULL_RING, "branch to the gate", "", "");
            on("2017-06-13", () -> {
                Unit lower = one(
                        mother,
                        16,
                        "18",
                        Wound.FULL_RING,
                        "branch to the gate",
                        upper.tag.toString(),
                        "below the other one: it will starve it");
                tell("a layer set below another on the same branch while that was still on (2017)", upper, lower);
            });
        });
    }

    private void silence() {
        for (String day : List.of("2013-05-28", "2016-06-07", "2019-05-21", "2021-06-01", "2022-05-31", "2024-05-14")) {
            on(day, () -> {
                List<Unit> able = mothers.giving().stream()
                        .filter(mother -> mother.nature == Unit.Nature.PLANT && mother.stemMm >= 25)
                        .toList();
                List<Unit> layers = layering.set(
                                chance.of(able), chance.between(3, 5), nursery.hand(People.Work.BENCH, chance))
                        .layers();
                tell("layers about which nobody ever said another word (" + nursery.year() + ")", layers);
            });
        }
    }

    private void withdrawn() {
        on("2023-05-16", () -> {
            Unit mother = mothers.giving(Variety.GOLDEN_HORNET).get(0);
            List<Unit> layers = layering.set(mother, 3, nursery.people.oksana).layers();
            on("2023-06-20", () -> {
                layers.forEach(layer -> layer.pending = 0);
                nursery.row(nursery.people.maire, EntryKind.CULLED, layers)
                        .set("cull", CullReason.SURPLUS)
                        .set("note", "the order was withdrawn; off they came")
                        .write();
            });
            tell("layers taken off again as surplus before anybody could know (2023)", layers);
        });
    }

    private void oddGrafts() {
        // an approach graft on a single seedling
        on("2018-06-19", () -> {
            Unit stock = aTree(Variety.ACER_PALMATUM);
            Unit scion = mothers.giving(Variety.KIYOHIME).get(0);
            List<Unit> graft = grafting.work(
                    scion,
                    stock,
                    1,
                    GraftKind.APPROACH,
                    draft -> draft.set("note", "the two pots stand side by side until it holds"));
            tell("an approach graft on one seedling (2018)", stock, graft.get(0));
        });
        on("2020-03-17", () -> {
            Unit stock = aTree(Variety.ACER_BUERGERIANUM);
            Unit scion = mothers.giving(Variety.GOSHIKI_KAEDE).get(0);
            grafting.work(scion, stock, 1, GraftKind.THREAD, Nursery.PLAIN);
        });
        // a scion from a friend, on stocks that are not in the book either
        on("2015-02-24", () -> {
            Unit graft =
                    nursery.unit(Unit.Nature.PLANT, nursery.nextTags("G", 1).get(0), Variety.THUNDERHEAD);
            graft.pending = 1;
            nursery.row(nursery.people.cathal, EntryKind.GRAFT_WORKED, List.of(graft))
                    .set("cultivar", Variety.THUNDERHEAD.cultivar())
                    .set("stock_cultivar", Variety.PINUS_THUNBERGII.cultivar())
                    .set("graft", GraftKind.WHIP)
                    .set("place", nursery.grounds.graftCase)
                    .set("container", "9 cm")
                    .write();
            on("2015-05-12", () -> {
                graft.pending = 0;
                graft.growing = 1;
                graft.container = "9 cm";
                graft.stemMm = 8;
                nursery.row(nursery.people.cathal, EntryKind.TAKEN, List.of(graft))
                        .write();
                growing.raise(List.of(graft), false);
            });
            tell("a graft whose scion is not in the book (2015)", graft);
        });
        // a batch of bud grafts under one tag
        on("2020-08-11", () -> {
            Unit scion = mothers.giving(Variety.OMOI_NO_MAMA).get(0);
            Unit batch =
                    nursery.unit(Unit.Nature.BATCH, nursery.nextTags("G", 1).get(0), Variety.OMOI_NO_MAMA);
            batch.pending = 18;
            batch.rooting = 13;
            batch.mother = Optional.of(scion);
            batch.generation = scion.generation + 1;
            nursery.row(nursery.people.hana, EntryKind.GRAFT_WORKED, List.of(batch))
                    .set("count", 18)
                    .set("scion", scion.tag)
                    .set("stock_cultivar", Variety.PRUNUS_MUME.cultivar())
                    .set("cultivar", Variety.OMOI_NO_MAMA.cultivar())
                    .set("graft", GraftKind.BUD)
                    .set("place", nursery.grounds.frames.get(0))
                    .set("container", "9 cm")
                    .set("stock_age_years", 2)
                    .write();
            on("2020-09-22", () -> cutting.take(batch, nursery.people.hana, 13));
            on("2020-10-13", () -> cutting.fail(batch, nursery.people.hana, 5, Cause.UNION_FAILED));
            on("2021-03-09", () -> {
                cutting.draw(nursery.people.hana, batch, 8);
                cutting.sellOff(batch);
            });
            tell("eighteen bud grafts under one tag (2020)", batch);
        });
    }

    // ---- the book itself ------------------------------------------------------------------------------------------

    private void crossOut(Hand by, Row row, String reason) {
        nursery.row(by, EntryKind.CROSSED_OUT)
                .target(row)
                .set("reason", reason)
                .set("note", by == nursery.people.maire ? "told the trainee, no harm done" : "")
                .write();
    }

    private void correct(Hand by, Row row, List<Unit> of, String field, Object value, String reason) {
        DayBook.Draft draft = nursery.row(by, EntryKind.CORRECTED).target(row);
        if (!of.isEmpty()) {
            draft.tags(Nursery.tags(of));
        }
        draft.set("field", field).set("value", value).set("reason", reason).write();
    }

    private void crossedOut() {
        on("2015-11-17", () -> {
            Unit tree = aTree(Variety.DESHOJO);
            Row row = nursery.row(nursery.people.tadhg, EntryKind.LOST, List.of(tree))
                    .set("cause", Cause.FROST)
                    .write();
            on("2015-11-18", () -> crossOut(nursery.people.maire, row, "it was the next pot; this one is well"));
            tell("written down as lost and crossed out the day after (2015)", tree);
        });
        on("2017-10-10", () -> {
            Unit tree = aTree(Variety.ARAKAWA);
            Row row = nursery.row(nursery.people.eabha, EntryKind.SOLD, List.of(tree))
                    .set("customer", nursery.people.trade().get(2))
                    .set("price", "39.00 EUR")
                    .set("invoice", nursery.invoice())
                    .write();
            on("2017-10-11", () -> crossOut(nursery.people.eabha, row, "wrong tag read out at the counter"));
            tell("a sale crossed out: the wrong tag was read out (2017)", tree);
        });
        on("2019-05-08", () -> {
            Unit mother = mothers.giving(Variety.NANA).get(0);
            List<Tag> tags = nursery.nextTags("L", 3);
            Row row = nursery.row(nursery.people.oksana, EntryKind.LAYER_SET)
                    .tags(tags)
                    .set("mother", mother.tag)
                    .mm("stem_mm", 11)
                    .mm("ring_mm", 12)
                    .set("wound", Wound.FULL_RING)
                    .write();
            on("2019-05-09", () -> crossOut(nursery.people.oksana, row, "planned, but the rain came; nothing was set"));
            stories.add(new Story("layers written down and never set, crossed out (2019)", tags));
        });
    }

    private void corrected() {
        // one stem of several on a row
        on("2016-05-24", () -> {
            Unit mother = mothers.giving(Variety.ZELKOVA_SERRATA).get(0);
            Layering.Session session = layering.set(mother, 5);
            Row row = session.rows().get(0);
            Unit one = session.layers().get(0);
            on(
                    "2016-05-26",
                    () -> correct(
                            nursery.people.tadhg,
                            row,
                            List.of(one),
                            "stem_mm",
                            "19.5",
                            "measured again: this one is thicker"));
            tell("one layer of a row with another stem than the rest, corrected for it alone (2016)", one);
        });
        // the wrong mother for one layer of several
        on("2018-05-15", () -> {
            List<Unit> deshojos = mothers.giving(Variety.DESHOJO);
            Layering.Session session = layering.set(deshojos.get(0), 4);
            Row row = session.rows().get(session.rows().size() - 1);
            Unit last = session.layers().get(session.layers().size() - 1);
            Unit right = deshojos.get(1);
            on("2018-05-16", () -> {
                correct(
                        nursery.people.oksana,
                        row,
                        List.of(last),
                        "mother",
                        right.tag,
                        "the last one hangs on the plant beside it");
                deshojos.get(0).layers.remove(last);
                last.mother = Optional.of(right);
                right.layers.add(last);
            });
            tell(
                    "a layer written down on the wrong mother, corrected the day after (2018)",
                    last,
                    deshojos.get(0),
                    right);
        });
        // a price, and something that should not have been there at all
        on("2020-06-09", () -> {
            List<Unit> trees = trees(Variety.SEIJU, 2);
            Row row = nursery.sell(
                    nursery.people.eabha, trees, nursery.people.trade().get(7), 23, Nursery.PLAIN);
            on(
                    "2020-06-11",
                    () -> correct(nursery.people.eabha, row, List.of(), "price", "32.00 EUR", "figures turned round"));
            tell("a price with its figures turned round (2020)", trees);
        });
        on("2021-03-23", () -> {
            List<Unit> trees = trees(Variety.CATLIN, 3);
            Row row = nursery.pot(
                    nursery.people.ciaran,
                    trees,
                    "5 L",
                    Purpose.POT_ON,
                    "coir and perlite",
                    Optional.empty(),
                    Nursery.PLAIN);
            on(
                    "2021-03-24",
                    () -> nursery.row(nursery.people.maire, EntryKind.CORRECTED)
                            .target(row)
                            .set("field", "medium")
                            .set("reason", "nobody knows which bag it was")
                            .set("note", "value left empty on purpose")
                            .write());
            on(
                    "2021-03-25",
                    () -> correct(
                            nursery.people.ciaran,
                            row,
                            trees.subList(0, 1),
                            "container",
                            "3 L",
                            "the smallest of the three"));
            trees.get(0).container = "3 L";
            tell("a container corrected for one tree of three, and a medium taken back (2021)", trees);
        });
    }

    private void returned() {
        on("2018-09-25", () -> {
            Unit tree = aTree(Variety.NANA);
            Person customer = nursery.people.gardeners().get(20);
            nursery.sell(nursery.people.eabha, List.of(tree), customer, 42, Nursery.PLAIN);
            on("2018-10-16", () -> {
                tree.growing = 1;
                tree.place = Optional.of(nursery.grounds.standings.get(0));
                nursery.row(nursery.people.eabha, EntryKind.RETURNED, List.of(tree))
                        .set("customer", customer)
                        .set("reason", "a present that was not wanted")
                        .set("place", tree.place)
                        .write();
            });
            tell("a tree sold, returned and taken back into stock (2018)", tree);
        });
        on("2022-03-01", () -> {
            Unit tray = tray(List.of(mothers.giving(Variety.CHOJUBAI).get(0)), Wood.ROOT, 30);
            tray.rooting = 24;
            on("2022-08-23", () -> cutting.take(tray, nursery.people.oksana, 24));
            on("2022-08-30", () -> cutting.fail(tray, nursery.people.oksana, 6, Cause.ROTTED));
            Person customer = nursery.people.trade().get(9);
            on("2023-04-04", () -> cutting.sell(tray, 15, customer));
            on(
                    "2023-04-05",
                    () -> nursery.row(nursery.people.eabha, EntryKind.RELEASED, List.of(tray))
                            .set("from", ReleasedFrom.RESERVATION)
                            .set("note", "all fifteen fetched")
                            .write());
            on("2023-04-18", () -> {
                tray.growing += 4;
                nursery.row(nursery.people.eabha, EntryKind.RETURNED, List.of(tray))
                        .set("count", 4)
                        .set("customer", customer)
                        .set("reason", "four with slugs")
                        .set("note", "credited, with an apology")
                        .write();
                cutting.sellOff(tray);
            });
            // the trade also reserves by count
            on(
                    "2023-03-14",
                    () -> nursery.row(nursery.people.eabha, EntryKind.RESERVED, List.of(tray))
                            .set("count", 15)
                            .set("customer", customer)
                            .set("until", "2023-04")
                            .set("price", "4.50 EUR")
                            .set("note", "by telephone")
                            .write());
            tell("fifteen sold from a batch, four returned (2023)", tray);
        });
    }

    private void promisedTwice() {
        on("2023-09-19", () -> {
            Unit tree = aTree(Variety.ITOIGAWA);
            nursery.grade(nursery.people.maire, List.of(tree), "medium", "first", Nursery.PLAIN);
            tree.promisedTo = Optional.of(nursery.people.gardeners().get(14));
            on(
                    "2023-09-26",
                    () -> nursery.row(nursery.people.eabha, EntryKind.RESERVED, List.of(tree))
                            .set("customer", nursery.people.gardeners().get(14))
                            .set("until", "2023-12-20")
                            .write());
            on(
                    "2023-10-24",
                    () -> nursery.sell(
                            nursery.people.maire,
                            List.of(tree),
                            nursery.people.gardeners().get(30),
                            58,
                            Nursery.PLAIN));
            tell("sold to one customer while reserved for another (2023)", tree);
        });
    }

    private void erasedCustomer() {
        on("2021-05-29", () -> {
            List<Unit> trees = trees(Variety.SEIJU, 2);
            nursery.grade(nursery.people.maire, trees, "small", "first", Nursery.PLAIN);
            nursery.sell(nursery.people.eabha, trees, nursery.people.erased, 26, Nursery.PLAIN);
            tell("sold to somebody whose name has been erased since (2021)", trees);
        });
        on("2012-04-24", () -> {
            Unit lent = nursery.unit(Unit.Nature.PLANT, nursery.nextTags("K", 1).get(0), Variety.ZELKOVA_SERRATA);
            lent.growing = 1;
            lent.stemMm = 90;
            lent.stock = true;
            lent.inGround = true;
            nursery.row(nursery.people.maire, EntryKind.ACQUIRED, List.of(lent))
                    .set("cultivar", Variety.ZELKOVA_SERRATA.cultivar())
                    .set("ownership", Ownership.ELSEWHERE)
                    .set("raised", Raised.COLLECTED)
                    .set("note", "an crann mór i bpáirc na comharsan")
                    .write();
            mothers.enlist(lent);
            tell("a tree in a neighbour's field, not the nursery's: wood and seed may be taken (2012)", lent);
        });
    }
}
