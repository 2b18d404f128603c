package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.value.Warning;

/**
 * The answer to a comparison.
 *
 * @param question what was asked
 * @param rows one comparison, or one for each cultivar or taxon of which both sides were set, by name
 * @param oneSided cultivars or taxa of which only one side was set
 * @param shared how many units were left out because they come from several mothers, one of whom was asked for
 * @param noCosts why no costs are told, where there are saleable trees
 * @param warnings what is odd
 */
public record ComparisonTable(
        CompareQuestion question,
        List<Comparison> rows,
        List<Group> oneSided,
        int shared,
        Optional<String> noCosts,
        List<Warning> warnings) {
    public ComparisonTable {
        Objects.requireNonNull(question);
        rows = List.copyOf(rows);
        oneSided = List.copyOf(oneSided);
        Objects.requireNonNull(noCosts);
        warnings = List.copyOf(warnings);
    }
}
