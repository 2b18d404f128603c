package ortet.book.mapping;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What the mapping says of one sheet.
 *
 * @param line where in the mapping
 * @param name what it calls the sheet: the identities of the entries hold to it
 * @param files the names of files that are this sheet, with {@code *} for any letters and {@code ?} for one
 * @param shape what a row is
 * @param settings how it is read
 * @param columns what its columns mean
 * @param otherwise what holds where no cell says it
 * @param leftOut columns that are left out on purpose, folded
 * @param skips rows that are left out
 */
record SheetRules(
        long line,
        String name,
        List<String> files,
        Shape shape,
        Settings settings,
        List<ColumnRule> columns,
        List<Fixed> otherwise,
        Set<String> leftOut,
        List<Skip> skips) {
    /**
     * Rows that are left out: those with one of the values in a column.
     *
     * @param line where in the mapping
     * @param names the names that the column may have
     * @param values the values, folded
     */
    record Skip(long line, List<String> names, Set<String> values) {
        Skip {
            names = List.copyOf(names);
            values = Set.copyOf(values);
        }
    }

    SheetRules {
        files = List.copyOf(files);
        columns = List.copyOf(columns);
        otherwise = List.copyOf(otherwise);
        leftOut = Set.copyOf(leftOut);
        skips = List.copyOf(skips);
    }

    /** Tell whether a file of this name is this sheet. */
    boolean matches(String file) {
        return files.stream().anyMatch(glob -> glob(glob).matcher(file).matches());
    }

    private static Pattern glob(String glob) {
        String pattern = glob.codePoints()
                .mapToObj(letter ->
                        letter == '*' ? ".*" : letter == '?' ? "." : Pattern.quote(Character.toString(letter)))
                .collect(Collectors.joining());
        return Pattern.compile(pattern, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    /** Return the column that says something, in whole. */
    Optional<ColumnRule> column(String act, String field) {
        return columns.stream()
                .filter(column -> column.meaning().act().equals(act)
                        && column.meaning().field().equals(field))
                .findFirst();
    }

    /** Return what holds where no cell says it. */
    Optional<Fixed> fixed(String act, String field) {
        return otherwise.stream()
                .filter(fixed -> fixed.meaning().act().equals(act)
                        && fixed.meaning().field().equals(field))
                .findFirst();
    }
}
