/**
 * Answers what can be written into the book: one record for each kind of entry, valid in itself; depends on
 * {@code ortet.plant} and {@code ortet.value} alone.
 */
package ortet.entry;
