package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Seed sown by weight: nobody knows how many, so that it has seedlings but no rate.
 *
 * @param unit the sowing
 * @param tag its tag
 * @param day when it was sown
 * @param cultivar its name, where known
 * @param mothers the tags of the plants that bore the seed, where known
 * @param taken how many seedlings were counted or drawn
 * @param failed how many failed
 */
public record WeighedSowing(
        UnitNumber unit, Tag tag, When day, Optional<String> cultivar, List<Tag> mothers, int taken, int failed) {
    public WeighedSowing {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(day);
        Objects.requireNonNull(cultivar);
        mothers = List.copyOf(mothers);
    }
}
