package ortet.value;

import java.util.List;
import java.util.Objects;

/**
 * The root of everything that ortet throws on purpose.
 *
 * <p>Three kinds: {@link Refused} is the user's to mend, {@link Unavailable} may pass by itself, {@link Defect} is ours.
 */
public abstract class OrtetException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OrtetException(String message) {
        super(Objects.requireNonNull(message));
    }

    OrtetException(String message, Throwable cause) {
        super(Objects.requireNonNull(message), cause);
    }

    /** Return what to tell the user, one line for each fault, never empty. */
    public List<String> lines() {
        return List.of(getMessage());
    }
}
