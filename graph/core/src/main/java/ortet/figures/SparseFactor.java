package ortet.figures;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import ortet.value.Refused;

/**
 * Factors the symmetric positive definite matrix H of a model with many random intercepts: H = L D L′ in an order that
 * keeps L sparse.
 *
 * <p>Two intercepts meet in H where some row belongs to both groups. Whatever meets few others is eliminated first (least
 * degree first), which is all of it when groups are nested, and every mother when mothers cross with fewer batches. What is
 * left in the end, where nearly everything meets everything, is factored as one dense matrix. Every pair that meets, or
 * comes to meet by an elimination, has a place in {@link #pairs}; the places where an elimination acts are listed once, so
 * that a factorization is one pass over that list. The same list serves the inverse at just those places (Takahashi's
 * equations), which is all that the gradient of a Laplace approximation needs.
 *
 * <p>Time and space grow with the number of rows of L squared, summed over the intercepts, and with the third power of the
 * dense rest. Each thread needs its own {@link #fork}.
 *
 * @see "Takahashi, Fagan & Chin 1973, Formation of a sparse bus impedance matrix, 8th PICA Conference"
 * @see "George & Liu 1989, The evolution of the minimum degree ordering algorithm, SIAM Review 31:1"
 */
final class SparseFactor {
    /** The most intercepts that may be left to be factored densely: 72 MB for one matrix, and a minute for a fit. */
    private static final int MOST_DENSE = 3000;
    /** With as many neighbours as this, elimination one by one is no use any more. */
    private static final int MANY = 200;
    /** The most places in the list of eliminations. */
    private static final int MOST_PLACES = 100_000_000;

    private final Pattern pattern;
    /** The diagonal of H; after {@link #factor}, that of D. */
    final double[] diagonal;
    /** What stands off the diagonal of H, by the place of the pair; after {@link #factor}, of L. */
    final double[] pairs;
    /** After {@link #invert}: the inverse, on the diagonal. */
    final double[] inverseDiagonal;
    /** After {@link #invert}: the inverse, by the place of the pair. */
    final double[] inversePairs;

    private final double[] sums;
    private final DMatrixRMaj dense;
    private final CholeskyDecomposition_F64<DMatrixRMaj> cholesky;
    private final DMatrixRMaj denseL;
    private double logDeterminant;

    private SparseFactor(Pattern pattern) {
        this.pattern = pattern;
        diagonal = new double[pattern.nodes];
        pairs = new double[pattern.edges.size()];
        inverseDiagonal = new double[pattern.nodes];
        inversePairs = new double[pattern.edges.size()];
        sums = new double[pattern.nodes];
        int rest = pattern.nodes - pattern.sparse;
        dense = new DMatrixRMaj(rest, rest);
        denseL = new DMatrixRMaj(rest, rest);
        cholesky = DecompositionFactory_DDRM.chol(Math.max(1, rest), true);
    }

    /**
     * Find an order for the intercepts of some rows.
     *
     * @param nodes how many intercepts there are
     * @param rows the intercepts of each row, one of each grouping
     */
    static SparseFactor of(int nodes, int[][] rows) {
        return new SparseFactor(new Pattern(nodes, rows));
    }

    /** Return a factor of the same pattern with memory of its own, and the same figures in it. */
    SparseFactor fork() {
        SparseFactor fork = new SparseFactor(pattern);
        System.arraycopy(diagonal, 0, fork.diagonal, 0, diagonal.length);
        System.arraycopy(pairs, 0, fork.pairs, 0, pairs.length);
        fork.denseL.setTo(denseL);
        fork.logDeterminant = logDeterminant;
        return fork;
    }

    /** Tell whether a factorization takes much longer than a pass over the rows. */
    boolean isDear() {
        return pattern.nodes - pattern.sparse > 100;
    }

    /** Return the place of the pair of two intercepts that some row has in common. */
    int place(int a, int b) {
        return pattern.edges.find(a, b);
    }

    /** Factor what stands in {@link #diagonal} and {@link #pairs}, in place. */
    void factor() {
        Pattern p = pattern;
        logDeterminant = 0;
        int at = 0;
        for (int step = 0; step < p.sparse; step++) {
            int node = p.order[step];
            double d = diagonal[node];
            logDeterminant += Math.log(d);
            int begin = p.begins[step];
            int end = p.begins[step + 1];
            for (int i = begin; i < end; i++) {
                double old = pairs[p.places[i]];
                double l = old / d;
                for (int j = begin; j < i; j++) {
                    // the places before i are divided already
                    pairs[p.targets[at++]] -= pairs[p.places[j]] * old;
                }
                diagonal[p.neighbours[i]] -= l * old;
                pairs[p.places[i]] = l;
            }
        }
        int rest = p.nodes - p.sparse;
        if (rest > 0) {
            fillDense(diagonal, pairs);
            if (!cholesky.decompose(dense)) {
                throw new ArithmeticException("not positive definite");
            }
            cholesky.getT(denseL);
            for (int i = 0; i < rest; i++) {
                logDeterminant += 2 * Math.log(denseL.unsafe_get(i, i));
            }
        }
    }

