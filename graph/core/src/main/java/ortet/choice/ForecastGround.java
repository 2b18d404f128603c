package ortet.choice;

import java.util.List;

/**
 * What all simulations of a forecast stand on; nothing of it changes while they are drawn.
 *
 * @param past what the forecast goes by
 * @param sales what is sold
 * @param horizon the months
 * @param sizes in which size classes trees become saleable
 * @param layout how counts lie in arrays
 * @param together how much goes in one month because somebody grades it in one go
 * @param stages what is given of each stage, in their order
 */
record ForecastGround(
        ForecastPast past,
        ForecastSales sales,
        ForecastHorizon horizon,
        ForecastSizes sizes,
        ForecastLayout layout,
        ForecastTogether together,
        List<ForecastGiven> stages) {
    /** Return what is given of a stage. */
    ForecastGiven of(ForecastStage stage) {
        return stages.get(stage.ordinal());
    }

    /** Return the season of what begins in a month. */
    int season(int month) {
        return of(ForecastStage.GRADING).model().season(horizon.year(month));
    }

    /** Return the slot of a kind's cultivar. */
    int slot(int kind) {
        return layout.slot(past.kinds().get(kind).cultivar());
    }
}
