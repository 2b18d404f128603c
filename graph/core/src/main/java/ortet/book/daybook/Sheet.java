package ortet.book.daybook;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import ortet.book.Progress;
import ortet.value.Defect;
import ortet.value.Nearest;
import ortet.value.Unavailable;
import ortet.value.Where;

/**
 * Reads one CSV file (RFC 4180) with a header row: finds the separator, matches the header with the columns that the
 * file may have, and hands out the rows.
 *
 * <p>Whatever is wrong goes to the faults; only a file that cannot be opened or read to its end is {@link Unavailable}.
 */
final class Sheet {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    private static final int PROGRESS_EVERY = 4096;
    private static final int SHOWN = 60;
    private static final int LONGEST_NAME = 40;
    private static final Pattern APART = Pattern.compile("[\\s\\p{Cntrl}]+|-");
    private static final int UNKNOWN = -1;
    private static final int UNNAMED = -2;

    private final Source source;
    private final Columns columns;
    private final Faults faults;
    private List<String> header = List.of();
    private List<String> headerCells = List.of();
    private long headerLine = 1;
    private int[] placeOfCell = {};
    private int[] cellOfPlace = {};
    private final Set<String> meant = new HashSet<>();

    Sheet(Source source, Columns columns, Faults faults) {
        this.source = source;
        this.columns = columns;
        this.faults = faults;
    }

    /** Read the file and hand every row that is not blank to the reader of rows; the row is good until the next. */
    void read(Consumer<Row> reader, Progress progress) {
        try (TidyReader text = new TidyReader(source.opener().open())) {
            char separator = readHeader(text.head());
            if (!header.isEmpty() && columns.required().stream().allMatch(this::has)) {
                readRows(text, separator, reader, progress);
            }
        } catch (Unreadable unreadable) {
            faults.add("not-utf8", where(unreadable.line()), -1, unreadable.getMessage());
        } catch (IOException broken) {
            throw new Unavailable("cannot read " + source.shown() + ": " + reason(broken), broken);
        }
    }

    /** Return what the system says is wrong with a file, without its name. */
    static String reason(IOException broken) {
        if (broken instanceof java.nio.file.AccessDeniedException) {
            return "permission denied";
        }
        if (broken instanceof java.nio.file.NoSuchFileException) {
            return "there is no such file";
        }
        String message =
                broken instanceof java.nio.file.FileSystemException system ? system.getReason() : broken.getMessage();
        return message == null ? broken.getClass().getSimpleName() : message;
    }

    /** Tell whether the header has the column. */
    boolean has(String column) {
        return position(columns.at(column)) >= 0;
    }

    /** Return the position, from 0, in the header of the column at a place; -1 where the header has it not. */
    int position(int place) {
        return place < cellOfPlace.length ? cellOfPlace[place] : -1;
    }

    /** Tell whether a column without a name that is known is likely to be meant for this one. */
    boolean isMisspelt(String column) {
        return meant.contains(column);
    }

    /** Return the line of the header. */
    long headerLine() {
        return headerLine;
    }

    /** Return a place in this file. */
    Where where(long line) {
        return new Where(source.shown(), line, Optional.empty());
    }

    /** Return a place in this file. */
    Where where(long line, String column) {
        return new Where(source.shown(), line, Optional.of(column));
    }

    private record Header(long line, List<String> cells, List<String> names) {
        static final Header NONE = new Header(1, List.of(), List.of());
    }

    private char readHeader(String head) {
        char best = SEPARATORS[0];
        long most = -1;
        for (char separator : SEPARATORS) {
            Header found = firstRow(head, separator);
            long known = found.names().stream()
                    .filter(name -> columns.place(name).isPresent())
                    .count();
            long score = known * head.length() + found.names().size();
            if (score > most) {
                most = score;
                best = separator;
                header = found.names();
                headerCells = found.cells();
                headerLine = found.line();
            }
        }
        matchHeader();
        return best;
    }

