package ortet.screen;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What stands around the program: which of its streams are terminals, how wide the screen is, what it can show.
 *
 * <p>Java 17 cannot tell which single stream is a terminal, so the start script does.
 *
 * @param inTerminal whether somebody types at it
 * @param outTerminal whether answers go to a screen
 * @param errTerminal whether messages go to a screen
 * @param width columns of the screen, at least 1
 * @param colours whether colours are wanted and known
 * @param dumb whether the terminal can only print lines
 * @param trace whether failures show where in the program they came from
 */
public record Surroundings(
        boolean inTerminal,
        boolean outTerminal,
        boolean errTerminal,
        int width,
        boolean colours,
        boolean dumb,
        boolean trace) {
    private static final int USUAL_WIDTH = 80;
    private static final int LEAST_WIDTH = 20;
    private static final int MOST_WIDTH = 10_000;

    /** Refuse a width below 1. */
    public Surroundings {
        if (width < 1) {
            throw new IllegalArgumentException("a screen " + width + " columns wide");
        }
    }

    /**
     * Return what the environment and the start script tell.
     *
     * @param environment {@code COLUMNS}, {@code NO_COLOR}, {@code TERM} and {@code ORTET_TRACE} count
     * @param terminals three digits for input, output and errors, 1 for a terminal: {@code 011}; anything else is unknown
     * @param columns the width of the terminal that the start script found, or anything else for unknown
     * @param console whether there is a console at both ends, taken for all three streams when they are unknown
     */
    public static Surroundings of(Map<String, String> environment, String terminals, String columns, boolean console) {
        boolean told = terminals.matches("[01]{3}");
        boolean out = told ? terminals.charAt(1) == '1' : console;
        boolean dumb = environment.getOrDefault("TERM", "").equals("dumb");
        OptionalInt width = width(environment.getOrDefault("COLUMNS", ""));
        if (width.isEmpty() && out) {
            width = width(columns);
        }
        return new Surroundings(
                told ? terminals.charAt(0) == '1' : console,
                out,
                told ? terminals.charAt(2) == '1' : console,
                width.orElse(USUAL_WIDTH),
                !dumb && environment.getOrDefault("NO_COLOR", "").isEmpty(),
                dumb,
                !Optional.ofNullable(environment.get("ORTET_TRACE")).orElse("").isEmpty());
    }

    private static OptionalInt width(String text) {
        if (!text.matches("[0-9]{1,5}")) {
            return OptionalInt.empty();
        }
        int width = Integer.parseInt(text);
        return width < LEAST_WIDTH || width > MOST_WIDTH ? OptionalInt.empty() : OptionalInt.of(width);
    }

    /** Return the same with another width, for a screen whose size changes. */
    public Surroundings withWidth(int columns) {
        return new Surroundings(inTerminal, outTerminal, errTerminal, columns, colours, dumb, trace);
    }
}
