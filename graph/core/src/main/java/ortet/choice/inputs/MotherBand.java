package ortet.choice.inputs;

import ortet.value.Decimal;

/**
 * A diameter band of positions.
 *
 * @param lowMm from this stem diameter in millimetres
 * @param highMm to this one
 */
public record MotherBand(Decimal lowMm, Decimal highMm) implements Comparable<MotherBand> {
    @Override
    public int compareTo(MotherBand other) {
        int byLow = lowMm.value().compareTo(other.lowMm.value());
        return byLow != 0 ? byLow : highMm.value().compareTo(other.highMm.value());
    }

    boolean holds(double mm) {
        return mm >= lowMm.value().doubleValue() && mm < highMm.value().doubleValue();
    }

    double width() {
        return highMm.value().subtract(lowMm.value()).doubleValue();
    }

    /** Return it as growers write it: {@code 10–16}. */
    @Override
    public String toString() {
        return lowMm + "–" + highMm;
    }
}
