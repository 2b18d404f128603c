package ortet.nursery;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;

/**
 * The columns of a snapshot; each has one place for each unit number, from 0 on, unless said otherwise.
 *
 * @param nature the place in {@code UnitFacts.Nature}, -1 where there is no unit of that number
 * @param begun the day, see {@link Days}
 * @param links who comes from whom
 * @param beginningUnits the units that keep the clone of no other, ascending
 * @param beginnings how each of these began
 * @param pending how many are pending, -1 where nobody counted
 * @param growing how many grow
 * @param cohorts how units count for take
 * @param names twice the place of the name, and one more where it was determined; -1 where there is none
 * @param cultivars the names
 * @param sold how many were sold and have not come back
 * @param lives what happened to units
 * @param left the place in {@code UnitFacts.Reason} of the last leaving, -1 where there is none
 */
record Columns(
        byte[] nature,
        int[] begun,
        Optional<Links> links,
        Optional<int[]> beginningUnits,
        List<Beginning> beginnings,
        Optional<int[]> pending,
        Optional<int[]> growing,
        Optional<Cohorts> cohorts,
        Optional<int[]> names,
        List<CultivarName> cultivars,
        Optional<int[]> sold,
        Optional<Lives> lives,
        Optional<byte[]> left) {

    /** No columns at all. */
    static final Columns NONE = new Columns(
            new byte[0],
            new int[0],
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    boolean has(Part part) {
        return switch (part) {
            case LINKS -> links.isPresent();
            case BEGINNINGS -> beginningUnits.isPresent();
            case STANDINGS -> growing.isPresent();
            case COHORTS -> cohorts.isPresent();
            case NAMES -> names.isPresent();
            case LEAVINGS -> sold.isPresent();
            case LIVES -> lives.isPresent();
        };
    }

    long bytes() {
        long ints = begun.length;
        for (Optional<int[]> column : List.of(beginningUnits, pending, growing, names, sold)) {
            ints += column.map(numbers -> numbers.length).orElse(0);
        }
        // a list of constants: one reference of at most eight bytes for each
        return nature.length
                + Integer.BYTES * ints
                + (long) Long.BYTES * beginnings.size()
                + links.map(Links::bytes).orElse(0L)
                + cohorts.map(Cohorts::bytes).orElse(0L)
                + lives.map(Lives::bytes).orElse(0L)
                + left.map(reasons -> reasons.length).orElse(0);
    }
}
