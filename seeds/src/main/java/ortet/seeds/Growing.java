package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.entry.ReleasedFrom;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;

/** Young trees from their first pot to the customer, or to the compost heap. */
final class Growing {
    private static final List<String> MEDIA =
            List.of("bark and grit", "pumice and bark", "akadama and pumice", "coir and perlite", "loam and grit");
    private static final int MOST_SEASONS = 9;

    private final Nursery nursery;
    private final Mothers mothers;
    private final Chance chance;

    Growing(Nursery nursery, Mothers mothers, Chance chance) {
        this.nursery = nursery;
        this.mothers = mothers;
        this.chance = chance;
    }

    /** Plants that began together and go through life together. */
    private static final class Lot {
        private final List<Unit> plants;
        private final boolean woody;
        private int season;
        private int seasonsInField;
        private boolean bonsaiPots;

        Lot(List<Unit> plants, boolean woody) {
            this.plants = plants;
            this.woody = woody;
        }

        List<Unit> standing() {
            return plants.stream()
                    .filter(plant -> plant.isStanding() && !plant.stock && !plant.held)
                    .toList();
        }
    }

    /**
     * Begin the life of plants that have just got roots of their own.
     *
     * @param woody whether they begin with wood of some thickness, as layers do
     */
    void raise(List<Unit> plants, boolean woody) {
        Lot lot = new Lot(new ArrayList<>(plants), woody);
        nursery.later(nursery.today().plusDays(chance.between(1, 14)), () -> potUp(lot));
        int year = nursery.year();
        LocalDate winter = LocalDate.of(year, 10, 25).plusDays(chance.between(0, 25));
        if (nursery.today().isBefore(winter.minusDays(20)) && chance.happens(0.55)) {
            nursery.later(winter, () -> shelter(lot));
        }
        plan(lot, year + 1);
    }

    private void plan(Lot lot, int year) {
        LocalDate spring = LocalDate.of(year, 2, 25).plusDays(chance.between(0, 50));
        nursery.later(spring, () -> {
            lot.season++;
            spring(lot);
            if (!lot.standing().isEmpty() && lot.season < MOST_SEASONS) {
                nursery.later(LocalDate.of(year, 9, 3).plusDays(chance.between(0, 50)), () -> autumn(lot));
                nursery.later(LocalDate.of(year, 4, 22).plusDays(chance.between(0, 60)), () -> sale(lot, 0.26));
                nursery.later(LocalDate.of(year, 10, 12).plusDays(chance.between(0, 60)), () -> sale(lot, 0.34));
                plan(lot, year + 1);
            }
        });
    }

    private String medium() {
        return chance.of(MEDIA);
    }

    private void potUp(Lot lot) {
        List<Unit> plants = lot.standing().stream()
                .filter(plant -> plant.container.isEmpty())
                .toList();
        if (!plants.isEmpty()) {
            nursery.pot(
                    nursery.hand(Work.POTS, chance),
                    plants,
                    Purpose.POT_UP,
                    medium(),
                    Optional.of(chance.of(nursery.grounds.benches)).filter(place -> chance.happens(0.6)));
        }
    }

    private Place shelter() {
        List<Place> places = new ArrayList<>(nursery.grounds.benches);
        places.addAll(nursery.grounds.frames);
        if (nursery.year() >= 2017) {
            places.addAll(nursery.grounds.bays);
        }
        return chance.of(places);
    }

    private void shelter(Lot lot) {
        List<Unit> plants =
                lot.standing().stream().filter(plant -> !plant.inGround).toList();
        if (!plants.isEmpty()) {
            nursery.move(nursery.hand(Work.POTS, chance), plants, shelter(), Nursery.PLAIN);
        }
    }

