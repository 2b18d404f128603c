package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * What can be sold of a cultivar in a size class. Demand and prices are net of the trees that are already on the way.
 *
 * @param cultivar of the trees
 * @param sizeClass of the trees
 * @param price of each, at least 0
 * @param surplusPrice of each tree beyond the demand, from 0 to the price; 0 where surplus is thrown away
 * @param demand trees asked for, by year from this one on; the last stands for all after it
 */
public record Outlet(String cultivar, String sizeClass, double price, double surplusPrice, List<Double> demand) {
    public Outlet {
        cultivar = Require.text(cultivar, "cultivar");
        sizeClass = Require.text(sizeClass, "size class");
        Checks.atLeastZero(price, "price");
        Checks.atLeastZero(surplusPrice, "surplus price");
        Require.that(surplusPrice <= price, "surplus price", "at most the price");
        demand = List.copyOf(demand);
        Require.size(1, demand, "demand");
        demand.forEach(one -> Checks.atLeastZero(one, "demand"));
    }

    double demandIn(int year) {
        return Checks.lastRepeats(demand, year);
    }
}
