package ortet.book.mapping;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.Receipt;
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
    /** Gives a view of the book for the length of a question. */
    interface Views {
        <T> T read(Function<BookView, T> question);
    }

    private final MappedReading reading;
    private final Nursery nursery;
    private final Views views;
    private final Judge judge;
    private final boolean takesWhatHolds;
    private final Progress progress;
    private final Map<SheetRow, List<Fault>> refused = new LinkedHashMap<>();
    private final Map<SheetRow, Fault> resting = new LinkedHashMap<>();

    Settlement(MappedReading reading, Views views, Judge judge, boolean takesWhatHolds, Progress progress) {
        this.reading = reading;
        this.nursery = reading.nursery();
        this.views = views;
        this.judge = judge;
        this.takesWhatHolds = takesWhatHolds;
        this.progress = progress;
    }

    /**
     * Settle it.
     *
     * @param write what is done with the entries in the end, unless there are faults that stop it
     */
    Imported settle(Function<Proposal, Receipt> write) {
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
            Proposal proposal = resolution.proposal();
            boolean isWritten =
                    refused.isEmpty() || takesWhatHolds && !proposal.items().isEmpty();
            try {
                Optional<Receipt> receipt = Optional.empty();
                if (isWritten) {
                    receipt = Optional.of(write.apply(proposal));
                } else if (!proposal.items().isEmpty()) {
                    views.read(view -> judge.rule(proposal, view, progress));
                }
                return imported(resolution, proposal, receipt);
            } catch (Refused judged) {
                blame(judged, resolution);
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
        return views.read(view -> {
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
    private void blame(Refused judged, Resolution resolution) {
        Map<Where, List<Told>> byPlace = new HashMap<>();
        for (Told told : resolution.told()) {
            byPlace.computeIfAbsent(told.item().where().orElseThrow(), key -> new ArrayList<>(1))
                    .add(told);
        }
        boolean found = false;
        for (Fault fault : judged.faults()) {
            List<Told> told = fault.where().map(byPlace::get).orElse(null);
            if (told != null) {
                List<Fault> faults = refused.computeIfAbsent(told.get(0).row(), key -> new ArrayList<>());
                Fault placed = JudgedFault.placed(fault, told);
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

    private Imported imported(Resolution resolution, Proposal proposal, Optional<Receipt> receipt) {
        List<Fault> faults = new ArrayList<>();
        refused.values().forEach(faults::addAll);
        if (takesWhatHolds) {
            faults.addAll(resting.values());
        }
        faults.sort(Comparator.comparing((Fault fault) -> fault.where().orElseThrow())
                .thenComparing(fault -> fault.where().orElseThrow().column().orElse("")));
        List<Warning> remarks = new ArrayList<>(reading.remarks());
        for (Person person : proposal.persons()) {
            reading.persons()
                    .nearTo(person.number())
                    .ifPresent(near -> remarks.add(new Warning(
                            "new-person",
                            person.shown() + " is new, and becomes " + person.number() + "; near to " + near)));
        }
        remarks.addAll(resolution.remarks());
        receipt.ifPresent(written -> remarks.addAll(written.warnings()));
        return new Imported(
                accounts(resolution), resolution.acquired(), proposal.persons().size(), faults, remarks, receipt);
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
            tallies.get(told.row().file())
                    .entries
                    .merge(told.item().proposed().entry().kind(), 1, Integer::sum);
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
