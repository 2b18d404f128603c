package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.book.UnitFacts;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * Answers where a plant comes from, and what the book says of it.
 *
 * <p>Both questions read the rows of the plant's own family alone. An entry counts from the first day that it may have
 * been; what was corrected or crossed out since is read as it stands now.
 */
public final class Lineage {
    /** How many units a trace tells of at most. */
    public static final int MOST_UNITS = 1000;

    private Lineage() {}

    /**
     * Trace a unit to its mothers and on to the ortet of its clone.
     *
     * @throws ortet.value.Refused when there is no such unit, or none yet on that day
     */
    public static Trace trace(BookView view, Tag tag, LocalDate asOf) {
        return trace(view, tag, asOf, MOST_UNITS);
    }

    /**
     * Trace a unit, telling of no more than so many units.
     *
     * @throws ortet.value.Refused when there is no such unit, or none yet on that day
     */
    public static Trace trace(BookView view, Tag tag, LocalDate asOf, int most) {
        UnitNumber unit = Lookup.unit(view, tag);
        return new Tracer(new Reading(view, asOf), unit, most).trace(tag);
    }

    /**
     * Return units at a glance, those that had begun by the day, in the order given.
     *
     * @param units units of the book
     */
    public static List<Glance> glances(BookView view, List<UnitNumber> units, LocalDate asOf) {
        Reading reading = new Reading(view, asOf);
        List<Glance> glances = new ArrayList<>();
        for (UnitNumber unit : units) {
            UnitFacts facts = reading.facts(unit);
            if (reading.counts(facts.begun().day())) {
                glances.add(new Glance(
                        unit,
                        reading.tag(unit),
                        reading.named(unit),
                        reading.state(unit),
                        facts.stays().stream()
                                .filter(stay -> reading.counts(stay.day()))
                                .reduce((before, after) -> after)
                                .map(UnitFacts.Stay::place)));
            }
        }
        return List.copyOf(glances);
    }

    /**
     * Return all that the book says of one unit.
     *
     * @throws ortet.value.Refused when there is no such unit, or none yet on that day
     */
    public static Account plant(BookView view, Tag tag, LocalDate asOf) {
        UnitNumber unit = Lookup.unit(view, tag);
        return new Teller(new Reading(view, asOf), unit).account(tag);
    }
}
