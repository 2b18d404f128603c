package ortet.value;

/** Says that ortet itself is wrong: something that should never happen did. */
public final class Defect extends OrtetException {
    private static final long serialVersionUID = 1L;

    /** Say what went wrong. */
    public Defect(String message) {
        super(message);
    }

    /** Say what went wrong, and keep the cause for the log. */
    public Defect(String message, Throwable cause) {
        super(message, cause);
    }
}
