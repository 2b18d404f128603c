/**
 * Answers what numbers say: rates, their differences and odds, within strata and out of clusters, times to an event, and
 * how sure each is. Knows no plant, no entry and no book; depends on {@code ortet.value} and on libraries for numbers.
 */
package ortet.figures;
