package ortet.book.daybook;

import java.io.IOException;

/** Says that a file is not text in UTF-8. */
public final class Unreadable extends IOException {
    private static final long serialVersionUID = 1L;

    private final long line;

    /** Say so of a line. */
    public Unreadable(long line, String message) {
        super(message);
        this.line = line;
    }

    /** Return the line on which it shows. */
    public long line() {
        return line;
    }
}