    /** Return the logarithm of the determinant of H. */
    double logDeterminant() {
        return logDeterminant;
    }

    private void fillDense(double[] diagonals, double[] values) {
        Pattern p = pattern;
        int rest = p.nodes - p.sparse;
        dense.reshape(rest, rest);
        Arrays.fill(dense.data, 0, rest * rest, 0);
        for (int i = 0; i < rest; i++) {
            dense.data[i * rest + i] = diagonals[p.order[p.sparse + i]];
        }
        for (int e = 0; e < p.denseEdges.length; e++) {
            double value = values[p.denseEdges[e]];
            int i = p.denseRow[e];
            int j = p.denseColumn[e];
            dense.data[i * rest + j] = value;
            dense.data[j * rest + i] = value;
        }
    }

    /** Solve H x = y in place. */
    void solve(double[] y) {
        Pattern p = pattern;
        for (int step = 0; step < p.sparse; step++) {
            double value = y[p.order[step]];
            for (int i = p.begins[step]; i < p.begins[step + 1]; i++) {
                y[p.neighbours[i]] -= pairs[p.places[i]] * value;
            }
        }
        int rest = p.nodes - p.sparse;
        if (rest > 0) {
            double[] x = new double[rest];
            for (int i = 0; i < rest; i++) {
                double sum = y[p.order[p.sparse + i]];
                int row = i * rest;
                for (int j = 0; j < i; j++) {
                    sum -= denseL.data[row + j] * x[j];
                }
                x[i] = sum / denseL.data[row + i];
            }
            backDense(x);
            for (int i = 0; i < rest; i++) {
                y[p.order[p.sparse + i]] = x[i];
            }
        }
        for (int step = p.sparse - 1; step >= 0; step--) {
            int node = p.order[step];
            double value = y[node] / diagonal[node];
            for (int i = p.begins[step]; i < p.begins[step + 1]; i++) {
                value -= pairs[p.places[i]] * y[p.neighbours[i]];
            }
            y[node] = value;
        }
    }

    private void backDense(double[] x) {
        int rest = x.length;
        for (int i = rest - 1; i >= 0; i--) {
            int row = i * rest;
            double value = x[i] / denseL.data[row + i];
            x[i] = value;
            for (int j = 0; j < i; j++) {
                x[j] -= denseL.data[row + j] * value;
            }
        }
    }

    /** Turn independent standard normal figures into ones whose covariance is the inverse of H, in place. */
    void colour(double[] z) {
        Pattern p = pattern;
        int rest = p.nodes - p.sparse;
        if (rest > 0) {
            double[] x = new double[rest];
            for (int i = 0; i < rest; i++) {
                x[i] = z[p.order[p.sparse + i]];
            }
            backDense(x);
            for (int i = 0; i < rest; i++) {
                z[p.order[p.sparse + i]] = x[i];
            }
        }
        for (int step = p.sparse - 1; step >= 0; step--) {
            int node = p.order[step];
            double value = z[node] / Math.sqrt(diagonal[node]);
            for (int i = p.begins[step]; i < p.begins[step + 1]; i++) {
                value -= pairs[p.places[i]] * z[p.neighbours[i]];
            }
            z[node] = value;
        }
    }

    /** Work out the inverse of H on the diagonal and at every pair. */
    void invert() {
        Pattern p = pattern;
        int rest = p.nodes - p.sparse;
        if (rest > 0) {
            invertDense(rest);
        }
        int at = p.targets.length;
        for (int step = p.sparse - 1; step >= 0; step--) {
            int node = p.order[step];
            int begin = p.begins[step];
            int count = p.begins[step + 1] - begin;
            for (int i = 0; i < count; i++) {
                sums[i] = -inverseDiagonal[p.neighbours[begin + i]] * pairs[p.places[begin + i]];
            }
            at -= count * (count - 1) / 2;
            int target = at;
            for (int i = 0; i < count; i++) {
                double li = pairs[p.places[begin + i]];
                for (int j = 0; j < i; j++) {
                    double z = inversePairs[p.targets[target++]];
                    sums[i] -= z * pairs[p.places[begin + j]];
                    sums[j] -= z * li;
                }
            }
            double own = 1 / diagonal[node];
            for (int i = 0; i < count; i++) {
                int place = p.places[begin + i];
                inversePairs[place] = sums[i];
                own -= pairs[place] * sums[i];
            }
            inverseDiagonal[node] = own;
        }
    }

