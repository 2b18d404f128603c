package ortet.book.mapping;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Reads the text of a mapping; what is wrong is gathered and told at once. */
final class MappingReader {
    private static final List<String> COLUMN_WORDS =
            List.of("column", "maybe", "for", "word", "with", "otherwise", "skip");
    /** What a line may begin with, or be called. */
    static final List<String> KNOWN_LINES = List.of(
            "sheet",
            "files",
            "row",
            "column",
            "maybe",
            "for",
            "word",
            "with",
            "tidy",
            "otherwise",
            "leave out",
            "skip",
            "dates",
            "numbers",
            "tags",
            "blank",
            "encoding",
            "separator",
            "header",
            "mothers without a row",
            "plants without a row",
            "without a mother",
            "repeated rows");

    private final String shown;
    private final MappingFaults faults;
    private final List<SheetRules> sheets = new ArrayList<>();
    private SheetDraft open = new SheetDraft(0, "", Settings.defaults());
    private Settings common = open.settings();

    MappingReader(String shown) {
        this.shown = shown;
        this.faults = new MappingFaults(shown);
    }

    Mapping read(String text) {
        long number = 0;
        for (String raw : text.split("\n", -1)) {
            number++;
            String line = Folded.strip(raw);
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            long at = number;
            faults.attempt(at, () -> take(MappingLine.of(at, line)));
        }
        close();
        if (sheets.isEmpty() && faults.size() == 0) {
            faults.add(
                    1,
                    "no-sheet",
                    "a mapping must have a sheet; expected a line such as sheet trees",
                    Optional.empty());
        }
        faults.refuse();
        return new Mapping(shown, sheets);
    }

    private void close() {
        if (!open.isBeforeTheFirst()) {
            new SheetBuilder(open, faults).build().ifPresent(sheets::add);
        }
    }

    private void take(MappingLine line) {
        String left = Folded.of(line.left());
        int blank = left.indexOf(' ');
        String first = blank < 0 ? left : left.substring(0, blank);
        if (first.equals("sheet")) {
            close();
            String name = Pieces.plain(line.left().substring("sheet".length()));
            if (name.isEmpty() || line.right().isPresent()) {
                throw Refused.because("bad-line", "expected sheet and a name for it, such as sheet trees");
            }
            if (sheets.stream().anyMatch(other -> other.name().equalsIgnoreCase(name))) {
                throw Refused.because("bad-line", "a sheet " + name + " stands above; expected each name once");
            }
            open = new SheetDraft(line.number(), name, common);
            return;
        }
        if (COLUMN_WORDS.contains(first)) {
            String names = Folded.strip(line.left().substring(first.length()));
            if (open.isBeforeTheFirst()) {
                throw Refused.because("bad-line", "\"" + first + "\" stands before the first sheet");
            }
            if (names.isEmpty() || line.right().isEmpty()) {
                throw Refused.because("bad-line", "expected " + example(first));
            }
            column(first, names, line);
            return;
        }
        if (!line.right().isPresent() || !KNOWN_LINES.contains(left)) {
            throw new Refused(Fault.of(
                            "bad-line",
                            "no line of a mapping reads \"" + line.left() + "\""
                                    + (KNOWN_LINES.contains(left) ? " without = and a value" : ""))
                    .nearest(KNOWN_LINES.contains(left) ? Optional.empty() : Nearest.of(first, KNOWN_LINES)));
        }
        setting(left, line.right().get(), line);
    }

    private static String example(String first) {
        return switch (first) {
            case "word" -> "word A/L = layer";
            case "for" -> "for potted = container";
            case "with" -> "with hormone = IBA";
            case "otherwise" -> "otherwise method = layer";
            case "skip" -> "skip Tag = Total";
            default -> first + " Tag No = tag";
        };
    }

    private void column(String first, String names, MappingLine line) {
        String right = line.right().orElseThrow();
        switch (first) {
            case "column", "maybe" -> {
                open.add(new SheetDraft.Column(line.number(), Pieces.list(names), first.equals("maybe"), right));
            }
            case "for" -> {
                SheetDraft.Column root = lastColumn(first).root();
                SheetDraft.Column other = new SheetDraft.Column(line.number(), root, right);
                for (String kind : Pieces.list(names)) {
                    if (root.byKind().putIfAbsent(Shape.kind(kind), other) != null) {
                        throw Refused.because("bad-line", "for " + kind + " stands twice for this column");
                    }
                }
                open.last(other);
            }
            case "word" -> {
                Pieces.list(names);
                lastColumn(first).words().add(line.of(names));
            }
            case "with" -> lastColumn(first).along().add(line.of(names));
            case "otherwise" -> open.otherwise().add(line.of(names));
            default -> {
                Set<String> values = new LinkedHashSet<>();
                Pieces.list(right).forEach(value -> values.add(Folded.of(value)));
                open.skips().add(new SheetRules.Skip(line.number(), Pieces.list(names), values));
            }
        }
    }

    private SheetDraft.Column lastColumn(String first) {
        return open.last()
                .orElseThrow(() -> Refused.because(
                        "bad-line", "\"" + first + "\" must stand below the column that it belongs to"));
    }

    private void setting(String key, String value, MappingLine line) {
        if (key.equals("tidy")) {
            lastColumn(key).tidy(line);
            Tidy.of(value);
            return;
        }
        boolean isOfSheet = Set.of("files", "row", "leave out").contains(key);
        if (isOfSheet && open.isBeforeTheFirst()) {
            throw Refused.because("bad-line", "\"" + key + "\" stands before the first sheet");
        }
        if (!key.equals("leave out") && !open.say(key)) {
            throw Refused.because("bad-line", "\"" + key + "\" stands twice; expected it once");
        }
        switch (key) {
            case "files" -> open.files(Pieces.list(value));
            case "row" -> open.shape(Shape.of(Pieces.plain(value)));
            case "leave out" ->
                Pieces.list(value).forEach(name -> open.leftOut().add(Folded.of(name)));
            default -> open.settings(open.settings().with(key, value));
        }
        if (open.isBeforeTheFirst()) {
            common = open.settings();
        }
    }
}
