/**
 * Answers what the whole nursery looks like on a day, as columns of whole numbers that questions about all of it pass over:
 * who comes from whom, how many stand, what took. Depends on {@code ortet.book} and on JGraphT, whose algorithms run on the
 * columns as they are; knows no store and no terminal.
 */
package ortet.nursery;
