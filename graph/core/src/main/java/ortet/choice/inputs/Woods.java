package ortet.choice.inputs;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import ortet.choice.Growth;
import ortet.choice.Wood;
import ortet.value.Decimal;

/** Tells what a mother carries, band by band, this season and later. */
final class Woods {
    private static final int ENOUGH = 3;
    private static final List<MotherBand> USUAL = List.of(band("6", "10"), band("10", "16"), band("16", "25"));

    private final List<MotherBand> bands;
    private final Regrowth regrowth;
    private final int firstYear;
    private final int years;

    /**
     * What a mother carries when she has had years enough.
     *
     * @param full by band
     * @param from where that comes from
     * @param behind how many mothers or settings stand behind it
     * @param of which these are
     * @param spread the standard deviation of its logarithm; 0 where it was measured
     */
    record Full(double[] full, Candidate.WoodFrom from, int behind, String of, double spread) {}

    Woods(List<MotherBand> bands, Regrowth regrowth, int firstYear, int years) {
        this.bands = bands;
        this.regrowth = regrowth;
        this.firstYear = firstYear;
        this.years = years;
    }

    private static MotherBand band(String low, String high) {
        return new MotherBand(Decimal.parse(low), Decimal.parse(high));
    }

    /** Return the bands in which positions were last counted, or usual ones where nobody counted. */
    static List<MotherBand> bands(Iterable<MotherDiary> diaries) {
        TreeSet<MotherBand> found = new TreeSet<>();
        diaries.forEach(diary ->
                diary.last().ifPresent(one -> found.addAll(one.positions().keySet())));
        return found.isEmpty() ? USUAL : List.copyOf(found);
    }

    /** Return the band of a stem, the nearest where none holds it. */
    int at(double mm) {
        int nearest = 0;
        double distance = Double.POSITIVE_INFINITY;
        for (int at = 0; at < bands.size(); at++) {
            MotherBand band = bands.get(at);
            if (band.holds(mm)) {
                return at;
            }
            double away = Math.min(
                    Math.abs(mm - band.lowMm().value().doubleValue()),
                    Math.abs(mm - band.highMm().value().doubleValue()));
            if (away < distance) {
                distance = away;
                nearest = at;
            }
        }
        return nearest;
    }

    /** Return what a mother carried when she was counted last, for one who has had years enough. */
    Optional<double[]> measured(MotherDiary diary) {
        return diary.last().map(counting -> {
            double share = Math.max(0.2, regrowth.share(Regrowth.years(diary, counting.season())));
            double[] full = new double[bands.size()];
            counting.positions().forEach((band, count) -> full[bands.indexOf(band)] = count / share);
            return full;
        });
    }

    /** Return what a mother carries when she has had years enough, measured or expected. */
    Full full(MotherDiary diary, List<Regrowth.Circle> circles) {
        Optional<double[]> own = measured(diary);
        if (own.isPresent()) {
            return new Full(own.get(), Candidate.WoodFrom.MEASURED, 1, "her own counting", 0);
        }
        for (Regrowth.Circle circle : circles) {
            List<MotherDiary> counted = circle.diaries().stream()
                    .filter(other -> other.last().isPresent())
                    .toList();
            if (counted.size() >= ENOUGH) {
                return expected(diary, counted, circle.name());
            }
        }
        List<Regrowth.Circle> wider = new ArrayList<>();
        wider.add(new Regrowth.Circle("her own seasons", List.of(diary)));
        wider.addAll(circles);
        for (Regrowth.Circle circle : wider) {
            double[] sums = new double[bands.size()];
            int seasons = 0;
            for (MotherDiary other : circle.diaries()) {
                seasons += other.layered().size();
                for (MotherDiary.Setting setting : other.settings) {
                    sums[setting.stemMm().map(this::at).orElse(bands.size() / 2)] += setting.count();
                }
            }
            if (seasons > 0) {
                int all = seasons;
                return new Full(
                        Arrays.stream(sums).map(sum -> sum / all).toArray(),
                        Candidate.WoodFrom.SET_BEFORE,
                        seasons,
                        circle.name(),
                        0.5);
            }
        }
        return new Full(new double[bands.size()], Candidate.WoodFrom.NOTHING, 0, "nothing", 0);
    }

