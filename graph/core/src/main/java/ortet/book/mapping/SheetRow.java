package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import ortet.value.Fault;
import ortet.value.Where;

/** A row of a file, and what it tells: it is taken whole or not at all. */
final class SheetRow {
    private final MappedFile file;
    private final long line;
    private final int number;
    private final List<Deed> deeds = new ArrayList<>(2);
    private List<Fault> faults = List.of();
    private List<String> claims = List.of();
    private List<String> names = List.of();

    SheetRow(MappedFile file, long line, int number) {
        this.file = file;
        this.line = line;
        this.number = number;
    }

    MappedFile file() {
        return file;
    }

    long line() {
        return line;
    }

    /** Return its place among all rows of all files, from 0. */
    int number() {
        return number;
    }

    /** Return what it tells. */
    List<Deed> deeds() {
        return Collections.unmodifiableList(deeds);
    }

    void tell(Deed deed) {
        deeds.add(deed);
    }

    /** Put another deed in the place of each. */
    void link(UnaryOperator<Deed> linked) {
        for (int at = 0; at < deeds.size(); at++) {
            deeds.set(at, linked.apply(deeds.get(at)));
        }
    }

    /** Return what is wrong with it. */
    List<Fault> faults() {
        return faults;
    }

    void complain(Fault fault) {
        if (faults.isEmpty()) {
            faults = new ArrayList<>(1);
        }
        faults.add(fault);
    }

    /** Say which tags it begins, or would if it could be read. */
    void claim(List<String> tags) {
        claims = List.copyOf(tags);
    }

    /** Return the tags that it begins, or would if it could be read. */
    List<String> claims() {
        return claims;
    }

    /** Say which tags it is about, also where it cannot be read as a whole. */
    void name(List<String> tags) {
        names = List.copyOf(tags);
    }

    /** Return the tags that it is about, also where it cannot be read as a whole. */
    List<String> names() {
        return names;
    }

    Where where() {
        return file.where(line);
    }

    Where where(String act, String field) {
        return file.where(line, act, field);
    }
}
