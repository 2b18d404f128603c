package ortet.commands;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.figures.ModelData;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Where;

/** A CSV file of counts: a header, and one row for each count with whatever may explain it. */
final class CountFile {
    private static final char MARK = '\uFEFF';

    private final Path file;
    private final List<String> header;
    private final List<CsvRecord> rows;

    private CountFile(Path file, List<String> header, List<CsvRecord> rows) {
        this.file = file;
        this.header = header;
        this.rows = rows;
    }

    int rows() {
        return rows.size();
    }

    static CountFile read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw Refused.because("no-file", "no file " + file);
        }
        List<CsvRecord> rows = new ArrayList<>();
        try (Reader reader = new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder());
                CsvReader<CsvRecord> csv = CsvReader.builder()
                        .skipEmptyLines(true)
                        .allowMissingFields(true)
                        .allowExtraFields(true)
                        .ofCsvRecord(reader)) {
            csv.forEach(rows::add);
        } catch (UncheckedIOException | IOException | CsvParseException unreadable) {
            throw refused(file, unreadable);
        }
        if (rows.isEmpty()) {
            throw Refused.because("no-header", file + " is empty; expected a header and rows in CSV");
        }
        List<String> header = new ArrayList<>();
        for (String name : rows.get(0).getFields()) {
            String plain = header.isEmpty() && !name.isEmpty() && name.charAt(0) == MARK ? name.substring(1) : name;
            if (header.contains(plain.strip())) {
                throw new Refused(Fault.of("same-column", "two columns are called \"" + plain.strip() + "\"")
                        .at(new Where(file.toString(), 1, Optional.empty())));
            }
            header.add(plain.strip());
        }
        List<CsvRecord> body = rows.subList(1, rows.size());
        for (CsvRecord row : body) {
            if (row.getFieldCount() != header.size()) {
                throw new Refused(Fault.of(
                                "ragged-row",
                                "expected " + header.size() + " cells as in the header, found " + row.getFieldCount())
                        .at(new Where(file.toString(), row.getStartingLineNumber(), Optional.empty())));
            }
        }
        return new CountFile(file, header, List.copyOf(body));
    }

    private static Refused refused(Path file, Exception unreadable) {
        for (Throwable cause = unreadable; cause != null; cause = cause.getCause()) {
            if (cause instanceof CharacterCodingException) {
                return Refused.because(
                        "not-utf-8",
                        "cannot read " + file + ": expected text in UTF-8; save the sheet as CSV in UTF-8");
            }
            if (cause instanceof CsvParseException) {
                return Refused.because(
                        "not-csv", "cannot read " + file + " as CSV: a quote is not closed, or a cell is too long");
            }
        }
        return Refused.because("unreadable", "cannot read " + file);
    }

    /** Return what a model is fitted to. */
    ModelData model(
            String successes,
            String trials,
            List<String> random,
            List<String> fixed,
            List<String> factors,
            boolean nested) {
        int taken = column(successes);
        int known = column(trials);
        long[] r = new long[rows.size()];
        long[] n = new long[rows.size()];
        for (int at = 0; at < r.length; at++) {
            n[at] = whole(at, known);
            r[at] = whole(at, taken);
            if (r[at] > n[at]) {
                throw fault(at, taken, "more successes than trials: " + r[at] + " of " + n[at]);
            }
        }
        ModelData data = ModelData.of(r, n);
        for (String term : fixed) {
            for (Part part : parts(term, factors)) {
                data = data.withColumn(part.name(), part.values());
            }
        }
        for (String factor : factors) {
            if (fixed.stream().noneMatch(term -> List.of(term.split(":", -1)).contains(factor))) {
                column(factor);
                data = data.withFactor(factor, labels(factor));
            }
        }
        String outer = "";
        for (String group : random) {
            data = nested && !outer.isEmpty()
                    ? data.withGroupsWithin(group, outer, labels(group))
                    : data.withGroups(group, labels(group));
            outer = group;
        }
        return data;
    }

    /** A column of a model. */
    private record Part(String name, double[] values) {
        Part times(Part other) {
            double[] product = new double[values.length];
            for (int at = 0; at < product.length; at++) {
                product[at] = values[at] * other.values[at];
            }
            return new Part(name + ":" + other.name, product);
        }
    }

    /** Return the columns of a term: one for numbers, one for each level but the first for words, products for a:b. */
    private List<Part> parts(String term, List<String> factors) {
        if (header.contains(term) || !term.contains(":")) {
            return single(term, factors);
        }
        List<Part> all = List.of();
        for (String name : term.split(":", -1)) {
            List<Part> own = single(name, factors);
            List<Part> products = new ArrayList<>();
            for (Part before : all) {
                own.forEach(part -> products.add(before.times(part)));
            }
            all = all.isEmpty() ? own : products;
        }
        return all;
    }

    private List<Part> single(String name, List<String> factors) {
        int position = column(name);
        double[] numbers = new double[rows.size()];
        boolean isNumber = !factors.contains(name);
        for (int at = 0; at < numbers.length && isNumber; at++) {
            String text = cell(at, position);
            try {
                numbers[at] = Double.parseDouble(text);
                isNumber = Double.isFinite(numbers[at]) && text.matches("[-+.0-9eE]+");
            } catch (NumberFormatException word) {
                isNumber = false;
            }
        }
        if (isNumber) {
            return List.of(new Part(name, numbers));
        }
        List<String> labels = labels(name);
        List<String> levels = labels.stream().distinct().toList();
        List<Part> parts = new ArrayList<>();
        for (String level : levels.subList(Math.min(1, levels.size()), levels.size())) {
            parts.add(new Part(
                    name + " " + level,
                    labels.stream()
                            .mapToDouble(label -> label.equals(level) ? 1 : 0)
                            .toArray()));
        }
        return parts;
    }

    private List<String> labels(String name) {
        int position = column(name);
        List<String> labels = new ArrayList<>(rows.size());
        for (int at = 0; at < rows.size(); at++) {
            String label = cell(at, position);
            if (label.isEmpty()) {
                throw fault(at, position, "an empty cell; expected the name of a group");
            }
            labels.add(label);
        }
        return labels;
    }

    private long whole(int at, int position) {
        String text = cell(at, position);
        if (!text.matches("\\d{1,12}")) {
            throw fault(at, position, "expected a whole number, found \"" + text + "\"");
        }
        return Long.parseLong(text);
    }

    private String cell(int at, int position) {
        return rows.get(at).getField(position).strip();
    }

    private int column(String name) {
        int position = header.indexOf(name);
        if (position < 0) {
            throw new Refused(Fault.of(
                            "unknown-column",
                            file + " has no column \"" + name + "\"; it has " + String.join(", ", header))
                    .nearest(Nearest.of(name, header)));
        }
        return position;
    }

    private Refused fault(int at, int position, String text) {
        return new Refused(Fault.of("bad-cell", text)
                .at(new Where(
                        file.toString(), rows.get(at).getStartingLineNumber(), Optional.of(header.get(position)))));
    }
}
