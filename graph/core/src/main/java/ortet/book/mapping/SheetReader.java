package ortet.book.mapping;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.Progress;
import ortet.value.Fault;
import ortet.value.Warning;

/** Reads the rows of one file into what they tell. */
final class SheetReader {
    private final MappedFile file;
    private final Occurrences occurrences;
    private final RowTeller teller;
    private final int firstNumber;
    private final int[] unread;
    private final boolean[] unreadHasText;
    private final Map<Integer, Set<String>> skips = new LinkedHashMap<>();
    private final List<SheetRow> rows = new ArrayList<>();
    private int all;
    private int repeated;
    private int leftOut;

    SheetReader(MappedFile file, Occurrences occurrences, int firstNumber) {
        this.file = file;
        this.occurrences = occurrences;
        this.firstNumber = firstNumber;
        this.teller = RowTeller.of(file, occurrences);
        Set<Integer> read = new HashSet<>(teller.acts().positions());
        for (SheetRules.Skip skip : file.rules().skips()) {
            file.header().position(skip.names()).ifPresent(at -> {
                skips.put(at, skip.values());
                read.add(at);
            });
        }
        List<Integer> others = new ArrayList<>();
        List<String> names = file.header().names();
        for (int at = 0; at < names.size(); at++) {
            if (!read.contains(at) && !file.rules().leftOut().contains(Folded.of(names.get(at)))) {
                others.add(at);
            }
        }
        unread = others.stream().mapToInt(Integer::intValue).toArray();
        unreadHasText = new boolean[unread.length];
    }

    /**
     * Read all rows.
     *
     * @throws ortet.value.Refused where the file cannot be read on
     */
    FileRows read(Progress progress) {
        new CsvFile(file.source(), file.rules().settings().encoding()).read(file.header(), this::take, progress);
        return new FileRows(file, rows, all, repeated, leftOut, remarks());
    }

    private void take(long line, String[] cells) {
        all++;
        if (isLeftOut(cells)) {
            leftOut++;
            return;
        }
        SheetRow row = new SheetRow(file, line, firstNumber + rows.size());
        int width = file.header().names().size();
        if (cells.length > width) {
            row.complain(new Fault(
                    "extra-cells",
                    Optional.of(file.where(line)),
                    "more cells than the header has (" + width
                            + "); expected a text that holds the separator to stand in quotation marks",
                    Optional.empty()));
            rows.add(row);
            return;
        }
        teller.read(cells, row, rest(cells));
        boolean isList = file.rules().shape().sort() != Shape.Sort.PLANT;
        if (isList && row.deeds().size() == 1) {
            Deed deed = row.deeds().get(0);
            String sheet = file.rules().name();
            boolean isSame = Occurrences.same(occurrences.before(sheet, deed.key()), deed)
                    .isPresent();
            if (isSame && file.rules().settings().takesRepeatedOnce()) {
                repeated++;
                return;
            }
            occurrences.add(sheet, deed);
        }
        rows.add(row);
    }

    private boolean isLeftOut(String[] cells) {
        for (Map.Entry<Integer, Set<String>> skip : skips.entrySet()) {
            String cell = skip.getKey() < cells.length ? cells[skip.getKey()] : "";
            if (skip.getValue().contains(Folded.of(cell))) {
                return true;
            }
        }
        return isHeaderAgain(cells);
    }

    private boolean isHeaderAgain(String[] cells) {
        List<String> names = file.header().names();
        if (file.header().line() == 0 || cells.length != names.size()) {
            return false;
        }
        for (int at = 0; at < cells.length; at++) {
            String name = names.get(at);
            boolean same =
                    cells[at].isEmpty() ? name.startsWith("(") : Folded.of(name).startsWith(Folded.of(cells[at]));
            if (!same) {
                return false;
            }
        }
        return true;
    }

    private String rest(String[] cells) {
        if (unread.length == 0) {
            return "";
        }
        StringBuilder rest = new StringBuilder();
        for (int at = 0; at < unread.length; at++) {
            String cell = cells[unread[at]];
            unreadHasText[at] |= !cell.isEmpty();
            rest.append(cell).append('\u001F');
        }
        return rest.toString();
    }

    /** Return which columns nobody read. */
    private List<Warning> remarks() {
        List<Warning> remarks = new ArrayList<>();
        for (int at = 0; at < unread.length; at++) {
            if (unreadHasText[at]) {
                String name = file.header().names().get(unread[at]);
                remarks.add(new Warning(
                        "unread-column",
                        file.where(Math.max(1, file.header().line()), name)
                                + ": the mapping does not read this column; a line leave out = " + Pieces.quoted(name)
                                + " says that it need not"));
            }
        }
        return remarks;
    }
}
