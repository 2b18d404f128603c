package ortet.screen;

/** How a piece of text stands out on a screen that has colours; elsewhere it is plain. */
public enum Style {
    /** A heading. */
    STRONG("1"),
    /** What matters less. */
    FAINT("2"),
    /** What went well. */
    GOOD("32"),
    /** What to look at. */
    WARNING("33"),
    /** What went wrong. */
    BAD("31");

    private final String code;

    Style(String code) {
        this.code = code;
    }

    String on(String text) {
        return text.isEmpty() ? text : "\u001b[" + code + "m" + text + "\u001b[0m";
    }
}
