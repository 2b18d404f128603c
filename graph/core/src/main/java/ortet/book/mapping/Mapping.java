package ortet.book.mapping;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ortet.book.daybook.Source;
import ortet.book.daybook.TidyReader;
import ortet.book.daybook.Unreadable;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Unavailable;
import ortet.value.Where;

/**
 * Says how a nursery's own spreadsheets are read: for each sheet its files, what a row is, and what the columns mean.
 *
 * <p>Plain lines of text, described in {@code docs/mapping.md}. Immutable.
 */
public final class Mapping {
    private final String shown;
    private final List<SheetRules> sheets;

    Mapping(String shown, List<SheetRules> sheets) {
        this.shown = shown;
        this.sheets = List.copyOf(sheets);
    }

    /**
     * Read a mapping from a file.
     *
     * @throws Refused with every fault found, by file and line
     * @throws Unavailable when the file cannot be read
     */
    public static Mapping read(Path file) {
        if (!Files.exists(file)) {
            throw new Refused(Fault.of("no-file", "there is no file " + file).nearest(Source.near(file)));
        }
        try {
            Source source = Source.of(file);
            return of(text(source), source.shown());
        } catch (IOException broken) {
            throw new Unavailable("cannot read " + file, broken);
        }
    }

    private static String text(Source source) {
        try (InputStream in = source.opener().open();
                BufferedReader text = new BufferedReader(new TidyReader(in))) {
            return text.lines().collect(Collectors.joining("\n"));
        } catch (Unreadable unreadable) {
            throw unreadable(source, unreadable);
        } catch (UncheckedIOException broken) {
            if (broken.getCause() instanceof Unreadable unreadable) {
                throw unreadable(source, unreadable);
            }
            throw source.unavailable(broken.getCause());
        } catch (IOException broken) {
            throw source.unavailable(broken);
        }
    }

    private static Refused unreadable(Source source, Unreadable unreadable) {
        return new Refused(Fault.of("not-utf8", "expected a mapping as text in UTF-8")
                .at(new Where(source.shown(), unreadable.line(), Optional.empty())));
    }

    /**
     * Read a mapping from its text.
     *
     * @param shown the name of the text, to tell faults by
     * @throws Refused with every fault found, by line
     */
    public static Mapping of(String text, String shown) {
        return new MappingReader(shown).read(text);
    }

    /** Return the name of the mapping's file. */
    String shown() {
        return shown;
    }

    /** Return the names of its sheets, in order. */
    public List<String> sheetNames() {
        return sheets.stream().map(SheetRules::name).toList();
    }

    List<SheetRules> sheets() {
        return sheets;
    }
}
