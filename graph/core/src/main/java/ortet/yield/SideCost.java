package ortet.yield;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.money.Charge;
import ortet.money.Cost;

/**
 * What raising saleable trees costs on a side of a comparison.
 *
 * @param set how many units were set, withdrawn ones too; those of which nobody can tell the side are left out
 * @param saleable how many of them are saleable
 * @param open how many may yet become so, or nobody will know
 * @param setting what setting all of them costs, part by part; {@code how} tells the units
 * @param carried how those were grown on that took and are not saleable, by method: all saleable trees carry them alike
 * @param classes the size classes in which there are saleable trees, by name; those sold in none first
 */
public record SideCost(
        int set, int saleable, int open, List<Charge> setting, List<Grown> carried, List<ClassCost> classes) {
    public SideCost {
        setting = List.copyOf(setting);
        carried = List.copyOf(carried);
        classes = List.copyOf(classes);
    }

    /** Return what setting all of them costs; empty where a part of it is not listed. */
    public Optional<Cost> settingCost() {
        return Costs.sum(setting);
    }

    /** Return what one saleable tree costs at least, the mean over the size classes; empty where one is not told. */
    public Optional<Cost> least() {
        return mean(classes.stream().map(one -> one.least().map(cost -> times(cost, one))));
    }

    /** Return what one saleable tree costs at most, the mean over the size classes; empty where one is not told. */
    public Optional<Cost> most() {
        return mean(classes.stream().map(one -> one.most().map(cost -> times(cost, one))));
    }

    private static Cost times(Cost cost, ClassCost of) {
        return cost.times(BigFraction.of(of.saleable()));
    }

    private Optional<Cost> mean(Stream<Optional<Cost>> costs) {
        return costs.reduce((one, other) -> one.flatMap(first -> other.map(first::plus)))
                .flatMap(sum -> sum)
                .map(sum -> sum.times(BigFraction.of(1, saleable)));
    }
}
