package ortet.book.daybook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.book.Proposal;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.value.Warning;
import ortet.value.Where;

/** Gathers the rows of all files of one import, each identity once. */
final class Gathered {
    private final Faults faults;
    private final List<Proposal.Item> items = new ArrayList<>();
    private final Map<EntryId, Integer> places = new HashMap<>();
    private final List<Warning> repeats = new ArrayList<>();

    Gathered(Faults faults) {
        this.faults = faults;
    }

    /** Return what takes the rows of a file. */
    RowReader.Taker taker(Sheet sheet) {
        return (proposed, row) -> take(proposed, sheet.where(row.line()), sheet);
    }

    private void take(Proposed proposed, Where where, Sheet sheet) {
        Integer before = places.putIfAbsent(proposed.id(), items.size());
        if (before == null) {
            items.add(new Proposal.Item(proposed, Optional.of(where)));
            return;
        }
        Proposal.Item first = items.get(before);
        Where place = first.where().orElseThrow();
        if (first.proposed().equals(proposed)) {
            repeats.add(new Warning("repeated-row", where + ": says the same as " + place + ", and is left out"));
        } else {
            faults.add(
                    "changed-row",
                    sheet.has(Columns.ENTRY) ? sheet.where(where.line(), Columns.ENTRY) : where,
                    sheet.position(Columns.OF_DAY_BOOK.at(Columns.ENTRY)),
                    "has the identity of " + place + " and other words; expected one row for each entry");
        }
    }

    /** Return the rows as a proposal. */
    Reading.Rows rows(Persons persons) {
        List<Warning> remarks = new ArrayList<>(persons.remarks());
        remarks.addAll(repeats);
        return new Reading.Rows(new Proposal(items, persons.added()), repeats.size(), remarks);
    }
}
