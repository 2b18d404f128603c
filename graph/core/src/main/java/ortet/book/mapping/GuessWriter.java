package ortet.book.mapping;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ortet.book.mapping.Meaning.Sort;
import ortet.book.mapping.Numbers.Measure;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.value.Nearest;

/** Writes what was recognised in files as a mapping, with a remark above every line that is not sure. */
final class GuessWriter {
    private static final int WORDS_SHOWN = 40;

    /** Fields whose columns hold one tag. */
    private static final Set<String> OF_ONE_TAG =
            Set.of("tag", "mother", "scion", "seed parent", "pollen parent", "source", "new tag");

    private final List<GuessedSheet> sheets;
    private final StringBuilder text = new StringBuilder();

    GuessWriter(List<GuessedSheet> sheets) {
        this.sheets = sheets;
    }

    /** Return the mapping. */
    String mapping() {
        line("# A mapping that was guessed from "
                + sheets.stream().map(sheet -> sheet.source().name()).collect(Collectors.joining(", ")) + ".");
        line("# It is a beginning: look at every line, above all where a remark says that it is not sure.");
        line("# What all of this means is in docs/mapping.md.");
        tags();
        Set<String> names = new TreeSet<>();
        Map<String, List<GuessedSheet>> alike = new LinkedHashMap<>();
        for (GuessedSheet sheet : sheets) {
            String key = sheet.shape() + "\n" + sheet.header().names() + "\n" + sheet.encoding();
            alike.computeIfAbsent(key, each -> new ArrayList<>()).add(sheet);
        }
        for (List<GuessedSheet> same : alike.values()) {
            sheet(same, names);
        }
        return text.toString();
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private void tags() {
        boolean blanks = false;
        boolean upper = false;
        boolean lower = false;
        for (GuessedSheet sheet : sheets) {
            for (GuessedColumn found : sheet.found()) {
                boolean isOne =
                        OF_ONE_TAG.contains(found.field()) || found.field().equals("tags");
                if (!isOne) {
                    continue;
                }
                for (String value : found.column().values()) {
                    if (ColumnSample.isOneTag(value)) {
                        blanks |= value.indexOf(' ') >= 0;
                        upper |= value.chars().anyMatch(Character::isUpperCase);
                        lower |= value.chars().anyMatch(Character::isLowerCase);
                    }
                }
            }
        }
        List<String> steps = new ArrayList<>();
        if (blanks) {
            steps.add("no blanks");
        }
        if (upper && lower) {
            steps.add("upper case");
        }
        if (!steps.isEmpty()) {
            line("");
            line("# " + (blanks ? "Some tags have blanks in them, which the book does not take" : "")
                    + (blanks && upper && lower ? "; " : "")
                    + (upper && lower ? "capitals and small letters are mixed" : "")
                    + ".");
            line("tags = " + String.join(", ", steps));
        }
    }

    private void sheet(List<GuessedSheet> same, Set<String> names) {
        GuessedSheet sheet = same.get(0);
        String name = sheet.source()
                .name()
                .replaceFirst("\\.[^.]*$", "")
                .replaceAll("[\\d_\\-. ]+$", "")
                .strip();
        String base = Folded.clean(name.isEmpty() ? sheet.shape() : name).replace("\"", "");
        String unique = base;
        for (int time = 2; !names.add(unique.toLowerCase(Locale.ROOT)); time++) {
            unique = base + " " + time;
        }
        line("");
        line("sheet " + Pieces.quoted(unique));
        line("files = "
                + same.stream().map(one -> Pieces.quoted(glob(one))).distinct().collect(Collectors.joining(", ")));
        boolean isSure = sheet.score() > 0;
        if (!isSure) {
            line(
                    "# not sure what a row is: plant, outcome, entry, or a kind of entry such as potted, moved, sold or lost");
        }
        line("row = " + sheet.shape());
        settings(sheet);
        line("");
        for (GuessedColumn found : sheet.found()) {
            column(sheet, found);
        }
        without(sheet);
        unknown(sheet);
    }

    private String glob(GuessedSheet sheet) {
        String name = sheet.source().name();
        String glob = name.replaceAll("\\d[\\d\\-_. ]*(?=.*\\.)", "*");
        boolean isOfOthers = sheets.stream()
                .filter(other -> !other.header().names().equals(sheet.header().names()))
                .anyMatch(other ->
                        other.source().name().matches(glob.replace(".", "\\.").replace("*", ".*")));
        return isOfOthers || glob.contains("(") || glob.contains("[") ? name : glob;
    }

    private void settings(GuessedSheet sheet) {
        if (!sheet.encoding().equals(StandardCharsets.UTF_8)) {
            line("encoding = windows-1252");
        }
        if (sheet.header().line() == 0) {
            line("# There seems to be no header; columns are called by their letters in the spreadsheet.");
            line("header = none");
        }
        List<String> days = new ArrayList<>();
        Vocabulary vocabulary = Vocabulary.of(Shape.of(sheet.shape()));
        int pointed = 0;
        int comma = 0;
        for (GuessedColumn found : sheet.found()) {
            Sort sort = vocabulary.meaning(found.field()).sort();
            if (sort == Sort.DAY) {
                days.addAll(found.column().values());
            }
            if (sort == Sort.NUMBER || sort == Sort.MONEY || sort == Sort.STRENGTH) {
                for (String value : found.column().values()) {
                    pointed += value.matches(".*\\d\\.\\d{1,2}\\D*") ? 1 : 0;
                    comma += value.matches(".*\\d,\\d{1,2}\\D*") ? 1 : 0;
                }
            }
        }
        GuessedDates dates = GuessedDates.of(days);
        dates.doubt().ifPresent(doubt -> line("# not sure: " + doubt));
        if (!dates.formats().isEmpty()) {
            line("dates = "
                    + dates.formats().stream()
                            .map(format -> Pieces.quoted(format.toString()))
                            .collect(Collectors.joining(", ")));
        }
        if (comma > 0) {
            if (pointed > 0) {
                line("# not sure: " + comma + " numbers have a comma before the decimals, " + pointed + " a point");
            }
            line("numbers = " + (comma >= pointed ? "decimal comma" : "decimal point"));
        }
        Optional<GuessedColumn> tag = sheet.of("tag").or(() -> sheet.of("tags"));
        if (sheet.hasTotals() && tag.isPresent()) {
            line("skip " + Pieces.quoted(tag.get().column().head()) + " = Total, Totals, Sum, Subtotal");
        }
    }

    private void column(GuessedSheet sheet, GuessedColumn found) {
        Vocabulary vocabulary = Vocabulary.of(Shape.of(sheet.shape()));
        Meaning meaning = vocabulary.meaning(found.field());
        ColumnSample column = found.column();
        if (!found.isSure()) {
            line("# not sure: " + column.examples());
        }
        String unit = unit(meaning, column);
        String field = found.field();
        if (field.equals("mother") && column.hasLists()) {
            field = "mothers";
        } else if (field.equals("tags") && !column.hasLists()) {
            field = "tag";
        } else if (field.equals("tag") && column.hasLists() && !sheet.shape().equals("plant")) {
            field = "tags";
        }
        line("column " + Pieces.quoted(column.head()) + " = " + field + unit);
        if (meaning.sort() == Sort.STRENGTH && sheet.of("hormone").isEmpty()) {
            line("  # which hormone? IBA is a guess");
            line("  with hormone = IBA");
        }
        words(meaning, column);
    }

    private String unit(Meaning meaning, ColumnSample column) {
        if (meaning.sort() == Sort.MONEY) {
            boolean says = column.isMostly(value -> value.matches(".*[€£$A-Za-z].*"));
            Optional<String> head = HeaderWords.unit(column.head(), List.of("eur", "gbp", "usd", "chf", "€", "£"));
            String currency = head.map(sign -> sign.equals("€") ? "EUR" : sign.equals("£") ? "GBP" : sign)
                    .orElse("EUR")
                    .toUpperCase(Locale.ROOT);
            if (!says && head.isEmpty()) {
                line("# in which currency? EUR is a guess");
            }
            return says ? "" : " in " + currency;
        }
        if (meaning.sort() == Sort.STRENGTH) {
            Optional<String> head = HeaderWords.unit(column.head(), List.of("ppm", "%"));
            boolean says = column.isMostly(value -> value.matches("(?i).*(ppm|%).*"));
            boolean isLarge = column.isMostly(value -> value.matches("\\d{3,6}|0"));
            return says ? "" : " in " + head.orElse(isLarge ? "ppm" : "%");
        }
        boolean isLength = meaning.sort() == Sort.NUMBER && meaning.measure() == Measure.LENGTH;
        if (!isLength || column.isMostly(value -> value.matches(".*\\d\\s*(mm|cm|m|in|\")"))) {
            return "";
        }
        Optional<String> head = HeaderWords.unit(column.head(), List.of("mm", "cm", "inch", "in", "m"));
        if (head.isEmpty()) {
            line("# in which unit? mm is a guess");
        }
        return head.filter(unit -> !unit.equals("mm"))
                .map(unit -> " in " + unit)
                .orElse("");
    }

    private void words(Meaning meaning, ColumnSample column) {
        boolean isOfWords =
                Set.of(Sort.METHOD, Sort.OUTCOME, Sort.KIND, Sort.CHOICE).contains(meaning.sort());
        if (!isOfWords) {
            cultivars(meaning, column);
            return;
        }
        Map<String, Set<String>> byMeaning = new LinkedHashMap<>();
        Map<String, String> unsure = new LinkedHashMap<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Map.Entry<String, Integer> value : column.frequent()) {
            if (!seen.add(Folded.of(value.getKey())) || seen.size() > WORDS_SHOWN) {
                continue;
            }
            Optional<String> known = HeaderWords.meaning(meaning, value.getKey());
            if (CellReader.takes(meaning, value.getKey())) {
                continue;
            }
            if (known.isPresent() && CellReader.takes(meaning, known.get())) {
                byMeaning
                        .computeIfAbsent(known.get(), key -> new LinkedHashSet<>())
                        .add(value.getKey());
            } else {
                String word = Pieces.quoted(Folded.clean(value.getKey()));
                String rows = value.getValue() + (value.getValue() == 1 ? " row" : " rows");
                String perhaps = value.getKey().replaceAll("[^\\p{L}\\p{N} ./]", "");
                Optional<String> near = HeaderWords.meaning(meaning, perhaps)
                        .or(() -> Nearest.of(Folded.of(value.getKey()).replace(' ', '-'), choices(meaning)));
                unsure.put(
                        "  # what does " + word + " mean (" + rows + ")?",
                        "  # word " + word + " = " + near.orElse("…"));
            }
        }
        byMeaning.forEach((means, words) -> line("  word "
                + words.stream().map(word -> Pieces.quoted(Folded.clean(word))).collect(Collectors.joining(", "))
                + " = " + means));
        unsure.forEach((question, answer) -> {
            line(question);
            line(answer);
        });
    }