    private void spring(Lot lot) {
        Hand by = nursery.hand(Work.POTS, chance);
        losses(lot, by);
        List<Unit> plants = lot.standing();
        if (plants.isEmpty()) {
            return;
        }
        plants.forEach(plant -> {
            double growth = plant.variety.growthMm() * (plant.inGround ? 2.1 : 1) * (lot.season == 1 ? 0.6 : 1);
            plant.stemMm += growth * StrictMath.exp(0.2 * chance.normal());
            plant.heightMm += 40 + 90 * chance.share();
        });
        if (chance.happens(0.45)) {
            nursery.measure(by, plants.subList(0, Math.min(plants.size(), chance.between(1, 2))));
        }
        if (lot.season >= 2 && lot.season <= 4) {
            mothers.choose(plants);
        }
        plants = lot.standing();
        if (plants.isEmpty()) {
            return;
        }
        if (plants.get(0).inGround) {
            lot.seasonsInField++;
            if (lot.seasonsInField >= 2 && chance.happens(0.6)) {
                for (List<Unit> those : byPot(plants).values()) {
                    nursery.lift(
                            by,
                            those,
                            Nursery.pot(those.get(0).stemMm),
                            chance.of(nursery.grounds.standings),
                            Nursery.PLAIN);
                }
            }
            return;
        }
        boolean fieldGrown = lot.season <= 2 && lot.seasonsInField == 0 && plants.size() >= 3;
        if (fieldGrown && chance.happens(0.12)) {
            nursery.plantOut(by, plants, chance.of(nursery.grounds.fieldRows), Nursery.PLAIN);
            return;
        }
        repot(lot, plants, by);
        if (chance.happens(0.6)) {
            Place outside = chance.of(nursery.grounds.standings);
            nursery.later(
                    LocalDate.of(nursery.year(), 5, 5).plusDays(chance.between(0, 20)), () -> outside(lot, outside));
        }
    }

    private void outside(Lot lot, Place place) {
        List<Unit> plants = lot.standing();
        if (!plants.isEmpty() && !plants.get(0).inGround) {
            nursery.move(nursery.hand(Work.POTS, chance), plants, place, Nursery.PLAIN);
        }
    }

    private void repot(Lot lot, List<Unit> plants, Hand by) {
        if (lot.season >= 4 && !lot.bonsaiPots && chance.happens(0.3)) {
            lot.bonsaiPots = true;
            List<Unit> best =
                    plants.stream().filter(plant -> plant.stemMm >= 14).toList();
            if (!best.isEmpty()) {
                String pot = chance.any("oval pot 24 cm", "round pot 18 cm", "rectangular pot 30 cm", "drum pot 20 cm");
                nursery.pot(by, best, pot, Purpose.BONSAI_POT, "akadama and pumice", Optional.empty(), Nursery.PLAIN);
                return;
            }
        }
        List<Unit> outgrown = plants.stream()
                .filter(plant -> !plant.container.equals(Nursery.pot(plant.stemMm)) && !plant.container.contains("pot"))
                .toList();
        if (!outgrown.isEmpty()) {
            nursery.pot(by, outgrown, Purpose.POT_ON, medium(), Optional.empty());
        } else if (chance.happens(0.15)) {
            for (Map.Entry<String, List<Unit>> same : byContainer(plants).entrySet()) {
                nursery.pot(
                        by,
                        same.getValue(),
                        same.getKey(),
                        Purpose.SAME_SIZE,
                        medium(),
                        Optional.empty(),
                        Nursery.PLAIN);
            }
        }
    }

    private static Map<String, List<Unit>> byPot(List<Unit> plants) {
        Map<String, List<Unit>> groups = new TreeMap<>();
        plants.forEach(plant -> groups.computeIfAbsent(Nursery.pot(plant.stemMm), pot -> new ArrayList<>())
                .add(plant));
        return groups;
    }

    private static Map<String, List<Unit>> byContainer(List<Unit> plants) {
        Map<String, List<Unit>> groups = new TreeMap<>();
        plants.stream()
                .filter(plant -> !plant.container.isEmpty())
                .forEach(plant -> groups.computeIfAbsent(plant.container, pot -> new ArrayList<>())
                        .add(plant));
        return groups;
    }

    private void losses(Lot lot, Hand by) {
        double rate = lot.season == 1 ? 0.075 : 0.025;
        Map<Cause, List<Unit>> dead = new TreeMap<>();
        for (Unit plant : lot.standing()) {
            if (plant.promisedTo.isEmpty() && chance.happens(rate)) {
                Cause cause = lot.season == 1
                        ? chance.any(Cause.FROST, Cause.DRIED, Cause.ROTTED, Cause.UNKNOWN)
                        : chance.any(
                                Cause.FROST,
                                Cause.WIND,
                                Cause.PEST,
                                Cause.DISEASE,
                                Cause.HEAT,
                                Cause.BROKEN,
                                Cause.MISLAID,
                                Cause.UNKNOWN,
                                Cause.OTHER,
                                Cause.STOLEN);
                dead.computeIfAbsent(cause, why -> new ArrayList<>()).add(plant);
            }
        }
        dead.forEach((cause, plants) -> nursery.lose(by, plants, cause, Nursery.PLAIN));
    }

