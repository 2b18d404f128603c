package ortet.choice;

import java.util.Objects;
import java.util.Optional;

/**
 * Why this is done with a mother this year, in figures.
 *
 * @param why the main reason
 * @param positions how many positions she has now
 * @param rate the share of layers set on her now that is expected to establish
 * @param trees how many saleable trees are expected, in all years, from what is set on her this year
 * @param sales what these are worth to the plan: at their price as far as demand goes, and less where it does not
 * @param spent what this year's deed costs in money: going to her, setting and raising
 * @param means what the scarce hours, room and rights for that would be worth elsewhere
 * @param scarcest the dearest of these means; absent when none is scarce
 * @param learning what a trial on her would teach is worth; 0 where there is none to make
 */
public record Reasons(
        Why why,
        int positions,
        double rate,
        double trees,
        double sales,
        double spent,
        double means,
        Optional<Resource> scarcest,
        double learning) {
    public Reasons {
        Objects.requireNonNull(why);
        Objects.requireNonNull(scarcest);
    }
}