    private static List<String> choices(Meaning meaning) {
        return Optional.ofNullable(Form.columns().get(meaning.field()))
                .map(Form.Field::choices)
                .orElse(List.of());
    }

    private void cultivars(Meaning meaning, ColumnSample column) {
        if (meaning.sort() != Sort.CULTIVAR) {
            return;
        }
        column.frequent().stream()
                .filter(value -> !CellReader.takes(meaning, value.getKey()) || !Genera.isOf(value.getKey()))
                .limit(WORDS_SHOWN)
                .forEach(value -> {
                    String name = Pieces.quoted(Folded.clean(value.getKey()));
                    line("  # is " + name + " a botanical name? if not, say what it stands for:");
                    line("  # word " + name + " = Acer palmatum 'Deshojo'");
                });
    }

    /** Write what no column says, though a row must have it. */
    private void without(GuessedSheet sheet) {
        Shape shape = Shape.of(sheet.shape());
        List<String> missing = new ArrayList<>();
        boolean hasTag = sheet.of("tag").isPresent() || sheet.of("tags").isPresent();
        if (!hasTag) {
            Optional<ColumnSample> likely = sheet.columns().stream()
                    .filter(column -> !sheet.reads(column) && !column.isEmpty())
                    .max(Comparator.comparingInt(ColumnSample::distinct));
            line("# not sure: no column looks like one of tags");
            likely.ifPresentOrElse(
                    column -> line("column " + Pieces.quoted(column.head()) + " = tag"),
                    () -> line("otherwise tag = unknown"));
        }
        switch (shape.sort()) {
            case PLANT -> {
                if (sheet.of("method").isEmpty()) {
                    line("# no column says how they began: this is a guess");
                    line("otherwise method = " + method(sheet));
                }
                undated(sheet);
            }
            case OUTCOME -> {
                if (sheet.of("outcome").isEmpty()) {
                    line("# no column says what became of them");
                    line("otherwise outcome = pending");
                }
                missing.add("day");
            }
            case ENTRY -> {
                if (shape.kind().isEmpty() && sheet.of("kind").isEmpty()) {
                    line("# no column says what was done: this is a guess");
                    line("otherwise kind = noted");
                }
                boolean needsNoDay = shape.kind()
                        .filter(kind -> Shape.begins(kind) || kind.phase() == Phase.REGISTER)
                        .isPresent();
                if (!needsNoDay) {
                    missing.add("day");
                }
                shape.kind().ifPresent(kind -> required(kind, sheet));
            }
        }
        for (String field : missing) {
            if (sheet.of(field).isEmpty()) {
                line("# no column says the " + field + ": put the right one here");
                line("otherwise " + field + " = 2000");
            }
        }
    }

