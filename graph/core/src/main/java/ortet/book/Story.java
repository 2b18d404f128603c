package ortet.book;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.UnitNumber;

/**
 * What became of one unit, told from its timeline: its facts, and what others need to know of it.
 *
 * @param facts what follows for the store
 * @param handed for each entry that split or merged it and each unit begun by that, what that unit received
 * @param ending how it ended, in words, where it did
 * @param bySplit units begun by splitting it
 * @param method how it is raised, also where it counts for no rate
 */
record Story(
        UnitFacts facts,
        Map<Handing, Handed> handed,
        Optional<String> ending,
        List<UnitNumber> bySplit,
        Optional<UnitFacts.Method> method) {

    /** Which entry handed units on, and to whom. */
    record Handing(long order, int child) {}

    /** How many units went on. */
    record Handed(Optional<Integer> pending, int growing) {}

    Story {
        handed = Map.copyOf(handed);
        bySplit = List.copyOf(bySplit);
    }

    /** Return how many units there were at the end of a day; none before the unit began. */
    Optional<UnitFacts.Standing> standing(LocalDate day) {
        UnitFacts.Standing found = null;
        for (UnitFacts.Standing standing : facts.standings()) {
            if (standing.day().first().isAfter(day)) {
                break;
            }
            found = standing;
        }
        return Optional.ofNullable(found);
    }

    /** Tell whether anything was pending at the end of a day. */
    boolean isPending(LocalDate day) {
        return standing(day)
                .filter(standing -> standing.pending().map(n -> n > 0).orElse(true))
                .isPresent();
    }

    /** Return the name that the unit bears by its own entries on a day: the last true one, else the last said one. */
    Optional<CultivarName> ownName(LocalDate day) {
        UnitFacts.Naming best = null;
        for (UnitFacts.Naming naming : facts.names()) {
            if (!naming.day().first().isAfter(day) && (best == null || naming.isTrue() || !best.isTrue())) {
                best = naming;
            }
        }
        return Optional.ofNullable(best).map(UnitFacts.Naming::cultivar);
    }
}
