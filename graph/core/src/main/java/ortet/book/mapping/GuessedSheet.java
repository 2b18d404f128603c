package ortet.book.mapping;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import ortet.book.daybook.Source;
import ortet.entry.Form;
import ortet.value.Refused;

/**
 * A file, and what was recognised in it by its heads and its first rows.
 *
 * @param source the file
 * @param encoding how it is encoded
 * @param header its header, on line 0 where it has none
 * @param columns its columns
 * @param hasTotals whether some rows are sums of others
 * @param shape what a row seems to be, as a mapping calls it
 * @param found the columns that were recognised, from left to right
 */
record GuessedSheet(
        Source source,
        Charset encoding,
        CsvFile.Header header,
        List<ColumnSample> columns,
        boolean hasTotals,
        String shape,
        List<GuessedColumn> found) {
    private static final int SAMPLED = 1500;

    /** How many words a column may have that holds one of a few. */
    private static final int FEW_WORDS = 40;

    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final Set<String> TOTALS = Set.of("total", "totals", "sum", "subtotal", "sub-total", "in all");

    /** Return the column that says something. */
    Optional<GuessedColumn> of(String field) {
        return found.stream().filter(one -> one.field().equals(field)).findFirst();
    }

    boolean reads(ColumnSample column) {
        return found.stream().anyMatch(one -> one.column() == column);
    }

    /**
     * Look at a file.
     *
     * @throws Refused when it is no text
     */
    static GuessedSheet look(Source source) {
        CsvFile asUtf8 = new CsvFile(source, StandardCharsets.UTF_8);
        boolean isUtf8 = asUtf8.isReadable();
        Charset encoding = isUtf8 ? StandardCharsets.UTF_8 : WINDOWS;
        CsvFile csv = isUtf8 ? asUtf8 : new CsvFile(source, encoding);
        CsvFile.Header head = csv.header(GuessedSheet::score, Optional.empty()).orElse(csv.noHeader(Optional.empty()));
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
        GuessedSheet best = null;
        int most = Integer.MIN_VALUE;
        Optional<String> named = HeaderWords.shapeOfFile(source.name());
        for (String shape : HeaderWords.shapes()) {
            List<GuessedColumn> found = recognised(columns, shape);
            GuessedSheet sheet = new GuessedSheet(source, encoding, head, columns, totals, shape, found);
            int score = sheet.score() + (named.equals(Optional.of(shape)) ? 1500 : 0);
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

    /** Return how well all of it fits: above 0 where the guess is likely. */
    int score() {
        int score = 0;
        for (GuessedColumn found : found) {
            score += Math.min(found.score(), 1000);
        }
        boolean isPlant = shape.equals("plant");
        Optional<GuessedColumn> tag = of("tag").or(() -> of("tags"));
        score -= tag.isPresent() ? 0 : 2000;
        if (isPlant) {
            boolean begins = List.of("mother", "scion", "method", "begun day", "source").stream()
                    .anyMatch(field -> of(field).isPresent());
            score -= begins ? 0 : 1500;
            boolean isUnique = tag.filter(found ->
                            found.column().distinct() >= found.column().values().size() * 0.9)
                    .isPresent();
            score -= isUnique ? 0 : 1000;
        } else {
            score -= of("day").isPresent() ? 0 : 1500;
            boolean hasOwn = found.stream()
                    .anyMatch(found -> !Set.of("tags", "day", "by", "note").contains(found.field()));
            score -= hasOwn ? 0 : 1500;
            score -= isMissing() ? 1000 : 0;
        }
        return score;
    }

    /** Tell whether a list lacks a column that its kind must have. */
    private boolean isMissing() {
        return Shape.of(shape)
                .kind()
                .filter(kind -> Form.of(kind).fields().stream()
                        .filter(Form.Field::required)
                        .map(field -> field.name().replace('_', ' '))
                        .filter(name -> !name.equals("tags"))
                        .anyMatch(name -> of(name).isEmpty()))
                .isPresent();
    }

    private static List<GuessedColumn> recognised(List<ColumnSample> columns, String shape) {
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
        List<GuessedColumn> found = new ArrayList<>();
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
            found.add(new GuessedColumn(fit.column(), field, fit.score()));
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
    private static void bands(
            List<ColumnSample> columns, String shape, Set<ColumnSample> taken, List<GuessedColumn> found) {
        if (!shape.equals("measured")) {
            return;
        }
        for (ColumnSample column : columns) {
            String band = column.head().toLowerCase(Locale.ROOT).replaceAll("\\s|mm", "");
            if (!taken.contains(column) && band.matches("\\d{1,3}-\\d{1,3}")) {
                taken.add(column);
                found.add(new GuessedColumn(column, "positions " + band, 1000));
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
            case METHOD, OUTCOME, KIND -> column.distinct() <= FEW_WORDS && !column.isOfNumbers() && !column.isOfDays();
            case CHOICE -> column.distinct() <= FEW_WORDS && !column.isOfNumbers() && !column.isOfDays();
            case YES_NO -> column.distinct() <= 4;
            case PERSON -> !column.isOfNumbers() && !column.isOfDays() && !column.isOfTags();
            case CULTIVAR, TAXON, EPITHET -> !column.isOfTags() && !column.isOfNumbers();
            default -> true;
        };
    }

    /** Recognise the columns of a file without heads by what stands in them. */
    private static GuessedSheet withoutHeads(
            Source source, Charset encoding, CsvFile.Header header, List<ColumnSample> columns, boolean totals) {
        List<GuessedColumn> found = new ArrayList<>();
        Optional<ColumnSample> day =
                columns.stream().filter(ColumnSample::isOfDays).findFirst();
        day.ifPresent(column -> found.add(new GuessedColumn(column, "day", 400)));
        Optional<ColumnSample> tags = columns.stream()
                .filter(column -> day.filter(other -> other == column).isEmpty())
                .filter(column -> column.isOfTags() || column.mayListTags())
                .max(Comparator.comparingInt(ColumnSample::distinct));
        tags.ifPresent(column -> found.add(new GuessedColumn(column, "tags", 400)));
        Meaning kind = Vocabulary.of(Shape.of("entry")).meaning("kind");
        Optional<ColumnSample> kinds = columns.stream()
                .filter(column -> day.filter(other -> other == column).isEmpty())
                .filter(column -> tags.filter(other -> other == column).isEmpty())
                .filter(column -> column.share(value -> known(kind, value)) > 0.4)
                .findFirst();
        kinds.ifPresent(column -> found.add(new GuessedColumn(column, "kind", 400)));
        columns.stream()
                .filter(column -> found.stream().noneMatch(one -> one.column() == column))
                .filter(ColumnSample::isOfFewNames)
                .reduce((first, second) -> second)
                .ifPresent(column -> found.add(new GuessedColumn(column, "by", 400)));
        return new GuessedSheet(source, encoding, header, columns, totals, "entry", found);
    }

    private static boolean known(Meaning meaning, String value) {
        return HeaderWords.meaning(meaning, value).isPresent() || CellReader.takes(meaning, value);
    }
}
