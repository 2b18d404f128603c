package ortet.entry;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Turns choices into the words that stand for them in files and commands, and back: {@code FULL_RING} is full-ring. */
public final class Words {
    private Words() {}

    /** Return the word for a choice. */
    public static String of(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Return all words of a set of choices, in order. */
    public static List<String> all(Class<? extends Enum<?>> choices) {
        return Arrays.stream(choices.getEnumConstants()).map(Words::of).toList();
    }

    /**
     * Read a choice; case, and blank or underscore in place of a hyphen, do not matter.
     *
     * @throws Refused with the allowed words and the nearest when there is no such choice
     */
    public static <E extends Enum<E>> E parse(Class<E> choices, String word) {
        String wanted = word.strip().toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
        for (E choice : choices.getEnumConstants()) {
            if (choice.name().equals(wanted)) {
                return choice;
            }
        }
        List<String> words = all(choices);
        throw new Refused(Fault.of("bad-word", "no \"" + word + "\"; expected one of " + String.join(", ", words))
                .nearest(Nearest.of(word, words)));
    }
}
