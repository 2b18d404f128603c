/**
 * Answers how a book is read from a day book in CSV and written as one: files of rows become a proposal or the whole
 * of another book, and a book becomes a folder of files; depends on {@code ortet.book} and the words in {@code shared}.
 */
package ortet.book.daybook;
