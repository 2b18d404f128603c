package ortet.lineage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Standing;
import ortet.book.UnitFacts.Stay;
import ortet.plant.Place;
import ortet.value.When;

/**
 * When a unit was there, and where it stood, as far as the book says.
 *
 * <p>A day counts for both places between which a unit was moved on it. A day known to the month or year alone widens
 * what may have been and narrows what surely was.
 *
 * @param unit the number of the unit
 * @param nature what it is
 * @param begun when it began
 * @param present when it was there
 * @param onMother while it was a part of its mother: for a layer until it was severed or failed, for a sport always
 * @param stood its places
 * @param nowhere when it was there on its own and nobody had said where
 */
record Whereabouts(
        int unit,
        Nature nature,
        When begun,
        List<Span> present,
        Optional<Span> onMother,
        List<Stood> stood,
        List<Span> nowhere) {
    /**
     * A place that the unit stood in.
     *
     * @param place the place
     * @param span when
     * @param isOff whether it is a layer, which surely was off its mother by then
     */
    record Stood(Place place, Span span, boolean isOff) {}

    /**
     * Read where a unit was.
     *
     * @param order the entry that began it
     * @param standings how many there were, in the order of its timeline
     * @param stays its places, in the order of its timeline
     */
    static Whereabouts of(int unit, Nature nature, When begun, long order, List<Standing> standings, List<Stay> stays) {
        List<Span> present = present(standings);
        Optional<Span> onMother = onMother(nature, begun, standings);
        boolean apart = nature != Nature.SPORT && standings.stream().anyMatch(standing -> standing.growing() > 0)
                || nature == Nature.PLANT
                || nature == Nature.BATCH;
        List<Stood> stood = new ArrayList<>();
        for (int at = 0; at < stays.size(); at++) {
            Span span = stay(stays, at, order);
            for (Span there : present) {
                Span both = span.and(there);
                if (both.isPossible()) {
                    stood.add(new Stood(stays.get(at).place(), both, isOff(nature, order, standings, stays.get(at))));
                }
            }
        }
        return new Whereabouts(
                unit,
                nature,
                begun,
                present,
                onMother,
                List.copyOf(stood),
                apart ? nowhere(order, stays, present, onMother) : List.of());
    }

    private static boolean isThere(Standing standing) {
        return standing.growing() > 0 || standing.pending().map(n -> n > 0).orElse(true);
    }

    private static List<Span> present(List<Standing> standings) {
        List<Span> present = new ArrayList<>();
        Optional<When> since = Optional.empty();
        int latest = Span.ALWAYS;
        for (Standing standing : standings) {
            // what is known to the month may have been after what is read as the end
            latest = Math.max(latest, Span.last(standing.day()));
            if (since.isEmpty() && isThere(standing)) {
                since = Optional.of(standing.day());
            } else if (since.isPresent() && !isThere(standing)) {
                Span span = Span.between(since.get(), Optional.of(standing.day()));
                present.add(new Span(span.from(), latest, span.surelyFrom(), span.surelyTo()));
                since = Optional.empty();
            }
        }
        since.ifPresent(start -> present.add(Span.between(start, Optional.empty())));
        return List.copyOf(present);
    }

    /** Tell whether a layer stood in a place because it was severed, or later. */
    private static boolean isOff(Nature nature, long order, List<Standing> standings, Stay stay) {
        return nature == Nature.LAYER
                && stay.order() != order
                && off(standings)
                        .filter(off -> off.order() == stay.order() || Span.first(stay.day()) >= Span.last(off.day()))
                        .isPresent();
    }

    /** Return the standing of a layer since it was severed or failed. */
    private static Optional<Standing> off(List<Standing> standings) {
        return standings.stream()
                .filter(standing -> standing.pending().equals(Optional.of(0)))
                .findFirst();
    }

    private static Optional<Span> onMother(Nature nature, When begun, List<Standing> standings) {
        if (nature == Nature.SPORT) {
            return Optional.of(Span.between(begun, Optional.empty()));
        }
        if (nature != Nature.LAYER) {
            return Optional.empty();
        }
        return Optional.of(Span.between(begun, off(standings).map(Standing::day)));
    }

    /** Return how long one of several stays lasted: until another that surely, or perhaps, came after it. */
    private static Span stay(List<Stay> stays, int at, long order) {
        Stay stay = stays.get(at);
        int to = Span.OPEN;
        int surelyTo = Span.OPEN;
        for (int other = 0; other < stays.size(); other++) {
            if (other == at) {
                continue;
            }
            Stay next = stays.get(other);
            if (isSurelyBefore(stay, at, next, other, order)) {
                to = Math.min(to, Span.last(next.day()));
                surelyTo = Math.min(surelyTo, Span.first(next.day()));
            } else if (!isSurelyBefore(next, other, stay, at, order)) {
                surelyTo = Math.min(surelyTo, Span.first(next.day()));
            }
        }
        return new Span(Span.first(stay.day()), to, Span.last(stay.day()), surelyTo);
    }

    private static boolean isSurelyBefore(Stay one, int at, Stay other, int otherAt, long order) {
        if (one.order() == order || other.order() == order) {
            return one.order() == order;
        }
        return one.day().isExact() && other.day().isExact()
                ? at < otherAt
                : Span.last(one.day()) < Span.first(other.day());
    }

    private static List<Span> nowhere(long order, List<Stay> stays, List<Span> present, Optional<Span> onMother) {
        if (stays.stream().anyMatch(stay -> stay.order() == order)) {
            return List.of();
        }
        // on the day itself it stands where its mother does
        int from = onMother.map(span -> span.surelyTo() + 1).orElse(Span.ALWAYS);
        int until =
                stays.stream().mapToInt(stay -> Span.last(stay.day()) - 1).min().orElse(Span.OPEN);
        List<Span> nowhere = new ArrayList<>();
        for (Span there : present) {
            Span span = there.and(new Span(from, until, from, until));
            if (span.isPossible()) {
                nowhere.add(span);
            }
        }
        return List.copyOf(nowhere);
    }
}