    /**
     * Invert L, row by row so that every inner loop runs along memory, and multiply: (L L′)⁻¹ = L⁻¹′ L⁻¹. Both are
     * triangles, of which the library's general routines make no use.
     */
    private void invertDense(int rest) {
        Pattern p = pattern;
        double[] l = denseL.data;
        double[] inverse = new double[rest * rest];
        for (int i = 0; i < rest; i++) {
            int row = i * rest;
            double pivot = l[row + i];
            for (int k = 0; k < i; k++) {
                double factor = l[row + k] / pivot;
                int other = k * rest;
                for (int j = 0; j <= k; j++) {
                    inverse[row + j] -= factor * inverse[other + j];
                }
            }
            inverse[row + i] = 1 / pivot;
        }
        double[] z = dense.data;
        Arrays.fill(z, 0, rest * rest, 0);
        for (int k = 0; k < rest; k++) {
            int row = k * rest;
            for (int i = 0; i <= k; i++) {
                double factor = inverse[row + i];
                int out = i * rest;
                for (int j = 0; j <= i; j++) {
                    z[out + j] += factor * inverse[row + j];
                }
            }
        }
        for (int i = 0; i < rest; i++) {
            inverseDiagonal[p.order[p.sparse + i]] = z[i * rest + i];
        }
        for (int e = 0; e < p.denseEdges.length; e++) {
            int i = Math.max(p.denseRow[e], p.denseColumn[e]);
            int j = Math.min(p.denseRow[e], p.denseColumn[e]);
            inversePairs[p.denseEdges[e]] = z[i * rest + j];
        }
    }

    /** What meets what, the order of elimination, and where each elimination acts. */
    private static final class Pattern {
        final int nodes;
        final Edges edges;
        /** How many are eliminated one by one; the others form the dense rest. */
        int sparse;
        /** Eliminated ones first, then the rest. */
        final int[] order;
        /** For each elimination, where its neighbours begin. */
        int[] begins;

        int[] neighbours;
        int[] places;
        int[] targets;
        final int[] denseEdges;
        final int[] denseRow;
        final int[] denseColumn;

        Pattern(int nodes, int[][] rows) {
            this.nodes = nodes;
            int groupings = rows.length == 0 ? 0 : rows[0].length;
            edges = new Edges(rows.length * groupings * (groupings - 1) / 2 + 16);
            order = new int[nodes];
            Adjacency adjacency = new Adjacency(nodes);
            for (int[] row : rows) {
                for (int a = 0; a < row.length; a++) {
                    for (int b = 0; b < a; b++) {
                        if (edges.add(row[a], row[b])) {
                            adjacency.join(row[a], row[b]);
                        }
                    }
                }
            }
            boolean[] gone = eliminate(adjacency);
            int[] position = new int[nodes];
            int at = sparse;
            for (int node = 0; node < nodes; node++) {
                if (!gone[node]) {
                    position[node] = at - sparse;
                    order[at++] = node;
                }
            }
            int count = 0;
            for (int e = 0; e < edges.size(); e++) {
                if (!gone[edges.low(e)] && !gone[edges.high(e)]) {
                    count++;
                }
            }
            denseEdges = new int[count];
            denseRow = new int[count];
            denseColumn = new int[count];
            count = 0;
            for (int e = 0; e < edges.size(); e++) {
                if (!gone[edges.low(e)] && !gone[edges.high(e)]) {
                    denseEdges[count] = e;
                    denseRow[count] = position[edges.low(e)];
                    denseColumn[count++] = position[edges.high(e)];
                }
            }
        }

        private boolean[] eliminate(Adjacency adjacency) {
            boolean[] gone = new boolean[nodes];
            Buckets buckets = new Buckets(adjacency.degrees);
            Ints beginList = new Ints();
            Ints neighbourList = new Ints();
            Ints placeList = new Ints();
            Ints targetList = new Ints();
            beginList.add(0);
            int left = nodes;
            while (left > 0) {
                int node = buckets.least(gone, adjacency.degrees);
                int degree = adjacency.degrees[node];
                // A dense factorization does ten times as much in a second as a list of places.
                boolean isDense = degree >= 8 && degree >= 0.12 * (left - 1) || degree > MANY;
                if (isDense) {
                    break;
                }
                gone[node] = true;
                left--;
                order[sparse++] = node;
                int begin = neighbourList.size();
                adjacency.living(node, gone, neighbourList);
                int end = neighbourList.size();
                if ((long) targetList.size() + (long) (end - begin) * (end - begin) / 2 > MOST_PLACES) {
                    throw entangled(left);
                }
                for (int i = begin; i < end; i++) {
                    int a = neighbourList.get(i);
                    placeList.add(edges.find(node, a));
                    for (int j = begin; j < i; j++) {
                        int b = neighbourList.get(j);
                        if (edges.add(a, b)) {
                            adjacency.join(a, b);
                        }
                        targetList.add(edges.find(a, b));
                    }
                }
                for (int i = begin; i < end; i++) {
                    int a = neighbourList.get(i);
                    adjacency.degrees[a]--;
                    buckets.put(a, adjacency.degrees[a]);
                }
                beginList.add(end);
            }
            if (left > MOST_DENSE) {
                throw entangled(left);
            }
            begins = beginList.toArray();
            neighbours = neighbourList.toArray();
            places = placeList.toArray();
            targets = targetList.toArray();
            return gone;
        }

