package ortet.seeds;

import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.Raised;
import ortet.entry.ReleasedFrom;
import ortet.entry.Wood;
import ortet.entry.Wound;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Row;
import ortet.seeds.People.Hand;
import ortet.seeds.Troubles.Story;

/** What was written down wrongly, promised twice, sent back or taken out of sight. */
final class DeskTroubles extends Trouble {
    DeskTroubles(Cast cast) {
        super(cast);
    }

    @Override
    void plan() {
        misspeltCultivar();
        misspeltPlace();
        placeStillMisspelt();
        crossedOut();
        corrected();
        returned();
        promisedTwice();
        erasedCustomer();
    }

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
            tell(new Story("layers written down and never set, crossed out (2019)", tags));
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
                            DayBook.halves(one.stemMm + 1.5),
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
    }

    /** A name as the supplier spells it, put right. */
    private void misspeltCultivar() {
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
    }

    /** A bench that there is not. */
    private void misspeltPlace() {
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
    }

    /** Another bench that there is not, which nobody has put right. */
    private void placeStillMisspelt() {
        on("2021-06-08", () -> {
            Unit tree = trees(Variety.CATLIN, 4).get(3);
            nursery.move(nursery.people.ciaran, List.of(tree), new Place("Standing gruond 3"), Nursery.PLAIN);
            tell("a place misspelt that nobody has put right (2021)", tree);
        });
    }
}
