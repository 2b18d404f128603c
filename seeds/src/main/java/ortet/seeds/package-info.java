/**
 * Answers what a nursery's book looks like when it is full: the invented nursery Sallowfield for the demo, and larger
 * ones for benchmarks, both as day books in CSV; depends on {@code ortet.entry}, {@code ortet.plant} and
 * {@code ortet.value} alone and knows no rule of the book, so that the book can be tried on it.
 */
package ortet.seeds;