    private static Header firstRow(String head, char separator) {
        try (CsvReader<CsvRecord> csv =
                lenient(CsvReader.builder().fieldSeparator(separator)).ofCsvRecord(head)) {
            for (CsvRecord row : csv) {
                List<String> names = row.getFields().stream().map(Sheet::name).toList();
                if (!row.getFields().stream().allMatch(Sheet::isBlankBesideSeparators)) {
                    return new Header(row.getStartingLineNumber(), row.getFields(), names);
                }
            }
        } catch (CsvParseException | IOException noRow) {
            return Header.NONE;
        }
        return Header.NONE;
    }

    /** Tell whether a cell is blank, were its file parted by any of the separators. */
    private static boolean isBlankBesideSeparators(String cell) {
        return cell.chars().allMatch(letter -> Character.isWhitespace(letter) || letter == ',' || letter == ';');
    }

    private static CsvReader.CsvReaderBuilder lenient(CsvReader.CsvReaderBuilder builder) {
        return builder.allowExtraFields(true).allowMissingFields(true).skipEmptyLines(true);
    }

    private static String name(String cell) {
        return APART.matcher(
                        Normalizer.normalize(cell.strip(), Normalizer.Form.NFC).toLowerCase(Locale.ROOT))
                .replaceAll("_");
    }

    private void matchHeader() {
        String expected = "expected a header row with the names of columns such as " + columns.example();
        if (header.isEmpty()) {
            faults.add("no-header", where(1), -1, "there is nothing to read; " + expected);
            return;
        }
        placeOfCell = new int[header.size()];
        cellOfPlace = new int[columns.names().size()];
        Arrays.fill(placeOfCell, UNKNOWN);
        Arrays.fill(cellOfPlace, -1);
        if (header.stream().noneMatch(name -> columns.place(name).isPresent())) {
            StringJoiner found = new StringJoiner(", ");
            headerCells.stream().limit(3).map(String::strip).forEach(found::add);
            String start = found.length() > SHOWN ? found.toString().substring(0, SHOWN) + "…" : found.toString();
            faults.add("no-header", where(headerLine), -1, expected + "; found \"" + start + "\"");
            header = List.of();
            return;
        }
        for (int cell = 0; cell < header.size(); cell++) {
            String name = header.get(cell);
            if (name.isEmpty()) {
                placeOfCell[cell] = UNNAMED;
                continue;
            }
            if (columns.place(name).isEmpty()) {
                List<String> near = near(name);
                meant.addAll(near);
                faults.add(
                        "unknown-column",
                        where(headerLine, name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) + "…" : name),
                        cell,
                        "a " + columns.what() + " has no such column",
                        near.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", near)));
                continue;
            }
            int place = columns.at(name);
            if (cellOfPlace[place] >= 0) {
                faults.add(
                        "duplicate-column",
                        where(headerLine, name),
                        cell,
                        "stands twice in the header, as column " + (cellOfPlace[place] + 1) + " and column "
                                + (cell + 1) + "; expected once");
                continue;
            }
            cellOfPlace[place] = cell;
            placeOfCell[cell] = place;
        }
        for (String name : columns.required()) {
            if (!has(name) && !isMisspelt(name)) {
                faults.add(
                        "missing-column",
                        where(headerLine, name),
                        header.size(),
                        "the header has no such column; a " + columns.what() + " must have "
                                + String.join(" and ", columns.required()));
            }
        }
    }

    private List<String> near(String name) {
        List<String> near = Nearest.list(name, columns.names(), 3);
        return near.isEmpty()
                ? columns.names().stream()
                        .filter(column -> column.startsWith(name))
                        .limit(3)
                        .toList()
                : near;
    }

