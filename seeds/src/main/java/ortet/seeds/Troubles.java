package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import ortet.plant.Tag;

/** What went wrong at Sallowfield, or was out of the ordinary; each with the tags to look it up by. */
final class Troubles {
    /**
     * One of them.
     *
     * @param what what happened
     * @param tags the units to look at
     */
    record Story(String what, List<Tag> tags) {}

    private final List<Story> stories = new ArrayList<>();
    private final List<Trouble> troubles;

    Troubles(
            Nursery nursery,
            Mothers mothers,
            Layering layering,
            Cutting cutting,
            Grafting grafting,
            Growing growing,
            Chance chance) {
        Trouble.Cast cast = new Trouble.Cast(nursery, mothers, layering, cutting, grafting, growing, chance, stories);
        troubles = List.of(
                new NameTroubles(cast),
                new HealthTroubles(cast),
                new TrayTroubles(cast),
                new MotherTroubles(cast),
                new DeskTroubles(cast));
    }

    /** Plan all of them. */
    void plan() {
        troubles.forEach(Trouble::plan);
    }

    /** Return all that was told, in the order of their days. */
    List<Story> told() {
        return List.copyOf(stories);
    }
}
