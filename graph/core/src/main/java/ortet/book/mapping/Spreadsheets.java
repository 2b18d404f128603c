package ortet.book.mapping;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Progress;
import ortet.book.daybook.Source;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.Unavailable;
import ortet.value.Warning;
import ortet.value.Where;

/**
 * Reads a nursery's own spreadsheets in CSV through a mapping; described in {@code docs/mapping.md}.
 *
 * <p>Nothing here changes a book: reading gives a {@link MappedReading}, which is then judged and written.
 */
public final class Spreadsheets {
    private Spreadsheets() {}

    /**
     * Read files through a mapping, in whatever order they are named.
     *
     * @param book the book that they are for
     * @throws Refused when a file is no sheet of the mapping, or cannot be read as one; what is wrong with single rows is
     *     told by the reading
     * @throws Unavailable when a file cannot be read
     */
    public static MappedReading read(List<Path> files, Mapping mapping, BookView book, Progress progress) {
        Require.size(1, files, "file");
        List<Fault> faults = new ArrayList<>();
        List<Source> sources = sources(files, faults);
        return read(sources, faults, mapping, book, progress);
    }

    static MappedReading readSources(List<Source> sources, Mapping mapping, BookView book, Progress progress) {
        return read(sources, new ArrayList<>(), mapping, book, progress);
    }

