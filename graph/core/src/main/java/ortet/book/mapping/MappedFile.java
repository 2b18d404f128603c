package ortet.book.mapping;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ortet.book.daybook.Source;
import ortet.entry.EntryKind;
import ortet.value.Where;

/**
 * A file that is read as one of the mapping's sheets.
 *
 * @param source the file
 * @param rules what the mapping says of it
 * @param header its header
 */
record MappedFile(Source source, SheetRules rules, CsvFile.Header header) {
    private static final Set<String> OUTCOMES =
            Vocabulary.OUTCOMES.stream().map(EntryKind::word).collect(Collectors.toUnmodifiableSet());

    /** The columns that may say a field when none of its own does. */
    private static final Map<String, List<String>> INSTEAD = Map.ofEntries(
            Map.entry(Meaning.MOTHERS, List.of(Meaning.MOTHER)),
            Map.entry(Meaning.MOTHER, List.of(Meaning.MOTHERS)),
            Map.entry("scion", List.of(Meaning.MOTHER)),
            Map.entry("seed_parent", List.of(Meaning.MOTHER)),
            Map.entry("source", List.of(Meaning.MOTHER)),
            Map.entry("stock", List.of("rootstock", Meaning.OTHER_PARENT)),
            Map.entry("stock_cultivar", List.of("rootstock", Meaning.OTHER_PARENT)),
            Map.entry("pollen_parent", List.of(Meaning.OTHER_PARENT)),
            Map.entry(Meaning.CULTIVAR, List.of(Meaning.EPITHET, Meaning.TAXON)),
            Map.entry("strength", List.of(Meaning.HORMONE)),
            Map.entry("carrier", List.of(Meaning.HORMONE)));

    /** Return a row as a place. */
    Where where(long line) {
        return new Where(source.shown(), line, Optional.empty());
    }

    /** Return the cell under a column as a place. */
    Where where(long line, String column) {
        return new Where(source.shown(), line, Optional.of(column));
    }

    /** Return the header's name of the column that says something, where there is one. */
    Optional<String> column(String act, String field) {
        return rules.column(act, field)
                .flatMap(rule -> header.position(rule.names()))
                .map(header.names()::get);
    }

    /** Return the cell that says something as a place: its column, else the outcome's or the tag's, else the row. */
    Where where(long line, String act, String field) {
        Optional<String> column = column(act, field)
                .or(() -> INSTEAD.getOrDefault(field, List.of()).stream()
                        .map(other -> column(act, other))
                        .flatMap(Optional::stream)
                        .findFirst());
        if (OUTCOMES.contains(act)) {
            column = column.or(() -> column(Meaning.OUTCOME, Meaning.DAY))
                    .or(() -> column(Meaning.OUTCOME, Meaning.OUTCOME));
        }
        return column.or(() -> column("", Meaning.TAGS))
                .map(name -> where(line, name))
                .orElse(where(line));
    }
}
