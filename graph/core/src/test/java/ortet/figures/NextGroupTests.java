package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.junit.jupiter.api.Test;
import ortet.figures.BetaBinomial.Shapes;

/** The rate of a group to come: by hand, and by groups drawn one by one. */
class NextGroupTests {
    private static final List<Count> TWO = List.of(new Count(8, 10), new Count(4, 10));

    @Test
    void isBayesRuleWhereUnitsOfAGroupAreIndependent() {
        Shapes next = NextGroup.shapes(TWO, 0, NextGroup.NOTHING_KNOWN);
        assertEquals(12.5, next.alpha(), 1e-9);
        assertEquals(8.5, next.beta(), 1e-9);
        Shapes nothing = NextGroup.shapes(List.of(), 0, NextGroup.NOTHING_KNOWN);
        assertEquals(0.5, nothing.alpha(), 1e-12);
        assertEquals(0.5, nothing.beta(), 1e-12);
    }

    @Test
    void weighsGroupsAsByHand() {
        // at 1/9 ten units weigh as much as 10 / (1 + 9/9) = 5: 4 + 2 of 10, and 6.5 of 11 with the prior;
        // ρ* = 1/9 + 8/9/12 = 5/27, so that α + β = (1 − 5/27) / (5/27) = 4.4
        Shapes next = NextGroup.shapes(TWO, 1.0 / 9, NextGroup.NOTHING_KNOWN);
        assertEquals(6.5 / 11, next.mean(), 1e-12);
        assertEquals(4.4, next.alpha() + next.beta(), 1e-12);
        assertEquals(10, NextGroup.effective(TWO, 1.0 / 9), 1e-12);
    }

    @Test
    void tellsTheCorrelationAsTheAnalysisOfVarianceDoes() {
        // MSB 0.8, MSW 4/18, ten in a group: (0.8 − 4/18) / (0.8 + 9 · 4/18)
        double one = (0.8 - 4 / 18.0) / (0.8 + 9 * 4 / 18.0);
        assertEquals(one, NextGroup.correlation(List.of(TWO)).orElseThrow(), 1e-12);
        // twice the same set tells the same, from twice as many groups
        assertEquals(one, NextGroup.correlation(List.of(TWO, TWO)).orElseThrow(), 1e-12);
        assertEquals(2, NextGroup.degrees(List.of(TWO, TWO, List.of(new Count(3, 4)))));
        assertEquals(
                Optional.of(0.0),
                NextGroup.correlation(List.of(List.of(new Count(5, 10), new Count(5, 10)))),
                "groups more alike than chance would have it");
    }

    @Test
    void takesNoDifferenceBetweenSetsForOneBetweenGroups() {
        List<Count> high = List.of(new Count(9, 10), new Count(9, 10));
        List<Count> low = List.of(new Count(2, 10), new Count(2, 10));
        assertEquals(Optional.of(0.0), NextGroup.correlation(List.of(high, low)));
    }

    @Test
    void saysWhenTheCorrelationCannotBeTold() {
        assertEquals(Optional.empty(), NextGroup.correlation(List.of()));
        assertEquals(Optional.empty(), NextGroup.correlation(List.of(List.of(new Count(3, 4)))));
        assertEquals(Optional.empty(), NextGroup.correlation(List.of(List.of(new Count(0, 1), new Count(1, 1)))));
        assertEquals(Optional.empty(), NextGroup.correlation(List.of(List.of(new Count(4, 4), new Count(9, 9)))));
        assertEquals(Optional.of(1.0), NextGroup.correlation(List.of(List.of(new Count(4, 4), new Count(0, 9)))));
    }

    /** Many histories of eight seasons are drawn from one law, and a ninth: what was told of it must come as often as told. */
    @Test
    void isRightAsOftenAsItSays() {
        UniformRandomProvider random = new SplittableRandom(41)::nextLong;
        ContinuousDistribution.Sampler seasons = BetaDistribution.of(7, 3).createSampler(random);
        int repeats = 4_000;
        double told = 0;
        int came = 0;
        for (int repeat = 0; repeat < repeats; repeat++) {
            List<Count> history = new ArrayList<>();
            for (int season = 0; season < 8; season++) {
                history.add(drawn(30, seasons.sample(), random));
            }
            double correlation = NextGroup.correlation(List.of(history)).orElse(0.0);
            Shapes next = NextGroup.shapes(history, correlation, NextGroup.NOTHING_KNOWN);
            long wanted = Planning.largest(40, 0.9, Planning.betaBinomial(next));
            told += next.predict(40).atLeast(wanted);
            came += drawn(40, seasons.sample(), random).successes() >= wanted ? 1 : 0;
        }
        // the correlation itself is estimated from eight seasons: a plan of 90 % is kept in 88 to 92 of 100
        assertEquals(told / repeats, (double) came / repeats, 0.03);
        assertTrue(told / repeats >= 0.9);
    }

    private static Count drawn(int trials, double rate, UniformRandomProvider random) {
        int successes = 0;
        for (int trial = 0; trial < trials; trial++) {
            successes += random.nextDouble() < rate ? 1 : 0;
        }
        return new Count(successes, trials);
    }
}