    private static MappedReading read(
            List<Source> sources, List<Fault> faults, Mapping mapping, BookView book, Progress progress) {
        List<MappedFile> sheets = new ArrayList<>();
        List<Warning> remarks = new ArrayList<>();
        for (Source source : sources) {
            try {
                sheet(source, mapping, faults).ifPresent(rules -> sheets.add(open(source, rules, faults)));
            } catch (Refused refused) {
                faults.addAll(refused.faults());
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        sheets.sort(Comparator.comparing((MappedFile file) -> mapping.sheets().indexOf(file.rules()))
                .thenComparing(file -> file.source().name())
                .thenComparing(file -> file.source().shown()));
        Occurrences occurrences = new Occurrences();
        List<FileRows> read = new ArrayList<>();
        int number = 0;
        for (MappedFile file : sheets) {
            try {
                FileRows rows = new SheetReader(file, occurrences, number).read(progress);
                remarks.addAll(rows.remarks());
                number += rows.rows().size();
                read.add(rows);
            } catch (Refused refused) {
                faults.addAll(refused.faults());
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        for (SheetRules rules : mapping.sheets()) {
            if (sheets.stream().noneMatch(file -> file.rules().equals(rules))) {
                remarks.add(new Warning(
                        "unread-sheet",
                        mapping.shown() + ":" + rules.line() + ": no file was given for sheet " + rules.name() + " ("
                                + String.join(", ", rules.files()) + ")"));
            }
        }
        return new MappedReading(read, book, remarks, progress);
    }

    /**
     * Return the files beside a mapping that are sheets of it, by name.
     *
     * @param file the mapping's own file
     * @throws Refused when there is none
     * @throws Unavailable when the folder cannot be read
     */
    public static List<Path> beside(Path file, Mapping mapping) {
        Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(folder)) {
            for (Path one : all) {
                boolean isSheet = mapping.sheets().stream()
                        .anyMatch(rules -> rules.matches(one.getFileName().toString()));
                if (isSheet && Files.isRegularFile(one) && !Files.isSameFile(one, file)) {
                    found.add(one);
                }
            }
        } catch (IOException | DirectoryIteratorException broken) {
            throw new Unavailable("cannot read the folder of " + file, broken);
        }
        if (found.isEmpty()) {
            throw new Refused(Fault.of(
                    "no-sheet",
                    "no file beside " + file + " is a sheet of it; its lines of files have " + globs(mapping)
                            + "; expected such a file there, or the files behind the mapping on the line"));
        }
        Collections.sort(found);
        return found;
    }

    private static String globs(Mapping mapping) {
        return mapping.sheets().stream()
                .flatMap(rules -> rules.files().stream())
                .collect(Collectors.joining(", "));
    }

    private static List<Source> sources(List<Path> files, List<Fault> faults) {
        List<Source> sources = new ArrayList<>();
        Set<Path> seen = new HashSet<>();
        for (Path file : files) {
            try {
                if (Files.isDirectory(file)) {
                    faults.add(Fault.of("folder", file + " is a folder; expected files"));
                    continue;
                }
                Source source = Source.of(file);
                if (seen.add(file.toRealPath())) {
                    sources.add(source);
                } else {
                    faults.add(Fault.of("file-twice", file + " is named twice; expected each file once"));
                }
            } catch (NoSuchFileException missing) {
                faults.add(Fault.of("no-file", "there is no file " + file).nearest(Source.near(file)));
            } catch (IOException broken) {
                throw new Unavailable("cannot read " + file, broken);
            }
        }
        return sources;
    }

    private static Optional<SheetRules> sheet(Source source, Mapping mapping, List<Fault> faults) {
        List<SheetRules> matching = mapping.sheets().stream()
                .filter(rules -> rules.matches(source.name()))
                .toList();
        if (matching.size() == 1) {
            return Optional.of(matching.get(0));
        }
        List<String> globs = mapping.sheets().stream()
                .flatMap(rules -> rules.files().stream())
                .toList();
        faults.add(
                matching.isEmpty()
                        ? Fault.of(
                                        "no-sheet",
                                        source.shown() + " is no sheet of the mapping; its lines of files have "
                                                + String.join(", ", globs))
                                .nearest(Nearest.of(source.name(), globs))
                        : Fault.of(
                                "no-sheet",
                                source.shown() + " would be more than one sheet: "
                                        + matching.stream()
                                                .map(SheetRules::name)
                                                .collect(Collectors.joining(", "))
                                        + "; expected one whose line of files has its name"));
        return Optional.empty();
    }

    private static MappedFile open(Source source, SheetRules rules, List<Fault> faults) {
        CsvFile csv = new CsvFile(source, rules.settings().encoding());
        CsvFile.Header header = rules.settings().hasHeader()
                ? header(csv, source, rules)
                : csv.noHeader(rules.settings().separator());
        for (ColumnRule column : rules.columns()) {
            if (!column.isOptional()) {
                need(source, header, column.names(), column.line(), faults);
            }
        }
        for (SheetRules.Skip skip : rules.skips()) {
            need(source, header, skip.names(), skip.line(), faults);
        }
        return new MappedFile(source, rules, header);
    }

    private static void need(
            Source source, CsvFile.Header header, List<String> names, long mappingLine, List<Fault> faults) {
        if (header.position(names).isPresent()) {
            return;
        }
        String name = names.get(0);
        faults.add(new Fault(
                "missing-column",
                Optional.of(new Where(source.shown(), Math.max(1, header.line()), Optional.of(name))),
                "there is no such column, which line " + mappingLine
                        + " of the mapping reads; where only some files have it, the mapping says maybe instead of column",
                Nearest.of(name, header.names())));
    }

    private static CsvFile.Header header(CsvFile csv, Source source, SheetRules rules) {
        List<List<String>> wanted = new ArrayList<>();
        rules.columns().forEach(column -> wanted.add(folded(column.names())));
        rules.skips().forEach(skip -> wanted.add(folded(skip.names())));
        return csv.header(
                        names -> (int) wanted.stream()
                                .filter(any -> any.stream().anyMatch(names::contains))
                                .count(),
                        rules.settings().separator())
                .orElseThrow(() -> new Refused(Fault.of(
                                "no-header",
                                "expected a header with columns such as "
                                        + rules.columns().stream()
                                                .limit(3)
                                                .map(ColumnRule::name)
                                                .collect(Collectors.joining(", "))
                                        + " (sheet " + rules.name()
                                        + " of the mapping); a file without one needs header = none there")
                        .at(new Where(source.shown(), 1, Optional.empty()))));
    }

    private static List<String> folded(List<String> names) {
        return names.stream().map(Folded::of).toList();
    }
}
