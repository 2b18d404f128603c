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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.Receipt;
import ortet.book.daybook.Persons;
import ortet.entry.EntryKind;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/** What was read from spreadsheets, ready to be checked or written. */
public final class MappedReading {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}\\-_./#]*");

    private final List<FileRows> files;
    private final List<Warning> remarks;
    private final Nursery nursery;
    private final Persons persons;

    MappedReading(List<FileRows> files, BookView book, List<Warning> remarks) {
        this.files = List.copyOf(files);
        this.remarks = List.copyOf(remarks);
        this.persons = new Persons(book.persons());
        this.nursery =
                new Nursery(files.stream().flatMap(file -> file.rows().stream()).toList(), book);
    }

    /**
     * Have it judged without writing anything.
     *
     * @param takesWhatHolds whether the rows that hold would be written where others do not
     */
    public Imported check(BookView book, Judge judge, boolean takesWhatHolds, Progress progress) {
        return new Settling(
                        new Views() {
                            @Override
                            public <T> T read(Function<BookView, T> question) {
                                return question.apply(book);
                            }
                        },
                        judge,
                        takesWhatHolds,
                        progress)
                .settle(proposal -> judge.rule(proposal, book, progress).receipt());
    }

    /**
     * Write it into the book: all of it or nothing, or the rows that hold.
     *
     * <p>A row is taken whole or not at all, and with a row that does not hold goes every row that rests on it.
     *
     * @param takesWhatHolds whether the rows that hold are written where others do not
     */
    public Imported writeInto(BookStore store, Judge judge, boolean takesWhatHolds, Progress progress) {
        return new Settling(store::read, judge, takesWhatHolds, progress)
                .settle(proposal -> store.append(proposal, judge, progress));
    }

    /** Gives a view of the book for the length of a question. */
    private interface Views {
        <T> T read(Function<BookView, T> question);
    }

    /** Finds out which rows hold, in one run of the import. */
    private final class Settling {
        private final Views views;
        private final Judge judge;
        private final boolean takesWhatHolds;
        private final Progress progress;
        private final Map<SheetRow, List<Fault>> refused = new LinkedHashMap<>();
        private final Map<SheetRow, Fault> resting = new LinkedHashMap<>();

        Settling(Views views, Judge judge, boolean takesWhatHolds, Progress progress) {
            this.views = views;
            this.judge = judge;
            this.takesWhatHolds = takesWhatHolds;
            this.progress = progress;
        }

        Imported settle(Function<Proposal, Receipt> write) {
            for (SheetRow row : nursery.rows()) {
                if (!row.faults().isEmpty()) {
                    refused.put(row, row.faults());
                }
            }
            spread();
            while (true) {
                progress.at("working out what the rows tell", 0, 0);
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

        private void refuse(SheetRow row, List<Fault> faults) {
            List<Fault> own = faults.stream()
                    .filter(fault -> !fault.rule().equals(Resolution.RESTS))
                    .toList();
            if (own.isEmpty()) {
                resting.put(row, faults.get(0));
            } else {
                refused.put(row, own);
            }
        }

        private Resolution resolved() {
            return views.read(view -> {
                Set<SheetRow> out = Collections.newSetFromMap(new IdentityHashMap<>());
                out.addAll(refused.keySet());
                out.addAll(resting.keySet());
                Resolution resolution = new Resolution(nursery, out, view, persons);
                resolution.run();
                return resolution;
            });
        }

        /** Refuse what rests on rows that are refused. */
        private void spread() {
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
                        if (dependent != row && !refused.containsKey(dependent) && !resting.containsKey(dependent)) {
                            resting.put(dependent, rests(dependent, unit, row));
                            queue.add(dependent);
                        }
                    }
                }
            }
        }

        private List<SheetRow> dependents(Unit unit) {
            List<SheetRow> dependents = new ArrayList<>();
            unit.about().forEach(deed -> dependents.add(deed.row()));
            unit.children().forEach(deed -> dependents.add(deed.row()));
            unit.others().forEach(deed -> dependents.add(deed.row()));
            return dependents;
        }

        private Fault rests(SheetRow dependent, Unit unit, SheetRow row) {
            return new Fault(
                    Resolution.RESTS,
                    Optional.of(dependent.where("", Meaning.TAGS)),
                    "rests on " + unit.tag() + ", whose row is not taken (" + row.where() + ")",
                    Optional.empty());
        }

        /** Refuse the rows that the judge objects to. */
        private void blame(Refused judged, Resolution resolution) {
            Map<Where, List<Resolution.Told>> byPlace = new HashMap<>();
            for (Resolution.Told told : resolution.told()) {
                byPlace.computeIfAbsent(told.item().where().orElseThrow(), key -> new ArrayList<>(1))
                        .add(told);
            }
            boolean found = false;
            for (Fault fault : judged.faults()) {
                List<Resolution.Told> told = fault.where().map(byPlace::get).orElse(null);
                if (told != null) {
                    SheetRow row = told.get(0).row();
                    List<Fault> faults = refused.computeIfAbsent(row, key -> new ArrayList<>());
                    Fault placed = placed(fault, told);
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
            List<Warning> all = new ArrayList<>(remarks);
            for (Person person : proposal.persons()) {
                persons.nearTo(person.number())
                        .ifPresent(near -> all.add(new Warning(
                                "new-person",
                                person.shown() + " is new, and becomes " + person.number() + "; near to " + near)));
            }
            all.addAll(resolution.remarks());
            receipt.ifPresent(written -> all.addAll(written.warnings()));
            Account account = new Account(
                    accounts(resolution),
                    resolution.acquired(),
                    proposal.persons().size(),
                    reasons(faults.stream()
                            .map(fault -> new Warning(fault.rule(), fault.line()))
                            .toList()),
                    reasons(all));
            return new Imported(account, faults, all, receipt);
        }

        private List<FileAccount> accounts(Resolution resolution) {
            Map<MappedFile, Map<EntryKind, Integer>> entries = new IdentityHashMap<>();
            for (Resolution.Told told : resolution.told()) {
                entries.computeIfAbsent(told.row().file(), key -> new EnumMap<>(EntryKind.class))
                        .merge(told.item().proposed().entry().kind(), 1, Integer::sum);
            }
            Map<MappedFile, int[]> counts = new IdentityHashMap<>();
            for (SheetRow row : nursery.rows()) {
                int[] count = counts.computeIfAbsent(row.file(), key -> new int[4]);
                boolean isOut = refused.containsKey(row) || resting.containsKey(row);
                count[isOut ? 1 : 0]++;
                if (row.deeds().isEmpty() && row.faults().isEmpty()) {
                    count[3]++;
                }
            }
            nursery.repeated().forEach(row -> counts.computeIfAbsent(row.file(), key -> new int[4])[2]++);
            List<FileAccount> accounts = new ArrayList<>();
            for (FileRows rows : files) {
                int[] count = counts.getOrDefault(rows.file(), new int[4]);
                accounts.add(new FileAccount(
                        rows.file().source().shown(),
                        rows.file().rules().name(),
                        rows.all(),
                        count[0],
                        count[3],
                        rows.repeated() + count[2],
                        rows.leftOut(),
                        count[1],
                        entries.getOrDefault(rows.file(), Map.of())));
            }
            return accounts;
        }
    }

    /** Return a fault of the judge at the column that it is about. */
    private static Fault placed(Fault fault, List<Resolution.Told> told) {
        SheetRow row = told.get(0).row();
        if (fault.rule().equals("tag-in-use")) {
            boolean isRetagged = told.get(0).item().proposed().entry().kind() == EntryKind.RETAGGED;
            return fault.at(row.where("", isRetagged ? "new_tag" : Meaning.TAGS));
        }
        List<String> words = new ArrayList<>();
        Matcher matcher = WORD.matcher(fault.text());
        while (matcher.find()) {
            words.add(matcher.group());
        }
        List<Resolution.Told> meant = told.stream()
                .filter(one -> fault.text()
                        .contains(" be "
                                + one.item().proposed().entry().kind().word().replace('-', ' ') + " "))
                .toList();
        for (Resolution.Told one : meant.isEmpty() ? told : meant) {
            Optional<Deed> deed = one.deed();
            if (deed.isEmpty() || words.isEmpty()) {
                continue;
            }
            if (fault.rule().equals("too-many")
                    && row.file().column(deed.get().act(), Meaning.COUNT).isPresent()) {
                return fault.at(row.where(deed.get().act(), Meaning.COUNT));
            }
            String named = fault.rule().equals("unknown-tag") ? words.get(words.size() - 1) : words.get(0);
            for (String field : deed.get().texts().fields()) {
                boolean isParent = Nursery.isOfOthers(field)
                        && List.of(deed.get().texts().get(field).split("[ :]")).contains(named);
                if (isParent) {
                    return fault.at(row.where(deed.get().act(), field));
                }
            }
        }
        return fault;
    }

    private static List<Reason> reasons(List<Warning> warnings) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        Map<String, String> examples = new HashMap<>();
        for (Warning warning : warnings) {
            counts.merge(warning.rule(), 1, Integer::sum);
            examples.putIfAbsent(warning.rule(), warning.text());
        }
        return counts.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .map(entry -> new Reason(entry.getKey(), entry.getValue(), examples.get(entry.getKey())))
                .toList();
    }
}
