package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ortet.entry.EntryKind;
import ortet.value.Warning;

/**
 * Notices files that hold only what took: a rate over them would be 100 %, whatever the nursery's hand.
 *
 * <p>Counts what was set, took and failed by file and method, of beginnings that count in a rate.
 */
final class OnlyWhatTook {
    private static final int ENOUGH_TO_WONDER = 20;

    /** What was counted of one file and method. */
    private static final class Counts {
        private int set;
        private int took;
        private int failed;
    }

    private record Sheet(String file, String method) implements Comparable<Sheet> {
        @Override
        public int compareTo(Sheet other) {
            int byFile = file.compareTo(other.file);
            return byFile == 0 ? method.compareTo(other.method) : byFile;
        }
    }

    private final Map<Sheet, Counts> sheets = new TreeMap<>();

    private Counts of(Deed beginning) {
        Sheet sheet = new Sheet(
                beginning.row().file().source().shown(),
                Method.of(beginning.kind()).map(Method::word).orElse("plant"));
        return sheets.computeIfAbsent(sheet, key -> new Counts());
    }

    /** Count a beginning. */
    void set(Deed beginning) {
        of(beginning).set++;
    }

    /** Count what became of a beginning. */
    void became(Deed beginning, EntryKind kind) {
        switch (kind) {
            case FAILED -> of(beginning).failed++;
            case SEVERED, TAKEN -> of(beginning).took++;
            default -> {}
        }
    }

    /** Return which files one must wonder about. */
    List<Warning> remarks() {
        List<Warning> remarks = new ArrayList<>();
        sheets.forEach((sheet, counts) -> {
            if (counts.set >= ENOUGH_TO_WONDER && counts.took >= ENOUGH_TO_WONDER && counts.failed == 0) {
                remarks.add(new Warning(
                        "only-what-took",
                        sheet.file() + ": of " + counts.set + " raised as " + sheet.method()
                                + " none failed; if the sheet holds only what took, a line otherwise set unrecorded = yes in"
                                + " the mapping keeps them out of every rate"));
            }
        });
        return remarks;
    }
}
