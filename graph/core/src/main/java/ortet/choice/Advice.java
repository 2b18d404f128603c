package ortet.choice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What to do with one mother.
 *
 * @param mother her key
 * @param years what is done with her, by year from this one on; ends early when she is sold
 * @param worth what her plan adds, how severe its deeds are left aside: its trees, her own worth and what it costs, all means at what they are worth to the
 *     plan; below 0 where she is only in the way
 * @param sureness how sure this year's deed is
 * @param next the next best deed this year; absent when nothing else is possible
 * @param reasons why
 */
public record Advice(
        String mother,
        List<Planned> years,
        double worth,
        Sureness sureness,
        Optional<Alternative> next,
        Reasons reasons) {
    public Advice {
        Objects.requireNonNull(mother);
        years = List.copyOf(years);
        Objects.requireNonNull(sureness);
        Objects.requireNonNull(next);
        Objects.requireNonNull(reasons);
    }

    /** Return what to do this year. */
    public Planned now() {
        return years.get(0);
    }
}