    /** Expect the mean of others, in proportion to the stems where all are known. */
    private Full expected(MotherDiary diary, List<MotherDiary> counted, String of) {
        double[] sums = new double[bands.size()];
        double stems = 0;
        int known = 0;
        for (MotherDiary other : counted) {
            double[] full = measured(other).orElseThrow();
            for (int at = 0; at < sums.length; at++) {
                sums[at] += full[at];
            }
            if (other.stemMm.isPresent()) {
                stems += other.stemMm.get();
                known++;
            }
        }
        double ratio = diary.stemMm.isPresent() && known > 0
                ? Math.max(0.5, Math.min(2, diary.stemMm.get() * known / stems))
                : 1;
        double[] full =
                Arrays.stream(sums).map(sum -> ratio * sum / counted.size()).toArray();
        double mean = Arrays.stream(sums).sum() / counted.size();
        double squares = counted.stream()
                .mapToDouble(other -> {
                    double total = Arrays.stream(measured(other).orElseThrow()).sum();
                    double away = Math.log((total + 0.5) / (mean + 0.5));
                    return away * away;
                })
                .sum();
        return new Full(
                full,
                Candidate.WoodFrom.OTHERS,
                counted.size(),
                of,
                Math.sqrt(squares / Math.max(1, counted.size() - 1)));
    }

    /**
     * Return what a mother carries, now and later.
     *
     * @param growthMm by how much branches thicken in a year, 0 where nobody listed it
     * @param cuttings how many cuttings her wood makes when she has had years enough
     */
    Growth growth(MotherDiary diary, Full full, double growthMm, double cuttings) {
        int age = Regrowth.years(diary, firstYear);
        boolean setThisYear = diary.layered().contains(firstYear);
        double[] now = setThisYear ? new double[bands.size()] : now(diary, full, age);
        List<Wood> left = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            int years = setThisYear ? year : Math.min(Regrowth.FULL, age + year);
            left.add(wood(year == 0 ? now : later(now, full, years, year, growthMm), cuttings * regrowth.share(years)));
        }
        List<Wood> again = new ArrayList<>();
        for (int since = 1; since <= years; since++) {
            double share = regrowth.share(since);
            again.add(wood(Arrays.stream(full.full()).map(one -> one * share).toArray(), cuttings * share));
        }
        return new Growth(left, again, again);
    }

    private double[] now(MotherDiary diary, Full full, int age) {
        double[] now =
                Arrays.stream(full.full()).map(one -> one * regrowth.share(age)).toArray();
        Optional<MotherDiary.Counting> last = diary.last();
        boolean untouched = last.isPresent()
                && diary.croppedBefore(firstYear)
                        .map(season -> season < last.get().season())
                        .orElse(true);
        if (untouched) {
            int then = Regrowth.years(diary, last.get().season());
            double grown = regrowth.share(age) / Math.max(0.2, regrowth.share(then));
            last.get().positions().forEach((band, count) -> now[bands.indexOf(band)] = count * grown);
        }
        return now;
    }

    private double[] later(double[] now, Full full, int age, int year, double growthMm) {
        double[] shifted = now.clone();
        for (int step = 0; step < year; step++) {
            for (int at = bands.size() - 2; at >= 0; at--) {
                double moved =
                        shifted[at] * Math.min(1, growthMm / bands.get(at).width());
                shifted[at] -= moved;
                shifted[at + 1] += moved;
            }
        }
        // what has yet to come back comes back where it is missing, as it does after cropping
        double share = regrowth.share(age);
        double missing = Arrays.stream(full.full()).sum() * share
                - Arrays.stream(shifted).sum();
        double[] gaps = new double[shifted.length];
        for (int at = 0; at < gaps.length; at++) {
            gaps[at] = Math.max(0, full.full()[at] * share - shifted[at]);
        }
        double all = Arrays.stream(gaps).sum();
        for (int at = 0; at < gaps.length && missing > 0 && all > 0; at++) {
            shifted[at] += missing * gaps[at] / all;
        }
        return shifted;
    }

    private static Wood wood(double[] positions, double cuttings) {
        return new Wood(
                Arrays.stream(positions).mapToObj(one -> (int) Math.round(one)).toList(), (int) Math.round(cuttings));
    }
}
