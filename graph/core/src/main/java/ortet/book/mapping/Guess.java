package ortet.book.mapping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import ortet.book.daybook.Source;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.Unavailable;

/**
 * Proposes a mapping for spreadsheets, from their heads and their first rows.
 *
 * <p>What it proposes can be read back as a mapping. It is a beginning: what it is not sure of it says in a remark above
 * the line.
 */
public final class Guess {
    private Guess() {}

    /**
     * Return a mapping for files, as text.
     *
     * @throws Refused when a file is not there or not text
     * @throws Unavailable when a file cannot be read
     */
    public static String of(List<Path> files) {
        Require.size(1, files, "file");
        List<Fault> faults = new ArrayList<>();
        List<Source> sources = new ArrayList<>();
        for (Path file : files) {
            if (!Files.exists(file)) {
                faults.add(Fault.of("no-file", "there is no file " + file).nearest(Source.near(file)));
                continue;
            }
            if (Files.isDirectory(file)) {
                faults.add(Fault.of("folder", file + " is a folder; expected files"));
                continue;
            }
            try {
                sources.add(Source.of(file));
            } catch (IOException broken) {
                throw new Unavailable("cannot read " + file, broken);
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        return ofSources(sources);
    }

    static String ofSources(List<Source> sources) {
        List<GuessedSheet> sheets = new ArrayList<>();
        List<Fault> faults = new ArrayList<>();
        for (Source source : sources) {
            try {
                sheets.add(GuessedSheet.look(source));
            } catch (Refused refused) {
                faults.addAll(refused.faults());
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        String mapping = new GuessWriter(sheets).mapping();
        try {
            Mapping.of(mapping, "the guess");
        } catch (Refused refused) {
            throw new Defect("the mapping that was guessed cannot be read: " + refused.getMessage(), refused);
        }
        return mapping;
    }
}
