package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/**
 * Outside values: Weil's rats, Table 1 of Rao & Scott 1992, Biometrics 48:577 (counts from memory), whose design effects
 * the documentation of the R package PF gives as 1.232495 and 3.952861.
 */
class ClusteredTests {
    /** Pups that lived to weaning, of those alive at four days, by litter. */
    private static final Clustered CONTROL = litters(
            13, 13, 12, 12, 9, 9, 9, 9, 8, 8, 8, 8, 12, 13, 11, 12, 9, 10, 9, 10, 8, 9, 11, 13, 4, 5, 5, 7, 7, 10, 7,
            10);

    private static final Clustered TREATED = litters(
            12, 12, 11, 11, 10, 10, 9, 9, 10, 11, 9, 10, 9, 10, 8, 9, 8, 9, 4, 5, 7, 9, 4, 7, 5, 10, 3, 6, 3, 10, 0, 7);

    private static Clustered litters(int... livedOf) {
        List<Count> clusters = new ArrayList<>();
        for (int i = 0; i < livedOf.length; i += 2) {
            clusters.add(new Count(livedOf[i], livedOf[i + 1]));
        }
        return Clustered.of(clusters);
    }

    private static Clustered.Widening widening(Clustered clustered) {
        return clustered.widening().orElseThrow();
    }

    @Test
    void agreesWithTheDesignEffectsOfWeilsRats() {
        assertEquals(1.232495, widening(CONTROL).designEffect(), 0.5e-6);
        assertEquals(3.952861, widening(TREATED).designEffect(), 0.5e-6);
        assertEquals(16, TREATED.clusters());
        assertEquals(Clustered.Basis.ESTIMATED, widening(TREATED).basis());
        assertEquals(TREATED.total().trials() / 3.952861, widening(TREATED).effective(), 1e-4);
    }

    @Test
    void worksOutThreeTraysByHand() {
        // 50, 40 and 0 of 60: p = 1/2; squares 20² + 10² + 30² = 1400; v = 3/2 · 1400 / 180²
        Clustered trays = Clustered.of(List.of(new Count(50, 60), new Count(40, 60), new Count(0, 60)));
        assertEquals(Math.sqrt(1.5 * 1400 / 32400), trays.standardError().orElseThrow(), 1e-15);
        double designEffect = 1.5 * 1400 / 32400 / (0.25 / 180);
        assertEquals(designEffect, widening(trays).designEffect(), 1e-12);
        assertEquals(2, widening(trays).degrees(), 1e-12);
        assertEquals((designEffect - 1) / 59, trays.correlation().orElseThrow(), 1e-14);
        // Student's t on 2 degrees of freedom has a quantile in closed form; tables print 4.303
        double t = 0.95 * Math.sqrt(2 / (1 - 0.95 * 0.95));
        double n = 180 / designEffect;
        double half = t * Math.sqrt(0.25 / n + t * t / (4 * n * n)) / (1 + t * t / n);
        Interval interval = trays.interval(0.95).orElseThrow().interval();
        assertEquals(0.5 - half, interval.lower(), 1e-12);
        assertEquals(0.5 + half, interval.upper(), 1e-12);
        assertEquals(Interval.Method.WILSON_CLUSTERED, interval.method());
    }

    @Test
    void neverCountsClustersAsSayingMoreThanTheirUnits() {
        Clustered alike = Clustered.of(List.of(new Count(30, 60), new Count(30, 60), new Count(30, 60)));
        assertEquals(1, widening(alike).designEffect());
        assertEquals(180, widening(alike).effective());
        assertEquals(Clustered.Basis.NO_MORE_THAN_CHANCE, widening(alike).basis());
        assertEquals(Optional.of(0.0), alike.correlation());
    }

    @Test
    void countsEachClusterAsOneWhereAllFaredAlike() {
        Clustered all = Clustered.of(List.of(new Count(60, 60), new Count(60, 60), new Count(40, 40)));
        assertEquals(3, widening(all).effective());
        assertEquals(Clustered.Basis.ALL_ALIKE, widening(all).basis());
        assertEquals(Optional.empty(), all.correlation());
        assertEquals(1, all.interval(0.95).orElseThrow().interval().upper());
        assertEquals(
                0,
                Clustered.of(List.of(new Count(0, 60), new Count(0, 60)))
                        .interval(0.95)
                        .orElseThrow()
                        .interval()
                        .lower());
    }

