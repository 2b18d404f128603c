package ortet.book.mapping;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import ortet.book.BookView;
import ortet.book.Loaded;
import ortet.book.Progress;
import ortet.entry.EntryKind;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/**
 * Finds out which rows of an import hold, and has them written.
 *
 * <p>Rows that cannot be read are out from the beginning. The rest is worked out and put before the judge; the rows that
 * either objects to go out too, with all that rests on them, and what is left is tried again, until nothing is objected
 * to. A row only ever goes out, so that this comes to an end.
 */
final class Settlement {
    /** Where entries are judged and written. */
    interface Desk {
        /** Ask the book. */
        <T> T read(Function<BookView, T> question);

        /**
         * Have entries judged.
         *
         * @throws Refused with everything that cannot be true
         */
        Loaded check(ToldEntries entries);

        /**
         * Write entries, or only have them judged where nothing is to be written.
         *
         * @throws Refused with everything that cannot be true
         */
        Loaded write(ToldEntries entries);
    }

    private final MappedReading reading;
    private final Nursery nursery;
    private final Desk desk;
    private final boolean takesWhatHolds;
    private final Progress progress;
    private final Map<SheetRow, List<Fault>> refused = new LinkedHashMap<>();
    private final Map<SheetRow, Fault> resting = new LinkedHashMap<>();

    Settlement(MappedReading reading, Desk desk, boolean takesWhatHolds, Progress progress) {
        this.reading = reading;
        this.nursery = reading.nursery();
        this.desk = desk;
        this.takesWhatHolds = takesWhatHolds;
        this.progress = progress;
    }

    /** Settle it: write what is to be written, and tell what came of it. */
    Imported settle() {
        for (SheetRow row : nursery.rows()) {
            if (!row.faults().isEmpty()) {
                refused.put(row, new ArrayList<>(row.faults()));
            }
        }
        spread();
        while (true) {
            Resolution resolution = resolved();
            if (!resolution.faults().isEmpty()) {
                resolution.faults().forEach(this::refuse);
                spread();
                continue;
            }
            ToldEntries entries = new ToldEntries(resolution.told(), resolution.persons());
            boolean isWritten = refused.isEmpty() || takesWhatHolds && !entries.isEmpty();
            try {
                Optional<Loaded> loaded = Optional.empty();
                if (isWritten) {
                    loaded = Optional.of(desk.write(entries));
                } else if (!entries.isEmpty()) {
                    desk.check(entries);
                }
                return imported(resolution, entries, loaded);
            } catch (Refused judged) {
                blame(judged, entries, resolution);
                spread();
            }
        }
    }

    private boolean isOut(SheetRow row) {
        return refused.containsKey(row) || resting.containsKey(row);
    }

    private void refuse(SheetRow row, List<Fault> faults) {
        List<Fault> own = faults.stream()
                .filter(fault -> !fault.rule().equals(Resolution.RESTS))
                .toList();
        if (own.isEmpty()) {
            resting.put(row, faults.get(0));
        } else {
            refused.put(row, new ArrayList<>(own));
        }
    }

    private Resolution resolved() {
        return desk.read(view -> {
            Set<SheetRow> out = Collections.newSetFromMap(new IdentityHashMap<>());
            out.addAll(refused.keySet());
            out.addAll(resting.keySet());
            Resolution resolution = new Resolution(nursery, out, view, reading.persons());
            resolution.run(progress);
            return resolution;
        });
    }

    /** Refuse what rests on rows that are refused. */
    private void spread() {
        if (refused.isEmpty() && resting.isEmpty()) {
            return;
        }
        Deque<SheetRow> queue = new ArrayDeque<>(refused.keySet());
        queue.addAll(resting.keySet());
        Map<SheetRow, List<Unit>> begun = new IdentityHashMap<>();
        for (Unit unit : nursery.units()) {
            nursery.rowsOf(unit)
                    .forEach(row -> begun.computeIfAbsent(row, key -> new ArrayList<>(1))
                            .add(unit));
        }
        while (!queue.isEmpty()) {
            SheetRow row = queue.poll();
            for (Unit unit : begun.getOrDefault(row, List.of())) {
                for (SheetRow dependent : dependents(unit)) {
                    if (dependent != row && !isOut(dependent)) {
                        resting.put(dependent, rests(dependent, unit, row));
                        queue.add(dependent);
                    }
                }
            }
        }
    }

