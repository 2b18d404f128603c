/**
 * Answers what to do next year: which stock, how many to set, and what trees will come. Depends on {@code ortet.book}, {@code ortet.nursery}
 * and {@code ortet.figures}; knows no store and no terminal.
 */
package ortet.choice;
