package ortet.book;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Refused;

/** Finds what a question is about, or refuses it with the nearest that may have been meant. */
public final class Lookup {
    private Lookup() {}

    /**
     * Return the unit that bears or bore the tag.
     *
     * @throws Refused by the rule {@code unknown-tag} when there is none
     */
    public static UnitNumber unit(BookView view, Tag tag) {
        return view.unit(tag).orElseThrow(() -> {
            List<String> near = view.nearest(tag);
            return new Refused(Fault.of("unknown-tag", "no plant or batch " + tag)
                    .nearest(near.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", near))));
        });
    }
}
