package ortet.book;

/** Is told how far a long piece of work has come. */
@FunctionalInterface
public interface Progress {
    /** A listener that does nothing. */
    Progress NONE = (step, done, total) -> {};

    /**
     * Tell how far the work has come.
     *
     * @param step what is being done, in a word or two
     * @param done how much is done
     * @param total how much there is in all, or 0 when that is not known
     */
    void at(String step, long done, long total);
}
