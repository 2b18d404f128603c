package ortet.yield;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ortet.book.Rows;
import ortet.book.UnitFacts.Method;
import ortet.entry.Words;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.When;

/**
 * One unit that was set, struck, worked or sown, and how it stands: a row of the question {@code cohorts}.
 *
 * @param count how many were set under the tag; absent for seed sown by weight
 * @param mothers the tags of the plants that it is from, sorted; several mean one of them
 * @param movedOn how many went on under another tag before anybody knew
 * @param heard the last day on which it was set, seen or said to be still on
 */
record Sample(
        UnitNumber unit,
        Tag tag,
        Method method,
        When day,
        Optional<PersonNumber> by,
        Optional<CultivarName> cultivar,
        List<Tag> mothers,
        Optional<Integer> count,
        int taken,
        int failed,
        int withdrawn,
        int notSeen,
        int movedOn,
        int foundMore,
        LocalDate heard) {

    private static final String BETWEEN_MOTHERS = " \\+ ";

    static Sample of(Rows.Row row) {
        When day = new When(
                row.day("day").orElseThrow(() -> missing("day")),
                Words.parse(When.Precision.class, text(row, "precision")));
        LocalDate heard = Stream.of(row.day("still_on_day"), row.day("last_seen_day"))
                .flatMap(Optional::stream)
                .reduce(day.last(), (one, other) -> one.isAfter(other) ? one : other);
        return new Sample(
                new UnitNumber(whole(row, "unit")),
                new Tag(text(row, "tag")),
                Words.parse(Method.class, text(row, "method")),
                day,
                row.whole("by_person").map(number -> new PersonNumber(Math.toIntExact(number))),
                row.text("cultivar").map(CultivarName::parse),
                row.text("mothers").stream()
                        .flatMap(mothers -> Stream.of(mothers.split(BETWEEN_MOTHERS)))
                        .map(Tag::new)
                        .sorted()
                        .toList(),
                row.whole("count").map(Math::toIntExact),
                whole(row, "taken"),
                whole(row, "failed"),
                whole(row, "withdrawn"),
                whole(row, "not_seen"),
                whole(row, "moved_on"),
                whole(row, "found_more"),
                heard);
    }

    private static String text(Rows.Row row, String column) {
        return row.text(column).orElseThrow(() -> missing(column));
    }

    private static int whole(Rows.Row row, String column) {
        return Math.toIntExact(row.whole(column).orElseThrow(() -> missing(column)));
    }

    private static Defect missing(String column) {
        return new Defect("a cohort without " + column);
    }

    /** Tell whether many stood under one tag, so that they shared their luck. */
    boolean isBatch() {
        return switch (method) {
            case LAYER -> false;
            case GRAFT -> count.orElse(0) > 1;
            case CUTTING, SEED -> true;
        };
    }

    /** Return the season: the calendar year of the act, which a day known to the year alone tells too. */
    int season() {
        return day.first().getYear();
    }

    /** Return how many were set, as they are counted under this tag. */
    int set() {
        return count.orElse(0) + foundMore - movedOn;
    }

    /** Return how the units stand on a day. */
    Tally tally(LocalDate asOf, Periods periods) {
        int pending = set() - taken - failed - withdrawn;
        int open = pending - notSeen;
        if (open < 0) {
            throw new Defect("more came of " + tag + " than was set");
        }
        boolean overdue = asOf.isAfter(heard.plusWeeks(periods.weeks(method)));
        return new Tally(set(), taken, failed, withdrawn, pending, overdue ? pending : notSeen);
    }
}
