/**
 * Answers what comes of what stands in the nursery, and which stock to grow on for layering wood.
 *
 * <p>The forecast: trees becoming fit for sale, quarter by quarter, by simulating every unit to the end from what became of
 * others before it, with what is not known, and how earlier forecasts did. Depends on {@code ortet.book}, {@code
 * ortet.nursery} and {@code ortet.figures}; knows no store and no terminal.
 *
 * <p>The choice: what to do with each mother this year and in the years after, how sure that is, and what one more hour or
 * square metre would be worth. Plain numbers in, plain records out; {@code ortet.choice.inputs} reads them from the book.
 */
package ortet.choice;
