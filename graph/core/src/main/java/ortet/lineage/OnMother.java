package ortet.lineage;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Standing;
import ortet.plant.Tag;

/** Tells which layers are still on a mother. */
public final class OnMother {
    private OnMother() {}

    /** Return the tags of every layer on the mothers that is neither severed nor failed, in their order. */
    public static List<Tag> pendingLayers(BookView view, List<Tag> mothers) {
        List<Tag> pending = new ArrayList<>();
        for (Tag mother : mothers) {
            view
                    .unit(mother)
                    .map(unit -> view.offspring(unit, Set.of(Act.LAYERED_FROM, Act.LAYERED_BELOW)))
                    .orElse(List.of())
                    .stream()
                    .map(Link::child)
                    .map(view::facts)
                    .flatMap(java.util.Optional::stream)
                    .filter(OnMother::isPending)
                    .map(UnitFacts::tag)
                    .forEach(pending::add);
        }
        return pending.stream().distinct().sorted().toList();
    }

    private static boolean isPending(UnitFacts layer) {
        Standing last = layer.standings().get(layer.standings().size() - 1);
        return last.pending().orElse(1) > 0;
    }
}
