package ortet.book.mapping;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import ortet.value.Refused;

/** What stands in the first rows of a column. */
final class ColumnSample {
    private static final Pattern ONE_TAG =
            Pattern.compile("(?=.*[\\p{N}])[\\p{L}\\p{N}][\\p{L}\\p{N}\\-_./#]{0,14}|\\p{L}{1,5}[ .]\\d{1,6}");
    private static final Pattern SOME_TAGS = Pattern.compile("(?i)[\\p{L}\\p{N}\\-_./#,;:&+×() …]+");
    private static final Pattern LIST =
            Pattern.compile("(?i)\\d\\s*[,;&+(…]|\\d\\s+(?:and|to|[x×])\\s+\\S|\\.\\.|\\d\\s*-\\s*\\p{L}+-?\\d");
    private static final double MOSTLY = 0.7;

    private final String head;
    private final List<String> values = new ArrayList<>();
    private final Map<String, Integer> counts = new LinkedHashMap<>();
    private final Map<String, Boolean> answers = new HashMap<>();
    private int rows;

    ColumnSample(String head) {
        this.head = head;
    }

    void add(String cell) {
        rows++;
        if (!cell.isEmpty()) {
            values.add(cell);
            counts.merge(cell, 1, Integer::sum);
        }
    }

    String head() {
        return head;
    }

    List<String> values() {
        return values;
    }

    /** Return each value once, the most frequent first, with how often it stands. */
    List<Map.Entry<String, Integer>> frequent() {
        return counts.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .toList();
    }

    int distinct() {
        return counts.size();
    }

    int blanks() {
        return rows - values.size();
    }

    boolean isEmpty() {
        return values.isEmpty();
    }

    /** Return the share of values that are like something. */
    double share(Predicate<String> like) {
        return values.isEmpty() ? 0 : values.stream().filter(like).count() / (double) values.size();
    }

    boolean isMostly(Predicate<String> like) {
        return share(like) >= MOSTLY;
    }

    /** Tell the same as before, without looking again. */
    private boolean isMostly(String what, Predicate<String> like) {
        Boolean known = answers.get(what);
        if (known == null) {
            known = isMostly(like);
            answers.put(what, known);
        }
        return known;
    }

    boolean isOfTags() {
        return isMostly("tags", ColumnSample::isOneTag);
    }

    boolean mayListTags() {
        return isMostly(
                "lists of tags",
                value -> SOME_TAGS.matcher(value).matches()
                        && value.chars().anyMatch(Character::isDigit)
                        && value.length() < 60);
    }

    /** Tell whether some values name several tags, or tags with counts. */
    boolean hasLists() {
        return values.stream().anyMatch(value -> LIST.matcher(value).find());
    }

    static boolean isOneTag(String value) {
        return ONE_TAG.matcher(value).matches();
    }

    boolean isOfDays() {
        return isMostly("days", ColumnSample::isDay);
    }

    static boolean isDay(String value) {
        try {
            GuessedDates.ALL.parse(value);
            return true;
        } catch (Refused none) {
            return false;
        }
    }

    boolean isOfNumbers() {
        return isMostly("numbers", ColumnSample::isNumber);
    }

    static boolean isNumber(String value) {
        return value.matches("(?i)[+-]?[\\d.,' ]*\\d[\\d.,' ]*\\s*(mm|cm|m|in|\"|ppm|%|°?c)?");
    }

    boolean isOfMoney() {
        return isMostly(
                "money", value -> value.matches("(?i)[€£$]?\\s*([a-z]{3})?\\s*[\\d.,' ]+\\s*([a-z]{3}|[€£$])?"));
    }

    /** Tell whether a few names stand in nearly every row, as those of people do. */
    boolean isOfFewNames() {
        return blanks() * 10 <= rows
                && distinct() <= 12
                && distinct() * 3 <= values.size()
                && isMostly(value -> value.matches("\\p{Lu}[\\p{L}.']*( \\p{Lu}[\\p{L}.']*)?"));
    }

    boolean isOfCounts() {
        return isMostly("counts", value -> value.matches("\\d{1,6}"));
    }

    /** Return some values to show. */
    String examples() {
        List<String> shown = counts.keySet().stream()
                .limit(3)
                .map(value -> value.length() > 30 ? value.substring(0, 30) + "…" : value)
                .map(value -> value.replaceAll("\\s+", " "))
                .toList();
        return String.join(" | ", shown);
    }
}
