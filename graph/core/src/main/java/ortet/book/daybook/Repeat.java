package ortet.book.daybook;

import java.util.Optional;
import ortet.entry.Proposed;
import ortet.value.Warning;
import ortet.value.Where;

/** A row with the identity of one before it. */
final class Repeat {
    private Repeat() {}

    /** Return a remark when it says the same; object when it does not. */
    static Optional<Warning> of(Proposed first, Where place, Proposed again, Where where, Sheet sheet, Faults faults) {
        if (first.equals(again)) {
            return Optional.of(
                    new Warning("repeated-row", where + ": says the same as " + place + ", and is left out"));
        }
        faults.add(
                "changed-row",
                sheet.has(Columns.ENTRY) ? sheet.where(where.line(), Columns.ENTRY) : where,
                sheet.position(Columns.OF_DAY_BOOK.at(Columns.ENTRY)),
                "has the identity of " + place + " and other words; expected one row for each entry");
        return Optional.empty();
    }
}
