package ortet.nursery;

import java.util.Objects;
import java.util.Optional;

/**
 * How units were set, struck, worked or sown, in the words of the day book; each is absent where nobody wrote it down.
 *
 * @param wood the kind of cutting
 * @param wound how the bark was cut for a layer
 * @param hormone active substance of the rooting hormone
 * @param strength its strength
 * @param carrier what carries it
 * @param medium what it roots in
 * @param wrap what the layer is wrapped in
 * @param place where it was put
 * @param stockAgeYears age of the stock plant in years
 * @param hedged whether the stock plant is kept cut back as a hedge
 */
public record Treatment(
        Optional<String> wood,
        Optional<String> wound,
        Optional<String> hormone,
        Optional<String> strength,
        Optional<String> carrier,
        Optional<String> medium,
        Optional<String> wrap,
        Optional<String> place,
        Optional<Integer> stockAgeYears,
        Optional<String> hedged) {
    /** The columns of the day book that tell it, in the order of the components. */
    static final String[] COLUMNS = {
        "wood", "wound", "hormone", "strength", "carrier", "medium", "wrap", "place", "stock_age_years", "hedged"
    };

    private static final String BETWEEN = "\u001f";

    public Treatment {
        Objects.requireNonNull(wood);
        Objects.requireNonNull(wound);
        Objects.requireNonNull(hormone);
        Objects.requireNonNull(strength);
        Objects.requireNonNull(carrier);
        Objects.requireNonNull(medium);
        Objects.requireNonNull(wrap);
        Objects.requireNonNull(place);
        Objects.requireNonNull(stockAgeYears);
        Objects.requireNonNull(hedged);
    }

    /** Read a treatment from its words, with the unit separator between them, as the question tells it. */
    static Treatment parse(String words) {
        return of(words.split(BETWEEN, -1));
    }

    static Treatment of(String[] words) {
        return new Treatment(
                word(words[0]),
                word(words[1]),
                word(words[2]),
                word(words[3]),
                word(words[4]),
                word(words[5]),
                word(words[6]),
                word(words[7]),
                word(words[8]).map(Integer::valueOf),
                word(words[9]));
    }

    private static Optional<String> word(String text) {
        return Optional.of(text).filter(word -> !word.isEmpty());
    }
}