    private void autumn(Lot lot) {
        Hand by = nursery.hand(Work.POTS, chance);
        List<Unit> poor = new ArrayList<>();
        for (Unit plant : lot.standing()) {
            boolean judged = lot.season >= 2 && !plant.graded && plant.promisedTo.isEmpty();
            if (judged && chance.happens(0.035)) {
                poor.add(plant);
            }
        }
        if (!poor.isEmpty()) {
            nursery.cull(
                    by,
                    poor,
                    CullReason.QUALITY,
                    draft -> draft.set(
                            "note", chance.any("no taper", "one-sided roots", "reverse taper", "scarred", "")));
        }
        grade(lot, by);
        List<Unit> plants = lot.standing();
        if (!plants.isEmpty() && chance.happens(0.12)) {
            nursery.row(by, EntryKind.SEEN, plants)
                    .set("place", plants.get(0).place)
                    .set("note", chance.happens(0.1) ? "stocktaking" : "")
                    .write();
        }
        reserve(lot);
        if (!plants.isEmpty() && !plants.get(0).inGround && chance.happens(0.3)) {
            nursery.later(LocalDate.of(nursery.year(), 11, 1).plusDays(chance.between(0, 20)), () -> shelter(lot));
        }
    }

    static String size(double stemMm) {
        return stemMm < 12 ? "small" : stemMm < 20 ? "medium" : stemMm < 32 ? "large" : "specimen";
    }

    private void grade(Lot lot, Hand by) {
        double least = lot.woody ? 11 : 8;
        Map<String, List<Unit>> classes = new LinkedHashMap<>();
        for (Unit plant : lot.standing()) {
            if (lot.season >= 2 && !plant.graded && !plant.inGround && plant.stemMm >= least && chance.happens(0.8)) {
                String grade = chance.happens(0.75) ? "first" : "second";
                classes.computeIfAbsent(size(plant.stemMm) + "/" + grade, name -> new ArrayList<>())
                        .add(plant);
            }
        }
        classes.forEach((name, plants) -> {
            int slash = name.indexOf('/');
            nursery.grade(by, plants, name.substring(0, slash), name.substring(slash + 1), Nursery.PLAIN);
        });
    }

    static double euros(Unit plant) {
        double stem = plant.stemMm;
        return (6 + 0.9 * stem + 0.05 * stem * stem) * plant.variety.dearness();
    }

    private Person customer() {
        return chance.happens(0.55) ? nursery.people.trader(chance) : nursery.people.gardener(chance);
    }

    private static List<Unit> forSale(Lot lot) {
        return lot.standing().stream()
                .filter(plant -> plant.graded && !plant.inGround && plant.promisedTo.isEmpty())
                .toList();
    }

    private void reserve(Lot lot) {
        List<Unit> free = forSale(lot);
        if (free.isEmpty() || !chance.happens(0.14)) {
            return;
        }
        List<Unit> those = free.subList(0, Math.min(free.size(), chance.between(1, 3)));
        Person customer = customer();
        those.forEach(plant -> plant.promisedTo = Optional.of(customer));
        LocalDate until = nursery.today().plusDays(chance.between(60, 200));
        double price = euros(those.get(0));
        Hand office = nursery.hand(Work.OFFICE, chance);
        nursery.row(office, EntryKind.RESERVED, those)
                .set("customer", customer)
                .set("until", until)
                .set("price", Nursery.price(price))
                .write();
        boolean comes = chance.happens(0.85);
        LocalDate day = comes ? until.minusDays(chance.between(5, 50)) : until.plusDays(3);
        nursery.later(day, () -> {
            List<Unit> still = those.stream()
                    .filter(plant -> plant.isStanding() && !plant.held && plant.promisedTo.isPresent())
                    .toList();
            if (still.isEmpty()) {
                return;
            }
            still.forEach(plant -> plant.promisedTo = Optional.empty());
            if (comes) {
                nursery.sell(nursery.hand(Work.OFFICE, chance), still, customer, price, Nursery.PLAIN);
            } else {
                nursery.row(nursery.hand(Work.OFFICE, chance), EntryKind.RELEASED, still)
                        .set("from", ReleasedFrom.RESERVATION)
                        .set("note", "not called for")
                        .write();
            }
        });
    }

    private void sale(Lot lot, double rate) {
        List<Unit> sold = new ArrayList<>();
        for (Unit plant : forSale(lot)) {
            if (chance.happens(rate)) {
                sold.add(plant);
            }
        }
        for (int at = 0; at < sold.size(); ) {
            int end = Math.min(sold.size(), at + chance.between(1, 4));
            List<Unit> those = sold.subList(at, end);
            nursery.sell(
                    nursery.hand(Work.OFFICE, chance),
                    those,
                    customer(),
                    euros(those.get(0)) * (0.9 + 0.2 * chance.share()),
                    Nursery.PLAIN);
            at = end;
        }
    }
}
