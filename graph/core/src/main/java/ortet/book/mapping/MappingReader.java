package ortet.book.mapping;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.book.mapping.Meaning.Sort;
import ortet.book.mapping.Numbers.Measure;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Where;

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

    private static final Pattern IN_UNIT = Pattern.compile("(.+?)\\s+in\\s+(\\S.*)", Pattern.CASE_INSENSITIVE);
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    /** Texts that stand for nothing, whatever the mapping says. */
    static final Set<String> NOTHING = Set.of("-", "--", "–", "—", "?", "n/a", "#n/a");

    /** A line cut at its equals sign. */
    private record Line(long number, String left, Optional<String> right) {}

    /** A column while its lines are read. */
    private static final class OpenColumn {
        private final long line;
        private final List<String> names;
        private final boolean optional;
        private final String meaning;
        private final OpenColumn root;
        private final List<Line> words = new ArrayList<>();
        private final List<Line> along = new ArrayList<>();
        private final Map<EntryKind, OpenColumn> byKind = new LinkedHashMap<>();
        private Optional<Line> tidy = Optional.empty();

        OpenColumn(long line, List<String> names, boolean optional, String meaning, OpenColumn root) {
            this.root = root == null ? this : root;
            this.line = line;
            this.names = names;
            this.optional = optional;
            this.meaning = meaning;
        }
    }

    /** A sheet while its lines are read; before the first, what holds for all. */
    private static final class OpenSheet {
        private final long line;
        private final String name;
        private List<String> files = List.of();
        private Optional<Shape> shape = Optional.empty();
        private Settings settings;
        private final List<OpenColumn> columns = new ArrayList<>();
        private final List<Line> otherwise = new ArrayList<>();
        private final Set<String> leftOut = new LinkedHashSet<>();
        private final List<SheetRules.Skip> skips = new ArrayList<>();
        private final Set<String> said = new LinkedHashSet<>();
        private OpenColumn last;

        OpenSheet(long line, String name, Settings settings) {
            this.line = line;
            this.name = name;
            this.settings = settings;
        }
    }

    private final String shown;
    private final List<Fault> faults = new ArrayList<>();
    private final List<SheetRules> sheets = new ArrayList<>();
    private OpenSheet open = new OpenSheet(0, "", defaults());
    private Settings common = open.settings;

    MappingReader(String shown) {
        this.shown = shown;
    }

    /** Return how sheets are read where the mapping says nothing of it. */
    static Settings defaults() {
        return new Settings(
                new Dates(List.of()),
                new Numbers(false),
                Tidy.NOTHING,
                NOTHING,
                StandardCharsets.UTF_8,
                Optional.empty(),
                true,
                true,
                false,
                false,
                true);
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
            attempt(at, () -> take(cut(at, line)));
        }
        close();
        if (sheets.isEmpty() && faults.isEmpty()) {
            add(1, "no-sheet", "a mapping must have a sheet; expected a line such as sheet trees", Optional.empty());
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        return new Mapping(shown, sheets);
    }

    private static Line cut(long number, String line) {
        int equals = Pieces.find(line, '=');
        return equals < 0
                ? new Line(number, line, Optional.empty())
                : new Line(
                        number,
                        Folded.strip(line.substring(0, equals)),
                        Optional.of(Folded.strip(line.substring(equals + 1))));
    }

    private void attempt(long line, Runnable step) {
        try {
            step.run();
        } catch (Refused refused) {
            refused.faults().forEach(fault -> add(line, fault.rule(), fault.text(), fault.nearest()));
        }
    }

    private void add(long line, String rule, String text, Optional<String> nearest) {
        faults.add(new Fault(rule, Optional.of(new Where(shown, line, Optional.empty())), text, nearest));
    }

    private void take(Line line) {
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
            open = new OpenSheet(line.number(), name, common);
            return;
        }
        if (COLUMN_WORDS.contains(first)) {
            String names = Folded.strip(line.left().substring(first.length()));
            if (open.name.isEmpty()) {
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

    private void column(String first, String names, Line line) {
        String right = line.right().orElseThrow();
        switch (first) {
            case "column", "maybe" -> {
                open.last = new OpenColumn(line.number(), Pieces.list(names), first.equals("maybe"), right, null);
                open.columns.add(open.last);
            }
            case "for" -> {
                OpenColumn root = lastColumn(first).root;
                OpenColumn other = new OpenColumn(line.number(), root.names, root.optional, right, root);
                for (String kind : Pieces.list(names)) {
                    if (root.byKind.putIfAbsent(Shape.kind(kind), other) != null) {
                        throw Refused.because("bad-line", "for " + kind + " stands twice for this column");
                    }
                }
                open.last = other;
            }
            case "word" -> {
                Pieces.list(names);
                lastColumn(first).words.add(new Line(line.number(), names, Optional.of(right)));
            }
            case "with" -> lastColumn(first).along.add(new Line(line.number(), names, Optional.of(right)));
            case "otherwise" -> open.otherwise.add(new Line(line.number(), names, Optional.of(right)));
            default -> {
                Set<String> values = new LinkedHashSet<>();
                Pieces.list(right).forEach(value -> values.add(Folded.of(value)));
                open.skips.add(new SheetRules.Skip(line.number(), Pieces.list(names), values));
            }
        }
    }

    private OpenColumn lastColumn(String first) {
        if (open.columns.isEmpty()) {
            throw Refused.because("bad-line", "\"" + first + "\" must stand below the column that it belongs to");
        }
        return open.last;
    }

    private void setting(String key, String value, Line line) {
        if (key.equals("tidy")) {
            lastColumn(key).tidy = Optional.of(line);
            Tidy.of(value);
            return;
        }
        boolean isOfSheet = Set.of("files", "row", "leave out").contains(key);
        if (isOfSheet && open.name.isEmpty()) {
            throw Refused.because("bad-line", "\"" + key + "\" stands before the first sheet");
        }
        if (!key.equals("leave out") && !open.said.add(key)) {
            throw Refused.because("bad-line", "\"" + key + "\" stands twice; expected it once");
        }
        switch (key) {
            case "files" -> open.files = Pieces.list(value);
            case "row" -> open.shape = Optional.of(Shape.of(Pieces.plain(value)));
            case "leave out" -> Pieces.list(value).forEach(name -> open.leftOut.add(Folded.of(name)));
            default -> open.settings = changed(open.settings, key, value);
        }
        if (open.name.isEmpty()) {
            common = open.settings;
        }
    }

    private static Settings changed(Settings now, String key, String value) {
        Dates dates = now.dates();
        Numbers numbers = now.numbers();
        Tidy tags = now.tags();
        Set<String> blanks = now.blanks();
        Charset encoding = now.encoding();
        Optional<Character> separator = now.separator();
        boolean hasHeader = now.hasHeader();
        boolean mothers = now.acquiresMothers();
        boolean plants = now.acquiresPlants();
        boolean motherless = now.acquiresMotherless();
        boolean once = now.takesRepeatedOnce();
        String word = Folded.of(Pieces.find(value, ',') < 0 ? Pieces.plain(value) : value);
        switch (key) {
            case "dates" ->
                dates = new Dates(Pieces.list(value).stream().map(DayFormat::of).toList());
            case "numbers" ->
                numbers = new Numbers(choice(word, key, Map.of("decimal point", false, "decimal comma", true)));
            case "tags" -> tags = Tidy.of(value);
            case "blank" -> {
                Set<String> all = new LinkedHashSet<>(blanks);
                Pieces.list(value).forEach(text -> all.add(Folded.of(text)));
                blanks = all;
            }
            case "encoding" ->
                encoding = choice(
                        word,
                        key,
                        Map.of(
                                "utf-8", StandardCharsets.UTF_8,
                                "utf8", StandardCharsets.UTF_8,
                                "windows-1252", WINDOWS));
            case "separator" ->
                separator = Optional.of(choice(
                        word,
                        key,
                        Map.of("comma", ',', "semicolon", ';', "tab", '\t', "bar", '|', ";", ';', "|", '|')));
            case "header" -> hasHeader = choice(word, key, Map.of("yes", true, "none", false));
            case "mothers without a row" -> mothers = acquire(word, key);
            case "plants without a row" -> plants = acquire(word, key);
            case "without a mother" -> motherless = acquire(word, key);
            default -> once = choice(word, key, Map.of("once", true, "each", false));
        }
        return new Settings(
                dates, numbers, tags, blanks, encoding, separator, hasHeader, mothers, plants, motherless, once);
    }

    private static boolean acquire(String word, String key) {
        return choice(word, key, Map.of("acquire", true, "refuse", false));
    }

    private static <T> T choice(String word, String key, Map<String, T> choices) {
        T choice = choices.get(word);
        if (choice == null) {
            List<String> words = choices.keySet().stream().sorted().toList();
            throw new Refused(
                    Fault.of("bad-setting", key + ": no \"" + word + "\"; expected " + String.join(" or ", words))
                            .nearest(Nearest.of(word, words)));
        }
        return choice;
    }

    // ---- a sheet is closed when the next begins ----

    private void close() {
        OpenSheet sheet = open;
        if (sheet.name.isEmpty()) {
            return;
        }
        if (sheet.files.isEmpty()) {
            add(
                    sheet.line,
                    "no-files",
                    "sheet " + sheet.name + " says not which files it is; expected a line such as files = trees*.csv",
                    Optional.empty());
        }
        if (sheet.shape.isEmpty()) {
            if (!sheet.said.contains("row")) {
                add(
                        sheet.line,
                        "no-row",
                        "sheet " + sheet.name + " says not what a row is; expected a line such as row = plant",
                        Optional.empty());
            }
            return;
        }
        Shape shape = sheet.shape.get();
        Vocabulary vocabulary = Vocabulary.of(shape);
        int before = faults.size();
        List<ColumnRule> columns = new ArrayList<>();
        for (OpenColumn column : sheet.columns) {
            attempt(column.line, () -> columns.add(rule(column, vocabulary, sheet.settings)));
        }
        List<Fixed> otherwise = new ArrayList<>();
        for (Line line : sheet.otherwise) {
            attempt(line.number(), () -> otherwise.add(fixed(line, vocabulary, sheet.settings)));
        }
        SheetRules rules = new SheetRules(
                sheet.line,
                sheet.name,
                sheet.files,
                shape,
                sheet.settings,
                columns,
                otherwise,
                sheet.leftOut,
                sheet.skips);
        checkOnce(rules);
        if (faults.size() == before) {
            checkWhole(rules);
        }
        sheets.add(rules);
    }

    private ColumnRule rule(OpenColumn column, Vocabulary vocabulary, Settings settings) {
        Map<EntryKind, CellReader> byKind = new EnumMap<>(EntryKind.class);
        column.byKind.forEach((kind, other) -> attempt(other.line, () -> {
            if (!vocabulary.hasKinds()) {
                throw Refused.because("bad-line", "\"for\" has a meaning only where row = entry");
            }
            ColumnRule rule = rule(other, Vocabulary.of(new Shape(Shape.Sort.ENTRY, Optional.of(kind))), settings);
            byKind.put(kind, rule.reader());
        }));
        String text = Pieces.plain(column.meaning);
        Matcher matcher = IN_UNIT.matcher(text);
        Optional<String> unit = Optional.empty();
        if (matcher.matches()) {
            text = matcher.group(1);
            unit = Optional.of(Folded.of(matcher.group(2)));
        }
        Meaning meaning = vocabulary.meaning(text);
        if (unit.isPresent()) {
            checkUnit(meaning, unit.get());
        }
        CellReader plain = CellReader.plain(meaning, unit, settings);
        Map<String, String> words = new HashMap<>();
        Optional<String> anythingElse = Optional.empty();
        for (Line word : column.words) {
            String value = read(word, plain);
            for (String name : Pieces.list(word.left())) {
                if (name.equals("*")) {
                    anythingElse = Optional.of(value);
                } else if (words.putIfAbsent(Folded.of(name), value) != null) {
                    add(word.number(), "bad-line", "word " + name + " stands twice for this column", Optional.empty());
                }
            }
        }
        List<Fixed> along = new ArrayList<>();
        for (Line with : column.along) {
            attempt(with.number(), () -> along.add(fixed(with, vocabulary, settings)));
        }
        Tidy tidy = column.tidy.map(line -> Tidy.of(line.right().orElseThrow())).orElse(Tidy.NOTHING);
        if (!tidy.isNothing() && !isOfTags(meaning)) {
            add(
                    column.tidy.get().number(),
                    "bad-line",
                    "only tags can be tidied; " + meaning.name() + " is none",
                    Optional.empty());
        }
        return new ColumnRule(
                column.line,
                column.names,
                column.optional,
                new CellReader(meaning, unit, settings, tidy, words, anythingElse),
                byKind,
                along);
    }

    private static boolean isOfTags(Meaning meaning) {
        return Set.of(Sort.TAG, Sort.TAGS, Sort.MOTHERS, Sort.ROOTSTOCK).contains(meaning.sort());
    }

    private String read(Line line, CellReader reader) {
        String value = Pieces.plain(line.right().orElseThrow());
        try {
            return reader.read(value);
        } catch (Refused refused) {
            refused.faults().forEach(fault -> {
                // A line of words in the mapping is what we are reading: no use to advise one.
                String text = fault.text().replaceFirst(", or a line of words in the mapping: .*$", "");
                add(line.number(), fault.rule(), text, fault.nearest());
            });
            return "";
        }
    }

    private Fixed fixed(Line line, Vocabulary vocabulary, Settings settings) {
        Meaning meaning = vocabulary.meaning(Pieces.plain(line.left()));
        return new Fixed(line.number(), meaning, read(line, CellReader.plain(meaning, Optional.empty(), settings)));
    }

    private static void checkUnit(Meaning meaning, String unit) {
        if (meaning.sort() == Sort.MONEY) {
            Numbers.digits(unit);
        } else if (meaning.sort() == Sort.STRENGTH) {
            if (!Set.of("%", "ppm", "mg/l").contains(unit)) {
                throw Refused.because("bad-unit", "no strength in \"" + unit + "\"; expected % or ppm");
            }
        } else if (meaning.measure() == Measure.NONE) {
            throw Refused.because("bad-unit", meaning.name() + " has no unit; expected nothing after it");
        } else if (meaning.measure().factor(unit).isEmpty()) {
            throw Refused.because(
                    "bad-unit",
                    "no " + meaning.name() + " in \"" + unit + "\"; expected one of "
                            + String.join(", ", meaning.measure().units()));
        }
    }

    private void checkOnce(SheetRules rules) {
        for (int at = 0; at < rules.columns().size(); at++) {
            Meaning meaning = rules.columns().get(at).meaning();
            for (int before = 0; before < at; before++) {
                ColumnRule other = rules.columns().get(before);
                if (meaning.isSame(other.meaning()) && !meaning.isGathered()) {
                    add(
                            rules.columns().get(at).line(),
                            "bad-line",
                            meaning.name() + " is said by column " + other.name() + " already (line " + other.line()
                                    + "); expected one column, with both names if the files differ",
                            Optional.empty());
                }
            }
        }
        Function<Fixed, String> key =
                fixed -> fixed.meaning().act() + "\n" + fixed.meaning().field();
        Set<String> seen = new LinkedHashSet<>();
        rules.otherwise().stream()
                .filter(fixed -> !seen.add(key.apply(fixed)))
                .forEach(fixed -> add(
                        fixed.line(),
                        "bad-line",
                        "otherwise " + fixed.meaning().name() + " stands twice; expected it once",
                        Optional.empty()));
    }

    /** Check that a row can be read at all. */
    private void checkWhole(SheetRules rules) {
        Shape shape = rules.shape();
        boolean isRegister =
                shape.kind().filter(kind -> kind.phase() == Phase.REGISTER).isPresent();
        if (!isRegister) {
            need(rules, Meaning.TAGS, "tag");
        }
        switch (shape.sort()) {
            case PLANT -> need(rules, Meaning.METHOD, "method");
            case OUTCOME -> {
                need(rules, Meaning.OUTCOME, "outcome");
                need(rules, Meaning.DAY, "day");
            }
            case ENTRY -> {
                if (shape.kind().isEmpty()) {
                    need(rules, Meaning.KIND, "kind");
                }
                if (shape.kind()
                        .filter(kind -> isRegister || Shape.begins(kind))
                        .isEmpty()) {
                    need(rules, Meaning.DAY, "day");
                }
                shape.kind().ifPresent(kind -> needsOf(kind, rules));
            }
        }
    }

    private void needsOf(EntryKind kind, SheetRules rules) {
        for (Form.Field field : Form.of(kind).fields()) {
            boolean isBuilt = field.name().equals(Meaning.CULTIVAR)
                    && (said(rules, Meaning.TAXON) || said(rules, Meaning.EPITHET));
            if (field.required() && !isBuilt) {
                need(rules, field.name(), field.name().replace('_', ' '));
            }
        }
    }

    private static boolean said(SheetRules rules, String field) {
        return rules.column("", field).isPresent() || rules.fixed("", field).isPresent();
    }

    private void need(SheetRules rules, String field, String name) {
        if (!said(rules, field)) {
            add(
                    rules.line(),
                    "no-column",
                    "in sheet " + rules.name() + " no line says the " + name + ", without which a sheet with row = "
                            + rules.shape().word() + " cannot be read; expected a column or otherwise " + name + " = …",
                    Optional.empty());
        }
    }
}
