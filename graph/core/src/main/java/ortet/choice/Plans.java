package ortet.choice;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.book.UnitFacts.Method;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.plant.CultivarName;
import ortet.timing.Timing;
import ortet.yield.Mothers;
import ortet.yield.Outcomes;

/**
 * Answers how many to set so that so many trees are fit for sale by a day, by one method or by each that the book knows of.
 *
 * @param question what was asked
 * @param all one plan for each method: the one asked for, or those that something of the cultivar was ever set by, or could be
 */
public record Plans(PlanQuestion question, List<Plan> all) {
    public Plans {
        Objects.requireNonNull(question);
        all = List.copyOf(all);
    }

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        Set<Part> parts = EnumSet.copyOf(Outcomes.parts());
        parts.addAll(Mothers.parts());
        parts.addAll(Timing.parts());
        return parts;
    }

    /**
     * Return the plans out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused when the cultivar or the size class asked for is not in the book; the nearest are named
     */
    public static Plans ask(BookView view, Snapshot snapshot, PlanQuestion question) {
        return ask(view, snapshot, question, Optional.empty());
    }

    /**
     * Return the plans within hours and room.
     *
     * @param means hours and room that there are; empty for no limit
     */
    public static Plans ask(BookView view, Snapshot snapshot, PlanQuestion question, Optional<PlanMeans> means) {
        PlanMaker maker = new PlanMaker(view, snapshot, means);
        return new Plans(question, maker.plans(question));
    }

    /** Return the names that a text stands for. */
    static Set<CultivarName> names(BookView view, Snapshot snapshot, String cultivar) {
        return new TreeSet<>(Lookup.cultivars(view, cultivar, snapshot.cultivars()));
    }

    /** The methods that plans are made for. */
    static final List<Method> METHODS = List.of(Method.LAYER, Method.CUTTING, Method.GRAFT);
}
