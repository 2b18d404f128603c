package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.plant.UnitNumber;

/** A plant, layer or batch that rows tell of. */
final class Unit {
    private final String tag;
    private final List<Deed> beginnings = new ArrayList<>(1);
    private final List<Deed> about = new ArrayList<>(2);
    private final List<Deed> children = new ArrayList<>(0);
    private final List<SheetRow> rows = new ArrayList<>(2);
    private final List<Deed> others = new ArrayList<>(0);
    private Optional<UnitNumber> inBook = Optional.empty();
    private boolean acquired;
    private boolean claimed;

    Unit(String tag) {
        this.tag = tag;
    }

    /** Return its tag. */
    String tag() {
        return tag;
    }

    /** Return the deeds that begin it: one, or else the rows contradict each other. */
    List<Deed> beginnings() {
        return beginnings;
    }

    /** Return what is told of it, apart from its beginning. */
    List<Deed> about() {
        return about;
    }

    /** Return the deeds by which others come from it. */
    List<Deed> children() {
        return children;
    }

    /** Return the rows about it, also those that cannot be read as a whole. */
    List<SheetRow> rows() {
        return rows;
    }

    /** Return the deeds that name it otherwise. */
    List<Deed> others() {
        return others;
    }

    /** Return its number in the book, where it is there already. */
    Optional<UnitNumber> inBook() {
        return inBook;
    }

    void inBook(UnitNumber number) {
        inBook = Optional.of(number);
    }

    /** Tell whether it never had a row, and becomes acquired. */
    boolean isAcquired() {
        return acquired;
    }

    void acquire() {
        acquired = true;
    }

    /** Tell whether a row begins it, or would if it could be read. */
    boolean isClaimed() {
        return claimed;
    }

    void claim() {
        claimed = true;
    }
}