        private static Refused entangled(int left) {
            return Refused.because(
                    "entangled-groups",
                    "the groupings cross in too many ways to be fitted together: " + left
                            + " groups all meet one another, at most " + MOST_DENSE + " can; leave one grouping out");
        }
    }

    /** Pairs of nodes, each with a place. */
    private static final class Edges {
        private long[] keys;
        private int[] values;
        private long[] byPlace;
        private int size;

        Edges(int expected) {
            int capacity = Integer.highestOneBit(Math.max(16, expected)) * 4;
            keys = new long[capacity];
            values = new int[capacity];
            byPlace = new long[Math.max(16, expected)];
        }

        private static long key(int a, int b) {
            // never 0: the larger one is at least 1
            return a < b ? (long) b << 32 | a : (long) a << 32 | b;
        }

        private int slot(long key) {
            int mask = keys.length - 1;
            long mixed = key * 0x9E3779B97F4A7C15L;
            int slot = (int) (mixed >>> 32) & mask;
            while (keys[slot] != 0 && keys[slot] != key) {
                slot = slot + 1 & mask;
            }
            return slot;
        }

        boolean add(int a, int b) {
            long key = key(a, b);
            int slot = slot(key);
            if (keys[slot] == key) {
                return false;
            }
            if (size * 2 > keys.length) {
                grow();
                slot = slot(key);
            }
            if (size == byPlace.length) {
                byPlace = Arrays.copyOf(byPlace, size * 2);
            }
            keys[slot] = key;
            values[slot] = size;
            byPlace[size++] = key;
            return true;
        }

        private void grow() {
            keys = new long[keys.length * 2];
            values = new int[keys.length];
            for (int place = 0; place < size; place++) {
                int slot = slot(byPlace[place]);
                keys[slot] = byPlace[place];
                values[slot] = place;
            }
        }

        int find(int a, int b) {
            return values[slot(key(a, b))];
        }

        int low(int place) {
            return (int) byPlace[place];
        }

        int high(int place) {
            return (int) (byPlace[place] >>> 32);
        }

        int size() {
            return size;
        }
    }

    /** The neighbours of each node, those eliminated since among them. */
    private static final class Adjacency {
        final int[] degrees;
        private final int[] heads;
        private final Ints next = new Ints();
        private final Ints other = new Ints();

        Adjacency(int nodes) {
            degrees = new int[nodes];
            heads = new int[nodes];
            Arrays.fill(heads, -1);
        }

        void join(int a, int b) {
            link(a, b);
            link(b, a);
        }

        private void link(int from, int to) {
            next.add(heads[from]);
            other.add(to);
            heads[from] = next.size() - 1;
            degrees[from]++;
        }

        void living(int node, boolean[] gone, Ints into) {
            for (int link = heads[node]; link >= 0; link = next.get(link)) {
                if (!gone[other.get(link)]) {
                    into.add(other.get(link));
                }
            }
        }
    }

    /** Nodes by their degree; an outdated entry is skipped when met. */
    private static final class Buckets {
        private final int[] heads;
        private final Ints next = new Ints();
        private final Ints nodes = new Ints();
        private int lowest;

        Buckets(int[] degrees) {
            heads = new int[degrees.length + 1];
            Arrays.fill(heads, -1);
            for (int node = degrees.length - 1; node >= 0; node--) {
                put(node, degrees[node]);
            }
        }

        void put(int node, int degree) {
            next.add(heads[degree]);
            nodes.add(node);
            heads[degree] = next.size() - 1;
            lowest = Math.min(lowest, degree);
        }

        int least(boolean[] gone, int[] degrees) {
            while (true) {
                int entry = heads[lowest];
                if (entry < 0) {
                    lowest++;
                    continue;
                }
                heads[lowest] = next.get(entry);
                int node = nodes.get(entry);
                if (!gone[node] && degrees[node] == lowest) {
                    return node;
                }
            }
        }
    }

    /** A list of whole numbers that grows. */
    private static final class Ints {
        private int[] values = new int[16];
        private int size;

        void add(int value) {
            if (size == values.length) {
                values = Arrays.copyOf(values, size * 2);
            }
            values[size++] = value;
        }

        int get(int at) {
            return values[at];
        }

        int size() {
            return size;
        }

        int[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
