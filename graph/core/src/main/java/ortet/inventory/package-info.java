/**
 * Answers what there is: which units stand where and how, where some words occur in the book, what was recorded on a day,
 * and which tags, names and places are in use; depends on {@code ortet.book}, {@code ortet.lineage} and the words in
 * {@code shared}.
 */
package ortet.inventory;
