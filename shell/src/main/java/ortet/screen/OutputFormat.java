package ortet.screen;

/** How an answer is written: for people, for a spreadsheet, for a program. */
public enum OutputFormat {
    /** Lines and columns for people. */
    TABLE,
    /** RFC 4180, with cells that a spreadsheet does not take for formulas. */
    CSV,
    /** One JSON document, numbers unrounded. */
    JSON
}
