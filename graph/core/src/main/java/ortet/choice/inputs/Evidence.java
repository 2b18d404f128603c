package ortet.choice.inputs;

/**
 * How much is known of how a mother takes.
 *
 * @param layers of how many layers set on her it is known whether they took
 * @param cuttings the same of cuttings
 * @param seasons over how many seasons of setting
 * @param bookSeasons of how many seasons the book knows outcomes, of whomever
 */
public record Evidence(int layers, int cuttings, int seasons, int bookSeasons) {
    /** Return how many layers and cuttings. */
    public int units() {
        return layers + cuttings;
    }
}