    private static List<SheetRow> dependents(Unit unit) {
        List<SheetRow> dependents = new ArrayList<>();
        unit.about().forEach(deed -> dependents.add(deed.row()));
        unit.children().forEach(deed -> dependents.add(deed.row()));
        unit.others().forEach(deed -> dependents.add(deed.row()));
        return dependents;
    }

    private static Fault rests(SheetRow dependent, Unit unit, SheetRow row) {
        return new Fault(
                Resolution.RESTS,
                Optional.of(dependent.where("", Meaning.TAGS)),
                "rests on " + unit.tag() + ", whose row is not taken (" + row.where() + ")",
                Optional.empty());
    }

    /** Refuse the rows that the judge objects to. */
    private void blame(Refused judged, ToldEntries entries, Resolution resolution) {
        Map<SheetRow, List<Told>> byRow = new IdentityHashMap<>();
        for (Told told : resolution.told()) {
            byRow.computeIfAbsent(told.row(), key -> new ArrayList<>(1)).add(told);
        }
        boolean found = false;
        for (Fault fault : judged.faults()) {
            Optional<Told> about = entries.told(fault);
            if (about.isPresent()) {
                Where where = about.get().where();
                Fault told = new Fault(fault.rule(), Optional.of(where), entries.placed(fault.text()), fault.nearest());
                List<Told> there = byRow.get(about.get().row()).stream()
                        .filter(other -> other.where().equals(where))
                        .toList();
                Fault placed = JudgedFault.placed(told, there);
                List<Fault> faults = refused.computeIfAbsent(about.get().row(), key -> new ArrayList<>());
                if (!faults.contains(placed)) {
                    faults.add(placed);
                }
                found = true;
            }
        }
        if (!found) {
            throw judged;
        }
    }

    private Imported imported(Resolution resolution, ToldEntries entries, Optional<Loaded> loaded) {
        List<Fault> faults = new ArrayList<>();
        refused.values().forEach(faults::addAll);
        if (takesWhatHolds) {
            faults.addAll(resting.values());
        }
        faults.sort(Comparator.comparing((Fault fault) -> fault.where().orElseThrow())
                .thenComparing(fault -> fault.where().orElseThrow().column().orElse("")));
        List<Warning> remarks = new ArrayList<>(reading.remarks());
        for (Person person : entries.persons()) {
            reading.persons()
                    .nearTo(person.number())
                    .ifPresent(near -> remarks.add(new Warning(
                            "new-person",
                            person.shown() + " is new, and becomes " + person.number() + "; near to " + near)));
        }
        remarks.addAll(resolution.remarks());
        loaded.ifPresent(written -> written.warnings()
                .forEach(warning -> remarks.add(new Warning(warning.rule(), entries.placed(warning.text())))));
        return new Imported(accounts(resolution), resolution.acquired(), faults, remarks, loaded);
    }

    /** Counts the rows of a file. */
    private static final class Tally {
        private int taken;
        private int silent;
        private int repeated;
        private int wrong;
        private int resting;
        private final Map<EntryKind, Integer> entries = new EnumMap<>(EntryKind.class);
    }

    private List<FileAccount> accounts(Resolution resolution) {
        Map<MappedFile, Tally> tallies = new IdentityHashMap<>();
        for (FileRows rows : reading.files()) {
            tallies.put(rows.file(), new Tally());
        }
        for (Told told : resolution.told()) {
            tallies.get(told.row().file()).entries.merge(told.kind(), 1, Integer::sum);
        }
        for (SheetRow row : nursery.rows()) {
            Tally tally = tallies.get(row.file());
            if (refused.containsKey(row)) {
                tally.wrong++;
            } else if (resting.containsKey(row)) {
                tally.resting++;
            } else {
                tally.taken++;
                tally.silent += row.deeds().isEmpty() ? 1 : 0;
            }
        }
        nursery.repeated().forEach(row -> tallies.get(row.file()).repeated++);
        List<FileAccount> accounts = new ArrayList<>();
        for (FileRows rows : reading.files()) {
            Tally tally = tallies.get(rows.file());
            accounts.add(new FileAccount(
                    rows.file().source().shown(),
                    rows.file().rules().name(),
                    rows.all(),
                    tally.taken,
                    tally.silent,
                    rows.repeated() + tally.repeated,
                    rows.leftOut(),
                    tally.wrong,
                    tally.resting,
                    tally.entries));
        }
        return accounts;
    }
}
