package ortet.line;

/** Says that the line itself is wrong: what is, where, what was expected and the nearest match, in one line. */
public final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Make one from its text, a single line without a full stop. */
    public UsageException(String message) {
        super(message);
    }

    UsageException(String message, Throwable cause) {
        super(message, cause);
    }
}
