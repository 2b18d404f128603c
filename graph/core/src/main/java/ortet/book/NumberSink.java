package ortet.book;

/** Takes the rows of an answer that are whole numbers alone, one after another. */
@FunctionalInterface
public interface NumberSink {
    /** What stands in a row where there is no number. */
    long NONE = Long.MIN_VALUE;

    /**
     * Take one row.
     *
     * @param numbers one for each column of the question, in the order of its header; days are days since 1970-01-01;
     *     {@link #NONE} where there is none. The same array comes again with every row: keep the numbers, not the array
     */
    void row(long[] numbers);
}
