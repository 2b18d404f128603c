package ortet.book.daybook;

/**
 * Makes a text safe to open in a spreadsheet, and undoes it.
 *
 * <p>A spreadsheet takes a cell that begins with {@code =}, {@code +}, {@code -} or {@code @} for a formula, also after
 * a tab or a carriage return. Such a text is written with an apostrophe before it, and so is one that begins with an
 * apostrophe, so that reading can take exactly one apostrophe away again: {@code open(guard(text))} is the text, for
 * every text.
 *
 * @see "OWASP, CSV Injection"
 */
public final class Cell {
    private static final char GUARD = '\'';

    private Cell() {}

    /** Return the text as it is written into a cell. */
    public static String guard(String text) {
        return !text.isEmpty() && needsGuard(text.charAt(0)) ? GUARD + text : text;
    }

    /**
     * Return the text that a cell stands for: a first apostrophe is taken away only where another or one of the other
     * guarded characters follows, so that {@code 'Deshojo'} typed by hand stays as it is.
     */
    public static String open(String cell) {
        return isGuarded(
                        cell.length() > 1,
                        cell.isEmpty() ? ' ' : cell.charAt(0),
                        cell.length() > 1 ? cell.charAt(1) : ' ')
                ? cell.substring(1)
                : cell;
    }

    static boolean isGuarded(boolean hasTwo, char first, char second) {
        return hasTwo && first == GUARD && needsGuard(second);
    }

    private static boolean needsGuard(char first) {
        return switch (first) {
            case '=', '+', '-', '@', '\t', '\r', GUARD -> true;
            default -> false;
        };
    }
}
