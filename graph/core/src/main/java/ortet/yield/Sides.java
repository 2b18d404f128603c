package ortet.yield;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.book.UnitFacts.Method;
import ortet.entry.Words;
import ortet.nursery.Treatment;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Tells to which of two sides the units of a cohort belong. */
final class Sides {
    /** They belong to neither. */
    static final int NEITHER = -1;

    /** The word for units of which no hormone was written down. */
    private static final String NONE = "none";

    private static final Map<String, Method> METHODS = methods();

    private final IntPredicate first;
    private final IntPredicate second;
    private final List<String> names;

    private Sides(IntPredicate first, IntPredicate second, List<String> names) {
        this.first = first;
        this.second = second;
        this.names = names;
    }

    private static Map<String, Method> methods() {
        Map<String, Method> words = new TreeMap<>();
        for (Method method : Method.values()) {
            words.put(Words.of(method), method);
            words.put(GroupKey.plural(method), method);
        }
        words.put("layering", Method.LAYER);
        words.put("grafting", Method.GRAFT);
        words.put("sowing", Method.SEED);
        return words;
    }

    /**
     * Find the two sides of a question.
     *
     * @throws Refused when a side is nothing known, or both are the same; the nearest are named
     */
    static Sides of(BookView view, CompareQuestion question, Samples samples, Treated treated) {
        if (question.on() == CompareOn.METHOD) {
            Set<Method> first = methods(question.first());
            Set<Method> second = methods(question.second());
            for (Method method : first) {
                if (second.contains(method)) {
                    throw same(GroupKey.plural(method));
                }
            }
            return new Sides(
                    row -> first.contains(samples.cohorts().method(row)),
                    row -> second.contains(samples.cohorts().method(row)),
                    List.of(shown(first), shown(second)));
        }
        if (question.on() == CompareOn.OPERATOR) {
            int first = Lookup.person(view, question.first()).number().value();
            int second = Lookup.person(view, question.second()).number().value();
            if (first == second) {
                throw same(question.first());
            }
            return new Sides(
                    row -> samples.cohorts().by(row) == first,
                    row -> samples.cohorts().by(row) == second,
                    List.of(
                            Lookup.person(view, question.first()).shown(),
                            Lookup.person(view, question.second()).shown()));
        }
        return treatments(question, samples, treated);
    }

    private static Set<Method> methods(String words) {
        Set<Method> found = new TreeSet<>();
        for (String word : words.split("\\+", -1)) {
            Method method = METHODS.get(word.strip().toLowerCase(Locale.ROOT));
            if (method == null) {
                throw new Refused(Fault.of(
                                "unknown-method",
                                "no method \"" + word.strip() + "\"; expected layers, cuttings, grafts or seed, several"
                                        + " with + between")
                        .nearest(Nearest.of(word.strip(), METHODS.keySet())));
            }
            found.add(method);
        }
        return found;
    }

    private static String shown(Set<Method> methods) {
        return String.join(" + ", methods.stream().map(GroupKey::plural).toList());
    }

    private static Sides treatments(CompareQuestion question, Samples samples, Treated treated) {
        List<Treatment> all = samples.snapshot().lives().treatments();
        boolean[] used = new boolean[all.size()];
        for (int row = 0; row < samples.cohorts().size(); row++) {
            if (samples.isThere(row) && treated.treatment(row) >= 0) {
                used[treated.treatment(row)] = true;
            }
        }
        boolean[] first = matching(question.on(), question.first(), all, used);
        boolean[] second = matching(question.on(), question.second(), all, used);
        for (int way = 0; way < used.length; way++) {
            if (first[way] && second[way]) {
                throw same(question.on() == CompareOn.HORMONE ? spoken(all.get(way)) : question.first());
            }
        }
        return new Sides(
                row -> treated.treatment(row) >= 0 && first[treated.treatment(row)],
                row -> treated.treatment(row) >= 0 && second[treated.treatment(row)],
                List.of(
                        question.on().word() + " " + question.first(),
                        question.on().word() + " " + question.second()));
    }

    private static boolean[] matching(CompareOn on, String wanted, List<Treatment> all, boolean[] used) {
        boolean[] found = new boolean[all.size()];
        boolean any = false;
        Set<String> known = new TreeSet<>();
        for (int way = 0; way < used.length; way++) {
            if (used[way]) {
                List<String> values = values(on, all.get(way));
                known.addAll(values);
                found[way] = values.stream().anyMatch(value -> plain(value).equals(plain(wanted)));
                any |= found[way];
            }
        }
        if (!any) {
            throw new Refused(Fault.of(
                            "unknown-treatment",
                            "nothing was set with " + on.word() + " \"" + wanted + "\" by this day"
                                    + (known.isEmpty() ? "" : "; the book has " + String.join(", ", known)))
                    .nearest(Nearest.of(wanted, known)));
        }
        return found;
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("\\s+", "");
    }

    /** Return the words by which a treatment can be asked for. */
    private static List<String> values(CompareOn on, Treatment treatment) {
        return switch (on) {
            case WOOD -> treatment.wood().stream().toList();
            case WOUND -> treatment.wound().stream().toList();
            case MEDIUM -> treatment.medium().stream().toList();
            case WRAP -> treatment.wrap().stream().toList();
            case HORMONE -> hormone(treatment);
            case METHOD, OPERATOR -> List.of();
        };
    }

    private static List<String> hormone(Treatment treatment) {
        List<String> values = new ArrayList<>();
        treatment.hormone().ifPresent(values::add);
        treatment.strength().ifPresent(values::add);
        if (treatment.hormone().isPresent() && treatment.strength().isPresent()) {
            values.add(treatment.hormone().get() + " " + treatment.strength().get());
        }
        if (values.isEmpty()) {
            values.add(NONE);
        }
        return values;
    }

    private static String spoken(Treatment treatment) {
        List<String> values = hormone(treatment);
        return values.get(values.size() - 1);
    }

    private static Refused same(String what) {
        return Refused.because("same-side", what + " would be on both sides; expected two that have nothing in common");
    }

    /** Return the side of a row: 0, 1 or {@link #NEITHER}. */
    int side(int row) {
        if (first.test(row)) {
            return 0;
        }
        return second.test(row) ? 1 : NEITHER;
    }

    /** Return what to call a side. */
    String name(int side) {
        return names.get(side);
    }
}
