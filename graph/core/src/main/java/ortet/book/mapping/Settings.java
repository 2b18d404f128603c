package ortet.book.mapping;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

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
    /** Texts that stand for nothing, whatever the mapping says. */
    static final Set<String> NOTHING = Set.of("-", "--", "–", "—", "?", "n/a", "#n/a");

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    Settings {
        blanks = Set.copyOf(blanks);
    }

    /** Return how sheets are read where the mapping says nothing of it. */
    static Settings defaults() {
        return new Settings(
                new Dates(List.of()),
                new Numbers(false),
                Tidy.NOTHING,
                NOTHING,
                StandardCharsets.UTF_8,
                Optional.empty(),
                true,
                true,
                false,
                false,
                true);
    }

    /**
     * Return these settings with one changed, as a line of a mapping says it.
     *
     * @throws Refused when the value is none
     */
    Settings with(String key, String value) {
        Dates newDates = dates;
        Numbers newNumbers = numbers;
        Tidy newTags = tags;
        Set<String> newBlanks = blanks;
        Charset newEncoding = encoding;
        Optional<Character> newSeparator = separator;
        boolean header = hasHeader;
        boolean mothers = acquiresMothers;
        boolean plants = acquiresPlants;
        boolean motherless = acquiresMotherless;
        boolean once = takesRepeatedOnce;
        String word = Folded.of(Pieces.find(value, ',') < 0 ? Pieces.plain(value) : value);
        switch (key) {
            case "dates" ->
                newDates =
                        new Dates(Pieces.list(value).stream().map(DayFormat::of).toList());
            case "numbers" ->
                newNumbers = new Numbers(choice(word, key, Map.of("decimal point", false, "decimal comma", true)));
            case "tags" -> newTags = Tidy.of(value);
            case "blank" -> {
                Set<String> all = new LinkedHashSet<>(blanks);
                Pieces.list(value).forEach(text -> all.add(Folded.of(text)));
                newBlanks = all;
            }
            case "encoding" ->
                newEncoding = choice(
                        word,
                        key,
                        Map.of(
                                "utf-8", StandardCharsets.UTF_8,
                                "utf8", StandardCharsets.UTF_8,
                                "windows-1252", WINDOWS));
            case "separator" ->
                newSeparator = Optional.of(choice(
                        word,
                        key,
                        Map.of("comma", ',', "semicolon", ';', "tab", '\t', "bar", '|', ";", ';', "|", '|')));
            case "header" -> header = choice(word, key, Map.of("yes", true, "none", false));
            case "mothers without a row" -> mothers = acquire(word, key);
            case "plants without a row" -> plants = acquire(word, key);
            case "without a mother" -> motherless = acquire(word, key);
            default -> once = choice(word, key, Map.of("once", true, "each", false));
        }
        return new Settings(
                newDates,
                newNumbers,
                newTags,
                newBlanks,
                newEncoding,
                newSeparator,
                header,
                mothers,
                plants,
                motherless,
                once);
    }

    private static boolean acquire(String word, String key) {
        return choice(word, key, Map.of("acquire", true, "refuse", false));
    }

    private static <T> T choice(String word, String key, Map<String, T> choices) {
        T choice = choices.get(word);
        if (choice == null) {
            List<String> words = choices.keySet().stream().sorted().toList();
            throw new Refused(
                    Fault.of("bad-setting", key + ": no \"" + word + "\"; expected " + String.join(" or ", words))
                            .nearest(Nearest.of(word, words)));
        }
        return choice;
    }
}
