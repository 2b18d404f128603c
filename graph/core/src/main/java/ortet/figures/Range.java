package ortet.figures;

import ortet.value.Defect;

/**
 * Where a figure lies that the data do not place any closer. Not an interval of confidence: no chance is in it.
 *
 * @param lower the lower end
 * @param upper the upper end, at least the lower; {@code Infinity} where there is none
 */
public record Range(double lower, double upper) {
    public Range {
        if (!(lower <= upper)) {
            throw new Defect("no range from " + lower + " to " + upper);
        }
    }
}
