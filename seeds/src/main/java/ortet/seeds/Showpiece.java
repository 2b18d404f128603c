package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.GraftKind;
import ortet.entry.Purpose;
import ortet.entry.Remainder;
import ortet.entry.Rest;
import ortet.entry.Right;
import ortet.entry.Roots;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.People.Hand;
import ortet.value.When;

/**
 * The family of the tree that the demo traces: sold, from a layer of a mother who was herself grafted from the seedling
 * raised at Sallowfield that became Acer palmatum 'Sallan'.
 */
final class Showpiece {
    private final Nursery nursery;
    private final Mothers mothers;
    private final Layering layering;
    private final Grafting grafting;
    private final Growing growing;
    private final List<Unit> family = new ArrayList<>();
    private final List<Unit> grafts = new ArrayList<>();
    private final List<Unit> layers = new ArrayList<>();

    Showpiece(Nursery nursery, Mothers mothers, Layering layering, Grafting grafting, Growing growing) {
        this.nursery = nursery;
        this.mothers = mothers;
        this.layering = layering;
        this.grafting = grafting;
        this.growing = growing;
    }

    private void on(String day, Runnable work) {
        nursery.agenda.on(When.parse(day).first(), work);
    }

    private DayBook.Draft old(String when, EntryKind kind, List<Unit> about) {
        return nursery.book.on(When.parse(when), Optional.empty(), kind).tags(Nursery.tags(about));
    }

    private Unit ortet() {
        return family.get(0);
    }

    private Unit heir() {
        return grafts.get(1);
    }

    /** Return the tree, once the story has been told. */
    Unit tree() {
        return layers.get(2);
    }

    /** A layer from the same day as the tree, kept as a mother. */
    private Unit sister() {
        return layers.get(0);
    }

    /** Return everybody in the family, the seedling first. */
    List<Unit> told() {
        return List.of(ortet(), heir(), tree());
    }

    /** Plan the whole story. */
    void plan() {
        on("1990-04-02", this::parents);
        on("1996", this::seedlings);
        on(
                "1997",
                () -> old("1997", EntryKind.POTTED, family)
                        .set("container", "9 cm")
                        .set("purpose", Purpose.POT_UP)
                        .write());
        on("1999-04", () -> {
            old("1999-04", EntryKind.PLANTED_OUT, List.of(family.get(0), family.get(3)))
                    .set("place", nursery.grounds.stockRows.get(0))
                    .write();
            family.get(0).stemMm = 45;
            family.get(0).heightMm = 1600;
            family.get(3).stemMm = 40;
        });
        on("2003", () -> {
            old("2003", EntryKind.SOLD, List.of(family.get(1)))
                    .set("note", "to a visitor, no paper kept")
                    .write();
            family.get(1).growing = 0;
        });
        on(
                "2008",
                () -> old("2008", EntryKind.MEASURED, List.of(ortet()))
                        .mm("stem_mm", 41)
                        .set("height_mm", 1450)
                        .write());
        on("2009", () -> {
            old("2009", EntryKind.KEPT_AS_STOCK, List.of(ortet()))
                    .set("note", "lights up orange in May; worth a name")
                    .write();
            ortet().stock = true;
        });
        on("2010-12", () -> {
            old("2010-12", EntryKind.LOST, List.of(family.get(2)))
                    .set("cause", Cause.FROST)
                    .set("note", "an geimhreadh crua")
                    .write();
            family.get(2).growing = 0;
        });
        firstGeneration();
        secondGeneration();
        tradeLife();
        theLineGoesOn();
    }

