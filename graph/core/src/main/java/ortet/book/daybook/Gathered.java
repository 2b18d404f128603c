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

    /** Return how many entries were taken. */
    int size() {
        return items.size();
    }

    /** Return what takes the rows of a file. */
    RowReader.Taker taker(Sheet sheet) {
        return new RowReader.Taker() {
            @Override
            public int take(Proposed proposed, Row row) {
                Where where = sheet.where(row.line());
                Integer before = places.putIfAbsent(proposed.id(), items.size());
                if (before == null) {
                    items.add(new Proposal.Item(proposed, Optional.of(where)));
                    return items.size();
                }
                Proposal.Item first = items.get(before);
                Repeat.of(first.proposed(), first.where().orElseThrow(), proposed, where, sheet, faults)
                        .ifPresent(repeats::add);
                return before + 1;
            }

            @Override
            public EntryId id(int number) {
                return items.get(number - 1).proposed().id();
            }

            @Override
            public int number(EntryId id) {
                return places.getOrDefault(id, -1) + 1;
            }
        };
    }

    /** Return the rows as a proposal. */
    Reading.Rows rows(Persons persons) {
        List<Warning> remarks = new ArrayList<>(persons.remarks());
        remarks.addAll(repeats);
        return new Reading.Rows(new Proposal(items, persons.added()), repeats.size(), remarks);
    }
}
