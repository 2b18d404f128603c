package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * What the seasons to come do to the take of everything, on the scale of log odds, as draws.
 *
 * @param layers by year from this one on; empty for no effect; the last stands for all after it
 * @param cuttings likewise
 */
public record SeasonEffects(List<Draws> layers, List<Draws> cuttings) {
    /** Every season like another. */
    public static final SeasonEffects NONE = new SeasonEffects(List.of(), List.of());

    public SeasonEffects {
        layers = List.copyOf(layers);
        cuttings = List.copyOf(cuttings);
        for (List<Draws> list : List.of(layers, cuttings)) {
            list.forEach(draws -> Require.that(draws.allMatch(Double::isFinite), "effect of a season", "finite"));
        }
    }

    double layers(int draw, int year) {
        return layers.isEmpty() ? 0 : Checks.lastRepeats(layers, year).at(draw);
    }

    double cuttings(int draw, int year) {
        return cuttings.isEmpty() ? 0 : Checks.lastRepeats(cuttings, year).at(draw);
    }
}
