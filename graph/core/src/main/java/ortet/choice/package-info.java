/**
 * Answers which stock to grow on for layering wood: what to do with each mother this year and in the years after, how sure
 * that is, and what one more hour or square metre would be worth. Plain numbers in, plain records out; depends on
 * {@code ortet.value} and on {@code ortet.book.Progress} alone.
 */
package ortet.choice;
