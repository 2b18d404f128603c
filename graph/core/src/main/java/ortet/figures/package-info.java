/**
 * Answers what numbers say: proportions and their intervals, models of many groups, and what to expect of more. Knows no
 * plant, no entry and no book; depends on {@code ortet.value} alone, and on libraries for special functions, distributions
 * and linear algebra.
 */
package ortet.figures;
