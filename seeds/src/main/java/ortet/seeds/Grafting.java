package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.GraftKind;
import ortet.entry.Raised;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;

/** Grafts: scions of the mothers on seedling stocks; where the union fails, the stock goes back to its batch. */
final class Grafting {
    private final Nursery nursery;
    private final Growing growing;
    private final Mothers mothers;
    private final Chance chance;
    private final List<Unit> stocks = new ArrayList<>();

    Grafting(Nursery nursery, Growing growing, Mothers mothers, Chance chance) {
        this.nursery = nursery;
        this.growing = growing;
        this.mothers = mothers;
        this.chance = chance;
    }

    /** Let a batch of seedlings be used as rootstocks. */
    void addStock(Unit batch) {
        stocks.add(batch);
    }

    /** Return a batch of rootstocks of that species with enough in it for an afternoon. */
    Optional<Unit> stock(Variety species) {
        return stocks.stream()
                .filter(batch -> batch.variety == species && batch.growing >= 6 && !batch.held)
                .findFirst();
    }

    /** Plan a year's grafts. */
    void year(int year) {
        nursery.later(LocalDate.of(year, 1, 14).plusDays(chance.between(0, 8)), () -> {
            provide(Variety.PINUS_THUNBERGII, 24, Raised.SEED);
            provide(Variety.ACER_PALMATUM, 24, Raised.SEED);
            provide(Variety.PRUNUS_MUME, 20, Raised.SEED);
        });
        plan(year, 2, 20, Variety.KOTOBUKI, Variety.THUNDERHEAD, GraftKind.SIDE_VENEER);
        plan(year, 2, 25, Variety.SHISHIGASHIRA, Variety.ARAKAWA, GraftKind.SIDE_VENEER);
        plan(year, 3, 6, Variety.BENI_CHIDORI, Variety.OMOI_NO_MAMA, GraftKind.CLEFT);
        if (chance.happens(0.6)) {
            plan(year, 8, 6, Variety.BENI_CHIDORI, Variety.BENI_CHIDORI, GraftKind.BUD);
        }
    }

    private void plan(int year, int month, int day, Variety one, Variety other, GraftKind kind) {
        nursery.later(LocalDate.of(year, month, day).plusDays(chance.between(0, 12)), () -> {
            List<Unit> scions = new ArrayList<>(mothers.giving(one));
            scions.addAll(mothers.giving(other));
            if (scions.isEmpty()) {
                return;
            }
            Unit scion = chance.of(scions);
            Optional<Unit> stock = stocks.stream()
                    .filter(batch ->
                            batch.variety == scion.variety.species().orElseThrow() && batch.growing >= 6 && !batch.held)
                    .findFirst();
            if (stock.isPresent()) {
                GraftKind how = chance.happens(0.7)
                        ? kind
                        : chance.any(GraftKind.WHIP, GraftKind.WHIP_AND_TONGUE, GraftKind.CLEFT, GraftKind.SADDLE);
                int count = Math.min(stock.get().growing, chance.between(7, 12));
                work(scion, stock.get(), count, how, Nursery.PLAIN);
            }
        });
    }

    private void provide(Variety species, int enough, Raised raised) {
        int there = stocks.stream()
                .filter(batch -> batch.variety == species)
                .mapToInt(batch -> batch.growing)
                .sum();
        if (there < enough) {
            Unit batch =
                    nursery.unit(Unit.Nature.BATCH, nursery.nextTags("R", 1).get(0), species);
            batch.growing = chance.any(40, 50, 60);
            batch.place = Optional.of(chance.of(nursery.grounds.frames));
            String consignment = "RS" + nursery.year() % 100 + "-" + chance.between(10, 99);
            nursery.row(nursery.people.maire, EntryKind.ACQUIRED, List.of(batch))
                    .set("count", batch.growing)
                    .set("cultivar", species.cultivar())
                    .set(
                            "supplier",
                            species == Variety.PINUS_THUNBERGII ? nursery.people.kakuu : nursery.people.nergens)
                    .set("consignment", consignment)
                    .set("raised", raised)
                    .set("born", nursery.year() - 2)
                    .set("container", "9 cm")
                    .set("place", batch.place)
                    .set("passport", consignment + "/B")
                    .set("note", "for rootstocks")
                    .write();
            stocks.add(batch);
        }
    }

