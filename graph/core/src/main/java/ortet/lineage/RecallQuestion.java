package ortet.lineage;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.book.Link;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Refused;

/**
 * What a recall is asked: where it begins, and which way it goes from there.
 *
 * @param tags plants, layers and batches that it begins with
 * @param consignment the consignment or delivery note with which they came, upper and lower case alike
 * @param supplier who supplied them, by name or number
 * @param place the place in which they stood, or within which
 * @param from the first day of the place or of the deliveries asked about; all before unless given
 * @param to the last day of the place or of the deliveries asked about; all after unless given
 * @param rounds how many times it goes on from a suspect to what stood beside it
 * @param tools whether it also goes on to what the same person worked on the same day
 * @param since the day before which the disease was not there: what happened earlier carries nothing
 * @param routes by which relations it goes
 * @param clonal whether it goes by those relations alone that keep the clone
 * @param sources whether it first goes up to every possible source
 * @param everywhere whether all is told that may have stood beside a suspect whose place is not known
 * @param asOf the day as of which it is answered
 */
public record RecallQuestion(
        List<Tag> tags,
        Optional<String> consignment,
        Optional<String> supplier,
        Optional<Place> place,
        Optional<LocalDate> from,
        Optional<LocalDate> to,
        int rounds,
        boolean tools,
        Optional<LocalDate> since,
        Set<Route> routes,
        boolean clonal,
        boolean sources,
        boolean everywhere,
        LocalDate asOf) {

    /**
     * Keep copies.
     *
     * @throws Refused when it begins nowhere, or with days and nothing that has days
     */
    public RecallQuestion {
        tags = List.copyOf(tags);
        Objects.requireNonNull(consignment);
        Objects.requireNonNull(supplier);
        Objects.requireNonNull(place);
        Objects.requireNonNull(from);
        Objects.requireNonNull(to);
        Objects.requireNonNull(since);
        routes = routes.isEmpty() ? Route.ALL : Set.copyOf(EnumSet.copyOf(routes));
        Objects.requireNonNull(asOf);
        boolean dated = place.isPresent() || consignment.isPresent() || supplier.isPresent();
        if (tags.isEmpty() && !dated) {
            throw Refused.because(
                    "nothing-asked",
                    "say what to recall: tags, --consignment, --supplier, or --place with --from, --to");
        }
        if (!dated && (from.isPresent() || to.isPresent())) {
            throw Refused.because(
                    "no-use",
                    "--from and --to go with --place, --consignment or --supplier; for tags there is --since");
        }
        if (from.isPresent() && to.isPresent() && to.get().isBefore(from.get())) {
            throw Refused.because("bad-period", "--to " + to.get() + " is before --from " + from.get());
        }
        if (since.filter(asOf::isBefore).isPresent()) {
            throw Refused.because("future-day", "--since " + since.get() + " is after " + asOf);
        }
        if (rounds < 0 || rounds > MOST_ROUNDS) {
            throw Refused.because("bad-rounds", "--contacts: expected 0 to " + MOST_ROUNDS + ", found " + rounds);
        }
    }

    /** How many rounds of contacts there are at most. */
    public static final int MOST_ROUNDS = 100;

    /** Ask about plants, by every route, without contacts. */
    public static RecallQuestion of(LocalDate asOf, Tag... tags) {
        return new RecallQuestion(
                List.of(tags),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0,
                false,
                Optional.empty(),
                Route.ALL,
                false,
                true,
                false,
                asOf);
    }

    /** Tell whether a recall goes by a link. */
    boolean follows(Link link) {
        return routes.contains(Route.of(link.act())) && (!clonal || link.act().keepsTheClone());
    }

    /** Tell whether a recall goes from one unit of a consignment to the others. */
    boolean followsConsignments() {
        return routes.contains(Route.CONSIGNMENTS) && !clonal;
    }

    /** Return how often it goes on from suspects to others that are not related. */
    public int steps() {
        return rounds > 0 ? rounds : tools ? 1 : 0;
    }
}
