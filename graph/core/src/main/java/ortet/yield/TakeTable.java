package ortet.yield;

import java.util.List;
import java.util.Objects;
import ortet.value.Warning;

/**
 * The answer to a question about take.
 *
 * @param question what was asked
 * @param rows one for each group, sorted by what it is called, methods in their own order, what is not known last
 * @param total all of them together
 * @param weighed seed sown by weight, which is in no row
 * @param shared how many units were left out because they come from several mothers, one of whom was asked for
 * @param warnings where a rate may still change much
 */
public record TakeTable(
        TakeQuestion question,
        List<TakeRow> rows,
        TakeRow total,
        List<WeighedSowing> weighed,
        int shared,
        List<Warning> warnings) {
    public TakeTable {
        Objects.requireNonNull(question);
        rows = List.copyOf(rows);
        Objects.requireNonNull(total);
        weighed = List.copyOf(weighed);
        warnings = List.copyOf(warnings);
    }
}
