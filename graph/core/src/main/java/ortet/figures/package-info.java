/**
 * Answers what numbers say: proportions and their intervals. Knows no plant, no entry and no book; depends on
 * {@code ortet.value} alone.
 */
package ortet.figures;