    private void parents() {
        Optional<Person> supplier = Optional.of(nursery.people.nergens);
        When day = When.parse("1990-04-02");
        Unit seed = mothers.enlist(mothers.buy(day, Variety.DESHOJO, 36, supplier, Nursery.PLAIN));
        Unit pollen = mothers.enlist(mothers.buy(day, Variety.KATSURA, 33, supplier, Nursery.PLAIN));
        nursery.agenda.on(When.parse("1994").first(), () -> {
            Unit pan = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("S", 1).get(0), Variety.ACER_PALMATUM);
            pan.pending = 60;
            old("1994", EntryKind.SEED_SOWN, List.of(pan))
                    .set("count", 60)
                    .set("seed_parent", seed.tag)
                    .set("pollen_parent", pollen.tag)
                    .set("cultivar", Variety.ACER_PALMATUM.cultivar())
                    .set("set_unrecorded", "yes")
                    .set("note", "the first cross made at Sallowfield")
                    .write();
            family.add(pan);
        });
    }

    private void seedlings() {
        Unit pan = family.remove(0);
        List<Tag> tags = nursery.nextTags("P", 4);
        for (Tag tag : tags) {
            Unit seedling = nursery.unit(Unit.Nature.PLANT, tag, Variety.ACER_PALMATUM);
            seedling.growing = 1;
            seedling.mother = Optional.of(pan);
            family.add(seedling);
        }
        nursery.book
                .on(When.parse("1996"), Optional.empty(), EntryKind.DRAWN)
                .tags(tags)
                .set("source", pan.tag)
                .write();
        pan.pending = 0;
        old("1996", EntryKind.CLOSED, List.of(pan)).set("rest", Rest.FAILED).write();
    }

    private void firstGeneration() {
        on("2012-03-06", () -> {
            Unit stock = grafting.stock(Variety.ACER_PALMATUM).orElseThrow();
            grafts.addAll(grafting.work(
                    ortet(),
                    stock,
                    4,
                    GraftKind.SIDE_VENEER,
                    draft -> draft.set("note", "the orange seedling, to see whether it can be kept")));
            for (Unit graft : grafts) {
                graft.takes = graft != grafts.get(3);
            }
            // looked after one by one, not with the others of its kind
            heir().stock = true;
            mothers.enlist(ortet());
        });
        on(
                "2012-06-12",
                () -> nursery.pot(
                        nursery.people.ruaidhri,
                        List.of(heir()),
                        "3 L",
                        Purpose.POT_UP,
                        "bark and grit",
                        Optional.of(nursery.grounds.frames.get(0)),
                        Nursery.PLAIN));
        on("2013-11-04", () -> {
            list(2013, Right.NONE);
            List<Unit> named = new ArrayList<>(List.of(ortet()));
            grafts.stream().filter(Unit::isStanding).forEach(named::add);
            // whatever else the programme has set on the ortet by now
            nursery.units().stream()
                    .filter(unit ->
                            unit.mother.equals(Optional.of(ortet())) && !grafts.contains(unit) && !unit.isGone())
                    .forEach(named::add);
            named.forEach(unit -> unit.variety = Variety.SALLAN);
            nursery.row(nursery.people.maire, EntryKind.REDETERMINED, named)
                    .set("cultivar", Variety.SALLAN.cultivar())
                    .set("note", "named today")
                    .write();
        });
        on("2014-03-11", () -> {
            Place row = mothers.nextRow();
            nursery.plantOut(nursery.people.ruaidhri, List.of(heir()), row, Nursery.PLAIN);
            nursery.keep(
                    nursery.people.maire,
                    List.of(heir()),
                    draft -> draft.set("note", "best of the four grafts, and true to the seedling"));
        });
        on(
                "2016-02-16",
                () -> nursery.row(nursery.people.maire, EntryKind.LEFT_LONG, List.of(heir()))
                        .set("note", "lower branches all of them")
                        .write());
        on("2019-05-02", () -> list(2019, Right.PROTECTED));
    }

    /** List 'Sallan', first as found, later with its breeder's right. */
    private void list(int year, Right right) {
        DayBook.Draft draft = nursery.row(nursery.people.maire, EntryKind.CULTIVAR_LISTED)
                .set("cultivar", Variety.SALLAN.cultivar())
                .set("make_up", Variety.SALLAN.makeUp())
                .set("growth_mm", Variety.SALLAN.growthMm())
                .set("right", right);
        if (year == 2019) {
            draft.set("trade_designation", "Sallowfield Lantern")
                    .set("protected_until", "2049-12-31")
                    .set("licence", "our own right")
                    .set("note", "invented for this book, like the nursery");
        }
        draft.write();
    }

    private void secondGeneration() {
        Hand oksana = nursery.people.oksana;
        on("2017-05-09", () -> {
            heir().stemMm = 38;
            heir().heightMm = 1500;
            layers.addAll(layering.set(heir(), 5, oksana).layers());
            mothers.enlist(heir());
        });
        on(
                "2017-06-27",
                () -> nursery.row(oksana, EntryKind.CHECKED, layers)
                        .set("findings", "callus")
                        .write());
        on(
                "2017-08-08",
                () -> nursery.row(oksana, EntryKind.CHECKED, layers.subList(0, 4))
                        .set("findings", "roots-showing")
                        .set("note", "white roots all round, the fifth shows none")
                        .write());
        on("2017-09-05", () -> {
            layering.sever(oksana, layers.subList(0, 4), Optional.of(Roots.FULL), Remainder.CUT_BACK, draft -> draft);
            layering.fail(oksana, layers.subList(4, 5), Cause.NO_ROOTS, Nursery.PLAIN);
            List<Unit> others = new ArrayList<>(layers.subList(0, 4));
            others.remove(tree());
            others.remove(sister());
            growing.raise(others, true);
            sister().stock = true;
            tree().stemMm = 18;
            tree().heightMm = 340;
        });
    }

    private void theLineGoesOn() {
        on(
                "2017-09-12",
                () -> nursery.pot(
                        nursery.people.ruaidhri,
                        List.of(sister()),
                        "1.5 L",
                        Purpose.POT_UP,
                        "pumice and bark",
                        Optional.empty(),
                        Nursery.PLAIN));
        on("2019-03-19", () -> keep(sister(), 22, "vigorous; as mother for the next ten years"));
        List<Unit> next = new ArrayList<>();
        on("2021-05-11", () -> {
            Layering.Session session = layering.set(sister(), 5, nursery.people.hana);
            session.layers().get(0).takes = true;
            session.layers().get(0).rootedOn = nursery.today().plusDays(80);
            session.layers().get(0).stock = true;
            next.add(session.layers().get(0));
            layering.plan(session);
        });
        on("2023-03-14", () -> keep(next.get(0), 21, "fifth in the line from the seed of 1994"));
        on("2025-05-13", () -> layering.set(next.get(0), 4));
    }

    private void keep(Unit mother, double stemMm, String note) {
        mother.stemMm = stemMm;
        mother.heightMm = 900;
        nursery.plantOut(nursery.people.maire, List.of(mother), mothers.nextRow(), draft -> draft.set("note", note));
        nursery.keep(nursery.people.maire, List.of(mother), Nursery.PLAIN);
        mothers.enlist(mother);
    }

    private void tradeLife() {
        Hand pots = nursery.people.ruaidhri;
        Grounds grounds = nursery.grounds;
        on("2017-09-08", () -> pot(pots, "3 L", Purpose.POT_UP, "pumice and bark", grounds.benches.get(1)));
        on("2017-11-14", () -> move(pots, grounds.benches.get(0)));
        on("2018-05-10", () -> move(pots, grounds.standings.get(1)));
        on("2019-03-12", () -> pot(pots, "5 L", Purpose.POT_ON, "pumice and bark", grounds.standings.get(1)));
        on("2020-10-06", () -> measure(pots, 24.5, 430));
        on("2021-03-09", () -> pot(pots, "10 L", Purpose.POT_ON, "akadama and pumice", grounds.bays.get(2)));
        on("2021-05-18", () -> move(pots, grounds.standings.get(3)));
        on("2022-10-04", () -> {
            measure(nursery.people.ciaran, 29, 470);
            nursery.grade(
                    nursery.people.maire,
                    List.of(tree()),
                    "large",
                    "first",
                    draft -> draft.set("note", "the best of its lot"));
        });
        on(
                "2024-03-05",
                () -> nursery.pot(
                        nursery.people.maire,
                        List.of(tree()),
                        "oval pot 34 cm",
                        Purpose.BONSAI_POT,
                        "akadama and pumice",
                        Optional.empty(),
                        Nursery.PLAIN));
        on("2025-03-22", () -> {
            measure(nursery.people.ciaran, 33.5, 450);
            move(nursery.people.ciaran, grounds.shop);
        });
        Person customer = nursery.people.gardeners().get(3);
        on(
                "2025-03-24",
                () -> nursery.row(nursery.people.eabha, EntryKind.RESERVED, List.of(tree()))
                        .set("customer", customer)
                        .set("until", "2025-05-31")
                        .set("price", "240.00 EUR")
                        .write());
        on(
                "2025-05-10",
                () -> nursery.sell(
                        nursery.people.eabha,
                        List.of(tree()),
                        customer,
                        240,
                        draft -> draft.set("passport", "SF25-118").set("note", "sent by carrier, so with a passport")));
    }

    private void pot(Hand by, String container, Purpose purpose, String medium, Place place) {
        nursery.pot(by, List.of(tree()), container, purpose, medium, Optional.of(place), Nursery.PLAIN);
    }

    private void move(Hand by, Place place) {
        nursery.move(by, List.of(tree()), place, Nursery.PLAIN);
    }

    private void measure(Hand by, double stemMm, int heightMm) {
        tree().stemMm = stemMm;
        tree().heightMm = heightMm;
        nursery.measure(by, List.of(tree()));
    }
}
