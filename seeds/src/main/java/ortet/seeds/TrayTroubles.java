package ortet.seeds;

import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.Wood;

/** What happened to trays and pans: rot, mergers, mice and oblivion. */
final class TrayTroubles extends Trouble {
    TrayTroubles(Cast cast) {
        super(cast);
    }

    @Override
    void plan() {
        dampingOff();
        mergedTrays();
        splitTray();
        recounts();
        pottedPending();
        forgottenTray();
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
}
