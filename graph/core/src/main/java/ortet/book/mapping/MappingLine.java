package ortet.book.mapping;

import java.util.Optional;

/**
 * A line of a mapping, cut at its equals sign.
 *
 * @param number the line's number, from 1
 * @param left what stands before
 * @param right what stands behind, where there is one
 */
record MappingLine(long number, String left, Optional<String> right) {
    /** Cut a line. */
    static MappingLine of(long number, String line) {
        int equals = Pieces.find(line, '=');
        return equals < 0
                ? new MappingLine(number, line, Optional.empty())
                : new MappingLine(
                        number,
                        Folded.strip(line.substring(0, equals)),
                        Optional.of(Folded.strip(line.substring(equals + 1))));
    }

    /** Return the same line with only these words before the equals sign. */
    MappingLine of(String words) {
        return new MappingLine(number, words, right);
    }
}
