package ortet.timing;

import java.util.List;
import java.util.Objects;

/**
 * The answer to a question about how long rooting takes.
 *
 * @param question what was asked
 * @param rows one for each cultivar, by name, the one not known last
 * @param all all of them together
 */
public record TimingTable(TimingQuestion question, List<TimingRow> rows, TimingRow all) {
    public TimingTable {
        Objects.requireNonNull(question);
        rows = List.copyOf(rows);
        Objects.requireNonNull(all);
    }
}
