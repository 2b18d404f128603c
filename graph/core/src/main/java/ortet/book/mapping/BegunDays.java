package ortet.book.mapping;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.mapping.Deed.Turn;
import ortet.value.When;
import ortet.value.When.Precision;

/**
 * Finds out when units began and ended, also where no row says it.
 *
 * <p>What began on a day that nobody wrote down began at the latest in the first year in which something was done to it or
 * came from it.
 */
final class BegunDays {
    /** By the day on which the book places what begins nothing: the last that it may have been. */
    static final Comparator<When> BY_PLACE = Comparator.comparing(When::last).thenComparing(Comparator.naturalOrder());

    /** How many generations without a day are followed. */
    private static final int DEEPEST = 200;

    private final KeptRows kept;
    private final BookView book;
    private final boolean hasBook;
    private final Map<Unit, Optional<When>> begun = new IdentityHashMap<>();
    private final Set<Unit> beingDated = new HashSet<>();

    BegunDays(KeptRows kept, BookView book) {
        this.kept = kept;
        this.book = book;
        this.hasBook = book.head().lastUnit() > 0;
    }

    /** Return the day on which a unit began, where that can be told. */
    Optional<When> begun(Unit unit) {
        Optional<When> known = begun.get(unit);
        if (known == null) {
            if (beingDated.size() > DEEPEST || !beingDated.add(unit)) {
                return Optional.empty();
            }
            known = dated(unit);
            begun.put(unit, known);
            beingDated.remove(unit);
        }
        return known;
    }

    private Optional<When> dated(Unit unit) {
        if (unit.inBook().isPresent()) {
            return book.facts(unit.inBook().get()).map(facts -> facts.begun().day());
        }
        Optional<Deed> beginning = kept.beginning(unit);
        Optional<When> day = beginning.flatMap(Deed::day);
        if (day.isPresent()) {
            return day;
        }
        return beginning.flatMap(this::dayInBook).or(() -> earliest(unit));
    }

    private Optional<When> dayInBook(Deed deed) {
        return hasBook
                ? book.entry(deed.id("")).map(recorded -> recorded.proposed().day())
                : Optional.empty();
    }

    /** Return the earliest year in which a unit must have existed. */
    private Optional<When> earliest(Unit unit) {
        TreeSet<Integer> years = new TreeSet<>();
        kept.about(unit).stream()
                .map(Deed::day)
                .flatMap(Optional::stream)
                .forEach(day -> years.add(day.first().getYear()));
        for (Deed child : kept.children(unit)) {
            child.day()
                    .or(() -> child.subjects().stream()
                            .map(this::begun)
                            .flatMap(Optional::stream)
                            .min(Comparator.naturalOrder()))
                    .ifPresent(day -> years.add(day.first().getYear()));
        }
        if (years.isEmpty()) {
            return Optional.empty();
        }
        int year = years.first();
        int latest = kept.beginning(unit).stream()
                .flatMap(deed -> deed.parents().stream())
                .map(this::end)
                .flatMap(Optional::stream)
                .mapToInt(end -> end.first().getYear())
                .min()
                .orElse(year);
        return Optional.of(year(Math.min(year, latest)));
    }

    /** Return a year as a day of that precision. */
    static When year(int year) {
        return new When(LocalDate.of(year, 1, 1), Precision.YEAR);
    }

    /** Return when a unit went as a whole, where rows tell. */
    Optional<When> end(Unit unit) {
        return kept.about(unit).stream()
                .filter(deed -> deed.turn() == Turn.PLAIN || deed.turn() == Turn.DEAD)
                .filter(deed -> switch (deed.kind()) {
                    case SOLD, LOST, CULLED, FAILED -> !deed.texts().has(Meaning.COUNT);
                    default -> false;
                })
                .map(Deed::day)
                .flatMap(Optional::stream)
                .min(BY_PLACE);
    }

    /** Return the day of a deed about a unit, also one told by the year in which the unit began. */
    Optional<When> day(Deed deed, Unit unit) {
        if (deed.day().isPresent() || deed.relativeDay().isEmpty()) {
            return deed.day();
        }
        int later = deed.relativeDay().equals(CellReader.NEXT_YEAR) ? 1 : 0;
        return begun(unit).map(when -> year(when.first().getYear() + later));
    }
}