    private static String method(GuessedSheet sheet) {
        if (sheet.of("mother").isEmpty() && sheet.of("scion").isEmpty()) {
            return "acquired";
        }
        String name = sheet.source().name().toLowerCase(Locale.ROOT);
        if (name.contains("graft") || sheet.of("rootstock").isPresent()) {
            return "graft";
        }
        boolean isOfCuttings = name.contains("cutting")
                || name.contains("tray")
                || sheet.of("count").isPresent();
        return isOfCuttings ? "cuttings" : name.contains("seed") ? "seed" : "layer";
    }

    private void required(EntryKind kind, GuessedSheet sheet) {
        Map<String, String> guesses = new HashMap<>(Map.of(
                "container", "not recorded",
                "place", "not recorded",
                "sign", "not recorded",
                "size", "not recorded",
                "note", "not recorded",
                "customer", "not recorded",
                "cull", "quality",
                "rest", "not-seen",
                "rework", "re-wrapped"));
        for (Form.Field field : Form.of(kind).fields()) {
            String name = field.name().replace('_', ' ');
            boolean isThere = sheet.of(name).isPresent() || name.equals("tags");
            if (field.required() && !isThere && guesses.containsKey(name)) {
                line("# no column says the " + name + ": put the right one here");
                line("otherwise " + name + " = " + guesses.get(name));
            } else if (field.required() && !isThere) {
                List<ColumnSample> left = sheet.columns().stream()
                        .filter(column -> !sheet.reads(column))
                        .toList();
                line("# no column says the " + name + ", which must be there: put the right one here");
                line(
                        left.isEmpty()
                                ? "maybe \"" + name + "\" = " + name
                                : "maybe " + Pieces.quoted(name + "?") + " = " + name);
            }
        }
    }

