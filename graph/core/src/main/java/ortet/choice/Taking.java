package ortet.choice;

import java.util.ArrayList;
import java.util.List;

/**
 * What share of what is set on one mother establishes, by year and scenario.
 *
 * @param layers by year and scenario
 * @param cuttings by year and scenario
 * @param meanLayers by year, over the scenarios
 * @param meanCuttings by year, over the scenarios
 */
record Taking(double[][] layers, double[][] cuttings, double[] meanLayers, double[] meanCuttings) {
    /** Return the shares on which a plan is made: the means of all draws, or the first draws one by one. */
    static Taking planned(Layout layout, Mother mother) {
        if (layout.scenarios > 1) {
            return of(layout, mother, 0, layout.scenarios);
        }
        int draws = draws(layout.question, mother);
        double[][] layers = new double[layout.years][1];
        double[][] cuttings = new double[layout.years][1];
        SeasonEffects seasons = layout.question.seasons();
        for (int year = 0; year < layout.years; year++) {
            for (int draw = 0; draw < draws; draw++) {
                layers[year][0] += mother.rates().layers(draw, seasons.layers(draw, year)) / draws;
                cuttings[year][0] += mother.rates().cuttings(draw, seasons.cuttings(draw, year)) / draws;
            }
        }
        return with(layers, cuttings);
    }

    /** Return the shares of one draw. */
    static Taking drawn(Layout layout, Mother mother, int draw) {
        return of(layout, mother, draw, 1);
    }

    private static Taking of(Layout layout, Mother mother, int first, int many) {
        double[][] layers = new double[layout.years][many];
        double[][] cuttings = new double[layout.years][many];
        SeasonEffects seasons = layout.question.seasons();
        for (int year = 0; year < layout.years; year++) {
            for (int at = 0; at < many; at++) {
                int draw = first + at;
                layers[year][at] = mother.rates().layers(draw, seasons.layers(draw, year));
                cuttings[year][at] = mother.rates().cuttings(draw, seasons.cuttings(draw, year));
            }
        }
        return with(layers, cuttings);
    }

    private static Taking with(double[][] layers, double[][] cuttings) {
        return new Taking(layers, cuttings, means(layers), means(cuttings));
    }

    private static double[] means(double[][] figures) {
        double[] means = new double[figures.length];
        for (int year = 0; year < means.length; year++) {
            for (double one : figures[year]) {
                means[year] += one / figures[year].length;
            }
        }
        return means;
    }

    private static int draws(ChoiceQuestion question, Mother mother) {
        List<Draws> all = new ArrayList<>(mother.rates().all());
        all.addAll(question.seasons().layers());
        all.addAll(question.seasons().cuttings());
        return all.stream().mapToInt(Draws::size).filter(size -> size > 1).min().orElse(1);
    }
}
