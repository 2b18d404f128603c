package ortet.screen;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/** Writes a sheet for programs. */
final class SheetData {
    private SheetData() {}

    static void writeCsv(Sheet sheet, Writer writer) {
        try {
            CsvWriter csv = CsvWriter.builder().build(writer);
            List<String> record = new ArrayList<>();
            for (Column column : sheet.columns()) {
                if (column.audience() != Column.Audience.PEOPLE) {
                    record.add(column.name());
                }
            }
            csv.writeRecord(record);
            for (List<Cell> row : sheet.rows()) {
                Stopped.check();
                record.clear();
                for (int i = 0; i < row.size(); i++) {
                    if (sheet.columns().get(i).audience() != Column.Audience.PEOPLE) {
                        record.add(csvText(row.get(i)));
                    }
                }
                csv.writeRecord(record);
            }
            csv.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void writeJson(Sheet sheet, Json json) {
        json.object(document -> {
            document.field("title", sheet.title());
            document.array("columns", columns -> {
                for (Column column : sheet.columns()) {
                    if (column.audience() != Column.Audience.PEOPLE) {
                        columns.object(one -> {
                            one.field("name", column.name());
                            if (!column.unit().isEmpty() && column.kind() != Column.Kind.SHARE) {
                                one.field("unit", column.unit());
                            }
                        });
                    }
                }
            });
            document.array("rows", rows -> {
                for (List<Cell> row : sheet.rows()) {
                    Stopped.check();
                    rows.object(one -> {
                        for (int i = 0; i < row.size(); i++) {
                            if (sheet.columns().get(i).audience() != Column.Audience.PEOPLE) {
                                one.field(sheet.columns().get(i).name(), row.get(i));
                            }
                        }
                    });
                }
            });
            document.array("notes", notes -> sheet.notes().forEach(notes::value));
            document.array("warnings", warnings -> sheet.warnings().forEach(warnings::value));
        });
    }

    private static String csvText(Cell cell) {
        if (cell instanceof Cell.Words words) {
            return safe(words.text());
        }
        if (cell instanceof Cell.Whole whole) {
            return Long.toString(whole.value());
        }
        if (cell instanceof Cell.Number number) {
            return Double.isFinite(number.value()) ? plain(number.value()) : "";
        }
        if (cell instanceof Cell.Exact exact) {
            return exact.value().toPlainString();
        }
        if (cell instanceof Cell.Day day) {
            return day.day().toString();
        }
        if (cell instanceof Cell.Truth truth) {
            return truth.value() ? "yes" : "no";
        }
        return "";
    }

    private static String plain(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /**
     * Return the text with an apostrophe before it if a spreadsheet would take it for a formula, or if it could be
     * mistaken for a text that was treated so; taking off one apostrophe gives the text back.
     */
    static String safe(String text) {
        int at = 0;
        while (at < text.length() && text.charAt(at) == '\'') {
            at++;
        }
        boolean risky = at < text.length() && "=+-@\t\r".indexOf(text.charAt(at)) >= 0;
        return risky ? "'" + text : text;
    }
}
