/**
 * Answers where a plant comes from and what the book says of it: through every link to its mother and on to the ortet,
 * with every potting and move between. Depends on {@code ortet.book}; knows no store and no terminal.
 */
package ortet.lineage;
