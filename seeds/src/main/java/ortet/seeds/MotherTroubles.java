package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Carrier;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.GraftKind;
import ortet.entry.Ownership;
import ortet.entry.Raised;
import ortet.entry.ReleasedFrom;
import ortet.entry.Remainder;
import ortet.entry.Roots;
import ortet.entry.Wood;
import ortet.entry.Wound;
import ortet.plant.Tag;
import ortet.seeds.People.Hand;
import ortet.seeds.Troubles.Story;

/** What happened to mothers, and was done to them that is seldom done. */
final class MotherTroubles extends Trouble {
    MotherTroubles(Cast cast) {
        super(cast);
    }

    @Override
    void plan() {
        motherDies();
        motherSold();
        usedUp();
        divisions();
        elsewhereWood();
        neighboursTree();
        oddRings();
        woundBelow();
        silence();
        withdrawn();
        oddGrafts();
        belowTheUnion();
    }

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
            tell(new Story("her layers", Nursery.tags(layers)));
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
            tell(new Story("her divisions", Nursery.tags(parts)));
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

    private void neighboursTree() {
        on("2012-04-24", () -> {
            Unit lent = nursery.unit(Unit.Nature.PLANT, nursery.nextTags("K", 1).get(0), Variety.ZELKOVA_SERRATA);
            lent.growing = 1;
            lent.stemMm = 90;
            lent.stock = true;
            lent.inGround = true;
            nursery.row(nursery.people.maire, EntryKind.ACQUIRED, List.of(lent))
                    .set("cultivar", Variety.ZELKOVA_SERRATA.cultivar())
                    .set("ownership", Ownership.ELSEWHERE)
                    .set("raised", Raised.UNKNOWN)
                    .set("note", "an crann mór i bpáirc na comharsan")
                    .write();
            mothers.enlist(lent);
            tell("a tree in a neighbour's field, not the nursery's: wood and seed may be taken (2012)", lent);
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

    /** Shoots of the rootstock, kept instead of rubbed off: what comes of them is none of the scion's. */
    private void belowTheUnion() {
        on("2026-06-30", () -> {
            Unit mother = nursery.units().stream()
                    .filter(unit -> unit.stock && unit.isStanding() && !unit.held && unit.rootstock.isPresent())
                    .findFirst()
                    .orElseThrow();
            Unit layer = nursery.unit(
                    Unit.Nature.LAYER, nursery.nextTags("L", 1).get(0), mother.rootstock.orElseThrow().variety);
            layer.pending = 1;
            layer.mother = Optional.of(mother);
            mother.layers.add(layer);
            nursery.row(nursery.people.hana, EntryKind.LAYER_SET, List.of(layer))
                    .set("mother", mother.tag)
                    .set("branch", "shoot at the foot")
                    .set("height_mm", 60)
                    .set("below_union", "yes")
                    .set("stem_mm", 9)
                    .set("ring_mm", 10)
                    .set("wound", Wound.FULL_RING)
                    .set("medium", "sphagnum moss")
                    .set("wrap", "black film")
                    .write();
            on("2026-09-08", () -> {
                Unit tray = nursery.unit(
                        Unit.Nature.BATCH, nursery.nextTags("T", 1).get(0), mother.rootstock.orElseThrow().variety);
                tray.pending = 24;
                nursery.row(nursery.people.hana, EntryKind.CUTTINGS_STRUCK, List.of(tray))
                        .set("count", 24)
                        .set("mothers", mother.tag)
                        .set("wood", Wood.SEMI_RIPE)
                        .set("below_union", "yes")
                        .set("medium", "perlite")
                        .set("place", nursery.grounds.frames.get(1))
                        .set("container", "tray of 60")
                        .set("note", "shoots from below the union, for rootstocks")
                        .write();
                tell(
                        "a layer and a tray of cuttings from shoots below the union of a graft: of the rootstock's clone"
                                + " (2026)",
                        mother,
                        layer,
                        tray);
            });
        });
    }
}
