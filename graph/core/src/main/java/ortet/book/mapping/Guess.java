package ortet.book.mapping;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
import ortet.book.daybook.Source;
import ortet.book.mapping.Meaning.Sort;
import ortet.book.mapping.Numbers.Measure;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Nearest;
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
    private static final int SAMPLED = 1500;
    private static final int WORDS_SHOWN = 40;
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final Set<String> TOTALS = Set.of("total", "totals", "sum", "subtotal", "sub-total", "in all");

    /** Fields whose columns hold one tag. */
    private static final Set<String> OF_ONE_TAG =
            Set.of("tag", "mother", "scion", "seed parent", "pollen parent", "source", "new tag");

    /** A column that has been recognised. */
    private record Found(ColumnSample column, String field, int score) {
        boolean isSure() {
            return score >= 1000;
        }
    }

    /** A file with what was found in it. */
    private record Sheet(
            Source source,
            Charset encoding,
            CsvFile.Header header,
            List<ColumnSample> columns,
            boolean hasTotals,
            String shape,
            List<Found> found) {
        Optional<Found> of(String field) {
            return found.stream().filter(one -> one.field().equals(field)).findFirst();
        }

        boolean reads(ColumnSample column) {
            return found.stream().anyMatch(one -> one.column() == column);
        }
    }

    private final List<Sheet> sheets = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();

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
        Guess guess = new Guess();
        List<Fault> faults = new ArrayList<>();
        for (Source source : sources) {
            try {
                guess.sheets.add(look(source));
            } catch (Refused refused) {
                faults.addAll(refused.faults());
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        guess.write();
        String mapping = guess.text.toString();
        try {
            Mapping.of(mapping, "the guess");
        } catch (Refused refused) {
            throw new Defect("the mapping that was guessed cannot be read: " + refused.getMessage(), refused);
        }
        return mapping;
    }

    // ---- looking ----

    private static Sheet look(Source source) {
        CsvFile asUtf8 = new CsvFile(source, StandardCharsets.UTF_8);
        boolean isUtf8 = asUtf8.isReadable();
        Charset encoding = isUtf8 ? StandardCharsets.UTF_8 : WINDOWS;
        CsvFile csv = isUtf8 ? asUtf8 : new CsvFile(source, encoding);
        CsvFile.Header head = csv.header(Guess::score, Optional.empty()).orElse(csv.noHeader(Optional.empty()));
        List<ColumnSample> columns = new ArrayList<>();
        head.names().forEach(name -> columns.add(new ColumnSample(name)));
        boolean totals = false;
        for (CsvFile.RawRow row : csv.first(head.separator(), SAMPLED)) {
            boolean isOfSums = row.cells().stream().anyMatch(cell -> TOTALS.contains(Folded.of(cell)));
            boolean isHeaderAgain =
                    Folded.of(row.cells().get(0)).equals(Folded.of(head.names().get(0)));
            totals |= isOfSums;
            if (row.line() > head.line() && !isOfSums && !isHeaderAgain) {
                for (int at = 0; at < columns.size(); at++) {
                    columns.get(at).add(at < row.cells().size() ? row.cells().get(at) : "");
                }
            }
        }
        Sheet best = null;
        int most = Integer.MIN_VALUE;
        Optional<String> named = HeaderWords.shapeOfFile(source.name());
        for (String shape : HeaderWords.shapes()) {
            List<Found> found = recognised(columns, shape);
            Sheet sheet = new Sheet(source, encoding, head, columns, totals, shape, found);
            int score = score(sheet) + (named.equals(Optional.of(shape)) ? 1500 : 0);
            if (score > most) {
                most = score;
                best = sheet;
            }
        }
        return head.line() == 0 ? withoutHeads(source, encoding, head, columns, totals) : best;
    }

    /** Return how well a row will do as a header: by how many of its cells are known heads. */
    private static int score(Set<String> names) {
        int known = 0;
        for (String name : names) {
            boolean isKnown = HeaderWords.shapes().stream()
                    .flatMap(shape -> HeaderWords.clues(shape).stream())
                    .anyMatch(clue -> HeaderWords.fit(name, clue) >= 1000);
            known += isKnown ? 1 : 0;
        }
        return known >= 2 ? known : 0;
    }

    private static int score(Sheet sheet) {
        int score = 0;
        for (Found found : sheet.found()) {
            score += Math.min(found.score(), 1000);
        }
        boolean isPlant = sheet.shape().equals("plant");
        Optional<Found> tag = sheet.of("tag").or(() -> sheet.of("tags"));
        score -= tag.isPresent() ? 0 : 2000;
        if (isPlant) {
            boolean begins = List.of("mother", "scion", "method", "begun day", "source").stream()
                    .anyMatch(field -> sheet.of(field).isPresent());
            score -= begins ? 0 : 1500;
            boolean isUnique = tag.filter(found ->
                            found.column().distinct() >= found.column().values().size() * 0.9)
                    .isPresent();
            score -= isUnique ? 0 : 1000;
        } else {
            score -= sheet.of("day").isPresent() ? 0 : 1500;
            boolean hasOwn = sheet.found().stream()
                    .anyMatch(found -> !Set.of("tags", "day", "by", "note").contains(found.field()));
            score -= hasOwn ? 0 : 1500;
            score -= isMissing(sheet) ? 1000 : 0;
        }
        return score;
    }

    /** Tell whether a list lacks a column that its kind must have. */
    private static boolean isMissing(Sheet sheet) {
        Shape shape = Shape.of(sheet.shape());
        return shape.kind()
                .filter(kind -> Form.of(kind).fields().stream()
                        .filter(Form.Field::required)
                        .map(field -> field.name().replace('_', ' '))
                        .filter(name -> !name.equals("tags"))
                        .anyMatch(name -> sheet.of(name).isEmpty()))
                .isPresent();
    }

    private static List<Found> recognised(List<ColumnSample> columns, String shape) {
        record Fit(ColumnSample column, HeaderWords.Clue clue, int score) {}
        List<Fit> fits = new ArrayList<>();
        for (ColumnSample column : columns) {
            if (column.isEmpty()) {
                continue;
            }
            for (HeaderWords.Clue clue : HeaderWords.clues(shape)) {
                int score = HeaderWords.fit(column.head(), clue);
                if (score > 0 && agrees(column, clue.field(), shape)) {
                    fits.add(new Fit(column, clue, score));
                }
            }
        }
        fits.sort(Comparator.comparingInt(Fit::score).reversed());
        List<Found> found = new ArrayList<>();
        Set<ColumnSample> taken = new LinkedHashSet<>();
        Set<String> said = new LinkedHashSet<>();
        for (Fit fit : fits) {
            String field = fit.clue().field();
            if (taken.contains(fit.column())) {
                continue;
            }
            if (!said.add(field)) {
                Optional<String> again = shape.equals("plant") ? again(field, said) : Optional.empty();
                if (again.isEmpty() && !field.equals("note")) {
                    continue;
                }
                field = again.orElse(field);
            }
            taken.add(fit.column());
            found.add(new Found(fit.column(), field, fit.score()));
        }
        bands(columns, shape, taken, found);
        found.sort(Comparator.comparingInt(one -> columns.indexOf(one.column())));
        return found;
    }

    /** Return the next of several acts alike, where a field can be one: pots that stand side by side. */
    private static Optional<String> again(String field, Set<String> said) {
        if (!field.startsWith("potted ")) {
            return Optional.empty();
        }
        for (int time = 2; time < 10; time++) {
            String next = "potted " + time + field.substring("potted".length());
            if (said.add(next)) {
                return Optional.of(next);
            }
        }
        return Optional.empty();
    }

    /** Recognise columns that count positions by their diameters. */
    private static void bands(List<ColumnSample> columns, String shape, Set<ColumnSample> taken, List<Found> found) {
        if (!shape.equals("measured")) {
            return;
        }
        for (ColumnSample column : columns) {
            String band = column.head().toLowerCase(Locale.ROOT).replaceAll("\\s|mm", "");
            if (!taken.contains(column) && band.matches("\\d{1,3}-\\d{1,3}")) {
                taken.add(column);
                found.add(new Found(column, "positions " + band, 1000));
            }
        }
    }

    /** Tell whether what stands in a column can be what a field holds. */
    private static boolean agrees(ColumnSample column, String field, String shape) {
        Meaning meaning = Vocabulary.of(Shape.of(shape)).meaning(field);
        return switch (meaning.sort()) {
            case TAG -> column.isOfTags() || field.equals("mother") && column.mayListTags();
            case TAGS, MOTHERS -> column.mayListTags();
            case DAY -> column.isOfDays();
            case COUNT, POSITION -> column.isOfCounts();
            case FINDING -> column.isMostly(value -> value.matches("(?i)\\d{1,6}|x|yes|no|y|n"));
            case NUMBER -> column.isOfNumbers();
            case STRENGTH -> column.isOfNumbers();
            case MONEY -> column.isOfMoney() || column.isOfNumbers();
            case METHOD, OUTCOME, KIND ->
                column.distinct() <= WORDS_SHOWN && !column.isOfNumbers() && !column.isOfDays();
            case CHOICE -> column.distinct() <= WORDS_SHOWN && !column.isOfNumbers() && !column.isOfDays();
            case YES_NO -> column.distinct() <= 4;
            case PERSON -> !column.isOfNumbers() && !column.isOfDays();
            case CULTIVAR, TAXON, EPITHET -> !column.isOfTags() && !column.isOfNumbers();
            default -> true;
        };
    }

    /** Recognise the columns of a file without heads by what stands in them. */
    private static Sheet withoutHeads(
            Source source, Charset encoding, CsvFile.Header header, List<ColumnSample> columns, boolean totals) {
        List<Found> found = new ArrayList<>();
        Optional<ColumnSample> day =
                columns.stream().filter(ColumnSample::isOfDays).findFirst();
        day.ifPresent(column -> found.add(new Found(column, "day", 400)));
        Optional<ColumnSample> tags = columns.stream()
                .filter(column -> day.filter(other -> other == column).isEmpty())
                .filter(column -> column.isOfTags() || column.mayListTags())
                .max(Comparator.comparingInt(ColumnSample::distinct));
        tags.ifPresent(column -> found.add(new Found(column, "tags", 400)));
        Meaning kind = Vocabulary.of(Shape.of("entry")).meaning("kind");
        Optional<ColumnSample> kinds = columns.stream()
                .filter(column -> day.filter(other -> other == column).isEmpty())
                .filter(column -> tags.filter(other -> other == column).isEmpty())
                .filter(column -> column.share(value -> known(kind, value)) > 0.4)
                .findFirst();
        kinds.ifPresent(column -> found.add(new Found(column, "kind", 400)));
        columns.stream()
                .filter(column -> found.stream().noneMatch(one -> one.column() == column))
                .filter(ColumnSample::isOfFewNames)
                .reduce((first, second) -> second)
                .ifPresent(column -> found.add(new Found(column, "by", 400)));
        return new Sheet(source, encoding, header, columns, totals, "entry", found);
    }

    private static boolean known(Meaning meaning, String value) {
        return HeaderWords.meaning(meaning, value).isPresent() || canonical(meaning, value);
    }

    private static boolean canonical(Meaning meaning, String value) {
        try {
            CellReader.plain(meaning, Optional.empty(), MappingReader.defaults())
                    .read(value);
            return true;
        } catch (Refused unknown) {
            return false;
        }
    }

    // ---- writing ----

    private void write() {
        line("# A mapping that was guessed from "
                + sheets.stream().map(sheet -> sheet.source().name()).collect(Collectors.joining(", ")) + ".");
        line("# It is a beginning: look at every line, above all where a remark says that it is not sure.");
        line("# What all of this means is in docs/mapping.md.");
        tags();
        Set<String> names = new TreeSet<>();
        Map<String, List<Sheet>> alike = new LinkedHashMap<>();
        for (Sheet sheet : sheets) {
            String key = sheet.shape() + "\n" + sheet.header().names() + "\n" + sheet.encoding();
            alike.computeIfAbsent(key, each -> new ArrayList<>()).add(sheet);
        }
        for (List<Sheet> same : alike.values()) {
            sheet(same, names);
        }
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private void tags() {
        boolean blanks = false;
        boolean upper = false;
        boolean lower = false;
        for (Sheet sheet : sheets) {
            for (Found found : sheet.found()) {
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

    private void sheet(List<Sheet> same, Set<String> names) {
        Sheet sheet = same.get(0);
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
        boolean isSure = score(sheet) > 0;
        if (!isSure) {
            line(
                    "# not sure what a row is: plant, outcome, entry, or a kind of entry such as potted, moved, sold or lost");
        }
        line("row = " + sheet.shape());
        settings(sheet);
        line("");
        for (Found found : sheet.found()) {
            column(sheet, found);
        }
        without(sheet);
        unknown(sheet);
    }

    private String glob(Sheet sheet) {
        String name = sheet.source().name();
        String glob = name.replaceAll("\\d[\\d\\-_. ]*(?=.*\\.)", "*");
        boolean isOfOthers = sheets.stream()
                .filter(other -> !other.header().names().equals(sheet.header().names()))
                .anyMatch(other ->
                        other.source().name().matches(glob.replace(".", "\\.").replace("*", ".*")));
        return isOfOthers || glob.contains("(") || glob.contains("[") ? name : glob;
    }

    private void settings(Sheet sheet) {
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
        for (Found found : sheet.found()) {
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
        Optional<Found> tag = sheet.of("tag").or(() -> sheet.of("tags"));
        if (sheet.hasTotals() && tag.isPresent()) {
            line("skip " + Pieces.quoted(tag.get().column().head()) + " = Total, Totals, Sum, Subtotal");
        }
    }

    private void column(Sheet sheet, Found found) {
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
            if (canonical(meaning, value.getKey())) {
                continue;
            }
            if (known.isPresent() && canonical(meaning, known.get())) {
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
                .filter(value -> !canonical(meaning, value.getKey()) || !Genera.isOf(value.getKey()))
                .limit(WORDS_SHOWN)
                .forEach(value -> {
                    String name = Pieces.quoted(Folded.clean(value.getKey()));
                    line("  # is " + name + " a botanical name? if not, say what it stands for:");
                    line("  # word " + name + " = Acer palmatum 'Deshojo'");
                });
    }

    /** Write what no column says, though a row must have it. */
    private void without(Sheet sheet) {
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

    private static String method(Sheet sheet) {
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

    private void required(EntryKind kind, Sheet sheet) {
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
    private void undated(Sheet sheet) {
        Optional<Found> outcome = sheet.of("outcome");
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

    private void unknown(Sheet sheet) {
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
