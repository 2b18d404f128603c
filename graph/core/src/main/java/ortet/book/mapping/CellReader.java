package ortet.book.mapping;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ortet.entry.Finding;
import ortet.entry.Form;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Decimal;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * Reads the cells of one column into texts as the book writes them.
 *
 * <p>A cell that is blank, or stands for nothing, is the empty text. Words that the mapping translates come first.
 */
final class CellReader {
    /** The text for the year in which the plant began. */
    static final String SAME_YEAR = "same year";

    /** The text for the year after that in which the plant began. */
    static final String NEXT_YEAR = "next year";

    private static final int REMEMBERED = 20_000;
    private static final Set<String> YES = Set.of("yes", "y", "true", "x", "1", "✓", "✔");
    private static final Set<String> NO = Set.of("no", "n", "false", "0", "✗");
    private static final Pattern HYPHENED_RANGE = Pattern.compile("(?<![^\\s,])(\\D+?)(\\d+)-\\1(\\d+)(?![^\\s,])");
    private static final Pattern RANGE_WORD =
            Pattern.compile("\\s+(?:to|-|–|—)\\s+|\\s*(?:\\.{2,3}|…)\\s*", Pattern.CASE_INSENSITIVE);
    private static final Pattern BETWEEN = Pattern.compile("[,;&+\\n]|\\s+and\\s+", Pattern.CASE_INSENSITIVE);
    private static final Pattern COUNTED =
            Pattern.compile("\\s*[:(]\\s*(\\d+)\\s*\\)?|\\s+[x×]\\s*(\\d+)", Pattern.CASE_INSENSITIVE);
    private static final Pattern SHARE = Pattern.compile("(.+):(\\d+)");

    private final Meaning meaning;
    private final Optional<String> unit;
    private final Settings settings;
    private final Tidy tidy;
    private final Map<String, String> words;
    private final Optional<String> anythingElse;
    private final boolean tidyTakesBlanks;
    private final List<String> choices;
    private final Map<String, Object> known = new HashMap<>();

    CellReader(
            Meaning meaning,
            Optional<String> unit,
            Settings settings,
            Tidy own,
            Map<String, String> words,
            Optional<String> anythingElse) {
        this.meaning = meaning;
        this.unit = unit;
        this.settings = settings;
        this.tidy = own.then(settings.tags());
        this.words = words;
        this.anythingElse = anythingElse;
        this.tidyTakesBlanks = tidy.tidied("a b").indexOf(' ') < 0;
        this.choices = Optional.ofNullable(Form.columns().get(meaning.field()))
                .map(Form.Field::choices)
                .orElse(List.of());
    }

    /** Make a reader for values that stand in the mapping itself. */
    static CellReader plain(Meaning meaning, Optional<String> unit, Settings settings) {
        return new CellReader(meaning, unit, settings, Tidy.NOTHING, Map.of(), Optional.empty());
    }

    /** Tell whether a text is a value of a field as it stands. */
    static boolean takes(Meaning meaning, String value) {
        try {
            plain(meaning, Optional.empty(), Settings.defaults()).read(value);
            return true;
        } catch (Refused unknown) {
            return false;
        }
    }

    Meaning meaning() {
        return meaning;
    }

    /**
     * Read a cell.
     *
     * @throws Refused when it cannot be read
     */
    String read(String cell) {
        Object before = known.get(cell);
        if (before == null) {
            before = outcome(cell);
            if (known.size() < REMEMBERED) {
                known.put(cell, before);
            }
        }
        if (before instanceof Refused refused) {
            throw new Refused(refused.faults());
        }
        return (String) before;
    }

    private Object outcome(String cell) {
        try {
            return fresh(cell);
        } catch (Refused refused) {
            return refused;
        }
    }

    private String fresh(String cell) {
        String folded = Folded.of(cell);
        String word = words.get(folded);
        if (word != null) {
            return word;
        }
        if (folded.isEmpty() || settings.blanks().contains(folded)) {
            return "";
        }
        try {
            return parse(Folded.strip(cell));
        } catch (Refused refused) {
            if (anythingElse.isPresent()) {
                return anythingElse.get();
            }
            throw refused;
        }
    }

    private String parse(String cell) {
        return switch (meaning.sort()) {
            case TAG -> tag(cell);
            case TAGS -> tags(cell);
            case MOTHERS -> mothers(cell);
            case ROOTSTOCK -> rootstock(cell);
            case METHOD -> Method.parse(cell).word();
            case OUTCOME -> Verdict.parse(cell).toString();
            case KIND -> kind(cell);
            case DAY -> day(cell);
            case PERSON -> Folded.clean(cell);
            case COUNT -> count(cell);
            case NUMBER ->
                settings.numbers().parse(cell, meaning.measure(), unit).toString();
            case HORMONE -> hormone(cell);
            case STRENGTH -> Hormone.strength(cell, unit, settings.numbers());
            case MONEY ->
                meaning.field().equals("price")
                        ? settings.numbers().money(cell, unit)
                        : settings.numbers().amount(cell, unit);
            case CULTIVAR -> CultivarText.whole(cell);
            case TAXON -> CultivarText.taxon(cell);
            case EPITHET -> CultivarText.epithet(cell);
            case CHOICE -> choice(cell);
            case YES_NO -> yesNo(cell);
            case FINDINGS -> findings(cell);
            case FINDING -> finding(cell);
            case POSITION -> position(cell);
            case TEXT -> text(cell);
        };
    }

    private String text(String cell) {
        return meaning.field().equals("place") || meaning.field().equals("within") ? new Place(cell).name() : cell;
    }

