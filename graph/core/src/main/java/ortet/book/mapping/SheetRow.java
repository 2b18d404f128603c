package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import ortet.value.Fault;
import ortet.value.Where;

/** A row of a file, and what it tells: it is taken whole or not at all. */
final class SheetRow {
    private final MappedFile file;
    private final long line;
    private final int number;
    private final List<Deed> deeds = new ArrayList<>(2);
    private List<Fault> faults = List.of();

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

    Where where() {
        return file.where(line);
    }

    Where where(String act, String field) {
        return file.where(line, act, field);
    }
}
