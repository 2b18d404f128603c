package ortet.book.mapping;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.ToIntFunction;
import ortet.book.Progress;
import ortet.book.daybook.Cell;
import ortet.book.daybook.Source;
import ortet.book.daybook.TidyReader;
import ortet.book.daybook.Unreadable;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

/**
 * Reads a file in CSV that was made by hand: finds the separator and the header, and hands out the rows.
 *
 * <p>The header is the row that has most of the names looked for, among the first of the file. A name that stands twice
 * is {@code Date (2)} the second time; a column without a name is called by its letter in a spreadsheet, {@code (C)}.
 */
final class CsvFile {
    private static final char[] SEPARATORS = {',', ';', '\t', '|'};
    private static final int HEADER_WITHIN = 60;
    private static final int PROGRESS_EVERY = 4096;

    /** Is handed every row that is not blank: the line on which it begins, and its cells, of which none is null. */
    @FunctionalInterface
    interface Taker {
        void take(long line, String[] cells);
    }

    /**
     * The header of a file.
     *
     * @param line the line that it stands on; 0 where there is none
     * @param names the names of the columns, each once
     * @param separator what parts cells
     */
    record Header(long line, List<String> names, char separator) {
        Header {
            names = List.copyOf(names);
        }

        /** Return the position of the column with one of the names, upper and lower case alike. */
        Optional<Integer> position(List<String> wanted) {
            for (String name : wanted) {
                String folded = Folded.of(name);
                for (int at = 0; at < names.size(); at++) {
                    if (Folded.of(names.get(at)).equals(folded)) {
                        return Optional.of(at);
                    }
                }
            }
            return Optional.empty();
        }
    }

    private final Source source;
    private final Charset encoding;

    CsvFile(Source source, Charset encoding) {
        this.source = source;
        this.encoding = encoding;
    }

