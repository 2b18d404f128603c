package ortet.book.mapping;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.book.BookView;
import ortet.book.UnitFacts;
import ortet.book.mapping.Deed.Turn;
import ortet.entry.EntryKind;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Finds out whether and when units took, also where no row says it: what was handled as a tree, or gave wood, must have
 * taken before.
 */
final class Takings {
    /**
     * How a unit must take.
     *
     * @param way how
     * @param isSingle whether it is one plant
     */
    record Raising(Way way, boolean isSingle) {}

    /**
     * What is known of how a unit took.
     *
     * @param way how it must take
     * @param took whether it did
     * @param day when, where no entry of the rows says it
     * @param by the deed that tells it, or shows it
     * @param isImplied whether nothing tells it, so that an entry must be made up for it
     */
    record Taking(Way way, boolean took, Optional<When> day, Optional<Deed> by, boolean isImplied) {}

    private final KeptRows kept;
    private final BegunDays days;
    private final BookView book;
    private final boolean hasBook;
    private final Map<Unit, Taking> takings = new IdentityHashMap<>();

    Takings(KeptRows kept, BegunDays days, BookView book) {
        this.kept = kept;
        this.days = days;
        this.book = book;
        this.hasBook = book.head().lastUnit() > 0;
    }

    /** Return how a unit took; empty for one that is not there, or has no beginning that holds. */
    Optional<Taking> taking(Unit unit) {
        boolean isThere = kept.beginning(unit).isPresent() || unit.inBook().isPresent() || unit.isAcquired();
        return isThere ? Optional.of(takings.computeIfAbsent(unit, this::worked)) : Optional.empty();
    }

    Raising way(Unit unit) {
        Optional<Deed> beginning = kept.beginning(unit);
        if (beginning.isPresent()) {
            String count = beginning.get().texts().get(Meaning.COUNT);
            boolean single = (count.isEmpty() || count.equals("1"))
                    && !beginning.get().texts().has("grams");
            return new Raising(Way.of(beginning.get().kind()), single);
        }
        return unit.inBook().flatMap(book::facts).map(Takings::way).orElse(new Raising(Way.GROWN, true));
    }

    private static Raising way(UnitFacts facts) {
        int pending = pending(facts);
        if (facts.nature() == UnitFacts.Nature.LAYER) {
            return new Raising(Way.LAYER, true);
        }
        boolean isGraft = facts.nature() == UnitFacts.Nature.PLANT;
        return pending == 0
                ? new Raising(Way.GROWN, true)
                : new Raising(isGraft ? Way.GRAFT : Way.SOWN_OR_STRUCK, pending == 1);
    }

    private static int pending(UnitFacts facts) {
        UnitFacts.Standing last = facts.standings().get(facts.standings().size() - 1);
        return last.pending().orElse(Integer.MAX_VALUE);
    }

