package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;

/** Coefficients of kinship, against published figures and against another way of working them out. */
class CoancestryTests {
    private static final Optional<Integer> UNKNOWN = Optional.empty();

    private final Coancestry pedigree = new Coancestry();

    private int founder() {
        return pedigree.add(UNKNOWN, UNKNOWN);
    }

    private int cross(int one, int other) {
        return pedigree.add(Optional.of(one), Optional.of(other));
    }

    private void isOneIn(int parts, int one, int other) {
        assertEquals(BigFraction.of(1, parts), pedigree.of(one, other));
        assertEquals(BigFraction.of(1, parts), pedigree.of(other, one));
    }

    /** Falconer and Mackay 1996, chapter 5: itself 1/2, parent and offspring 1/4, full sibs 1/4, half sibs 1/8. */
    @Test
    void isThatOfTheTextbookForCloseKin() {
        int mother = founder();
        int father = founder();
        int another = founder();
        int child = cross(mother, father);
        int sib = cross(mother, father);
        int half = cross(mother, another);
        isOneIn(2, mother, mother);
        isOneIn(2, child, child);
        isOneIn(4, mother, child);
        isOneIn(4, child, sib);
        isOneIn(8, child, half);
        assertEquals(BigFraction.ZERO, pedigree.of(mother, father));
    }

    /**
     * First cousins 1/16, uncle and niece 1/8, double first cousins 1/8: the inbreeding coefficients of their offspring as
     * any handbook has them (Wright 1922, The American Naturalist 56:330).
     */
    @Test
    void isThatOfTheTextbookForCousins() {
        int grandmother = founder();
        int grandfather = founder();
        int one = cross(grandmother, grandfather);
        int other = cross(grandmother, grandfather);
        int cousin = cross(one, founder());
        isOneIn(8, cousin, other);
        isOneIn(16, cousin, cross(other, founder()));
        int third = founder();
        int fourth = founder();
        int her = cross(third, fourth);
        int his = cross(third, fourth);
        isOneIn(8, cross(one, her), cross(other, his));
    }

    /** Selfing: 1/2, 3/4, 7/8 with itself, from 1/2 for what is not inbred (Falconer and Mackay 1996, chapter 5). */
    @Test
    void growsByHalfOfWhatIsLeftWithEachSelfing() {
        int plant = founder();
        for (int generation = 1; generation <= 10; generation++) {
            plant = cross(plant, plant);
            BigFraction inbreeding =
                    BigFraction.ONE.subtract(BigFraction.of(1, 2).pow(generation));
            assertEquals(BigFraction.ONE.add(inbreeding).divide(2), pedigree.of(plant, plant));
        }
    }

    /**
     * The worked example of Mrode, Linear Models for the Prediction of Animal Breeding Values, 3rd edition (2014): the
     * pedigree of table 2.1, with the relationship matrix as the product T D T' of the two matrices printed on page 25,
     * and its part for 1, 4 and 5 as printed on page 32. A relationship is twice the kinship.
     */
    @Test
    void isThatOfAWorkedPedigreeWithInbreeding() {
        double[][] t = {
            {1.0, 0.0, 0.0, 0.0, 0.0, 0.0},
            {0.0, 1.0, 0.0, 0.0, 0.0, 0.0},
            {0.5, 0.5, 1.0, 0.0, 0.0, 0.0},
            {0.5, 0.0, 0.0, 1.0, 0.0, 0.0},
            {0.5, 0.25, 0.5, 0.5, 1.0, 0.0},
            {0.25, 0.625, 0.25, 0.25, 0.5, 1.0}
        };
        double[] d = {1.0, 1.0, 0.5, 0.75, 0.5, 0.469};
        int one = founder();
        int two = founder();
        int three = cross(one, two);
        int four = pedigree.add(Optional.of(one), UNKNOWN);
        int five = cross(four, three);
        int six = cross(five, two);
        List<Integer> all = List.of(one, two, three, four, five, six);
        for (int row = 0; row < 6; row++) {
            for (int column = 0; column < 6; column++) {
                double printed = 0;
                for (int at = 0; at < 6; at++) {
                    printed += t[row][at] * d[at] * t[column][at];
                }
                // D is printed with three decimals
                assertEquals(
                        printed, 2 * pedigree.of(all.get(row), all.get(column)).doubleValue(), 0.0005);
            }
        }
        assertEquals(BigFraction.of(9, 16), pedigree.of(five, five));
        assertEquals(BigFraction.of(5, 16), pedigree.of(four, five));
        isOneIn(4, one, five);
        isOneIn(4, one, four);
    }

    /** The tabular method: from the oldest down, each row from those of the two parents (Emik and Terrill 1949). */
    private static BigFraction[][] table(List<int[]> parents) {
        int size = parents.size();
        BigFraction[][] table = new BigFraction[size][size];
        for (int row = 0; row < size; row++) {
            int one = parents.get(row)[0];
            int other = parents.get(row)[1];
            for (int column = 0; column < row; column++) {
                BigFraction sum = BigFraction.ZERO;
                sum = one < 0 ? sum : sum.add(table[column][one]);
                sum = other < 0 ? sum : sum.add(table[column][other]);
                table[row][column] = sum.divide(2);
                table[column][row] = table[row][column];
            }
            BigFraction inbreeding = one < 0 || other < 0 ? BigFraction.ZERO : table[one][other];
            table[row][row] = BigFraction.ONE.add(inbreeding).divide(2);
        }
        return table;
    }

    /** Tell whether a symmetric matrix is positive semi-definite, by its decomposition, exactly. */
    private static boolean isPositive(BigFraction[][] matrix) {
        int size = matrix.length;
        for (int at = 0; at < size; at++) {
            int sign = matrix[at][at].signum();
            if (sign < 0) {
                return false;
            }
            for (int row = at + 1; row < size; row++) {
                if (sign == 0) {
                    if (matrix[row][at].signum() != 0) {
                        return false;
                    }
                    continue;
                }
                BigFraction factor = matrix[row][at].divide(matrix[at][at]);
                for (int column = at + 1; column < size; column++) {
                    matrix[row][column] = matrix[row][column].subtract(factor.multiply(matrix[at][column]));
                }
            }
        }
        return true;
    }

    @Property(tries = 200)
    void isThatOfTheTabularMethodInAnyPedigree(
            @ForAll @Size(min = 1, max = 24) List<@IntRange(max = 10_000) Integer> choices) {
        List<int[]> parents = new ArrayList<>();
        Coancestry all = new Coancestry();
        for (int choice : choices) {
            int size = parents.size();
            int one = choice % (size + 1) - 1;
            int other = choice / 100 % (size + 1) - 1;
            parents.add(new int[] {one, other});
            all.add(one < 0 ? UNKNOWN : Optional.of(one), other < 0 ? UNKNOWN : Optional.of(other));
        }
        BigFraction[][] table = table(parents);
        BigFraction[][] found = new BigFraction[parents.size()][parents.size()];
        for (int row = 0; row < parents.size(); row++) {
            for (int column = 0; column < parents.size(); column++) {
                found[row][column] = all.of(row, column);
                assertEquals(table[row][column], found[row][column]);
                assertEquals(all.of(column, row), found[row][column]);
            }
        }
        assertTrue(isPositive(found));
    }
}
