package ortet.money;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.plant.UnitNumber;

/** What some units carry: parts of lines, each marked with the rootstock whose cost it is, where it is one's. */
final class Pool {
    private record Piece(CostLine line, Optional<UnitNumber> stock) {}

    private final Map<Piece, BigFraction> parts = new LinkedHashMap<>();

    /** Put in a whole line. */
    void add(CostLine line) {
        put(new Piece(line, Optional.empty()), BigFraction.ONE);
    }

    /** Put in so much of another pool. */
    void add(Pool other, BigFraction factor) {
        if (!factor.equals(BigFraction.ZERO)) {
            other.parts.forEach((piece, part) -> put(piece, part.multiply(factor)));
        }
    }

    /** Put in so much of another pool, as the cost of a rootstock. */
    void add(Pool other, BigFraction factor, UnitNumber stock) {
        other.parts.forEach((piece, part) -> put(new Piece(piece.line(), Optional.of(stock)), part.multiply(factor)));
    }

    private void put(Piece piece, BigFraction part) {
        parts.merge(piece, part, BigFraction::add);
    }

    /** Take out a share of all, and return it. */
    Pool take(BigFraction share) {
        Pool taken = new Pool();
        taken.add(this, share);
        if (share.equals(BigFraction.ONE)) {
            parts.clear();
        } else {
            BigFraction rest = BigFraction.ONE.subtract(share);
            parts.replaceAll((piece, part) -> part.multiply(rest));
        }
        return taken;
    }

    /** Take out what is the cost of rootstocks that fit, and return it. */
    Pool takeStocks(Predicate<UnitNumber> which) {
        Pool taken = new Pool();
        parts.forEach((piece, part) -> {
            if (piece.stock().filter(which).isPresent()) {
                taken.put(piece, part);
            }
        });
        parts.keySet().removeAll(taken.parts.keySet());
        return taken;
    }

    /** Take out what another pool holds of the same pieces. */
    void remove(Pool other) {
        other.parts.forEach((piece, part) -> {
            BigFraction left = parts.getOrDefault(piece, BigFraction.ZERO).subtract(part);
            if (left.compareTo(BigFraction.ZERO) > 0) {
                parts.put(piece, left);
            } else {
                parts.remove(piece);
            }
        });
    }

    /** Return so much of this. */
    Pool times(BigFraction factor) {
        Pool product = new Pool();
        product.add(this, factor);
        return product;
    }

    boolean isEmpty() {
        return parts.isEmpty();
    }

    /** Return the parts by line, in the order in which they were put in. */
    List<CostPart> list() {
        Map<CostLine, BigFraction> byLine = new LinkedHashMap<>();
        parts.forEach((piece, part) -> byLine.merge(piece.line(), part, BigFraction::add));
        List<CostPart> list = new ArrayList<>();
        byLine.forEach((line, part) -> list.add(new CostPart(line, part)));
        return list;
    }
}
