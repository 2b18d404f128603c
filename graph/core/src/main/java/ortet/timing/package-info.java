/**
 * Answers how long it takes: from setting to the first roots, and until a layer is severed or a tray is lifted. Depends on
 * {@code ortet.figures}, {@code ortet.nursery} and {@code ortet.book}; knows no store and no terminal.
 */
package ortet.timing;
