package ortet.book;

import java.util.List;
import ortet.plant.UnitNumber;

/**
 * The units reached from one through links, and those links.
 *
 * @param units every unit reached, the one asked about first, then by number
 * @param links every link between them that was followed, by child, order, act and mother
 * @param whole whether nothing was left out
 */
public record Family(List<UnitNumber> units, List<Link> links, boolean whole) {
    public Family {
        units = List.copyOf(units);
        links = List.copyOf(links);
    }
}
