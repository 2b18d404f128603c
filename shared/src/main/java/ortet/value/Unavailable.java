package ortet.value;

/** Says that a book cannot be reached or used now: locked, away, not a book, damaged, or too new. */
public final class Unavailable extends OrtetException {
    private static final long serialVersionUID = 1L;

    /** Say what cannot be used, and why, in one line. */
    public Unavailable(String message) {
        super(message);
    }

    /** Say what cannot be used, and why, in one line, and keep the cause for the log. */
    public Unavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