    private Taking worked(Unit unit) {
        Raising how = way(unit);
        Way way = how.way();
        List<Deed> about = kept.about(unit);
        if (way == Way.GROWN) {
            return new Taking(way, true, Optional.empty(), Optional.empty(), false);
        }
        boolean isTold = about.stream().anyMatch(deed -> deed.turn() == Turn.PLAIN && way.takesBy(deed));
        boolean hasFailed = about.stream()
                .anyMatch(deed -> deed.turn() == Turn.PLAIN
                        && (deed.kind() == EntryKind.FAILED && !deed.texts().has(Meaning.COUNT)
                                || deed.texts().get("roots").equals("none")));
        Optional<Deed> firstTaking = about.stream()
                .filter(deed -> deed.turn() == Turn.TAKING)
                .min(Comparator.comparing(
                        deed -> days.day(deed, unit).map(When::last).orElse(LocalDate.MAX)));
        Optional<When> death = about.stream()
                .filter(deed -> deed.turn() == Turn.DEAD)
                .map(deed -> days.day(deed, unit))
                .flatMap(Optional::stream)
                .min(BegunDays.BY_PLACE);
        Optional<Deed> shown = about.stream()
                .filter(deed -> deed.turn() == Turn.PLAIN && way.isShownBy(deed)
                        || deed.turn() == Turn.GROWING && deed.day().isPresent())
                .filter(deed -> isBefore(days.day(deed, unit), death))
                .min(Comparator.comparing((Deed deed) -> days.day(deed, unit).orElseThrow(), BegunDays.BY_PLACE));
        Optional<When> evidence = shown.flatMap(deed -> days.day(deed, unit));
        Optional<Deed> shownBy = shown;
        for (Deed child : kept.children(unit)) {
            Optional<When> when = child.day()
                    .or(() -> child.subjects().stream().findFirst().flatMap(days::begun))
                    .map(Takings::before);
            if (when.isPresent()
                    && isBefore(when, death)
                    && (evidence.isEmpty() || BegunDays.BY_PLACE.compare(when.get(), evidence.get()) < 0)) {
                evidence = when;
                shownBy = Optional.of(child);
            }
        }
        boolean isGrowing = about.stream().anyMatch(deed -> deed.turn() == Turn.GROWING);
        boolean took = isTold || firstTaking.isPresent() || isGrowing || evidence.isPresent();
        boolean mayBeImplied = took && !isTold && !hasFailed && how.isSingle() && !isTakenInBook(unit);
        if (!mayBeImplied) {
            return new Taking(way, took, Optional.empty(), Optional.empty(), false);
        }
        Optional<When> day = firstTaking.flatMap(deed -> days.day(deed, unit)).or(() -> given(unit, way));
        if (day.isEmpty() || evidence.isPresent() && BegunDays.BY_PLACE.compare(evidence.get(), day.get()) < 0) {
            boolean isFromRow =
                    firstTaking.isPresent() && firstTaking.get().day().isPresent();
            day = isFromRow ? day : evidence;
        }
        if (way == Way.LAYER && day.isPresent()) {
            When so = day.get();
            Optional<When> mothersEnd = kept.beginning(unit).stream()
                    .flatMap(deed -> deed.parents().stream())
                    .map(days::end)
                    .flatMap(Optional::stream)
                    .filter(end -> BegunDays.BY_PLACE.compare(end, so) < 0)
                    .findFirst();
            boolean isFromRow =
                    firstTaking.isPresent() && firstTaking.get().day().isPresent();
            day = isFromRow ? day : mothersEnd.or(() -> Optional.of(so));
        }
        return new Taking(
                way,
                true,
                day,
                firstTaking.isPresent() ? firstTaking : shownBy.or(() -> growing(about)),
                firstTaking.isEmpty());
    }

    /** Tell whether something was not after a death; what comes after cannot show that it took. */
    private static boolean isBefore(Optional<When> day, Optional<When> death) {
        return day.isPresent() && (death.isEmpty() || BegunDays.BY_PLACE.compare(day.get(), death.get()) <= 0);
    }

    /**
     * Return the day, month or year before: of one day the book reads what gives wood before what takes, so that a plant
     * must have taken before the day on which something came from it.
     */
    private static When before(When when) {
        LocalDate first = when.first();
        return new When(
                switch (when.precision()) {
                    case DAY -> first.minusDays(1);
                    case MONTH -> first.minusMonths(1);
                    case YEAR -> first.minusYears(1);
                },
                when.precision());
    }

    private static Optional<Deed> growing(List<Deed> about) {
        return about.stream().filter(deed -> deed.turn() == Turn.GROWING).findFirst();
    }

    private boolean isTakenInBook(Unit unit) {
        if (!hasBook) {
            return false;
        }
        Optional<UnitNumber> number = unit.inBook().or(() -> book.unit(new Tag(unit.tag())));
        return number.flatMap(book::facts).map(facts -> pending(facts) == 0).orElse(false);
    }

    /** Return the day that the mapping gives for taking, where the row's own sheet does. */
    private Optional<When> given(Unit unit, Way way) {
        return kept.beginning(unit)
                .map(deed -> deed.row().file().rules())
                .flatMap(rules -> rules.fixed(way == Way.LAYER ? "severed" : "taken", Meaning.DAY)
                        .or(() -> rules.fixed(Meaning.OUTCOME, Meaning.DAY)))
                .flatMap(fixed -> {
                    Deed.Builder as =
                            new Deed.Builder(kept.beginning(unit).orElseThrow().row(), "", way.taking());
                    return days.day(as.day(fixed.text()).build(), unit);
                });
    }
}
