package ortet.lineage;

/**
 * What happened to a unit after it gave what is traced, in numbers alone.
 *
 * @param pottings how often it was potted, planted out or lifted
 * @param moves how often it was stood elsewhere
 * @param others how many other entries name it
 */
public record Later(int pottings, int moves, int others) {
    /** Nothing. */
    static final Later NOTHING = new Later(0, 0, 0);

    /** Tell whether nothing happened. */
    public boolean isNothing() {
        return pottings + moves + others == 0;
    }
}
