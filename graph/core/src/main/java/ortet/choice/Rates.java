package ortet.choice;

import java.util.List;
import java.util.Objects;
import ortet.value.Require;

/**
 * How one mother's layers and cuttings take and establish, as draws from their posterior distribution.
 *
 * <p>In draw d and year t a layer becomes an established tree with probability
 * logistic(layerTake[d] + season[d][t]) · layerEstablish[d]; cuttings likewise. The effect of a season is shared by all
 * mothers, see {@link SeasonEffects}.
 *
 * @param layerTake take of layers on the scale of log odds, in an ordinary season
 * @param layerEstablish share of the layers taken that establish, 0 to 1
 * @param cuttingTake take of cuttings on the scale of log odds
 * @param cuttingEstablish share of the cuttings taken that establish, 0 to 1
 * @param wood by what to multiply her positions and cuttings, rounded to the nearest whole number, above 0; 1 where they
 *     were measured. Used for how sure the plan is, not for the plan
 */
public record Rates(Draws layerTake, Draws layerEstablish, Draws cuttingTake, Draws cuttingEstablish, Draws wood) {
    public Rates {
        Objects.requireNonNull(layerTake);
        Objects.requireNonNull(cuttingTake);
        Require.that(layerEstablish.allMatch(p -> p >= 0 && p <= 1), "establishing of layers", "0 to 1");
        Require.that(cuttingEstablish.allMatch(p -> p >= 0 && p <= 1), "establishing of cuttings", "0 to 1");
        Require.that(wood.allMatch(f -> f > 0 && f < Double.POSITIVE_INFINITY), "factor of wood", "above 0");
    }

    /** Return rates that are known: shares of layers and cuttings set that establish. */
    public static Rates known(double layers, double cuttings) {
        Draws certain = Draws.of(Double.POSITIVE_INFINITY);
        return new Rates(certain, Draws.of(layers), certain, Draws.of(cuttings), Draws.of(1));
    }

    List<Draws> all() {
        return List.of(layerTake, layerEstablish, cuttingTake, cuttingEstablish, wood);
    }

    double layers(int draw, double season) {
        return logistic(layerTake.at(draw) + season) * layerEstablish.at(draw);
    }

    double cuttings(int draw, double season) {
        return logistic(cuttingTake.at(draw) + season) * cuttingEstablish.at(draw);
    }

    private static double logistic(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }
}
