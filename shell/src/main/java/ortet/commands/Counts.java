package ortet.commands;

import java.util.Locale;

/** Counts things in words. */
final class Counts {
    private Counts() {}

    /** Return {@code 1 entry} or {@code 12 entries}. */
    static String of(long count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }

    /** Return a number with commas between thousands. */
    static String grouped(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }
}
