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
 * @param height lines of the screen, 0 when not known
 * @param colours whether colours are wanted and known
 * @param dumb whether the terminal can only print lines
 * @param trace whether failures show where in the program they came from
 * @param paging how answers longer than the screen are shown
 */
public record Surroundings(
        boolean inTerminal,
        boolean outTerminal,
        boolean errTerminal,
        int width,
        int height,
        boolean colours,
        boolean dumb,
        boolean trace,
        Paging paging) {
    private static final int USUAL_WIDTH = 80;
    private static final int LEAST_WIDTH = 20;
    private static final int MOST_WIDTH = 10_000;

    /**
     * How answers longer than the screen are shown.
     *
     * @param wanted whether page by page
     * @param program the program that shows them; empty for our own
     */
    public record Paging(boolean wanted, Optional<String> program) {
        /** Not page by page. */
        public static final Paging NONE = new Paging(false, Optional.empty());

        /** Return what the environment variable {@code PAGER} asks for: empty text and {@code cat} are for no pages. */
        static Paging of(Optional<String> pager) {
            return pager.map(String::strip)
                    .map(program ->
                            program.isEmpty() || program.equals("cat") ? NONE : new Paging(true, Optional.of(program)))
                    .orElse(new Paging(true, Optional.empty()));
        }
    }

    /** Refuse a width below 1. */
    public Surroundings {
        if (width < 1) {
            throw new IllegalArgumentException("a screen " + width + " columns wide");
        }
    }

    /** Make surroundings whose height is not known. */
    public Surroundings(
            boolean inTerminal,
            boolean outTerminal,
            boolean errTerminal,
            int width,
            boolean colours,
            boolean dumb,
            boolean trace) {
        this(inTerminal, outTerminal, errTerminal, width, 0, colours, dumb, trace, Paging.NONE);
    }

    /**
     * Return what the environment and the start script tell.
     *
     * @param environment {@code COLUMNS}, {@code NO_COLOR}, {@code TERM}, {@code PAGER} and {@code ORTET_TRACE} count
     * @param terminals three digits for input, output and errors, 1 for a terminal: {@code 011}; anything else is unknown
     * @param size lines and columns of the terminal that the start script found, {@code 24 80}, or anything else for
     *     unknown
     * @param console whether there is a console at both ends, taken for all three streams when they are unknown
     */
    public static Surroundings of(Map<String, String> environment, String terminals, String size, boolean console) {
        boolean told = terminals.matches("[01]{3}");
        boolean out = told ? terminals.charAt(1) == '1' : console;
        boolean dumb = environment.getOrDefault("TERM", "").equals("dumb");
        OptionalInt width = width(environment.getOrDefault("COLUMNS", ""));
        String[] found = out ? size.strip().split(" ") : new String[0];
        if (width.isEmpty() && found.length == 2) {
            width = width(found[1]);
        }
        return new Surroundings(
                told ? terminals.charAt(0) == '1' : console,
                out,
                told ? terminals.charAt(2) == '1' : console,
                width.orElse(USUAL_WIDTH),
                found.length == 2 && found[0].matches("[0-9]{1,4}") ? Integer.parseInt(found[0]) : 0,
                !dumb && environment.getOrDefault("NO_COLOR", "").isEmpty(),
                dumb,
                !Optional.ofNullable(environment.get("ORTET_TRACE")).orElse("").isEmpty(),
                Paging.of(Optional.ofNullable(environment.get("PAGER"))));
    }

    private static OptionalInt width(String text) {
        if (!text.matches("[0-9]{1,5}")) {
            return OptionalInt.empty();
        }
        int width = Integer.parseInt(text);
        return width < LEAST_WIDTH || width > MOST_WIDTH ? OptionalInt.empty() : OptionalInt.of(width);
    }

    /** Return the same with another size, for a screen whose size changes. */
    public Surroundings withSize(int columns, int lines) {
        return new Surroundings(inTerminal, outTerminal, errTerminal, columns, lines, colours, dumb, trace, paging);
    }
}
