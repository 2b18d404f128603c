package ortet.book.mapping;

import java.nio.charset.Charset;
import java.util.Optional;
import java.util.Set;

/**
 * How a sheet is read, apart from what its columns mean.
 *
 * @param dates how days are written
 * @param numbers how numbers are written
 * @param tags how tags are tidied
 * @param blanks texts that stand for nothing, folded
 * @param encoding how the file is encoded
 * @param separator what parts cells; found from the header when absent
 * @param hasHeader whether there is a header
 * @param acquiresMothers whether a mother without a row becomes acquired
 * @param acquiresPlants whether any other plant without a row becomes acquired
 * @param acquiresMotherless whether what has no mother, though it must have one, becomes acquired
 * @param takesRepeatedOnce whether a row that stands twice is taken once
 */
record Settings(
        Dates dates,
        Numbers numbers,
        Tidy tags,
        Set<String> blanks,
        Charset encoding,
        Optional<Character> separator,
        boolean hasHeader,
        boolean acquiresMothers,
        boolean acquiresPlants,
        boolean acquiresMotherless,
        boolean takesRepeatedOnce) {
    Settings {
        blanks = Set.copyOf(blanks);
    }
}