    private void readRows(TidyReader text, char separator, Consumer<Row> reader, Progress progress) throws IOException {
        Handler handler = new Handler(text, placeOfCell, columns.names().size());
        String step = "reading " + source.name();
        long rows = 0;
        try (CsvReader<Row> csv =
                lenient(CsvReader.builder().fieldSeparator(separator)).build(handler, text)) {
            CloseableIterator<Row> all = csv.iterator();
            while (all.hasNext()) {
                Row row = all.next();
                if (handler.isUnclosed) {
                    faults.add(
                            "bad-quotes",
                            handler.where(this),
                            -1,
                            "a quotation mark opens a cell that nothing closes; expected one before the next separator");
                    return;
                }
                if (row.line() > headerLine && !row.isBlank()) {
                    readStray(row);
                    reader.accept(row);
                }
                if (++rows % PROGRESS_EVERY == 0) {
                    progress.at(step, text.bytesRead(), source.size());
                }
            }
            progress.at(step, text.bytesRead(), source.size());
        } catch (UncheckedIOException broken) {
            throw broken.getCause();
        } catch (CsvParseException broken) {
            if (!(broken.getCause() instanceof CsvParseException)) {
                throw new Defect("cannot read " + source.shown(), broken);
            }
            faults.add(
                    "bad-quotes",
                    handler.where(this),
                    -1,
                    "a quoted cell goes on after its closing quotation mark; expected a quotation mark inside it twice (\"\")");
        }
    }

    private void readStray(Row row) {
        if (row.stray() < 0) {
            return;
        }
        if (row.stray() >= header.size()) {
            faults.add(
                    "extra-cells",
                    where(row.line()),
                    row.stray(),
                    "more cells than the header has (" + header.size()
                            + "); expected a text that holds the separator to stand in quotation marks");
        } else {
            faults.add(
                    "unnamed-column",
                    where(row.line(), String.valueOf(row.stray() + 1)),
                    row.stray(),
                    "there is a text in column " + (row.stray() + 1)
                            + ", which has no name; expected one in the header");
        }
    }

    /** Fills the row from what the parser finds. */
    private static final class Handler extends AbstractBaseCsvCallbackHandler<Row> {
        private final TidyReader text;
        private final int[] placeOfCell;
        private final Row row;
        private boolean isUnclosed;

        Handler(TidyReader text, int[] placeOfCell, int columns) {
            this.text = text;
            this.placeOfCell = placeOfCell;
            this.row = new Row(columns);
        }

        Where where(Sheet sheet) {
            int cell = getFieldCount() - (isUnclosed ? 1 : 0);
            return cell >= 0
                            && cell < sheet.header.size()
                            && !sheet.header.get(cell).isEmpty()
                    ? sheet.where(getStartingLineNumber(), sheet.header.get(cell))
                    : sheet.where(getStartingLineNumber());
        }

        @Override
        protected void handleBegin(long startingLineNumber) {
            row.begin(startingLineNumber);
        }

        @Override
        protected void handleField(int cell, char[] buffer, int offset, int length, boolean quoted) {
            int begin = offset;
            int end = offset + length;
            while (begin < end && isBlank(buffer[begin])) {
                begin++;
            }
            while (begin < end && isBlank(buffer[end - 1])) {
                end--;
            }
            if (begin == end) {
                return;
            }
            int place = cell < placeOfCell.length ? placeOfCell[cell] : UNNAMED;
            if (place < 0) {
                if (place == UNNAMED) {
                    row.stray(cell);
                }
                return;
            }
            if (end - begin > 1 && Cell.isGuarded(true, buffer[begin], buffer[begin + 1])) {
                begin++;
            }
            row.fill(place, new String(buffer, begin, end - begin));
        }

        private static boolean isBlank(char letter) {
            return letter <= ' ' ? Character.isWhitespace(letter) : letter > 127 && Character.isWhitespace(letter);
        }

        @Override
        protected Row buildRecord() {
            isUnclosed = text.hasEnded();
            return row;
        }
    }
}
