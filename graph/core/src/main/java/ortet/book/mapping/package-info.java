/**
 * Answers how a nursery's own spreadsheets in CSV are read: a mapping says which columns mean what, and the rows become a
 * proposal for the judge; depends on {@code ortet.book}, {@code ortet.book.daybook} and the words in {@code shared}.
 */
package ortet.book.mapping;
