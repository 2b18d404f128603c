package ortet.lineage;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.entry.Words;
import ortet.nursery.Snapshot;
import ortet.plant.CultivarName;
import ortet.plant.Tag;

/**
 * How a unit stands on a day, in few words; a sport is told as a branch of its plant, whatever became of that.
 *
 * @param nature what it is
 * @param pending how many units are neither taken nor failed; absent where nobody counted
 * @param growing how many grow; of a sport none
 * @param sold how many were sold and have not come back
 * @param left why the last that did so left
 */
public record Stands(Nature nature, Optional<Integer> pending, int growing, int sold, Optional<Reason> left) {
    private static final QueryName QUESTION = new QueryName("stand-of-units");
    private static final int CHUNK = 5_000;

    public Stands {
        Objects.requireNonNull(nature);
        Objects.requireNonNull(pending);
        Objects.requireNonNull(left);
    }

    /** Return how a unit of a snapshot stands. */
    static Stands of(Snapshot snapshot, int unit) {
        int pending = snapshot.pending(unit);
        return of(
                snapshot.nature(unit),
                pending < 0 ? Optional.empty() : Optional.of(pending),
                snapshot.growing(unit),
                snapshot.sold(unit),
                snapshot.left(unit));
    }

    private static Stands of(Nature nature, Optional<Integer> pending, int growing, int sold, Optional<Reason> left) {
        return new Stands(nature, pending, nature == Nature.SPORT ? 0 : growing, sold, left);
    }

    /**
     * A unit as a book has it on a day.
     *
     * @param tag its tag then
     * @param stands how it stands
     * @param own the name that it bears by its own entries
     */
    record Known(Tag tag, Stands stands, Optional<CultivarName> own) {}

    /** Return how units stand on a day, by number. */
    static Map<Integer, Known> of(BookView view, List<Integer> units, LocalDate asOf) {
        Map<Integer, Known> found = new HashMap<>();
        for (int from = 0; from < units.size(); from += CHUNK) {
            String wanted = units.subList(from, Math.min(units.size(), from + CHUNK)).stream()
                    .map(Object::toString)
                    .collect(Collectors.joining(","));
            for (Rows.Row row :
                    view.ask(QUESTION, Parameters.NONE.with("units", wanted).with("as_of", asOf))) {
                boolean counted = row.whole("standing_order").isPresent();
                found.put(
                        row.whole("unit").orElseThrow().intValue(),
                        new Known(
                                new Tag(row.text("tag").orElseThrow()),
                                of(
                                        Words.parse(
                                                Nature.class, row.text("nature").orElseThrow()),
                                        counted ? row.whole("pending").map(Long::intValue) : Optional.of(0),
                                        row.whole("growing").orElseThrow().intValue(),
                                        row.whole("sold").orElseThrow().intValue(),
                                        row.text("reason").map(word -> Words.parse(Reason.class, word))),
                                row.text("cultivar").map(CultivarName::parse)));
            }
        }
        return found;
    }

    /** Tell whether anything is there. */
    public boolean isThere() {
        return nature == Nature.SPORT || growing > 0 || isPending();
    }

    /** Tell whether anything is neither taken nor failed. */
    public boolean isPending() {
        return pending.map(count -> count > 0).orElse(true);
    }

    /** Return this in words: {@code growing}, {@code 12 growing, 3 pending, 40 sold}, {@code failed}. */
    @Override
    public String toString() {
        if (nature == Nature.SPORT) {
            return left.isPresent() ? State.words(left.get()) : "a branch of its plant";
        }
        if (!isThere()) {
            String last = left.map(State::words).orElse("gone");
            String all = sold > 1 ? sold + " sold" : last;
            return nature == Nature.BATCH
                            && left.filter(reason -> reason != Reason.SOLD).isPresent()
                    ? "none left, the last " + last + (sold > 0 ? ", " + sold + " sold" : "")
                    : all;
        }
        StringBuilder text = new StringBuilder();
        if (growing > 0) {
            text.append(growing == 1 && nature != Nature.BATCH ? "growing" : growing + " growing");
        }
        if (isPending()) {
            String undecided = nature == Nature.LAYER
                    ? "on its mother"
                    : pending.map(count -> count == 1 && nature != Nature.BATCH ? "pending" : count + " pending")
                            .orElse("pending, not counted");
            text.append(text.length() == 0 ? "" : ", ").append(undecided);
        }
        return text.append(sold > 0 ? ", " + sold + " sold" : "").toString();
    }
}
