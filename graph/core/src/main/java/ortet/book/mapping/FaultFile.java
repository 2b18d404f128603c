package ortet.book.mapping;

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
import ortet.book.daybook.Cell;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** Writes faults as CSV: one row each with file, line, column, rule, what and nearest. */
public final class FaultFile {
    private static final String MARK = "\uFEFF";
    private static final List<String> HEADER = List.of("file", "line", "column", "rule", "what", "nearest");

    private FaultFile() {}

    /**
     * Write faults into a file, which is new or such a list from an earlier run; it appears whole or not at all.
     *
     * @throws Refused when the file is there and is no list of faults
     * @throws Unavailable when it cannot be written
     */
    public static void write(Path file, List<Fault> faults) {
        checkFree(file);
        Path folder = file.toAbsolutePath().getParent();
        Path fresh = null;
        try {
            fresh = Files.createTempFile(folder, "." + file.getFileName(), ".part");
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

    private static void checkFree(Path file) {
        if (!Files.exists(file)) {
            return;
        }
        String first = "";
        if (Files.isRegularFile(file)) {
            try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                String line = text.readLine();
                first = line == null ? String.join(",", HEADER) : line.replace(MARK, "");
            } catch (IOException unreadable) {
                first = "";
            }
        }
        if (!first.equals(String.join(",", HEADER))) {
            throw Refused.because(
                    "file-in-use", file + " is there already and is no list of faults; expected a new file");
        }
    }

    private static void write(Writer out, List<Fault> faults) throws IOException {
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out)) {
            csv.writeRecord(HEADER);
            for (Fault fault : faults) {
                csv.writeRecord(
                        Cell.guard(fault.where().map(where -> where.file()).orElse("")),
                        fault.where().map(where -> Long.toString(where.line())).orElse(""),
                        Cell.guard(
                                fault.where().flatMap(where -> where.column()).orElse("")),
                        fault.rule(),
                        Cell.guard(fault.text()),
                        Cell.guard(fault.nearest().orElse("")));
            }
        }
    }
}