    private TidyReader open() throws IOException {
        if (encoding.equals(StandardCharsets.UTF_8)) {
            return new TidyReader(source.opener().open());
        }
        try (InputStream in = source.opener().open()) {
            byte[] bytes = in.readAllBytes();
            if (bytes.length > 2
                    && (bytes[0] & 0xFF) == 0xEF
                    && (bytes[1] & 0xFF) == 0xBB
                    && (bytes[2] & 0xFF) == 0xBF) {
                return new TidyReader(new ByteArrayInputStream(bytes)); // a byte order mark: UTF-8, whatever is said
            }
            String text = encoding.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return new TidyReader(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (CharacterCodingException undecodable) {
            throw new Unreadable(1, "this is not text in " + encoding.name().toLowerCase(Locale.ROOT));
        }
    }

    /**
     * Find the header.
     *
     * @param score how well a row of names, folded, will do as a header: the more the better, 0 not at all
     * @param separator what parts cells, where that is known
     * @return the header, where any row will do
     * @throws Refused when the file is not text
     */
    Optional<Header> header(ToIntFunction<Set<String>> score, Optional<Character> separator) {
        String head = head();
        Header best = null;
        int most = 0;
        for (char candidate : separator.map(known -> new char[] {known}).orElse(SEPARATORS)) {
            for (RawRow row : rows(head, candidate, HEADER_WITHIN)) {
                Header header = new Header(row.line(), named(row.cells()), candidate);
                Set<String> folded = new HashSet<>();
                header.names().forEach(name -> folded.add(Folded.of(name)));
                int found = score.applyAsInt(folded);
                if (found > most) {
                    most = found;
                    best = header;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** Return a header for a file that has none: as many columns as its widest row among the first, by letter. */
    Header noHeader(Optional<Character> separator) {
        String head = head();
        Header best = new Header(0, List.of("(A)"), ',');
        for (char candidate : separator.map(known -> new char[] {known}).orElse(SEPARATORS)) {
            int widest = rows(head, candidate, HEADER_WITHIN).stream()
                    .mapToInt(row -> row.cells().size())
                    .max()
                    .orElse(1);
            if (widest > best.names().size() || candidate == separator.orElse('\0')) {
                List<String> names = new ArrayList<>();
                for (int at = 0; at < widest; at++) {
                    names.add(letter(at));
                }
                best = new Header(0, names, candidate);
            }
        }
        return best;
    }

    /** One row as it stands. */
    record RawRow(long line, List<String> cells) {}

    /** Return the first rows that are not blank. */
    List<RawRow> first(char separator, int most) {
        return rows(head(), separator, most);
    }

    /**
     * Tell whether the whole file is text in its encoding.
     *
     * @throws Refused when it is no text in any: a spreadsheet's own file, or UTF-16
     */
    boolean isReadable() {
        char[] chunk = new char[1 << 16];
        try (TidyReader text = open()) {
            int count = text.read(chunk, 0, chunk.length);
            while (count >= 0) {
                count = text.read(chunk, 0, chunk.length);
            }
            return true;
        } catch (Unreadable unreadable) {
            if (!isText(unreadable)) {
                throw unreadable(unreadable);
            }
            return false;
        } catch (IOException broken) {
            throw source.unavailable(broken);
        }
    }

    private static boolean isText(Unreadable unreadable) {
        String text = unreadable.getMessage();
        return !text.contains("spreadsheet") && !text.contains("UTF-16");
    }

    private String head() {
        try (TidyReader text = open()) {
            return text.head();
        } catch (Unreadable unreadable) {
            throw unreadable(unreadable);
        } catch (IOException broken) {
            throw source.unavailable(broken);
        }
    }

    private Refused unreadable(Unreadable unreadable) {
        String text = unreadable.getMessage();
        String advice = encoding.equals(StandardCharsets.UTF_8) && isText(unreadable)
                ? ", or say encoding = windows-1252 in the mapping"
                : "";
        return new Refused(
                Fault.of("not-utf8", text + advice).at(new Where(source.shown(), unreadable.line(), Optional.empty())));
    }

    private static List<RawRow> rows(String text, char separator, int most) {
        List<RawRow> rows = new ArrayList<>();
        Gatherer gatherer = new Gatherer(Integer.MAX_VALUE, () -> false);
        try (CsvReader<Gatherer> csv = lenient(separator).build(gatherer, new StringReader(text))) {
            CloseableIterator<Gatherer> all = csv.iterator();
            while (all.hasNext() && rows.size() < most) {
                Gatherer row = all.next();
                if (!row.isBlank()) {
                    rows.add(new RawRow(row.line, List.of(row.cells())));
                }
            }
        } catch (CsvParseException | IOException noMore) {
            return rows; // what is wrong with it is told when all of it is read
        }
        return rows;
    }

    private static CsvReader.CsvReaderBuilder lenient(char separator) {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .skipEmptyLines(true);
    }

    private static List<String> named(List<String> cells) {
        Map<String, Integer> seen = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (int at = 0; at < cells.size(); at++) {
            String name = Folded.clean(cells.get(at));
            if (name.isEmpty()) {
                names.add(letter(at));
                continue;
            }
            int times = seen.merge(Folded.of(name), 1, Integer::sum);
            names.add(times == 1 ? name : name + " (" + times + ")");
        }
        return names;
    }

    /** Return the letter of a column in a spreadsheet, in brackets. */
    static String letter(int position) {
        StringBuilder letters = new StringBuilder();
        for (int left = position; left >= 0; left = left / 26 - 1) {
            letters.insert(0, (char) ('A' + left % 26));
        }
        return "(" + letters + ")";
    }

    /**
     * Read every row below the header.
     *
     * @throws Refused where the file cannot be read on
     */
    void read(Header header, Taker taker, Progress progress) {
        try (TidyReader text = open()) {
            read(header, taker, progress, text);
        } catch (UncheckedIOException broken) {
            throw told(broken.getCause());
        } catch (IOException broken) {
            throw told(broken);
        }
    }

    private void read(Header header, Taker taker, Progress progress, TidyReader text) throws IOException {
        String step = "reading " + source.name();
        Gatherer gatherer = new Gatherer(header.names().size(), text::hasEnded);
        try (CsvReader<Gatherer> csv = lenient(header.separator()).build(gatherer, text)) {
            CloseableIterator<Gatherer> all = csv.iterator();
            long rows = 0;
            while (all.hasNext()) {
                Gatherer row = all.next();
                if (row.isUnclosed) {
                    throw broken(gatherer, header, "a quotation mark opens a cell that nothing closes");
                }
                if (row.line > header.line() && !row.isBlank()) {
                    taker.take(row.line, row.cells());
                }
                if (++rows % PROGRESS_EVERY == 0) {
                    progress.at(step, text.bytesRead(), source.size());
                }
            }
            progress.at(step, text.bytesRead(), source.size());
        } catch (CsvParseException broken) {
            if (!(broken.getCause() instanceof CsvParseException)) {
                throw new Defect("cannot read " + source.shown(), broken);
            }
            throw broken(gatherer, header, "a quoted cell goes on after its closing quotation mark");
        }
    }

    private RuntimeException told(IOException broken) {
        return broken instanceof Unreadable unreadable ? unreadable(unreadable) : source.unavailable(broken);
    }

    private Refused broken(Gatherer gatherer, Header header, String what) {
        int cell = gatherer.reached();
        Optional<String> column = cell >= 0 && cell < header.names().size()
                ? Optional.of(header.names().get(cell))
                : Optional.empty();
        return new Refused(
                Fault.of("bad-quotes", what + "; expected a quotation mark inside a quoted cell to stand twice (\"\")")
                        .at(new Where(source.shown(), gatherer.startsAt(), column)));
    }

    /** Gathers the cells of a row. */
    private static final class Gatherer extends AbstractBaseCsvCallbackHandler<Gatherer> {
        private final int most;
        private final BooleanSupplier ended;
        private final List<String> cells = new ArrayList<>();
        private long line;
        private boolean blank = true;
        private boolean isUnclosed;

        Gatherer(int most, BooleanSupplier ended) {
            this.most = most;
            this.ended = ended;
        }

        @Override
        protected void handleBegin(long startingLineNumber) {
            cells.clear();
            line = startingLineNumber;
            blank = true;
        }

        @Override
        protected void handleField(int at, char[] buffer, int offset, int length, boolean quoted) {
            int begin = offset;
            int end = offset + length;
            while (begin < end && Folded.isBlank(buffer[begin])) {
                begin++;
            }
            while (begin < end && Folded.isBlank(buffer[end - 1])) {
                end--;
            }
            String text = begin == end ? "" : Cell.open(new String(buffer, begin, end - begin));
            blank &= text.isEmpty();
            cells.add(text);
        }

        @Override
        protected Gatherer buildRecord() {
            isUnclosed = ended.getAsBoolean(); // every line ends in a line feed, so only an open cell meets the end
            return this;
        }

        boolean isBlank() {
            return blank;
        }

        long startsAt() {
            return line;
        }

        int reached() {
            return cells.size() - 1;
        }

        /** Return the cells: as many as the header has, or more where there is a text beyond them. */
        String[] cells() {
            int last = cells.size();
            while (last > 0 && cells.get(last - 1).isEmpty()) {
                last--;
            }
            int width = most == Integer.MAX_VALUE ? last : Math.max(most, last);
            String[] row = new String[width];
            for (int at = 0; at < width; at++) {
                row[at] = at < cells.size() ? cells.get(at) : "";
            }
            return row;
        }
    }
}
