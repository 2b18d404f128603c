package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import ortet.entry.Carrier;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.Rest;
import ortet.entry.Wood;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;

/** Trays of cuttings: struck, looked at, lifted, drawn; and the batches of young plants that come of them. */
final class Cutting {
    private final Nursery nursery;
    private final Growing growing;
    private final Mothers mothers;
    private final Chance chance;

    Cutting(Nursery nursery, Growing growing, Mothers mothers, Chance chance) {
        this.nursery = nursery;
        this.growing = growing;
        this.mothers = mothers;
        this.chance = chance;
    }

    /** Plan a year's trays. */
    void year(int year) {
        trays(year, Wood.ROOT, 2, 15, 1, 1);
        trays(year, Wood.HARDWOOD, 1, 20, 1, 2);
        trays(year, Wood.SOFTWOOD, 6, 1, 3, 5);
        trays(year, Wood.LEAF_BUD, 6, 20, 0, 1);
        trays(year, Wood.SEMI_RIPE, 8, 1, 3, 4);
        trays(year, Wood.HEEL, 8, 20, 0, 1);
    }

    private void trays(int year, Wood wood, int month, int day, int least, int most) {
        int count = chance.between(least, most);
        for (int more = 0; more < count; more++) {
            nursery.later(LocalDate.of(year, month, day).plusDays(chance.between(0, 24)), () -> strike(wood));
        }
    }

    private void strike(Wood wood) {
        double least = wood == Wood.HARDWOOD ? 0.05 : 0.2;
        List<Unit> able = mothers.giving().stream()
                .filter(mother -> mother.nature != Unit.Nature.SPORT && mother.variety.cutting(wood) >= least)
                // a variegated plant is not raised from its roots: they do not carry the variegation
                .filter(mother -> wood != Wood.ROOT
                        || mother.variety != Variety.FROSTY && mother.variety != Variety.GOSHIKI_KAEDE)
                .toList();
        if (able.isEmpty()) {
            return;
        }
        Unit first = chance.of(able);
        List<Unit> from = new ArrayList<>(List.of(first));
        for (Unit other : chance.shuffled(mothers.giving(first.variety))) {
            if (from.size() < 3 && !from.contains(other) && chance.happens(0.3)) {
                from.add(other);
            }
        }
        int count = wood == Wood.ROOT ? chance.any(20, 24, 30) : chance.any(20, 24, 30, 40, 60, 60, 84, 104);
        Unit tray = strike(from, wood, count, nursery.hand(Work.BENCH, chance), Nursery.PLAIN);
        plan(tray, wood);
    }

