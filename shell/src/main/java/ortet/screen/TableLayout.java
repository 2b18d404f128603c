package ortet.screen;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Lays a sheet out for people: columns side by side, text broken where that is needed to fit the screen, and one value
 * below the other where the screen is too narrow even so. Where there are no rows the notes stand alone and say why.
 */
final class TableLayout {
    private static final int GAP = 2;
    private static final int LEAST_TEXT = 10;
    private static final int MOST_UNBROKEN = 24;

    private final List<Column> columns = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();
    private final int[] beside;
    private final int[] beneath;
    private final Sheet sheet;
    private final Screen screen;

    private TableLayout(Sheet sheet, Screen screen) {
        this.sheet = sheet;
        this.screen = screen;
        List<Integer> shown = new ArrayList<>();
        for (int i = 0; i < sheet.columns().size(); i++) {
            if (sheet.columns().get(i).audience() != Column.Audience.PROGRAMS) {
                shown.add(i);
                columns.add(sheet.columns().get(i));
            }
        }
        for (List<Cell> row : sheet.rows()) {
            List<String> texts = new ArrayList<>();
            for (int i : shown) {
                texts.add(Text.printable(text(sheet.columns().get(i), row.get(i))));
            }
            rows.add(texts);
        }
        this.beside = IntStream.range(0, columns.size())
                .filter(i -> !columns.get(i).beneath())
                .toArray();
        this.beneath = IntStream.range(0, columns.size())
                .filter(i -> columns.get(i).beneath())
                .toArray();
    }

    static void write(Sheet sheet, Screen screen) {
        if (!sheet.title().isEmpty()) {
            Text.wrap(sheet.title(), screen.width()).forEach(line -> screen.println(screen.styled(Style.STRONG, line)));
            screen.println();
        }
        boolean isTold = !sheet.notes().isEmpty() || !sheet.warnings().isEmpty();
        boolean isBare = !sheet.columns().isEmpty() && sheet.rows().isEmpty() && isTold;
        if (!isBare) {
            new TableLayout(sheet, screen).write();
        }
        if (isTold && !isBare) {
            screen.println();
        }
        sheet.notes().forEach(screen::prose);
        for (String warning : sheet.warnings()) {
            for (String line : Text.wrap("warning: " + warning, screen.width())) {
                screen.println(screen.styled(Style.WARNING, line));
            }
        }
    }

    private void write() {
        if (columns.isEmpty()) {
            return;
        }
        int[] widths = new int[beside.length];
        int[] withHeadingsBroken = new int[beside.length];
        int[] least = new int[beside.length];
        for (int i = 0; i < widths.length; i++) {
            measure(i, widths, withHeadingsBroken, least);
        }
        if (fit(widths, withHeadingsBroken) || fit(widths, least)) {
            writeSideBySide(widths);
        } else {
            writeStacked();
        }
    }

    private void measure(int i, int[] widths, int[] withHeadingsBroken, int[] least) {
        Column column = columns.get(beside[i]);
        String heading = column.headingWithUnit();
        int word = 0;
        int widest = 0;
        for (List<String> row : rows) {
            widest = Math.max(widest, Text.columns(row.get(beside[i])));
            word = Math.max(word, Text.longestWord(row.get(beside[i])));
        }
        widths[i] = Math.max(widest, Text.columns(heading));
        int narrow = column.kind() == Column.Kind.TEXT ? Math.max(LEAST_TEXT, Math.min(word, MOST_UNBROKEN)) : widest;
        withHeadingsBroken[i] = Math.max(widest, Text.longestWord(heading));
        least[i] = Math.min(widths[i], Math.max(narrow, Text.longestWord(heading)));
    }

