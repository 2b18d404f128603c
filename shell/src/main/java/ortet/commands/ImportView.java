package ortet.commands;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import ortet.book.mapping.FileAccount;
import ortet.book.mapping.Imported;
import ortet.entry.EntryKind;
import ortet.screen.Screen;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;

/** Tells somebody at the end of a long day what an import of spreadsheets came to, and what to do next. */
final class ImportView {
    private static final int EXAMPLES = 2;
    private static final String INDENT = "         ";

    /** Why rows do not hold and what is odd, in plain words; several rules may be one thing to the reader. */
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("bad-day", "a day that cannot be read"),
            Map.entry("no-day", "nothing says when it was"),
            Map.entry("missing-value", "something is missing that must be there"),
            Map.entry("told-twice", "two rows about one plant that do not agree"),
            Map.entry("rests-on-refused", "rests on a row that has a fault"),
            Map.entry("unknown-tag", "a plant that neither the rows nor the book know"),
            Map.entry("bad-number", "a number that cannot be read"),
            Map.entry("bad-money", "a price that cannot be read"),
            Map.entry("bad-strength", "a strength that cannot be read"),
            Map.entry("bad-tag", "a tag that cannot be one"),
            Map.entry("bad-tags", "a tag that cannot be one"),
            Map.entry("bad-cultivar", "a name that is no botanical one"),
            Map.entry("bad-person", "a person's name that cannot be one"),
            Map.entry("bad-word", "a word that the mapping does not know"),
            Map.entry("unknown-outcome", "a word that the mapping does not know"),
            Map.entry("unknown-method", "a word that the mapping does not know"),
            Map.entry("unknown-kind", "a word that the mapping does not know"),
            Map.entry("not-of-method", "parents that do not go with the method"),
            Map.entry("future-day", "a day that is still to come"),
            Map.entry("before-it-began", "a day before it was there"),
            Map.entry("too-many", "more than there were"),
            Map.entry("tag-in-use", "a tag that is in use already"),
            Map.entry("gone", "something done to a plant that was gone"),
            Map.entry("changed-row", "a row that says something else than when it was read before"),
            Map.entry("without-a-row", "a plant without a row of its own"),
            Map.entry("taking-unrecorded", "nothing tells when it took"),
            Map.entry("unread-column", "a column that the mapping does not read"),
            Map.entry("unread-sheet", "a sheet of the mapping without a file"),
            Map.entry("only-what-took", "a file that may hold only what took"),
            Map.entry("cultivar-differs", "another cultivar than the mother's"),
            Map.entry("new-person", "a new person whose name is near to a known one"));

    private final Imported imported;
    private final boolean isCheck;
    private final FaultList faults;
    private final Screen screen;

    ImportView(Imported imported, boolean isCheck, FaultList faults, Screen screen) {
        this.imported = imported;
        this.isCheck = isCheck;
        this.faults = faults;
        this.screen = screen;
    }

    /**
     * Show it.
     *
     * @throws Refused with the faults, when nothing was written because of them
     */
    void show() {
        imported.files().forEach(this::file);
        if (imported.withoutRow() > 0) {
            screen.prose(
                    Counts.of(imported.withoutRow(), "plant has no row of its own", "plants have no row of their own")
                            + " and " + (imported.withoutRow() == 1 ? "is" : "are")
                            + " named by others: acquired, earliest known, origin unknown");
        }
        remarks();
        if (!imported.faults().isEmpty()) {
            why();
        }
        if (imported.loaded().isEmpty() && !imported.faults().isEmpty()) {
            screen.println();
            throw faults.cut(imported.faults(), advice());
        }
        faults.write(imported.faults());
        end();
    }

    private boolean isWritten() {
        return imported.loaded().isPresent() && !isCheck;
    }

    // ---- files ----

    private void file(FileAccount file) {
        screen.prose(file.file() + ": " + Counts.grouped(file.rows()) + (file.rows() == 1 ? " row" : " rows")
                + " as sheet " + file.sheet());
        int holds = file.taken();
        String become = isWritten() ? (holds == 1 ? "becomes " : "become ") : "would become ";
        line(
                holds,
                (holds == 1 ? "holds" : "hold")
                        + (file.entries().isEmpty() ? "" : ", and " + become + byKind(file.entries())));
        line(file.silent(), (file.silent() == 1 ? "of these says" : "of these say") + " nothing for the book yet");
        line(
                file.repeated(),
                (file.repeated() == 1 ? "says" : "say") + " what another says, and "
                        + (file.repeated() == 1 ? "counts" : "count") + " once");
        line(file.leftOut(), "left out as the mapping says");
        line(file.wrong(), (file.wrong() == 1 ? "has" : "have") + " a fault");
        line(file.resting(), (file.resting() == 1 ? "rests" : "rest") + " on one that has");
    }

    private void line(int count, String text) {
        if (count > 0) {
            screen.hanging(label(count, " "), INDENT, text);
        }
    }

    private static String label(int count, String after) {
        return String.format(Locale.ROOT, "%8s", Counts.grouped(count)) + after;
    }

    private static String byKind(Map<EntryKind, Integer> entries) {
        return entries.entrySet().stream()
                .sorted(Map.Entry.<EntryKind, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(entry -> Counts.grouped(entry.getValue()) + " "
                        + entry.getKey().word().replace('-', ' '))
                .collect(Collectors.joining(", "));
    }

    // ---- why ----

    private void remarks() {
        List<Warning> all = imported.remarks();
        if (!all.isEmpty()) {
            screen.println();
        }
        if (all.size() <= FaultList.SHOWN) {
            all.forEach(warning -> screen.hanging("", "    ", "remark: " + warning.text()));
            return;
        }
        screen.prose(Counts.grouped(all.size()) + " remarks, odd but possible:");
        grouped(all, true);
    }

    private void why() {
        boolean isCut = imported.faults().size() > FaultList.SHOWN;
        screen.println();
        screen.prose("Why "
                + (imported.wrong() == 1 ? "1 row does" : Counts.grouped(imported.wrong()) + " rows do")
                + " not hold:");
        List<Warning> all = imported.faults().stream()
                .map(fault -> new Warning(fault.rule(), fault.line()))
                .toList();
        grouped(all, isCut);
        if (imported.loaded().isPresent() && !isCut) {
            imported.faults().stream().map(Fault::line).forEach(line -> screen.hanging("", "    ", line));
        }
    }

    private void grouped(List<Warning> all, boolean hasExamples) {
        Map<String, List<String>> groups = new LinkedHashMap<>();
        for (Warning one : all) {
            String words = WORDS.getOrDefault(one.rule(), one.rule().replace('-', ' '));
            groups.computeIfAbsent(words, key -> new ArrayList<>()).add(one.text());
        }
        groups.entrySet().stream()
                .sorted(Comparator.comparingInt(group -> -group.getValue().size()))
                .forEach(group -> {
                    screen.hanging(label(group.getValue().size(), " × "), INDENT + "  ", group.getKey());
                    if (hasExamples) {
                        group.getValue().stream()
                                .limit(EXAMPLES)
                                .forEach(text -> screen.hanging(INDENT + "  ", INDENT + "    ", text));
                    }
                });
    }

    // ---- what next ----

    private String advice() {
        int holds = imported.taken();
        return "nothing was written; mend the rows, or the mapping, and import again"
                + (holds == 0
                        ? ""
                        : ", or take the " + Counts.of(holds, "row that holds", "rows that hold")
                                + " with --what-holds");
    }

    private void end() {
        screen.println();
        imported.loaded().ifPresent(loaded -> screen.prose(ImportCommands.told(isCheck, loaded)));
        int left = imported.wrong() + imported.resting();
        if (left > 0) {
            screen.prose(Counts.of(left, "row is", "rows are") + " left out; mend "
                    + (left == 1 ? "it" : "them")
                    + " and import the same files again: what is there already adds nothing"
                    + faults.path()
                            .map(path -> "; " + path + " lists the faults")
                            .orElse(""));
        } else if (isCheck) {
            screen.prose("every row holds; without --check it is written");
        }
    }
}