    /** Work single grafts on stocks of a batch, and plan what follows. */
    List<Unit> work(Unit scion, Unit stock, int count, GraftKind kind, UnaryOperator<Draft> more) {
        Hand by = nursery.hand(Work.GRAFTS, chance);
        if (stock.nature == Unit.Nature.BATCH) {
            nursery.takeOut(stock, count);
        } else {
            stock.growing = 0;
        }
        double odds = Chance.logOdds(scion.variety.graft())
                + 0.4 * scion.vigour
                + 0.8 * by.skill()
                + 0.5 * chance.normal()
                + (kind == GraftKind.BUD ? 0.2 : 0);
        List<Unit> grafts = new ArrayList<>();
        for (Tag tag : nursery.nextTags("G", count)) {
            Unit graft = nursery.unit(Unit.Nature.PLANT, tag, scion.variety);
            graft.pending = 1;
            graft.mother = Optional.of(scion);
            graft.rootstock = Optional.of(stock);
            graft.generation = scion.generation + 1;
            graft.vigour = scion.vigour;
            graft.stemMm = 6 + 2 * chance.share();
            graft.heightMm = 150 + 80 * chance.share();
            graft.takes = chance.happens(Chance.probability(odds));
            graft.place = Optional.of(nursery.grounds.graftCase);
            graft.container = "9 cm";
            grafts.add(graft);
        }
        more.apply(nursery.row(by, EntryKind.GRAFT_WORKED, grafts)
                        .set("scion", scion.tag)
                        .set("stock", stock.tag)
                        .set("cultivar", scion.variety.cultivar())
                        .set("graft", kind)
                        .set("place", nursery.grounds.graftCase)
                        .set("container", "9 cm")
                        .set("stock_age_years", chance.happens(0.5) ? chance.between(2, 4) : ""))
                .write();
        int wait = kind == GraftKind.BUD ? 40 : 62;
        if (chance.happens(0.5)) {
            nursery.later(nursery.today().plusDays(wait / 2 + chance.between(0, 8)), () -> glance(grafts));
        }
        nursery.later(nursery.today().plusDays(wait + chance.between(0, 25)), () -> judge(grafts));
        return grafts;
    }

    private void glance(List<Unit> grafts) {
        List<Unit> on = grafts.stream().filter(graft -> graft.pending == 1).toList();
        List<Unit> callused = on.stream().filter(graft -> graft.takes).toList();
        if (!callused.isEmpty()) {
            nursery.row(nursery.hand(Work.GRAFTS, chance), EntryKind.CHECKED, callused)
                    .set("findings", "callus")
                    .set("note", chance.happens(0.2) ? "接ぎ木の活着良好" : "")
                    .write();
        }
        Optional<Unit> dead = on.stream().filter(graft -> !graft.takes).findFirst();
        if (dead.isPresent() && chance.happens(0.5)) {
            nursery.row(nursery.hand(Work.GRAFTS, chance), EntryKind.CHECKED, List.of(dead.get()))
                    .set("findings", "dead")
                    .write();
            fall(List.of(dead.get()));
        }
    }

    private static void fall(List<Unit> grafts) {
        grafts.forEach(graft -> {
            graft.pending = 0;
            graft.rootstock.ifPresent(stock -> stock.growing++);
        });
    }

    private void judge(List<Unit> grafts) {
        Hand by = nursery.hand(Work.GRAFTS, chance);
        List<Unit> on = grafts.stream().filter(graft -> graft.pending == 1).toList();
        List<Unit> taken = on.stream().filter(graft -> graft.takes).toList();
        List<Unit> failed = on.stream().filter(graft -> !graft.takes).toList();
        if (!failed.isEmpty()) {
            fall(failed);
            nursery.row(by, EntryKind.FAILED, failed)
                    .set("cause", chance.happens(0.85) ? Cause.UNION_FAILED : Cause.DRIED)
                    .write();
        }
        if (!taken.isEmpty()) {
            taken.forEach(graft -> {
                graft.pending = 0;
                graft.growing = 1;
            });
            nursery.row(by, EntryKind.TAKEN, taken).write();
            nursery.later(nursery.today().plusDays(chance.between(10, 30)), () -> {
                List<Unit> standing = taken.stream().filter(Unit::isStanding).toList();
                if (!standing.isEmpty()) {
                    nursery.move(
                            nursery.hand(Work.POTS, chance),
                            standing,
                            chance.of(nursery.grounds.benches),
                            Nursery.PLAIN);
                }
            });
            growing.raise(taken, false);
        }
    }
}