    @Test
    void claimsNoWideningFromOneCluster() {
        Clustered one = Clustered.of(List.of(new Count(45, 60), new Count(0, 0)));
        assertEquals(1, one.clusters());
        assertTrue(one.widening().isEmpty()
                && one.standardError().isEmpty()
                && one.correlation().isEmpty());
        Clustered.Answer answer = one.interval(0.95).orElseThrow();
        assertInstanceOf(Clustered.AsIfIndependent.class, answer);
        assertEquals(Wilson.interval(new Count(45, 60), 0.95).orElseThrow(), answer.interval());
        Clustered.Answer difference = Clustered.difference(TREATED, one, 0.95).orElseThrow();
        assertInstanceOf(Clustered.AsIfIndependent.class, difference);
        assertEquals(
                Newcombe.difference(TREATED.total(), new Count(45, 60), 0.95).orElseThrow(), difference.interval());
    }

    @Test
    void isAbsentWhenNothingIsKnown() {
        Clustered nobody = Clustered.of(List.of(new Count(0, 0)));
        assertTrue(nobody.share().isEmpty() && nobody.interval(0.95).isEmpty());
        assertTrue(Clustered.difference(nobody, TREATED, 0.95).isEmpty());
        assertTrue(Clustered.difference(TREATED, nobody, 0.95).isEmpty());
    }

    @Test
    void putsTheLimitsOfBothSidesTogetherAsNewcombeDoes() {
        Interval first = CONTROL.interval(0.95).orElseThrow().interval();
        Interval second = TREATED.interval(0.95).orElseThrow().interval();
        double p1 = CONTROL.share().orElseThrow();
        double p2 = TREATED.share().orElseThrow();
        Clustered.Answer answer = Clustered.difference(CONTROL, TREATED, 0.95).orElseThrow();
        assertInstanceOf(Clustered.Widened.class, answer);
        assertEquals(
                p1 - p2 - Math.sqrt(Math.pow(p1 - first.lower(), 2) + Math.pow(second.upper() - p2, 2)),
                answer.interval().lower(),
                1e-14);
        Interval turned =
                Clustered.difference(TREATED, CONTROL, 0.95).orElseThrow().interval();
        assertEquals(-answer.interval().lower(), turned.upper(), 1e-14);
        assertTrue(answer.interval().width()
                > Newcombe.difference(CONTROL.total(), TREATED.total(), 0.95)
                        .orElseThrow()
                        .width());
    }

    @Property(tries = 300)
    void isNeverNarrowerThanIndependentUnitsAndDoesNotHeedTheOrder(
            @ForAll @IntRange(min = 2, max = 12) int clusters, @ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        List<Count> counts = new ArrayList<>();
        for (int i = 0; i < clusters; i++) {
            int size = random.nextInt(80);
            counts.add(new Count(random.nextInt(size + 1), size));
        }
        Clustered one = Clustered.of(counts);
        if (one.clusters() < 2) {
            return;
        }
        Interval interval = one.interval(0.95).orElseThrow().interval();
        Interval naive = Wilson.interval(one.total(), 0.95).orElseThrow();
        assertTrue(interval.lower() <= naive.lower() && interval.upper() >= naive.upper());
        assertTrue(interval.holds(one.share().orElseThrow()));
        Collections.shuffle(counts, random);
        Interval shuffled = Clustered.of(counts).interval(0.95).orElseThrow().interval();
        assertEquals(interval.lower(), shuffled.lower(), 1e-12);
        Clustered failures = Clustered.of(counts.stream().map(Count::failures).toList());
        assertEquals(
                1 - interval.upper(),
                failures.interval(0.95).orElseThrow().interval().lower(),
                1e-12);
        assertEquals(one.standardError().orElseThrow(), failures.standardError().orElseThrow(), 1e-12);
    }
}
