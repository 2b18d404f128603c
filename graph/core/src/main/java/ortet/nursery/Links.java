package ortet.nursery;

/**
 * Every link of a nursery in compressed rows, both ways. A link is a number from 0, by child, then by mother and
 * act.
 *
 * <p>Takes 17 bytes for each link and 8 for each unit.
 *
 * @param up for each unit number the first of its links to what it comes from; those of the next number end them
 * @param mother for each link the unit that its child comes from
 * @param act for each link how, as the place in {@link ortet.book.Act}
 * @param count for each link how many of the child's units, 0 where nobody said
 * @param down for each unit number the first place in {@code below} of what comes from it
 * @param below the links by mother, then by child
 * @param child for each link the unit that comes from the other
 */
record Links(int[] up, int[] mother, byte[] act, int[] count, int[] down, int[] below, int[] child) {

    /** Compress links that come sorted by child. */
    static Links of(int lastUnit, int[] child, int[] mother, byte[] act, int[] count) {
        int[] up = new int[lastUnit + 2];
        int[] down = new int[lastUnit + 2];
        for (int link = 0; link < child.length; link++) {
            up[child[link] + 1]++;
            down[mother[link] + 1]++;
        }
        for (int unit = 1; unit < up.length; unit++) {
            up[unit] += up[unit - 1];
            down[unit] += down[unit - 1];
        }
        int[] next = down.clone();
        int[] below = new int[child.length];
        for (int link = 0; link < child.length; link++) {
            below[next[mother[link]]++] = link;
        }
        return new Links(up, mother, act, count, down, below, child);
    }

    long bytes() {
        return act.length
                + (long) Integer.BYTES
                        * (up.length + mother.length + count.length + down.length + below.length + child.length);
    }
}
