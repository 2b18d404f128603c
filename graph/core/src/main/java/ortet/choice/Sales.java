package ortet.choice;

/**
 * What a plan sells through one outlet in one year, on expectation.
 *
 * @param cultivar of the trees
 * @param sizeClass of the trees
 * @param year counted from this one, which is 0; the years go on after those planned, as long as trees become saleable
 * @param demand trees asked for
 * @param ready trees expected to be saleable
 * @param sold trees sold within the demand
 * @param worth by how much the plan's worth would grow with one more tree asked for (dual price, at least 0)
 * @param treeWorth what one more tree would be worth to the plan (dual price, from the surplus price to the price)
 */
public record Sales(
        String cultivar,
        String sizeClass,
        int year,
        double demand,
        double ready,
        double sold,
        double worth,
        double treeWorth) {}
