package ortet.commands;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ortet.choice.Advice;
import ortet.choice.Choice;
import ortet.choice.Deed;
import ortet.choice.Method;
import ortet.choice.Mother;
import ortet.choice.ToSet;
import ortet.choice.inputs.Candidate;
import ortet.choice.inputs.ChoiceInputs;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.screen.Style;

/** Shows the round along the benches: what there is to do in all, then place by place, then whom to leave as she is. */
final class ChoiceRound {
    private static final double QUITE_SURE = 0.9;
    private static final String INDENT = "  ";
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final int DIGITS = 6;

    private final ChoiceInputs inputs;
    private final Choice choice;
    private final ChoiceWords words;
    private final Map<String, Mother> mothers;

    ChoiceRound(ChoiceInputs inputs, Choice choice, ChoiceWords words, Map<String, Mother> mothers) {
        this.inputs = inputs;
        this.choice = choice;
        this.words = words;
        this.mothers = mothers;
    }

    /** One mother with her advice. */
    private record One(Advice advice, Candidate candidate, Mother mother) {
        boolean isToDo() {
            Deed deed = advice.now().deed();
            return deed != Deed.LEAVE_LONG && deed != Deed.REST;
        }
    }

    void show(String title, Screen screen) {
        List<One> all = new ArrayList<>();
        for (int at = 0; at < choice.advice().size(); at++) {
            Advice advice = choice.advice().get(at);
            all.add(new One(advice, inputs.candidates().get(at), mothers.get(advice.mother())));
        }
        all.sort(Comparator.comparing((One one) -> walked(one.mother().place()))
                .thenComparing(one -> one.advice().mother()));
        screen.headed("", title, INDENT, "");
        screen.println();
        totals(all, screen);
        List<One> toDo = all.stream().filter(One::isToDo).toList();
        if (!toDo.isEmpty()) {
            screen.println();
            toDo(toDo, screen);
        }
        List<One> left = all.stream().filter(one -> !one.isToDo()).toList();
        if (!left.isEmpty()) {
            screen.println();
            left(left, screen);
        }
    }

    /** Return a name by which row 10 comes after row 2. */
    static String walked(String place) {
        return NUMBER.matcher(place)
                .replaceAll(match ->
                        "0".repeat(Math.max(0, DIGITS - match.group().length())) + match.group());
    }

    // ---- in all ----

    private void totals(List<One> all, Screen screen) {
        screen.hanging(
                "",
                INDENT,
                "In season " + inputs.firstYear() + ", with " + Counts.of(all.size(), "mother", "mothers") + ":");
        for (Deed deed : List.of(
                Deed.LAYER,
                Deed.LAYER_AND_SELL,
                Deed.TRY_OUT,
                Deed.TAKE_CUTTINGS,
                Deed.CUT_BACK,
                Deed.SELL,
                Deed.LEAVE_LONG,
                Deed.REST)) {
            List<One> those = all.stream()
                    .filter(one -> one.advice().now().deed() == deed)
                    .toList();
            if (!those.isEmpty()) {
                screen.hanging(INDENT, INDENT + INDENT, total(deed, those));
            }
        }
    }

    private String total(Deed deed, List<One> those) {
        String number = Counts.of(those.size(), "mother", "mothers");
        int layers = those.stream()
                .mapToInt(one -> ChoiceWords.layers(one.advice().now(), one.mother()))
                .sum();
        int cuttings =
                those.stream().mapToInt(one -> one.advice().now().cuttings()).sum();
        return switch (deed) {
            case LAYER -> "layer " + number + ": " + set(layers, those);
            case LAYER_AND_SELL -> "layer " + number + ", then sell: " + set(layers, those) + thin(those);
            case TRY_OUT -> "try out " + number + ": " + set(layers, those);
            case TAKE_CUTTINGS -> "take cuttings from " + number + ": ~" + Counts.of(cuttings, "cutting", "cuttings");
            case CUT_BACK -> "cut back " + number + thin(those);
            case SELL -> "sell " + number + thin(those);
            case LEAVE_LONG -> "leave " + number + " long";
            case REST -> "rest " + number;
        };
    }

    private static String thin(List<One> those) {
        long thin = those.stream()
                .filter(one ->
                        ChoiceWords.caution(one.advice(), one.candidate()).isPresent())
                .count();
        return thin == 0 ? "" : "; look twice at " + (thin == those.size() ? "each" : thin + " of them");
    }

    private String set(int layers, List<One> those) {
        Map<Integer, Integer> byBand = new TreeMap<>();
        int expected = 0;
        for (One one : those) {
            for (ToSet set : one.advice().now().sets()) {
                if (set.method() == Method.LAYER) {
                    byBand.merge(set.band(), set.count(), Integer::sum);
                    expected += one.candidate().wood() == Candidate.WoodFrom.MEASURED ? 0 : set.count();
                }
            }
        }
        String bands = byBand.entrySet().stream()
                .map(band -> band.getValue() + " × " + words.band(band.getKey()))
                .collect(Collectors.joining(", "));
        return Counts.of(layers, "layer", "layers")
                + (bands.isEmpty() ? "" : ", on stems of " + bands + " mm")
                + (expected == 0 ? "" : "; " + expected + " of them where nobody counted positions (~)");
    }

    // ---- place by place ----

    private void toDo(List<One> toDo, Screen screen) {
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("mother", "mother"),
                Column.text("deed", "do"),
                Column.figure("number", "no."),
                Column.text("stems", "stems (mm)"),
                Column.text("cultivar", "cultivar"),
                Column.figure("sure", "sure"),
                Column.text("why", "because").underEachRow());
        String place = "";
        for (One one : toDo) {
            if (!one.mother().place().equals(place)) {
                place = one.mother().place();
                sheet.section(place);
            }
            sheet.row(
                    one.advice().mother(),
                    ChoiceWords.deed(one.advice().now().deed()),
                    ChoiceWords.number(one.advice().now(), one.candidate(), one.mother()),
                    words.stems(one.advice().now()),
                    ChoiceWords.epithet(one.candidate()),
                    ChoiceWords.sure(one.advice()),
                    words.because(one.advice(), one.candidate()) + "; " + words.next(one.advice())
                            + ChoiceWords.caution(one.advice(), one.candidate())
                                    .map(caution -> "; " + caution)
                                    .orElse(""));
        }
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private void left(List<One> left, Screen screen) {
        screen.println(screen.styled(Style.STRONG, "Leave as they are:"));
        Map<String, Map<String, List<String>>> byPlace = new LinkedHashMap<>();
        for (One one : left) {
            byPlace.computeIfAbsent(one.mother().place(), place -> new TreeMap<>())
                    .computeIfAbsent(
                            ChoiceWords.deed(one.advice().now().deed()) + ", "
                                    + words.because(one.advice(), one.candidate()),
                            why -> new ArrayList<>())
                    .add(named(one.advice()));
        }
        byPlace.forEach((place, groups) -> {
            screen.println(screen.styled(Style.STRONG, place));
            groups.forEach(
                    (why, tags) -> screen.hanging(INDENT, INDENT + INDENT, why + ": " + String.join(", ", tags)));
        });
    }

    /** Return a tag; where it is not quite sure, with how sure and what else. */
    private static String named(Advice advice) {
        boolean isSure =
                advice.sureness().share().filter(share -> share < QUITE_SURE).isEmpty();
        return isSure
                ? advice.mother()
                : advice.mother() + " (" + ChoiceWords.sure(advice)
                        + advice.next()
                                .map(other -> ", else " + ChoiceWords.deed(other.deed()))
                                .orElse("")
                        + ")";
    }
}
