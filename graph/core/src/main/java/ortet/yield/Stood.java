package ortet.yield;

/**
 * In how many batches and on or from how many mothers the units stood: those of one tray, or of one mother, share their
 * luck, so that few of either say less than their number of units suggests.
 *
 * @param batches how many trays, pans and other batches, counted before they were split or merged
 * @param singles how many units had a tag of their own: layers and single grafts
 * @param mothers how many different mothers are known
 * @param motherless how many units come from a mother who is not known
 */
public record Stood(int batches, int singles, int mothers, int motherless) {
    /** Return this in words: {@code in 2 batches, from 3 mothers}. */
    @Override
    public String toString() {
        String batch = batches == 0 ? "" : "in " + number(batches, "batch", "batches");
        String single = singles == 0 || batches == 0 ? "" : " and " + singles + " singly";
        String mother = mothers == 0 ? "" : "from " + number(mothers, "mother", "mothers");
        String less = motherless == 0 ? "" : mothers == 0 ? "from mothers not known" : " and others not known";
        String before = batch + single;
        String after = mother + less;
        return before + (before.isEmpty() || after.isEmpty() ? "" : ", ") + after;
    }

    private static String number(int count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }
}
