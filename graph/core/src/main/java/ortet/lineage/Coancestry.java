package ortet.lineage;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Coefficients of kinship in a pedigree of genotypes, exactly.
 *
 * <p>The coefficient of kinship (coancestry) of two genotypes is the probability that a gene drawn at random from the one
 * and a gene drawn at random from the same locus of the other are identical by descent. With the parents p and q of a,
 * where a is no ancestor of b:
 *
 * <pre>
 *   f(a, b) = (f(p, b) + f(q, b)) / 2
 *   f(a, a) = (1 + f(p, q)) / 2
 * </pre>
 *
 * A parent that is not known counts as unrelated to all and not inbred, so that each value is the least that it can be.
 * The inbreeding coefficient of a is f(p, q). Each pair is worked out once: O(n²) time and space for n genotypes.
 *
 * @see "Malécot 1948, Les mathématiques de l'hérédité; Wright 1922, The American Naturalist 56:330; in this form Falconer
 *     and Mackay 1996, Introduction to Quantitative Genetics, 4th edition, chapter 5"
 */
final class Coancestry {
    private static final BigFraction HALF = BigFraction.of(1, 2);

    /** The parents of a genotype, by number; absent where not known. */
    private record Parents(Optional<Integer> one, Optional<Integer> other) {}

    private final List<Parents> pedigree = new ArrayList<>();
    private final List<Integer> depths = new ArrayList<>();
    private final Map<Long, BigFraction> known = new HashMap<>();

    /**
     * Add a genotype whose parents, where they are known, were added before.
     *
     * @return its number, from 0
     */
    int add(Optional<Integer> one, Optional<Integer> other) {
        pedigree.add(new Parents(one, other));
        depths.add(1
                + Math.max(
                        one.map(depths::get).orElse(-1), other.map(depths::get).orElse(-1)));
        return pedigree.size() - 1;
    }

    /** Return the coefficient of kinship of two genotypes, in [0, 1]; of a genotype with itself it is 1/2 at least. */
    BigFraction of(int one, int other) {
        // the one that stands lower in the pedigree is no ancestor of the other
        boolean swap = depths.get(other) > depths.get(one) || depths.get(other).equals(depths.get(one)) && other > one;
        int low = swap ? other : one;
        int high = swap ? one : other;
        long pair = ((long) low << Integer.SIZE) + high;
        BigFraction found = known.get(pair);
        if (found == null) {
            Parents parents = pedigree.get(low);
            if (low == high) {
                BigFraction inbreeding =
                        parents.one().isPresent() && parents.other().isPresent()
                                ? of(parents.one().get(), parents.other().get())
                                : BigFraction.ZERO;
                found = inbreeding.add(BigInteger.ONE).multiply(HALF);
            } else {
                BigFraction first =
                        parents.one().map(parent -> of(parent, high)).orElse(BigFraction.ZERO);
                BigFraction second =
                        parents.other().map(parent -> of(parent, high)).orElse(BigFraction.ZERO);
                found = first.add(second).multiply(HALF);
            }
            known.put(pair, found);
        }
        return found;
    }
}
