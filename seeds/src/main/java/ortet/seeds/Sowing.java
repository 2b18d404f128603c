package ortet.seeds;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Rest;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;

/** Pans of seed gathered at Sallowfield, some of it from crosses made on purpose. */
final class Sowing {
    private final Nursery nursery;
    private final Mothers mothers;
    private final Cutting cutting;
    private final Grafting grafting;
    private final Chance chance;

    Sowing(Nursery nursery, Mothers mothers, Cutting cutting, Grafting grafting, Chance chance) {
        this.nursery = nursery;
        this.mothers = mothers;
        this.cutting = cutting;
        this.grafting = grafting;
        this.chance = chance;
    }

    /** Plan a year's sowings. */
    void year(int year) {
        int pans = chance.between(1, 3);
        for (int pan = 0; pan < pans; pan++) {
            nursery.later(LocalDate.of(year, 10, 20).plusDays(chance.between(0, 25)), () -> {
                List<Unit> able = mothers.giving().stream()
                        .filter(mother -> mother.nature == Unit.Nature.PLANT
                                && mother.variety.species().isPresent()
                                && mother.stemMm > 20)
                        .toList();
                Unit seed = chance.of(able);
                Variety species = seed.variety.species().orElseThrow();
                List<Unit> fathers = able.stream()
                        .filter(other ->
                                other != seed && other.variety.species().equals(seed.variety.species()))
                        .toList();
                Optional<Unit> pollen =
                        fathers.isEmpty() || chance.happens(0.6) ? Optional.empty() : Optional.of(chance.of(fathers));
                Unit sown = sow(seed, pollen, species, chance.any(30, 40, 50, 80, 120), Nursery.PLAIN);
                plan(sown);
            });
        }
    }

    /** Sow seed by count. */
    Unit sow(Unit seed, Optional<Unit> pollen, Variety species, int count, UnaryOperator<Draft> more) {
        Unit pan = nursery.unit(Unit.Nature.BATCH, nursery.nextTags("S", 1).get(0), species);
        pan.pending = count;
        pan.mother = Optional.of(seed);
        pan.generation = 0;
        pan.place = Optional.of(chance.of(nursery.grounds.frames));
        more.apply(nursery.row(nursery.hand(Work.BENCH, chance), EntryKind.SEED_SOWN, List.of(pan))
                        .set("count", count)
                        .set("seed_parent", seed.tag)
                        .set("pollen_parent", pollen.map(plant -> plant.tag))
                        .set("cultivar", species.cultivar())
                        .set("place", pan.place)
                        .set("container", "pan 30 cm"))
                .write();
        return pan;
    }

    private void plan(Unit pan) {
        int year = nursery.year() + 1;
        double rate = 0.35 + 0.4 * chance.share();
        nursery.later(LocalDate.of(year, 4, 20).plusDays(chance.between(0, 30)), () -> {
            int up = Math.max(4, chance.successes(pan.pending, rate));
            cutting.take(pan, nursery.hand(Work.BENCH, chance), Math.min(up, pan.pending));
        });
        nursery.later(LocalDate.of(year, 6, 20).plusDays(chance.between(0, 30)), () -> {
            Hand by = nursery.hand(Work.BENCH, chance);
            if (pan.pending > 0 && chance.happens(0.7)) {
                cutting.fail(pan, by, pan.pending, Cause.NOT_GERMINATED);
            } else if (pan.pending > 0) {
                nursery.row(by, EntryKind.CLOSED, List.of(pan))
                        .set("rest", Rest.STILL_ON)
                        .set("note", "may come up in the second spring")
                        .write();
            }
        });
        nursery.later(LocalDate.of(year + 1, 3, 1).plusDays(chance.between(0, 25)), () -> {
            Hand by = nursery.hand(Work.BENCH, chance);
            cutting.draw(by, pan, Math.min(pan.growing, chance.between(5, 12)));
            if (pan.growing >= 8) {
                Unit stocks = cutting.young(by, pan, pan.growing);
                grafting.addStock(stocks);
            }
        });
        nursery.later(LocalDate.of(year + 1, 6, 1).plusDays(chance.between(0, 25)), () -> {
            if (pan.pending > 0) {
                cutting.fail(pan, nursery.hand(Work.BENCH, chance), pan.pending, Cause.NOT_GERMINATED);
            }
        });
    }
}
