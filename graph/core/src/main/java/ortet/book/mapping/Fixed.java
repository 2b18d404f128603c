package ortet.book.mapping;

/**
 * A value that the mapping gives, where no cell does.
 *
 * @param line where in the mapping
 * @param meaning what it says
 * @param text the value as the book writes it
 */
record Fixed(long line, Meaning meaning, String text) {}
