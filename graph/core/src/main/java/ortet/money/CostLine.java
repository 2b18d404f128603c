package ortet.money;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;

/**
 * One charge on a unit's timeline.
 *
 * @param tag the tag of the unit on which it was spent
 * @param entry the recorded order of the entry that tells of it; for time on a bench, of the one that put it there
 * @param day when; for time on a bench, from when
 * @param until the day on which time on a bench ended
 * @param charge what, and how much
 */
public record CostLine(Tag tag, long entry, LocalDate day, Optional<LocalDate> until, Charge charge) {
    public CostLine {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(day);
        Objects.requireNonNull(until);
        Objects.requireNonNull(charge);
    }
}
