package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import ortet.choice.Advice;
import ortet.choice.Alternative;
import ortet.choice.Deed;
import ortet.choice.Method;
import ortet.choice.Mother;
import ortet.choice.Planned;
import ortet.choice.Reasons;
import ortet.choice.Resource;
import ortet.choice.Trial;
import ortet.choice.inputs.Candidate;
import ortet.choice.inputs.ChoiceInputs;
import ortet.choice.inputs.Evidence;
import ortet.choice.inputs.MotherBand;
import ortet.choice.inputs.Thin;

/** The words of the choice of stock, short enough for a list that is carried along the benches. */
final class ChoiceWords {
    /** A difference that nobody would notice, in money or in trees. */
    static final double AS_GOOD = 0.05;

    private static final String DASH = "–";
    private static final double SURE = 0.995;
    private static final int SMALL = 10;

    private final ChoiceInputs inputs;
    private final double wanted;

    ChoiceWords(ChoiceInputs inputs, double wanted) {
        this.inputs = inputs;
        this.wanted = wanted;
    }

    // ---- numbers ----

    static String percent(double share) {
        return share >= SURE ? "100" : share < 1 - SURE ? "0" : Long.toString(Math.round(100 * share));
    }

    static String sure(Advice advice) {
        return advice.sureness().share().map(share -> percent(share) + " %").orElse(DASH);
    }

    /** Return what something is worth to the plan: trees asked for where these are the aim, else money; "0" for next to none. */
    String worth(double amount) {
        double counted = wanted > 0 ? amount / wanted : amount;
        return counted < AS_GOOD ? "0" : money(counted) + (wanted > 0 ? " trees" : "");
    }

    /** Return what something adds to the plan, which may be less than nothing, with its unit. */
    private String added(double amount) {
        return wanted > 0 ? money(amount / wanted) + " trees" : sum(amount);
    }

    /** Return an amount of money with its currency, where one is listed. */
    private String sum(double amount) {
        return money(amount)
                + inputs.currency().map(one -> " " + one.getCurrencyCode()).orElse("");
    }

    static String money(double amount) {
        return String.format(Locale.ROOT, Math.abs(amount) < SMALL ? "%.1f" : "%.0f", amount == 0 ? 0.0 : amount);
    }

    static String trees(double trees) {
        String told = String.format(Locale.ROOT, "%.1f", trees);
        return told + (told.equals("1.0") ? " tree" : " trees");
    }

    // ---- what to do ----

    static String deed(Deed deed) {
        return switch (deed) {
            case TAKE_CUTTINGS -> "cuttings";
            case LAYER_AND_SELL -> "layer, sell";
            case LEAVE_LONG, LAYER, CUT_BACK, REST, SELL, TRY_OUT -> deed.word();
        };
    }

    /** Return how many layers are set: for a trial as many as that takes. */
    static int layers(Planned now, Mother mother) {
        return now.deed() == Deed.TRY_OUT && now.layers() == 0
                ? mother.trial().map(Trial::layers).orElse(0)
                : now.layers();
    }

    /** Return how many are set, with a sign where that is expected and not counted. */
    static String number(Planned now, Candidate candidate, Mother mother) {
        int layers = layers(now, mother);
        if (layers > 0) {
            return sign(candidate) + layers;
        }
        return now.cuttings() > 0 ? "~" + now.cuttings() : "";
    }

    private static String sign(Candidate candidate) {
        return candidate.wood() == Candidate.WoodFrom.MEASURED ? "" : "~";
    }

    /** Return the stems on which layers are set: the thin ones first. */
    String stems(Planned now) {
        Map<Integer, Integer> byBand = new TreeMap<>();
        now.sets().stream()
                .filter(one -> one.method() == Method.LAYER)
                .forEach(one -> byBand.merge(one.band(), one.count(), Integer::sum));
        return byBand.size() == 1
                ? band(byBand.keySet().iterator().next()).toString()
                : byBand.entrySet().stream()
                        .map(one -> one.getValue() + " × " + band(one.getKey()))
                        .collect(Collectors.joining(", "));
    }

    MotherBand band(int at) {
        return inputs.bands().get(at);
    }

    static String epithet(Candidate candidate) {
        String cultivar = candidate.cultivar().orElse(DASH);
        int from = cultivar.indexOf('\'');
        return from < 0 ? cultivar : cultivar.substring(from + 1, cultivar.lastIndexOf('\''));
    }

    // ---- why ----

    String because(Advice advice, Candidate candidate) {
        double sales = advice.reasons().sales();
        return switch (advice.reasons().why()) {
            case HELD -> "held for plant health";
            case RECOVERING ->
                candidate
                        .lastLayered()
                        .map(year -> "layered " + year + ", must recover")
                        .orElse("must recover");
            case NOTHING_TO_TAKE -> "no wood yet";
            case NO_LICENCE -> "protected, no licence";
            case EARNS_MOST ->
                advice.now().deed() == Deed.SELL
                        ? "worth more sold"
                        : trees(advice.reasons().trees())
                                + (wanted > 0 || sales < AS_GOOD ? "" : ", worth " + sum(sales));
            case WORTH_MORE_LATER -> later(advice);
            case NO_DEMAND -> "not asked for";
            case MEANS_ARE_SHORT ->
                "too few " + advice.reasons().scarcest().map(ChoiceWords::means).orElse("hours or room");
            case AS_GOOD -> besides(advice);
            case ROOM_IS_WORTH_MORE -> "her room is worth more";
            case TEACHES ->
                trees(advice.reasons().trees()) + ", and to learn how she takes, worth "
                        + added(advice.reasons().learning());
        };
    }

