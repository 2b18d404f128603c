package ortet.choice;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/** How counts by cultivar, size class and month lie in one array. */
final class ForecastLayout {
    private static final int NONE = -1;

    private final List<Integer> cultivars;
    private final int[] slots;
    private final int sizes;
    private final int months;

    /**
     * Make it.
     *
     * @param cultivars those of which is told, by their places in {@link ForecastPast#cultivars()}, in the order of slots
     * @param all how many cultivars there are
     * @param sizes how many size classes
     * @param months how many months
     */
    ForecastLayout(Collection<Integer> cultivars, int all, int sizes, int months) {
        this.cultivars = List.copyOf(cultivars);
        this.slots = new int[all];
        this.sizes = sizes;
        this.months = months;
        Arrays.fill(slots, NONE);
        for (int slot = 0; slot < this.cultivars.size(); slot++) {
            slots[this.cultivars.get(slot)] = slot;
        }
    }

    List<Integer> cultivars() {
        return cultivars;
    }

    /** Tell whether a cultivar is told of. */
    boolean has(int cultivar) {
        return slots[cultivar] != NONE;
    }

    /** Return the slot of a cultivar that is told of. */
    int slot(int cultivar) {
        return slots[cultivar];
    }

    /** Return how many slots there are. */
    int slots() {
        return cultivars.size();
    }

    /** Return the place of the first month of a slot and a size class. */
    int cell(int slot, int size) {
        return (slot * sizes + size) * months;
    }

    /** Return how many places there are. */
    int cells() {
        return cell(cultivars.size(), 0);
    }
}
