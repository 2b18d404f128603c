package ortet.book.mapping;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import ortet.book.Diary;
import ortet.book.Progress;
import ortet.book.daybook.Source;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;

/** Reads spreadsheets under a mapping for tests, beside a book that is empty at first. */
final class Sheets {
    private final Diary diary = new Diary();
    private final Mapping mapping;

    /** Read spreadsheets under a mapping of the given lines. */
    Sheets(String... mapping) {
        this(Mapping.of(String.join("\n", mapping), "mapping.txt"));
    }

    Sheets(Mapping mapping) {
        this.mapping = mapping;
    }

    /** Read spreadsheets with one row for each plant, where the columns are called as the mapping calls their fields. */
    static Sheets plants(String columns, String... more) {
        return of("plant", columns, more);
    }

    /** Read spreadsheets called {@code a.csv}, where the columns are called as the mapping calls their fields. */
    static Sheets of(String shape, String columns, String... more) {
        List<String> lines = new ArrayList<>(List.of("sheet a", "files = a*.csv", "row = " + shape));
        for (String column : columns.split(",")) {
            lines.add("column \"" + column.strip() + "\" = " + column.strip());
        }
        lines.addAll(Arrays.asList(more));
        return new Sheets(lines.toArray(String[]::new));
    }

    /** Return a file with the given bytes. */
    static Source file(String name, byte[] bytes) {
        return new Source(name, name, bytes.length, () -> new ByteArrayInputStream(bytes));
    }

    /** Return a file in UTF-8 of the given lines. */
    static Source file(String name, String... lines) {
        return file(name, (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    /** Return the folder of an invented nursery. */
    static Path nursery(String name) {
        return Path.of("src/test/resources/spreadsheets", name);
    }

    /** Return the spreadsheets of an invented nursery, by name. */
    static List<Source> files(String nursery) {
        try (Stream<Path> files = Files.list(nursery(nursery))) {
            List<Source> sources = new ArrayList<>();
            for (Path file : files.filter(file -> file.toString().endsWith(".csv"))
                    .sorted()
                    .toList()) {
                sources.add(file(file.getFileName().toString(), Files.readAllBytes(file)));
            }
            return sources;
        } catch (IOException broken) {
            throw new AssertionError("the spreadsheets of " + nursery + " are not where they should be", broken);
        }
    }

    /** Read the spreadsheets of an invented nursery under its own mapping. */
    static Sheets under(String nursery) {
        return new Sheets(Mapping.read(nursery(nursery).resolve("mapping.txt")));
    }

    Diary diary() {
        return diary;
    }

    MappedReading read(List<Source> files) {
        return diary.store().read(view -> Spreadsheets.readSources(files, mapping, view, Progress.NONE));
    }

    Imported write(List<Source> files) {
        return read(files).writeInto(diary.store(), diary.judge(), false, Progress.NONE);
    }

    Imported writeWhatHolds(List<Source> files) {
        return read(files).writeInto(diary.store(), diary.judge(), true, Progress.NONE);
    }

    /** Read one file, {@code a.csv}, whose header is the first line. */
    Imported write(String... lines) {
        return write(List.of(file("a.csv", lines)));
    }

    Imported writeWhatHolds(String... lines) {
        return writeWhatHolds(List.of(file("a.csv", lines)));
    }

    /** Return what is wrong with one file, a line for each fault, also when it cannot be read at all. */
    List<String> faults(String... lines) {
        return faults(List.of(file("a.csv", lines)));
    }

    List<String> faults(List<Source> files) {
        try {
            return lines(diary.store().read(view -> read(files).check(view, diary.judge(), false, Progress.NONE)));
        } catch (Refused refused) {
            return refused.lines();
        }
    }

    static List<String> lines(Imported imported) {
        return imported.faults().stream().map(Fault::line).toList();
    }

    static List<String> remarks(Imported imported) {
        return imported.remarks().stream().map(Warning::text).toList();
    }

    /** Return the entries of the book, a line each, by day: {@code 2020-05-03 layer-set tags=J-1 mother=K-1 by=Una}. */
    List<String> entries() {
        return diary.store().read(view -> {
            Map<PersonNumber, String> people = new TreeMap<>();
            for (Person person : view.persons()) {
                people.put(person.number(), person.name().orElse("erased"));
            }
            try (Stream<ortet.book.Chained> all = view.since(0)) {
                return all.map(one -> shown(one.recorded().proposed(), people)).toList();
            }
        });
    }

    private static String shown(Proposed proposed, Map<PersonNumber, String> people) {
        StringBuilder line =
                new StringBuilder(proposed.day() + " " + proposed.entry().kind().word());
        Form.write(proposed.entry()).forEach((field, text) -> {
            boolean isPerson = PersonNumber.isWritten(text);
            line.append(' ').append(field).append('=').append(isPerson ? people.get(PersonNumber.parse(text)) : text);
        });
        proposed.by().ifPresent(by -> line.append(" by=").append(people.get(by)));
        return line.toString();
    }
}
