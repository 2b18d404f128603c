/**
 * Answers how many took, and what one way of raising trees yields against another: of what was set, struck, worked and
 * sown, what became of it, with what is pending, what nobody has accounted for, and an interval. Depends on {@code
 * ortet.book}, {@code ortet.nursery}, {@code ortet.figures} and, for what a saleable tree costs, {@code ortet.money}; knows
 * no store and no terminal.
 */
package ortet.yield;
