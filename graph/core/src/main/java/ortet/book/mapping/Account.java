package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import ortet.entry.EntryKind;

/**
 * What an import of spreadsheets came to, so that somebody at the end of a long day can see it.
 *
 * @param files what became of the rows of each file
 * @param withoutRow how many plants had no row of their own and are acquired
 * @param newPersons how many persons are new to the book
 * @param reasons why rows were not taken, the most frequent first
 * @param remarks what is odd but possible, the most frequent first
 */
public record Account(
        List<FileAccount> files, int withoutRow, int newPersons, List<Reason> reasons, List<Reason> remarks) {
    private static final int MAIN = 3;

    public Account {
        files = List.copyOf(files);
        reasons = List.copyOf(reasons);
        remarks = List.copyOf(remarks);
    }

    /** Return how many rows hold. */
    public int taken() {
        return files.stream().mapToInt(FileAccount::taken).sum();
    }

    /** Return how many rows do not hold. */
    public int notTaken() {
        return files.stream().mapToInt(FileAccount::notTaken).sum();
    }

    /** Return the account in plain lines: each file, what was made up for, and the three main reasons with an example. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        files.forEach(file -> lines.add(file.line()));
        if (withoutRow > 0) {
            lines.add(counted(withoutRow, "plant") + (withoutRow == 1 ? " has" : " have")
                    + " no row of " + (withoutRow == 1 ? "its" : "their")
                    + " own but " + (withoutRow == 1 ? "is" : "are")
                    + " named by others: acquired, earliest known, origin unknown");
        }
        if (newPersons > 0) {
            lines.add(counted(newPersons, "person") + (newPersons == 1 ? " is" : " are") + " new to the book");
        }
        if (notTaken() > 0) {
            lines.add(
                    counted(notTaken(), "row") + (notTaken() == 1 ? " does" : " do") + " not hold, mainly because of:");
            reasons.stream()
                    .limit(MAIN)
                    .forEach(reason -> lines.add(
                            "  " + number(reason.count()) + " × " + reason.words() + ", such as " + reason.example()));
            if (reasons.size() > MAIN) {
                int others = reasons.stream().skip(MAIN).mapToInt(Reason::count).sum();
                lines.add("  " + number(others) + " × something else");
            }
        }
        return lines;
    }

    static String number(int count) {
        return String.format(Locale.ROOT, "%,d", count);
    }

    static String counted(int count, String what) {
        return number(count) + " " + what + (count == 1 ? "" : "s");
    }

    static String byKind(Map<EntryKind, Integer> entries) {
        return entries.entrySet().stream()
                .sorted(Map.Entry.<EntryKind, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(entry -> number(entry.getValue()) + " " + entry.getKey().word())
                .collect(Collectors.joining(", "));
    }
}