    /** Return what is said where nothing is short and nothing is gained: that what comes next would do as well. */
    private String besides(Advice advice) {
        return advice.next()
                .filter(other -> worth(other.cost()).equals("0"))
                .map(other -> deed(other.deed()) + " as good")
                .orElse("earns most so");
    }

    private static String means(Resource resource) {
        return switch (resource.kind()) {
            case HOURS -> "hours";
            case ROOM -> "m² of " + resource.name();
            case LICENCE -> "licensed";
            case CLONE_SHARE -> "of other clones";
            case PLACE_SHARE -> "from elsewhere";
        };
    }

    private String later(Advice advice) {
        return advice.years().stream()
                .skip(1)
                .filter(one -> !one.sets().isEmpty())
                .findFirst()
                .map(one -> {
                    int year = inputs.firstYear() + one.year();
                    return advice.now().deed() == Deed.CUT_BACK
                            ? "for " + (one.deed() == Deed.TAKE_CUTTINGS ? "cuttings" : "layers") + " in " + year
                            : deed(one.deed()) + " " + year + " instead";
                })
                .orElse("her wood is worth more later");
    }

    /** Return the next best deed, and what it would cost. */
    String next(Advice advice) {
        return advice.next()
                .map(other -> "else " + deed(other.deed()) + cost(other))
                .orElse("nothing else can be done");
    }

    private String cost(Alternative other) {
        return worth(other.cost()).equals("0") ? ", as good" : ", which costs " + added(other.cost());
    }

    /** Return in what the evidence is thin on which a mother is to be sold or cut back, as far as that is about her. */
    static Optional<String> caution(Advice advice, Candidate candidate) {
        Set<Thin> thin = Thin.of(advice, candidate.evidence());
        List<String> told = new ArrayList<>();
        if (thin.contains(Thin.FEW_JUDGED)) {
            told.add(judged(candidate.evidence()));
        }
        if (thin.contains(Thin.SELDOM_BEST)) {
            told.add("best in " + sure(advice) + " of draws");
        }
        return told.isEmpty() ? Optional.empty() : Optional.of("look twice: " + String.join(", ", told));
    }

    private static String judged(Evidence evidence) {
        if (evidence.units() == 0) {
            return "no layer of hers judged yet";
        }
        String units = evidence.cuttings() == 0
                ? Counts.of(evidence.layers(), "layer", "layers")
                : evidence.layers() == 0
                        ? Counts.of(evidence.cuttings(), "cutting", "cuttings")
                        : evidence.units() + " layers and cuttings";
        return "only " + units + " of hers judged, over " + Counts.of(evidence.seasons(), "season", "seasons");
    }

    /** Return how each number told of a mother was reckoned. */
    String reckoned(Advice advice, Candidate candidate) {
        Reasons reasons = advice.reasons();
        StringBuilder told = new StringBuilder(advice.mother())
                .append(", ")
                .append(deed(advice.now().deed()));
        int set = advice.now().layers() + advice.now().cuttings();
        if (set > 0) {
            told.append(": ").append(set).append(" set");
            if (advice.now().layers() > 0) {
                told.append(" on ")
                        .append(reasons.positions())
                        .append(" positions, of which ")
                        .append(percent(reasons.rate()))
                        .append(" % establish");
            }
            told.append(", ")
                    .append(trees(reasons.trees()))
                    .append(" in all size classes and years; these are worth ")
                    .append(sum(reasons.sales()))
                    .append(
                            " to the plan (their price as far as they are asked for); going to her, setting and raising cost ")
                    .append(sum(reasons.spent()))
                    .append(", and scarce hours and room for it would be worth ")
                    .append(added(reasons.means()))
                    .append(" elsewhere");
        }
        told.append(set > 0 ? "; " : ": ")
                .append("with all planned years and what she is worth at the end she adds ")
                .append(added(advice.worth()))
                .append("; ")
                .append(next(advice));
        if (advice.sureness().draws() > 0) {
            told.append("; best in ")
                    .append(advice.sureness().same())
                    .append(" of ")
                    .append(advice.sureness().draws())
                    .append(" draws");
        }
        return told.append("; positions ")
                .append(candidate.wood() == Candidate.WoodFrom.MEASURED ? "counted" : "expected")
                .toString();
    }

    /** Return what is limited, in words. */
    String named(Resource resource) {
        String year = " in " + (inputs.firstYear() + resource.year());
        String season = inputs.seasons().size() > 1 ? " of " + inputs.seasons().get(resource.season()) : "";
        return switch (resource.kind()) {
            case HOURS -> "hour" + season + year;
            case ROOM -> "m² of " + resource.name() + season + year;
            case LICENCE -> "unit licensed of " + resource.name() + year;
            case CLONE_SHARE -> "tree of other clones than " + resource.name() + year;
            case PLACE_SHARE -> "tree from elsewhere than " + resource.name() + year;
        };
    }
}
