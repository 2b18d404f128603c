package ortet.line;

/** Says that the line itself is wrong: what is, where, what was expected and the nearest match, in one line. */
public final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Make one from its text, a single line without a full stop. */
    public UsageException(String message) {
        super(message);
    }

    /**
     * Return a number that an option was given, if it lies within bounds.
     *
     * @param command of which it is an option
     * @param option its name, without dashes
     * @throws UsageException if it does not
     */
    public static int within(String command, String option, int found, int least, int most) {
        if (found < least || found > most) {
            throw new UsageException(
                    "--" + option + " of " + command + ": expected " + least + " to " + most + ", found " + found);
        }
        return found;
    }

    UsageException(String message, Throwable cause) {
        super(message, cause);
    }
}
