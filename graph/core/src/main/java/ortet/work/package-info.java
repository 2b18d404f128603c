/**
 * Answers what is to be done and looked for: what should stand at a place, and what was found there; depends on
 * {@code ortet.book}, {@code ortet.inventory} and the words in {@code shared}.
 */
package ortet.work;
