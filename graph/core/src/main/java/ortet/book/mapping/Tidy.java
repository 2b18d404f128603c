package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** How tags are tidied before anybody looks at them: steps that are taken one after the other. */
final class Tidy {
    /** Tags as they are. */
    static final Tidy NOTHING = new Tidy(List.of());

    private static final Pattern LAST_NUMBER = Pattern.compile("(.*?)(\\d+)(\\D*)");
    private static final int WIDEST = 12;
    /** An example of each step. */
    static final List<String> KNOWN = List.of(
            "upper case",
            "lower case",
            "no blanks",
            "blanks to -",
            "drop ./",
            "pad 4",
            "prefix J-",
            "replace \"a\" by \"b\"");

    private record Step(String text, UnaryOperator<String> change) {}

    private final List<Step> steps;

    private Tidy(List<Step> steps) {
        this.steps = List.copyOf(steps);
    }

    /**
     * Read steps parted by commas.
     *
     * @throws Refused when one of them is none
     */
    static Tidy of(String text) {
        List<Step> steps = new ArrayList<>();
        for (String piece : Pieces.cut(text, ',')) {
            steps.add(new Step(piece, step(piece)));
        }
        return new Tidy(steps);
    }

    private static UnaryOperator<String> step(String piece) {
        String word = piece.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        if (word.equals("upper case")) {
            return tag -> tag.toUpperCase(Locale.ROOT);
        }
        if (word.equals("lower case")) {
            return tag -> tag.toLowerCase(Locale.ROOT);
        }
        if (word.equals("no blanks")) {
            return tag -> tag.replaceAll("[\\s\\u00A0]+", "");
        }
        int blank = piece.indexOf(' ');
        String first = blank < 0 ? word : word.substring(0, blank);
        String rest = blank < 0 ? "" : piece.substring(blank).strip();
        switch (first) {
            case "blanks" -> {
                if (rest.toLowerCase(Locale.ROOT).startsWith("to ")) {
                    String by = Pieces.plain(rest.substring(3));
                    return tag -> tag.replaceAll("[\\s\\u00A0]+", Matcher.quoteReplacement(by));
                }
            }
            case "drop" -> {
                String letters = Pieces.plain(rest);
                if (!letters.isEmpty()) {
                    return tag -> tag.chars()
                            .filter(letter -> letters.indexOf(letter) < 0)
                            .mapToObj(Character::toString)
                            .collect(Collectors.joining());
                }
            }
            case "pad" -> {
                if (rest.matches("\\d{1,2}") && Integer.parseInt(rest) >= 1 && Integer.parseInt(rest) <= WIDEST) {
                    int width = Integer.parseInt(rest);
                    return tag -> padded(tag, width);
                }
                throw Refused.because(
                        "bad-tidying", "expected pad and a width of 1 to " + WIDEST + ", found \"" + piece + "\"");
            }
            case "prefix" -> {
                String prefix = Pieces.plain(rest);
                if (!prefix.isEmpty()) {
                    return tag -> tag.isEmpty() || tag.regionMatches(true, 0, prefix, 0, prefix.length())
                            ? tag
                            : prefix + tag;
                }
            }
            case "replace" -> {
                return replacing(piece, rest);
            }
            default -> {}
        }
        throw new Refused(Fault.of(
                        "bad-tidying",
                        "no \"" + piece + "\" for tags; expected steps such as " + String.join(", ", KNOWN))
                .nearest(Nearest.of(word, KNOWN)));
    }

    private static UnaryOperator<String> replacing(String piece, String rest) {
        int by = Pieces.find(rest.replaceAll("(?i)\\sby(?=\\s|$)", " \u0000 "), '\u0000');
        String marked = rest.replaceAll("(?i)\\sby(?=\\s|$)", " \u0000 ");
        if (by < 0) {
            throw Refused.because("bad-tidying", "expected replace \"PATTERN\" by \"TEXT\", found \"" + piece + "\"");
        }
        String pattern = Pieces.plain(marked.substring(0, by));
        String text = Pieces.plain(marked.substring(by + 1));
        try {
            Pattern compiled = Pattern.compile(pattern);
            "".replaceAll(pattern, text);
            return tag -> replaced(tag, compiled, text);
        } catch (PatternSyntaxException bad) {
            throw Refused.because(
                    "bad-tidying",
                    "the pattern \"" + pattern + "\" cannot be read: "
                            + bad.getDescription().toLowerCase(Locale.ROOT));
        }
    }

    private static String replaced(String tag, Pattern pattern, String text) {
        try {
            return pattern.matcher(tag).replaceAll(text);
        } catch (IllegalArgumentException | IndexOutOfBoundsException bad) {
            throw Refused.because(
                    "bad-tidying", "cannot put \"" + text + "\" in place of \"" + pattern + "\" in \"" + tag + "\"");
        }
    }

    private static String padded(String tag, int width) {
        Matcher matcher = LAST_NUMBER.matcher(tag);
        if (!matcher.matches()) {
            return tag;
        }
        String digits = matcher.group(2).replaceFirst("^0+(?=\\d)", "");
        return matcher.group(1) + "0".repeat(Math.max(0, width - digits.length())) + digits + matcher.group(3);
    }

    /** Return a tag after all steps. */
    String tidied(String tag) {
        String tidy = tag.strip();
        for (Step step : steps) {
            tidy = step.change().apply(tidy);
        }
        return tidy.strip();
    }

    /** Tell whether tags stay as they are. */
    boolean isNothing() {
        return steps.isEmpty();
    }

    /** Return these steps and then those of another. */
    Tidy then(Tidy other) {
        List<Step> all = new ArrayList<>(steps);
        all.addAll(other.steps);
        return new Tidy(all);
    }

    @Override
    public String toString() {
        return steps.stream().map(Step::text).collect(Collectors.joining(", "));
    }
}
