package ortet.decade;

import java.util.ArrayList;
import java.util.List;
import ortet.decade.Luck.Of;

/** An ordinary grower: each mother has her share of his favour, and is layered with that chance when she has rested. */
final class AsBefore implements Policy {
    private static final double NEVER = 0.25;

    private final Luck luck;

    AsBefore(Luck luck) {
        this.luck = luck;
    }

    @Override
    public List<Doing> decide(Records records) {
        List<Doing> doings = new ArrayList<>();
        for (int mother = 0; mother < records.mothers(); mother++) {
            double favour = luck.share(Of.GROUND, 0, 50, mother);
            double chance = favour < NEVER ? 0 : 0.2 + 0.7 * (favour - NEVER) / (1 - NEVER);
            if (records.isFree(mother) && luck.share(Of.HABIT, records.year(), mother, 1) < chance) {
                double share = 0.5 + 0.5 * luck.share(Of.HABIT, records.year(), mother, 2);
                List<Integer> sets = new ArrayList<>();
                for (int band = 0; band < Truth.BANDS; band++) {
                    sets.add((int) Math.round(share * records.positions[mother][band]));
                }
                doings.add(new Doing(mother, sets, Doing.What.CROPPED));
            }
        }
        return doings;
    }
}