    /** Strike a tray, and leave what follows to whoever asked. */
    Unit strike(List<Unit> from, Wood wood, int count, Hand by, UnaryOperator<Draft> more) {
        Variety variety = from.get(0).variety;
        Unit tray = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("T", 1).get(0), variety);
        tray.pending = count;
        tray.mother = Optional.of(from.get(0));
        tray.generation = from.get(0).generation + 1;
        boolean known = from.size() == 1 ? chance.happens(0.5) : chance.happens(0.7);
        StringBuilder shares = new StringBuilder();
        String dip = chance.any("none", "mild", "mild", "strong");
        double tend = by.skill() * 0.6 + 0.35 * chance.normal() + (dip.equals("none") ? -0.35 : 0.1);
        if (nursery.year() == Layering.BAD_YEAR && dip.equals("strong")) {
            tend -= 2.2;
        }
        int rooted = 0;
        for (int at = 0; at < from.size(); at++) {
            int here = count / from.size() + (at < count % from.size() ? 1 : 0);
            Unit mother = from.get(at);
            double rate = mother.variety.cutting(wood);
            rooted += chance.successes(here, Chance.probability(Chance.logOdds(rate) + tend + 0.5 * mother.vigour));
            shares.append(at == 0 ? "" : " ").append(mother.tag).append(known ? ":" + here : "");
        }
        tray.rooting = rooted;
        Place place = wood == Wood.HARDWOOD
                ? chance.of(nursery.grounds.frames)
                : nursery.year() >= 2014 && chance.happens(0.5) ? nursery.grounds.secondMist : nursery.grounds.mist;
        tray.place = Optional.of(place);
        tray.container = "tray of " + (count > 84 ? 104 : count > 60 ? 84 : 60);
        boolean heated = place == nursery.grounds.mist && chance.happens(0.6);
        more.apply(nursery.row(by, EntryKind.CUTTINGS_STRUCK, List.of(tray))
                        .set("mothers", shares)
                        .set("count", count)
                        .set("wood", wood)
                        .set("hormone", dip.equals("none") ? "" : "IBA")
                        .set("strength", dip.equals("none") ? "" : dip.equals("mild") ? "0.3%" : "0.8%")
                        .set("carrier", dip.equals("none") ? "" : dip.equals("mild") ? Carrier.POWDER : Carrier.LIQUID)
                        .set("medium", chance.any("peat-free mix and perlite", "perlite", "pumice", "coir and perlite"))
                        .set("heat_c", heated ? chance.any("18", "20", "21.5") : "")
                        .set("place", place)
                        .set("container", tray.container)
                        .set("stock_age_years", chance.happens(0.3) ? chance.between(4, 20) : "")
                        .set("hedged", chance.happens(0.2) ? "yes" : ""))
                .write();
        return tray;
    }

    /** Plan what follows for a tray. */
    void plan(Unit tray, Wood wood) {
        LocalDate struck = nursery.today();
        int wait = switch (wood) {
            case SOFTWOOD, LEAF_BUD -> 36;
            case SEMI_RIPE, HEEL -> 52;
            case HARDWOOD, ROOT -> 95;
        };
        if (chance.happens(0.8)) {
            nursery.later(struck.plusDays(wait + chance.between(0, 16)), () -> check(tray));
        }
        LocalDate lift = struck.plusDays(wait * 2L + chance.between(0, 40));
        // nobody lifts in the dark of the year
        if (lift.getMonthValue() >= 11 || lift.getMonthValue() <= 2) {
            lift = LocalDate.of(lift.getMonthValue() >= 11 ? lift.getYear() + 1 : lift.getYear(), 3, 4)
                    .plusDays(chance.between(0, 30));
        }
        nursery.later(lift, () -> lift(tray));
    }

    /** Look into a tray, and take out what is dead. */
    void check(Unit tray) {
        if (tray.pending == 0) {
            return;
        }
        int rooted = tray.rooting;
        Hand by = nursery.hand(Work.BENCH, chance);
        int showing = (int) StrictMath.round(rooted * (0.4 + 0.5 * chance.share()));
        int dead = Math.min(tray.pending - rooted, chance.between(0, 1 + tray.pending / 8));
        int callus = Math.max(0, (tray.pending - showing - dead) / 2);
        int nothing = tray.pending - showing - dead - callus;
        StringBuilder findings = new StringBuilder();
        finding(findings, "nothing", nothing);
        finding(findings, "callus", callus);
        finding(findings, "roots-showing", showing);
        finding(findings, "dead", dead);
        nursery.row(by, EntryKind.CHECKED, List.of(tray))
                .set("findings", findings)
                .write();
        if (dead > 0 && chance.happens(0.7)) {
            fail(tray, by, dead, chance.any(Cause.DRIED, Cause.ROTTED, Cause.DAMPED_OFF));
        }
    }

    private static void finding(StringBuilder findings, String word, int count) {
        if (count > 0) {
            findings.append(findings.length() > 0 ? " " : "")
                    .append(word)
                    .append(':')
                    .append(count);
        }
    }

    void fail(Unit tray, Hand by, int count, Cause cause) {
        tray.pending -= count;
        nursery.row(by, EntryKind.FAILED, List.of(tray))
                .set("count", tray.pending == 0 && chance.happens(0.6) ? "" : count)
                .set("cause", cause)
                .write();
    }

    /** Lift a tray: tell what has rooted from what has not, and draw the best. */
    void lift(Unit tray) {
        if (tray.pending == 0) {
            return;
        }
        int rooted = Math.min(tray.rooting, tray.pending);
        Hand by = nursery.hand(Work.BENCH, chance);
        double way = chance.share();
        int apart = Math.min(rooted, chance.between(4, 9));
        if (way < 0.55) {
            draw(by, tray, apart);
            int left = rooted - apart;
            if (left >= 6) {
                young(by, tray, left);
                left = 0;
            }
            if (left > 0) {
                draw(by, tray, left);
            }
            if (tray.pending > 0) {
                fail(tray, by, tray.pending, Cause.NO_ROOTS);
            }
        } else if (way < 0.88) {
            if (rooted > 0) {
                take(tray, by, rooted);
            }
            if (tray.pending > 0) {
                tray.pending = 0;
                nursery.row(by, EntryKind.CLOSED, List.of(tray))
                        .set("rest", Rest.FAILED)
                        .set("cause", chance.any(Cause.NO_ROOTS, Cause.ROTTED))
                        .write();
            }
            if (apart > 0) {
                nursery.later(nursery.today().plusDays(chance.between(15, 45)), () -> {
                    draw(nursery.hand(Work.BENCH, chance), tray, Math.min(apart, tray.growing));
                    sellOff(tray);
                });
            }
        } else {
            draw(by, tray, apart);
            int left = rooted - apart;
            nursery.later(nursery.today().plusDays(chance.between(40, 80)), () -> {
                Hand later = nursery.hand(Work.BENCH, chance);
                if (left > 0 && tray.pending >= left) {
                    draw(later, tray, Math.min(left, 10));
                }
                if (tray.pending > 0) {
                    tray.pending = 0;
                    nursery.row(later, EntryKind.CLOSED, List.of(tray))
                            .set("rest", chance.happens(0.75) ? Rest.FAILED : Rest.NOT_SEEN)
                            .write();
                }
            });
        }
    }

    void take(Unit tray, Hand by, int count) {
        boolean all = count == tray.pending;
        tray.pending -= count;
        tray.growing += count;
        nursery.row(by, EntryKind.TAKEN, List.of(tray))
                .set("count", all && chance.happens(0.4) ? "" : count)
                .write();
    }

    private static void leave(Unit batch, int count) {
        int grown = Math.min(batch.growing, count);
        batch.growing -= grown;
        batch.pending -= count - grown;
        if (batch.pending < 0) {
            throw new IllegalStateException("too many out of " + batch);
        }
    }

    /** Draw plants from a batch, each under its own tag, and grow them on. */
    List<Unit> draw(Hand by, Unit batch, int count) {
        return draw(by, batch, count, batch.variety, Nursery.PLAIN);
    }

    List<Unit> draw(Hand by, Unit batch, int count, Variety variety, UnaryOperator<Draft> more) {
        if (count == 0) {
            return List.of();
        }
        leave(batch, count);
        List<Unit> plants = new ArrayList<>();
        for (Tag tag : nursery.nextTags("P", count)) {
            Unit plant = nursery.unit(Unit.Nature.PLANT, tag, variety);
            plant.growing = 1;
            plant.mother = Optional.of(batch);
            plant.generation = batch.generation;
            plant.vigour = batch.mother.map(mother -> mother.vigour).orElse(0.0);
            plant.stemMm = 3 + 1.5 * chance.share();
            plant.heightMm = 80 + 60 * chance.share();
            plant.container = "9 cm";
            plants.add(plant);
        }
        Place place = chance.of(nursery.grounds.benches);
        plants.forEach(plant -> plant.place = Optional.of(place));
        boolean potted = chance.happens(0.8);
        plants.forEach(plant -> plant.container = potted ? "9 cm" : "");
        more.apply(nursery.row(by, EntryKind.DRAWN, plants)
                        .set("source", batch.tag)
                        .set("note", chance.happens(0.04) ? "the best of the tray" : "")
                        .set("place", place)
                        .set("container", potted ? "9 cm" : ""))
                .write();
        growing.raise(plants, false);
        return plants;
    }

    /** Draw a batch of young plants out of a tray. */
    Unit young(Hand by, Unit tray, int count) {
        leave(tray, count);
        Unit batch = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("Y", 1).get(0), tray.variety);
        batch.growing = count;
        batch.mother = tray.mother;
        batch.generation = tray.generation;
        batch.place = Optional.of(chance.of(nursery.grounds.benches));
        nursery.row(by, EntryKind.DRAWN, List.of(batch))
                .set("source", tray.tag)
                .set("count", count)
                .set("place", batch.place)
                .set("container", "7 cm")
                .write();
        sellOff(batch);
        return batch;
    }

    /** Let a batch of young plants go over the next two years, by count. */
    void sellOff(Unit batch) {
        LocalDate day = nursery.today().plusDays(chance.between(60, 160));
        for (int more = 0; more < 4; more++) {
            LocalDate then = day;
            boolean last = more == 3;
            nursery.later(then, () -> thin(batch, last));
            day = day.plusDays(chance.between(90, 200));
        }
        if (chance.happens(0.4)) {
            nursery.later(nursery.today().plusDays(chance.between(20, 50)), () -> {
                if (batch.growing > 0 && batch.pending == 0 && !batch.held) {
                    nursery.pot(
                            nursery.hand(Work.POTS, chance),
                            List.of(batch),
                            "9 cm",
                            Purpose.POT_ON,
                            "bark and grit",
                            Optional.of(chance.of(nursery.grounds.frames)),
                            Nursery.PLAIN);
                }
            });
        }
    }

    private void thin(Unit batch, boolean last) {
        if (batch.growing == 0 || batch.held) {
            return;
        }
        int some = last || batch.growing <= 6 ? batch.growing : chance.between(4, batch.growing);
        if (last && chance.happens(0.5)) {
            nursery.takeOut(batch, some);
            nursery.row(nursery.hand(Work.POTS, chance), EntryKind.CULLED, List.of(batch))
                    .set("count", some)
                    .set("cull", chance.happens(0.7) ? CullReason.SURPLUS : CullReason.QUALITY)
                    .write();
        } else {
            sell(batch, some, nursery.people.trader(chance));
        }
        if (batch.growing > 0 && chance.happens(0.5)) {
            lose(batch, Math.min(batch.growing, chance.between(1, 1 + batch.growing / 10)));
        }
    }

    void lose(Unit batch, int count) {
        nursery.takeOut(batch, count);
        nursery.row(nursery.hand(Work.POTS, chance), EntryKind.LOST, List.of(batch))
                .set("count", count)
                .set("cause", chance.any(Cause.DRIED, Cause.ROTTED, Cause.FROST, Cause.PEST, Cause.UNKNOWN))
                .write();
    }

    void sell(Unit batch, int count, Person customer) {
        nursery.takeOut(batch, count);
        nursery.row(nursery.hand(Work.OFFICE, chance), EntryKind.SOLD, List.of(batch))
                .set("count", count)
                .set("customer", customer)
                .set("price", Nursery.price((3.5 + 2 * chance.share()) * batch.variety.dearness()))
                .set("passport", nursery.passport(customer))
                .set("invoice", nursery.invoice())
                .write();
    }
}
