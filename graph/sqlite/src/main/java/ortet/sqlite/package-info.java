/**
 * Answers how a book is kept in one SQLite file, the embedded default; depends on {@code ortet.book} and the words in
 * {@code shared}, and decides nothing of the trade.
 */
package ortet.sqlite;