    /** Take columns off the widest until the row fits; return whether it does. */
    private boolean fit(int[] widths, int[] least) {
        int over = GAP * (widths.length - 1) - screen.width();
        for (int width : widths) {
            over += width;
        }
        while (over > 0) {
            int widest = -1;
            for (int i = 0; i < widths.length; i++) {
                if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) {
                    widest = i;
                }
            }
            if (widest < 0) {
                return false;
            }
            widths[widest]--;
            over--;
        }
        return true;
    }

    private void writeSideBySide(int[] widths) {
        List<String> headings = columns.stream().map(Column::headingWithUnit).toList();
        writeRow(headings, widths, true);
        StringBuilder rule = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            rule.append(i == 0 ? "" : " ".repeat(GAP)).append("─".repeat(widths[i]));
        }
        screen.println(screen.styled(Style.FAINT, rule.toString()));
        for (int at = 0; at < rows.size(); at++) {
            Stopped.check();
            writeSection(at);
            writeRow(rows.get(at), widths, false);
            for (int i : beneath) {
                String indent = " ".repeat(Math.min(widths[0] + GAP, screen.width() / 2));
                if (!rows.get(at).get(i).isEmpty()) {
                    screen.hanging(indent, indent, rows.get(at).get(i));
                }
            }
        }
    }

    private void writeSection(int row) {
        Optional.ofNullable(sheet.sections().get(row))
                .ifPresent(heading -> Text.wrap(Text.printable(heading), screen.width())
                        .forEach(line -> screen.println(screen.styled(Style.STRONG, line))));
    }

    private void writeRow(List<String> texts, int[] widths, boolean heading) {
        List<List<String>> cells = new ArrayList<>();
        int height = 1;
        for (int i = 0; i < widths.length; i++) {
            List<String> lines = Text.wrap(texts.get(beside[i]), widths[i]);
            cells.add(lines);
            height = Math.max(height, lines.size());
        }
        for (int line = 0; line < height; line++) {
            StringBuilder row = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                List<String> lines = cells.get(i);
                int from = heading ? height - lines.size() : 0;
                String text = line >= from && line - from < lines.size() ? lines.get(line - from) : "";
                row.append(i == 0 ? "" : " ".repeat(GAP));
                row.append(
                        columns.get(beside[i]).alignsRight()
                                ? Text.right(text, widths[i])
                                : Text.left(text, widths[i]));
            }
            String whole = row.toString().stripTrailing();
            screen.println(heading ? screen.styled(Style.STRONG, whole) : whole);
        }
    }

    private void writeStacked() {
        int label = 0;
        for (Column column : columns) {
            label = Math.max(label, Text.columns(column.headingWithUnit()));
        }
        label = Math.min(label, Math.max(1, screen.width() / 2 - GAP));
        int room = Math.max(1, screen.width() - label - GAP);
        for (int at = 0; at < rows.size(); at++) {
            List<String> row = rows.get(at);
            Stopped.check();
            if (at > 0) {
                screen.println();
            }
            writeSection(at);
            for (int i = 0; i < columns.size(); i++) {
                List<String> names = Text.wrap(columns.get(i).headingWithUnit(), label);
                List<String> lines = Text.wrap(row.get(i), room);
                for (int line = 0; line < Math.max(names.size(), lines.size()); line++) {
                    String name = Text.left(line < names.size() ? names.get(line) : "", label);
                    String text = line < lines.size() ? lines.get(line) : "";
                    screen.println((screen.styled(Style.FAINT, name) + " ".repeat(GAP) + text).stripTrailing());
                }
            }
        }
    }

    private static String text(Column column, Cell cell) {
        if (cell instanceof Cell.Words words) {
            return words.text();
        }
        if (cell instanceof Cell.Whole whole) {
            return column.kind() == Column.Kind.SHARE || column.kind() == Column.Kind.NUMBER
                    ? number(column, BigDecimal.valueOf(whole.value()))
                    : Long.toString(whole.value());
        }
        if (cell instanceof Cell.Number number) {
            return Double.isFinite(number.value()) ? number(column, BigDecimal.valueOf(number.value())) : "";
        }
        if (cell instanceof Cell.Exact exact) {
            return number(column, exact.value());
        }
        if (cell instanceof Cell.Day day) {
            return day.day().toString();
        }
        if (cell instanceof Cell.Truth truth) {
            return truth.value() ? "yes" : "no";
        }
        return "";
    }

    private static String number(Column column, BigDecimal value) {
        BigDecimal shown = column.kind() == Column.Kind.SHARE ? value.movePointRight(2) : value;
        return shown.setScale(column.decimals(), RoundingMode.HALF_UP).toPlainString();
    }
}
