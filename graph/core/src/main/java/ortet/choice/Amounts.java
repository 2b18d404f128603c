package ortet.choice;

import java.util.ArrayList;
import java.util.List;
import ortet.value.Require;

/**
 * How much there is of something in each season of each year; the last year stands for all after it.
 *
 * @param years by year from this one on, and in it by season; each at least 0, at least one year, as many seasons in each
 */
public record Amounts(List<List<Double>> years) {
    public Amounts {
        Require.size(1, years, "amounts: years");
        List<List<Double>> copy = new ArrayList<>();
        for (List<Double> year : years) {
            Require.size(1, year, "amounts: seasons");
            Require.that(year.size() == years.get(0).size(), "amounts", "as many seasons in every year");
            year.forEach(one -> Checks.atLeastZero(one, "amount"));
            copy.add(List.copyOf(year));
        }
        years = List.copyOf(copy);
    }

    /** Return the same amounts in every year. */
    public static Amounts everyYear(List<Double> seasons) {
        return new Amounts(List.of(seasons));
    }

    /** Return the amount in a season of a year, both counted from 0. */
    public double at(int year, int season) {
        return Checks.lastRepeats(years, year).get(season);
    }

    int seasons() {
        return years.get(0).size();
    }
}
