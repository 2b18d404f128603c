package ortet.book.mapping;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.entry.EntryKind;

/** What the lines read so far say of a sheet; before the first sheet, what holds for all. */
final class SheetDraft {
    /** What the lines say of a column. */
    static final class Column {
        private final long line;
        private final List<String> names;
        private final boolean optional;
        private final String meaning;
        private final Column root;
        private final List<MappingLine> words = new ArrayList<>();
        private final List<MappingLine> along = new ArrayList<>();
        private final Map<EntryKind, Column> byKind = new LinkedHashMap<>();
        private Optional<MappingLine> tidy = Optional.empty();

        Column(long line, List<String> names, boolean optional, String meaning) {
            this.root = this;
            this.line = line;
            this.names = names;
            this.optional = optional;
            this.meaning = meaning;
        }

        /** Begin what a column means in rows of some kinds. */
        Column(long line, Column root, String meaning) {
            this.root = root;
            this.line = line;
            this.names = root.names;
            this.optional = root.optional;
            this.meaning = meaning;
        }

        long line() {
            return line;
        }

        List<String> names() {
            return names;
        }

        boolean isOptional() {
            return optional;
        }

        String meaning() {
            return meaning;
        }

        /** Return the column itself, for what it means in rows of some kinds. */
        Column root() {
            return root;
        }

        List<MappingLine> words() {
            return words;
        }

        List<MappingLine> along() {
            return along;
        }

        Map<EntryKind, Column> byKind() {
            return byKind;
        }

        Optional<MappingLine> tidy() {
            return tidy;
        }

        void tidy(MappingLine steps) {
            tidy = Optional.of(steps);
        }
    }

    private final long line;
    private final String name;
    private List<String> files = List.of();
    private Optional<Shape> shape = Optional.empty();
    private Settings settings;
    private final List<Column> columns = new ArrayList<>();
    private final List<MappingLine> otherwise = new ArrayList<>();
    private final Set<String> leftOut = new LinkedHashSet<>();
    private final List<SheetRules.Skip> skips = new ArrayList<>();
    private final Set<String> said = new LinkedHashSet<>();
    private Optional<Column> last = Optional.empty();

    /** Begin a sheet; one without a name is what stands before the first. */
    SheetDraft(long line, String name, Settings settings) {
        this.line = line;
        this.name = name;
        this.settings = settings;
    }

    boolean isBeforeTheFirst() {
        return name.isEmpty();
    }

    long line() {
        return line;
    }

    String name() {
        return name;
    }

    List<String> files() {
        return files;
    }

    void files(List<String> globs) {
        files = globs;
    }

    Optional<Shape> shape() {
        return shape;
    }

    void shape(Shape known) {
        shape = Optional.of(known);
    }

    Settings settings() {
        return settings;
    }

    void settings(Settings changed) {
        settings = changed;
    }

    List<Column> columns() {
        return columns;
    }

    void add(Column column) {
        columns.add(column);
        last = Optional.of(column);
    }

    /** Return the column, or what it means in rows of some kinds, that was begun last. */
    Optional<Column> last() {
        return last;
    }

    void last(Column column) {
        last = Optional.of(column);
    }

    List<MappingLine> otherwise() {
        return otherwise;
    }

    Set<String> leftOut() {
        return leftOut;
    }

    List<SheetRules.Skip> skips() {
        return skips;
    }

    /** Note that a line has been read; tell whether it is the first of its sort. */
    boolean say(String key) {
        return said.add(key);
    }

    boolean hasSaid(String key) {
        return said.contains(key);
    }
}
