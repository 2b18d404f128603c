package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.Remainder;
import ortet.entry.Rest;
import ortet.entry.Roots;
import ortet.entry.Wood;
import ortet.plant.Tag;
import ortet.seeds.Troubles.Story;

/** What was not what its label said, or lost its label: and what was found on old plants. */
final class NameTroubles extends Trouble {
    NameTroubles(Cast cast) {
        super(cast);
    }

    @Override
    void plan() {
        oldHistory();
        mislabelledMother();
        sport();
        reversion();
        lostLabel();
        retagged();
        wrongTray();
        clonalSeed();
        greenElms();
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
            tell(new Story("a tree with a new tag, in Irish, in 2019", List.of(old, tree.tag)));
        });
        on("2023-02-20", () -> {
            Unit tree = aTree(Variety.CHOJUBAI);
            Tag old = tree.tag;
            retag(tree, nursery.nextTags("P", 1).get(0), "名札が読めない");
            tell(new Story(
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

    /** A tray under the wrong name. */
    private void wrongTray() {
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
    }

    /** Seed of a named clone sown under its name. */
    private void clonalSeed() {
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
    }

    /** Root cuttings of a variegated elm. */
    private void greenElms() {
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
}
