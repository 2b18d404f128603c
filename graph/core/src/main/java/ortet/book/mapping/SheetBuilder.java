package ortet.book.mapping;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
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
import ortet.value.Refused;

/** Makes the rules of a sheet from all that its lines say, and checks that its rows can be read by them. */
final class SheetBuilder {
    private static final Pattern IN_UNIT = Pattern.compile("(.+?)\\s+in\\s+(\\S.*)", Pattern.CASE_INSENSITIVE);

    private final SheetDraft sheet;
    private final MappingFaults faults;

    SheetBuilder(SheetDraft sheet, MappingFaults faults) {
        this.sheet = sheet;
        this.faults = faults;
    }

    /** Return the rules of the sheet; absent when it does not even say what a row is. */
    Optional<SheetRules> build() {
        if (sheet.files().isEmpty()) {
            faults.add(
                    sheet.line(),
                    "no-files",
                    "sheet " + sheet.name() + " says not which files it is; expected a line such as files = trees*.csv",
                    Optional.empty());
        }
        if (sheet.shape().isEmpty()) {
            if (!sheet.hasSaid("row")) {
                faults.add(
                        sheet.line(),
                        "no-row",
                        "sheet " + sheet.name() + " says not what a row is; expected a line such as row = plant",
                        Optional.empty());
            }
            return Optional.empty();
        }
        Shape shape = sheet.shape().get();
        Vocabulary vocabulary = Vocabulary.of(shape);
        int before = faults.size();
        List<ColumnRule> columns = new ArrayList<>();
        for (SheetDraft.Column column : sheet.columns()) {
            faults.attempt(column.line(), () -> columns.add(rule(column, vocabulary, sheet.settings())));
        }
        List<Fixed> otherwise = new ArrayList<>();
        for (MappingLine line : sheet.otherwise()) {
            faults.attempt(line.number(), () -> otherwise.add(fixed(line, vocabulary, sheet.settings())));
        }
        SheetRules rules = new SheetRules(
                sheet.line(),
                sheet.name(),
                sheet.files(),
                shape,
                sheet.settings(),
                columns,
                otherwise,
                sheet.leftOut(),
                sheet.skips());
        checkOnce(rules);
        if (faults.size() == before) {
            checkWhole(rules);
        }
        return Optional.of(rules);
    }

    private ColumnRule rule(SheetDraft.Column column, Vocabulary vocabulary, Settings settings) {
        Map<EntryKind, CellReader> byKind = new EnumMap<>(EntryKind.class);
        column.byKind()
                .forEach((kind, other) -> faults.attempt(other.line(), () -> {
                    if (!vocabulary.hasKinds()) {
                        throw Refused.because("bad-line", "\"for\" has a meaning only where row = entry");
                    }
                    ColumnRule rule =
                            rule(other, Vocabulary.of(new Shape(Shape.Sort.ENTRY, Optional.of(kind))), settings);
                    byKind.put(kind, rule.reader());
                }));
        String text = Pieces.plain(column.meaning());
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
        for (MappingLine word : column.words()) {
            String value = read(word, plain);
            for (String name : Pieces.list(word.left())) {
                if (name.equals("*")) {
                    anythingElse = Optional.of(value);
                } else if (words.putIfAbsent(Folded.of(name), value) != null) {
                    faults.add(
                            word.number(),
                            "bad-line",
                            "word " + name + " stands twice for this column",
                            Optional.empty());
                }
            }
        }
        List<Fixed> along = new ArrayList<>();
        for (MappingLine with : column.along()) {
            faults.attempt(with.number(), () -> along.add(fixed(with, vocabulary, settings)));
        }
        Tidy tidy =
                column.tidy().map(line -> Tidy.of(line.right().orElseThrow())).orElse(Tidy.NOTHING);
        if (!tidy.isNothing() && !isOfTags(meaning)) {
            faults.add(
                    column.tidy().get().number(),
                    "bad-line",
                    "only tags can be tidied; " + meaning.name() + " is none",
                    Optional.empty());
        }
        return new ColumnRule(
                column.line(),
                column.names(),
                column.isOptional(),
                new CellReader(meaning, unit, settings, tidy, words, anythingElse),
                byKind,
                along);
    }

    private static boolean isOfTags(Meaning meaning) {
        return Set.of(Sort.TAG, Sort.TAGS, Sort.MOTHERS, Sort.ROOTSTOCK).contains(meaning.sort());
    }

    private String read(MappingLine line, CellReader reader) {
        String value = Pieces.plain(line.right().orElseThrow());
        try {
            return reader.read(value);
        } catch (Refused refused) {
            refused.faults().forEach(fault -> {
                // A line of words in the mapping is what we are reading: no use to advise one.
                String text = fault.text().replaceFirst(", or a line of words in the mapping: .*$", "");
                faults.add(line.number(), fault.rule(), text, fault.nearest());
            });
            return "";
        }
    }

    private Fixed fixed(MappingLine line, Vocabulary vocabulary, Settings settings) {
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
                    faults.add(
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
                .forEach(fixed -> faults.add(
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
            faults.add(
                    rules.line(),
                    "no-column",
                    "in sheet " + rules.name() + " no line says the " + name + ", without which a sheet with row = "
                            + rules.shape().word() + " cannot be read; expected a column or otherwise " + name + " = …",
                    Optional.empty());
        }
    }
}
