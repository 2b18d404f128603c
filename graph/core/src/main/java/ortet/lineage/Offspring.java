package ortet.lineage;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.Act;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Cohort;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Outcome;
import ortet.book.UnitFacts.Standing;
import ortet.plant.UnitNumber;

/** Adds up what was raised from a unit. */
final class Offspring {
    private final Reading reading;
    private final UnitNumber mother;

    Offspring(Reading reading, UnitNumber mother) {
        this.reading = reading;
        this.mother = mother;
    }

    List<OffspringTally> tallies() {
        Map<Act, List<Link>> byAct = new EnumMap<>(Act.class);
        for (Link link : links(mother, EnumSet.allOf(Act.class))) {
            byAct.computeIfAbsent(link.act(), act -> new ArrayList<>()).add(link);
        }
        return byAct.entrySet().stream()
                .map(entry -> new Sum(entry.getKey()).of(entry.getValue()))
                .toList();
    }

    private List<Link> links(UnitNumber unit, Set<Act> acts) {
        return reading.view().offspring(unit, acts).stream()
                .filter(link -> reading.counts(link.day()))
                .toList();
    }

    /** Return a unit and everything that came out of it through the given acts. */
    private Set<UnitNumber> withAll(UnitNumber first, Set<Act> acts) {
        Set<UnitNumber> reached = new LinkedHashSet<>(Set.of(first));
        List<UnitNumber> open = new ArrayList<>(reached);
        for (int at = 0; at < open.size(); at++) {
            for (Link link : links(open.get(at), acts)) {
                if (reached.add(link.child())) {
                    open.add(link.child());
                }
            }
        }
        return reached;
    }

    /** How many were there at first, where the link does not say how many came from this unit. */
    private static int atFirst(UnitFacts child) {
        Standing first = child.standings().get(0);
        return first.pending().orElse(0) + first.growing();
    }

    private final class Sum {
        private final Act act;
        private int set;
        private int taken;
        private int failed;
        private int withdrawn;
        private int merged;
        private int shared;
        private int unrecorded;
        private int weighed;
        private int growing;

        Sum(Act act) {
            this.act = act;
        }

        OffspringTally of(List<Link> links) {
            boolean takes = OffspringTally.countsForTake(act);
            for (Link link : links) {
                UnitFacts child = reading.facts(link.child());
                if (takes) {
                    raised(child);
                } else {
                    set += link.count().orElseGet(() -> atFirst(child));
                    growing(child.unit());
                }
            }
            int pending = takes ? set - taken - failed - withdrawn - merged : 0;
            return new OffspringTally(
                    act,
                    links.size(),
                    set,
                    taken,
                    failed,
                    withdrawn,
                    pending,
                    merged,
                    shared,
                    unrecorded,
                    weighed,
                    growing);
        }

        private void raised(UnitFacts child) {
            Optional<Integer> count = child.cohort().flatMap(Cohort::count);
            long mothers =
                    child.links().stream().filter(link -> link.act() == act).count();
            if (child.cohort().isEmpty()) {
                unrecorded++;
                growing(child.unit());
            } else if ((act == Act.STRUCK_FROM || act == Act.STRUCK_BELOW) && mothers > 1) {
                shared += count.orElse(0);
            } else if (count.isEmpty()) {
                weighed++;
                growing(child.unit());
            } else {
                set += count.get();
                int moved = 0;
                for (UnitNumber part : withAll(child.unit(), EnumSet.of(Act.SPLIT_FROM))) {
                    UnitFacts facts = reading.facts(part);
                    if (!part.equals(child.unit())) {
                        moved -= facts.cohort().flatMap(Cohort::count).orElse(0);
                    }
                    for (Outcome outcome : facts.outcomes()) {
                        if (reading.counts(outcome.day())) {
                            moved += outcome.fate() == Fate.MOVED_ON ? outcome.count() : 0;
                            add(outcome);
                        }
                    }
                }
                merged += moved;
                growing(child.unit());
            }
        }

        private void add(Outcome outcome) {
            switch (outcome.fate()) {
                case TAKEN -> taken += outcome.count();
                case FAILED -> failed += outcome.count();
                case WITHDRAWN -> withdrawn += outcome.count();
                case FOUND_MORE -> set += outcome.count();
                case NOT_SEEN, MOVED_ON, STILL_ON -> {}
            }
        }

        private void growing(UnitNumber child) {
            for (UnitNumber part : withAll(child, EnumSet.of(Act.SPLIT_FROM, Act.DRAWN_FROM))) {
                growing += reading.growing(part);
            }
        }
    }
}
