package ortet.book.daybook;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** A list of faults as CSV, to be worked through in a spreadsheet: one row for each, with file, row and column. */
public final class FaultFile {
    private static final String MARK = "\uFEFF";
    private static final List<String> HEADER = List.of("file", "row", "column", "what", "expected", "nearest", "rule");
    private static final Pattern EXPECTED_LAST = Pattern.compile("(.*?)[;?,] expected (.*)", Pattern.DOTALL);
    private static final Pattern EXPECTED_FIRST = Pattern.compile("expected (.*), found (.*)", Pattern.DOTALL);

    private final Path file;

    private FaultFile(Path file) {
        this.file = file;
    }

    /**
     * Return the list at a path: a new file, or such a list from an earlier run, which will be replaced.
     *
     * @throws Refused when something else is there, or no file can be there
     */
    public static FaultFile at(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw Refused.because("no-folder", "there is no folder for " + file);
        }
        if (Files.exists(file) && !isList(file)) {
            throw Refused.because(
                    "file-in-use", file + " is there already and is no list of faults; expected a new file");
        }
        return new FaultFile(file);
    }

    private static boolean isList(Path file) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            String line = text.readLine();
            return line != null && line.replace(MARK, "").equals(String.join(",", HEADER));
        } catch (IOException | UncheckedIOException unreadable) {
            return false;
        }
    }

    /** Return where it is. */
    public Path path() {
        return file;
    }

    /**
     * Write faults, in the place of what was there; the file appears whole or not at all.
     *
     * @throws Unavailable when it cannot be written
     */
    public void write(List<Fault> faults) {
        Path fresh = null;
        try {
            fresh = Files.createTempFile(file.toAbsolutePath().getParent(), "." + file.getFileName(), ".part");
            try (Writer out = Files.newBufferedWriter(fresh)) {
                out.write(MARK);
                write(out, faults);
            }
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException | UncheckedIOException broken) {
            discard(fresh);
            throw new Unavailable("cannot write " + file + ": " + broken.getMessage(), broken);
        }
    }

    private static void discard(Path fresh) {
        if (fresh != null) {
            try {
                Files.deleteIfExists(fresh);
            } catch (IOException left) {
                return; // what matters is that the list was not written
            }
        }
    }

    private static void write(Writer out, List<Fault> faults) throws IOException {
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out)) {
            csv.writeRecord(HEADER);
            for (Fault fault : faults) {
                String text = fault.text();
                String expected = "";
                Matcher last = EXPECTED_LAST.matcher(text);
                Matcher first = EXPECTED_FIRST.matcher(text);
                if (first.matches()) {
                    text = "found " + first.group(2);
                    expected = first.group(1);
                } else if (last.matches()) {
                    text = last.group(1);
                    expected = last.group(2);
                }
                csv.writeRecord(
                        Cell.guard(fault.where().map(where -> where.file()).orElse("")),
                        fault.where().map(where -> Long.toString(where.line())).orElse(""),
                        Cell.guard(
                                fault.where().flatMap(where -> where.column()).orElse("")),
                        Cell.guard(text),
                        Cell.guard(expected),
                        Cell.guard(fault.nearest().orElse("")),
                        fault.rule());
            }
        }
    }
}
