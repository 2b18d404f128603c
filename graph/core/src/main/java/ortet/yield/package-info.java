/**
 * Answers how many took: of what was set, struck, worked and sown, by cultivar, mother, method, season or operator, with
 * what is pending, what nobody has accounted for, and an interval. Depends on {@code ortet.book} and
 * {@code ortet.figures}; knows no store and no terminal.
 */
package ortet.yield;
