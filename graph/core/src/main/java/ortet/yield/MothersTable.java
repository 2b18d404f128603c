package ortet.yield;

import java.util.List;
import java.util.Objects;
import ortet.plant.Tag;

/**
 * The answer to a question about mothers.
 *
 * @param question what was asked
 * @param rows one for each mother, by cultivar, and within each by the lower limits of what is said of them, those of
 *     whom nothing is said last
 * @param pooled how they were told with the help of each other
 * @param several how many units come from one of several mothers, and are in no row
 * @param unknown how many units come from no mother that the book knows
 * @param untried plants kept as stock, of the cultivars asked for, of which nothing was ever taken by this method
 */
public record MothersTable(
        MothersQuestion question, List<MotherRow> rows, Pooled pooled, int several, int unknown, List<Tag> untried) {
    public MothersTable {
        Objects.requireNonNull(question);
        rows = List.copyOf(rows);
        Objects.requireNonNull(pooled);
        untried = List.copyOf(untried);
    }
}
