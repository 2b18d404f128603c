/**
 * Answers what the book holds and whether something can be written into it: the rules, the projection and the port
 * that every store implements; depends on the words in {@code shared} alone, and knows no store and no terminal.
 */
package ortet.book;
