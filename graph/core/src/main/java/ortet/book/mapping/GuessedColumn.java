package ortet.book.mapping;

/**
 * A column of which it was recognised what it says.
 *
 * @param column what stands in it
 * @param field what it says, as a mapping calls it
 * @param score how well that fits: {@value #SURE} and more where its head is a known one as a whole
 */
record GuessedColumn(ColumnSample column, String field, int score) {
    /** The score from which there is no doubt. */
    static final int SURE = 1000;

    boolean isSure() {
        return score >= SURE;
    }
}
