package ortet.figures;

import java.util.SplittableRandom;

/** Finds one of the largest figures without sorting them all. */
final class Selection {
    private Selection() {}

    /**
     * Return the figure that has the given place from the top, 1 for the largest; reorders them.
     *
     * @see "Hoare 1961, Communications of the ACM 4:321, algorithm 65"
     */
    static double largest(double[] figures, int place, SplittableRandom random) {
        int low = 0;
        int high = figures.length - 1;
        int wanted = place - 1;
        while (low < high) {
            double pivot = figures[low + random.nextInt(high - low + 1)];
            int up = low;
            int down = high;
            while (up <= down) {
                while (figures[up] > pivot) {
                    up++;
                }
                while (figures[down] < pivot) {
                    down--;
                }
                if (up <= down) {
                    double swapped = figures[up];
                    figures[up++] = figures[down];
                    figures[down--] = swapped;
                }
            }
            if (wanted <= down) {
                high = down;
            } else if (wanted >= up) {
                low = up;
            } else {
                return figures[wanted];
            }
        }
        return figures[wanted];
    }
}