    /** Say what can be done where rows tell what became of a plant, but not when. */
    private void undated(GuessedSheet sheet) {
        Optional<GuessedColumn> outcome = sheet.of("outcome");
        if (outcome.isEmpty()) {
            return;
        }
        boolean hasDay =
                sheet.of("outcome day").isPresent() || sheet.of("severed day").isPresent();
        boolean hasGaps = sheet.of("outcome day")
                .map(found -> found.column().blanks() > outcome.get().column().blanks())
                .orElse(true);
        if (!hasDay || hasGaps) {
            line(
                    "# Some rows tell what became of a plant, but not when. Take the mark off the next line where it was the"
                            + " summer in which it began:");
            line("# otherwise outcome day = same year");
        }
    }

    private void unknown(GuessedSheet sheet) {
        List<ColumnSample> unknown = sheet.columns().stream()
                .filter(column -> !sheet.reads(column) && !column.isEmpty())
                .filter(column -> text.lastIndexOf("column " + Pieces.quoted(column.head()) + " = tag")
                        < text.lastIndexOf("\nsheet "))
                .toList();
        boolean isDiary = sheet.shape().equals("entry");
        for (ColumnSample column : unknown) {
            String name = Pieces.quoted(column.head());
            line("# what is " + name + "? " + column.examples());
            if (isDiary) {
                line("# where that depends on what was done, lines below it say so: for potted = container");
                line("column " + name + " = note");
            } else {
                line("leave out = " + name);
            }
        }
    }
}
