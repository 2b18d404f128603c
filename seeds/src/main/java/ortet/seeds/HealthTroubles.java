package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.Raised;
import ortet.plant.Place;
import ortet.plant.Tag;

/** What was burnt, sick or feared to be. */
final class HealthTroubles extends Trouble {
    HealthTroubles(Cast cast) {
        super(cast);
    }

    @Override
    void plan() {
        badHormone();
        diseasedConsignment();
        openHold();
    }

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
}