    private String tag(String cell) {
        String text = tidy.tidied(cell);
        if (text.isEmpty()) {
            throw Refused.because("bad-tag", "nothing is left of \"" + cell + "\" after tidying");
        }
        try {
            return new Tag(text).text();
        } catch (Refused refused) {
            boolean blank = text.chars().anyMatch(letter -> Folded.isBlank((char) letter));
            Fault fault = refused.faults().get(0);
            throw Refused.because(
                    fault.rule(),
                    fault.text() + (blank ? "; a line tags = no blanks in the mapping takes blanks out" : ""));
        }
    }

    private String tags(String cell) {
        String ranged = RANGE_WORD.matcher(cell).replaceAll("..");
        ranged = HYPHENED_RANGE.matcher(ranged).replaceAll("$1$2..$1$3");
        String separators = tidyTakesBlanks ? "\\s*,\\s*" : "[\\s,]+";
        List<String> words = new ArrayList<>();
        for (String piece : BETWEEN.matcher(ranged).replaceAll(",").split(separators)) {
            if (piece.isEmpty()) {
                continue;
            }
            if (piece.equalsIgnoreCase("except")) {
                words.add(piece);
                continue;
            }
            int dots = piece.indexOf("..");
            if (dots < 0) {
                words.add(tidy.tidied(piece));
            } else {
                String last = piece.substring(dots + 2).strip();
                words.add(tidy.tidied(piece.substring(0, dots)) + ".."
                        + (last.matches("\\d+") ? last : tidy.tidied(last)));
            }
        }
        return Tags.parse(words).stream().map(Tag::text).collect(Collectors.joining(" "));
    }

    private String mothers(String cell) {
        String separators = tidyTakesBlanks ? "\\s*,\\s*" : "[\\s,]+";
        Set<String> shares = new LinkedHashSet<>();
        String parted = COUNTED.matcher(BETWEEN.matcher(cell).replaceAll(","))
                .replaceAll(found -> ":" + (found.group(1) != null ? found.group(1) : found.group(2)));
        for (String piece : parted.split(separators)) {
            if (piece.isBlank()) {
                continue;
            }
            Matcher share = SHARE.matcher(piece);
            if (share.matches()) {
                shares.add(tag(share.group(1)) + ":" + share.group(2));
            } else {
                shares.add(tag(piece));
            }
        }
        return String.join(" ", shares);
    }

    private String rootstock(String cell) {
        boolean isTag = cell.chars().anyMatch(Character::isDigit) && !cell.contains("'");
        return isTag ? tag(cell) : CultivarText.whole(cell);
    }

    /** Tell whether a rootstock was read as a name. */
    static boolean isName(String rootstock) {
        try {
            return CultivarName.parse(rootstock).toString().equals(rootstock)
                    && rootstock.chars().noneMatch(Character::isDigit);
        } catch (Refused none) {
            return false;
        }
    }

    private static String kind(String cell) {
        try {
            return Shape.kind(cell).word();
        } catch (Refused refused) {
            Fault fault = refused.faults().get(0);
            throw new Refused(Fault.of(
                            fault.rule(),
                            "no kind of entry \"" + cell
                                    + "\"; expected a word such as potted, moved, sold or lost, or a"
                                    + " line of words in the mapping: word " + Pieces.quoted(cell) + " = potted")
                    .nearest(fault.nearest()));
        }
    }

    private String day(String cell) {
        String folded = Folded.of(cell);
        if (folded.equals(SAME_YEAR) || folded.equals(NEXT_YEAR)) {
            return folded;
        }
        return settings.dates().parse(cell).toString();
    }

    private String count(String cell) {
        if (meaning.measure() == Numbers.Measure.NONE) {
            return settings.numbers().count(cell);
        }
        Decimal number = settings.numbers().parse(cell, meaning.measure(), unit);
        if (number.signum() < 0 || number.value().scale() > 0) {
            throw Refused.because("bad-number", "expected a whole number, found \"" + cell + "\"");
        }
        return number.toString();
    }

    private String hormone(String cell) {
        Hormone hormone = Hormone.of(cell, settings.numbers());
        return Folded.clean(hormone.substance() + " " + hormone.strength() + " " + hormone.carrier());
    }

    private String choice(String cell) {
        String word = cell.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
        if (choices.contains(word)) {
            return word;
        }
        throw new Refused(Fault.of(
                        "bad-word",
                        "no \"" + cell + "\"; expected one of " + String.join(", ", choices)
                                + ", or a line of words in the mapping: word " + Pieces.quoted(cell) + " = "
                                + (choices.isEmpty() ? "…" : choices.get(0)))
                .nearest(Nearest.of(word, choices)));
    }

    private static String yesNo(String cell) {
        String word = Folded.of(cell);
        if (YES.contains(word)) {
            return "yes";
        }
        if (NO.contains(word)) {
            return "no";
        }
        throw Refused.because("bad-word", "expected yes or no, found \"" + cell + "\"");
    }

    private String findings(String cell) {
        List<String> findings = new ArrayList<>();
        for (String piece : cell.split("[,;+/&\\n]")) {
            String folded = Folded.of(piece);
            if (folded.isEmpty()) {
                continue;
            }
            String word = words.getOrDefault(folded, folded.replace(" ", "-"));
            if (!word.isEmpty()) {
                findings.add(Finding.parse(word).toString());
            }
        }
        return String.join(" ", findings);
    }

    private String finding(String cell) {
        if (cell.chars().anyMatch(Character::isDigit)) {
            String count = settings.numbers().count(cell);
            return count.equals("0") ? "" : meaning.part() + ":" + count;
        }
        return yesNo(cell).equals("yes") ? meaning.part() : "";
    }

    private String position(String cell) {
        String count = settings.numbers().count(cell);
        return count.equals("0") ? "" : meaning.part() + ":" + count;
    }
}
