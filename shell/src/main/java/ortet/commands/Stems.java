package ortet.commands;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Refused;

/**
 * Stem diameters for several layers in one go: {@code 12} for all, {@code 12,15x3} for one of 12 mm and three of 15,
 * {@code 12,15x*} for one of 12 and all the rest of 15.
 */
record Stems(List<Run> runs) {
    private static final Pattern RUN = Pattern.compile("([0-9.]+)(?:[x×*](\\d{1,5}|\\*))?");

    /** So many of one diameter; no count means all the rest. */
    record Run(Decimal mm, Optional<Integer> count) {}

    Stems {
        runs = List.copyOf(runs);
    }

    /**
     * Read stems.
     *
     * @throws Refused when the text is none
     */
    static Stems parse(String text) {
        List<Run> runs = new ArrayList<>();
        String[] parts = text.strip().split("[,\\s]+");
        for (String part : parts) {
            Matcher matcher = RUN.matcher(part);
            boolean rest = matcher.matches() && "*".equals(matcher.group(2));
            if (!matcher.matches() || rest && runs.size() + 1 < parts.length) {
                throw Refused.because(
                        "bad-stems",
                        "expected stem diameters in mm such as 12 or 12,15x3 or 12,15x* (the rest), found \"" + text
                                + "\"");
            }
            Optional<Integer> count = rest
                    ? Optional.empty()
                    : Optional.of(matcher.group(2) == null ? 1 : Integer.parseInt(matcher.group(2)));
            runs.add(new Run(Decimal.parse(matcher.group(1)), count));
        }
        return new Stems(runs);
    }

    /**
     * Give each tag its stem.
     *
     * @return the tags of each diameter, in order of first use
     * @throws Refused when there are not as many stems as tags
     */
    Map<Decimal, List<Tag>> over(List<Tag> tags) {
        Map<Decimal, List<Tag>> given = new LinkedHashMap<>();
        if (runs.size() == 1 && runs.get(0).count().equals(Optional.of(1))) {
            given.put(runs.get(0).mm(), tags);
            return given;
        }
        int at = 0;
        for (Run run : runs) {
            int count = run.count().orElse(tags.size() - at);
            if (count < 1 || at + count > tags.size()) {
                throw mismatch(tags.size());
            }
            given.computeIfAbsent(run.mm(), mm -> new ArrayList<>()).addAll(tags.subList(at, at + count));
            at += count;
        }
        if (at != tags.size()) {
            throw mismatch(tags.size());
        }
        return given;
    }

    private Refused mismatch(int tags) {
        int stems = runs.stream().mapToInt(run -> run.count().orElse(1)).sum();
        Decimal last = runs.get(runs.size() - 1).mm();
        return Refused.because(
                "stems-and-tags",
                stems + (stems == 1 ? " stem" : " stems") + " for " + tags + (tags == 1 ? " tag" : " tags")
                        + "; expected one for all or one for each (" + last + "x* stands for all the rest)");
    }
}
