/**
 * Reads out of the book what the choice of stock rests on: the mothers and their wood, how they take, what comes of it, when,
 * at what cost and for whom; each figure with where it comes from and how many stand behind it. Depends on {@code
 * ortet.book}, {@code ortet.nursery}, {@code ortet.figures}, {@code ortet.yield}, {@code ortet.lineage} and {@code
 * ortet.money}; knows no store and no terminal.
 */
package ortet.choice.inputs;
