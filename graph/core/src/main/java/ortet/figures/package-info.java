/**
 * Answers what numbers say: rates, their differences and odds, within strata and out of clusters; models of many groups, and
 * what to expect of more; times to an event; and how sure each is. Knows no plant, no entry and no book; depends on
 * {@code ortet.value} alone, and on libraries for special functions, distributions and linear algebra.
 */
package ortet.figures;
