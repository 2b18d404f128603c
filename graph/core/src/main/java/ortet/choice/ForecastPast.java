package ortet.choice;

import java.util.List;

/**
 * What a forecast goes by: how every unit raised here went through its stages, up to a day.
 *
 * @param asOf the cut-off day, in days since 1970
 * @param cultivars names; the last, if it is not known, is empty
 * @param kinds cultivars by method
 * @param sizes size classes
 * @param episodes of all units, those still in a stage among them
 * @param stock trees that stand saleable
 * @param leaving how graded trees left
 * @param boughtIn plants that grow here, were bought in, are not kept as stock and were never graded: nothing is forecast of
 *     them
 */
record ForecastPast(
        int asOf,
        List<String> cultivars,
        List<ForecastKind> kinds,
        List<String> sizes,
        List<ForecastEpisode> episodes,
        List<ForecastStock> stock,
        ForecastLeaving leaving,
        int boughtIn) {
    ForecastPast {
        cultivars = List.copyOf(cultivars);
        kinds = List.copyOf(kinds);
        sizes = List.copyOf(sizes);
        episodes = List.copyOf(episodes);
        stock = List.copyOf(stock);
    }

    /** Return the place of sold ungraded, after all size classes. */
    int ungraded() {
        return sizes.size();
    }
}
