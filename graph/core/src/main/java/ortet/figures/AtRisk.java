package ortet.figures;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Who was there, and what happened to whom, time after time: what every estimate from followed times is made of. */
final class AtRisk {
    /**
     * What happened at one time.
     *
     * @param atRisk how many were followed up to this time or longer
     * @param byCause how many left at this time, by cause; the first, of cause 0, were censored
     */
    record Moment(double time, long atRisk, long[] byCause) {
        long events() {
            long events = 0;
            for (int cause = 1; cause < byCause.length; cause++) {
                events += byCause[cause];
            }
            return events;
        }

        long of(int cause) {
            return byCause[cause];
        }

        long censored() {
            return byCause[Followed.CENSORED];
        }
    }

    private AtRisk() {}

    /** Return every time at which somebody left, the earliest first. Events come before censorings at the same time. */
    static List<Moment> moments(Collection<Followed> followed) {
        int causes = 1 + followed.stream().mapToInt(Followed::cause).max().orElse(0);
        TreeMap<Double, long[]> left = new TreeMap<>();
        for (Followed one : followed) {
            left.computeIfAbsent(one.time() + 0.0, time -> new long[causes])[one.cause()]++;
        }
        List<Moment> moments = new ArrayList<>();
        long atRisk = followed.size();
        for (Map.Entry<Double, long[]> entry : left.entrySet()) {
            moments.add(new Moment(entry.getKey(), atRisk, entry.getValue()));
            for (long gone : entry.getValue()) {
                atRisk -= gone;
            }
        }
        return moments;
    }
}
