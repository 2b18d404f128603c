package ortet.commands;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ortet.choice.Advice;
import ortet.choice.Aim;
import ortet.choice.Alternative;
import ortet.choice.Choice;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Method;
import ortet.choice.Mother;
import ortet.choice.Planned;
import ortet.choice.Reasons;
import ortet.choice.Resource;
import ortet.choice.ResourceUse;
import ortet.choice.Sales;
import ortet.choice.Sureness;
import ortet.choice.inputs.Candidate;
import ortet.choice.inputs.ChoiceInputs;
import ortet.choice.inputs.ChoiceRequest;
import ortet.choice.inputs.Explained;
import ortet.choice.inputs.Thin;
import ortet.entry.Words;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows which stock to grow on: what to do with each mother this season, for whoever walks along the benches. */
final class ChoiceView {
    private static final int SCARCE = 6;
    private static final double WORTH_TELLING = 0.005;
    private static final double LOW = 0.05;
    private static final double HIGH = 0.95;

    private final ChoiceRequest request;
    private final ChoiceInputs inputs;
    private final Optional<Choice> choice;
    private final String currency;
    private final double wanted;
    private final ChoiceWords words;
    private final Map<String, Mother> mothers = new LinkedHashMap<>();

    ChoiceView(ChoiceRequest request, ChoiceInputs inputs, Optional<Choice> choice) {
        this.request = request;
        this.inputs = inputs;
        this.choice = choice;
        this.currency =
                inputs.currency().map(one -> " " + one.getCurrencyCode()).orElse("");
        this.wanted = inputs.question().map(ChoiceQuestion::wanted).orElse(0.0);
        this.words = new ChoiceWords(inputs, wanted);
        inputs.question()
                .map(ChoiceQuestion::mothers)
                .orElse(List.of())
                .forEach(mother -> mothers.put(mother.key(), mother));
    }

    void show(boolean trials, boolean explain, OutputFormat format, Screen screen) {
        if (format == OutputFormat.JSON) {
            screen.json(json -> json.object(this::tell));
            return;
        }
        if (choice.isEmpty() && format == OutputFormat.TABLE) {
            screen.prose(inputs.nothing());
            inputs.notes().forEach(screen::prose);
            return;
        }
        if (format == OutputFormat.TABLE && !trials) {
            new ChoiceRound(inputs, choice.orElseThrow(), words, mothers).show(title(false), screen);
            years(choice.orElseThrow()).ifPresent(sheet -> {
                screen.prose("");
                screen.show(sheet, format);
            });
            Sheet.Builder rest = Sheet.titled("");
            notes(false, explain, rest);
            screen.show(rest.build(), format);
            return;
        }
        Sheet.Builder sheet = sheet(trials);
        notes(trials, explain, sheet);
        screen.show(sheet.build(), format);
    }

    // ---- for people, and CSV ----

    private String title(boolean trials) {
        return (trials ? "mothers to try out" : "which stock to grow on") + ", season " + inputs.firstYear() + ", "
                + (request.years() == 1 ? "1 year" : request.years() + " years") + " planned, by "
                + (request.aim() == Aim.MARGIN ? "margin" : "demand met")
                + request.cultivar().map(name -> ", " + name).orElse("") + ", as of " + request.asOf();
    }

    private Sheet.Builder sheet(boolean trials) {
        Sheet.Builder sheet = Sheet.titled(
                title(trials),
                Column.text("place", "place").forPrograms(),
                Column.text("mother", "mother"),
                Column.text("cultivar", "cultivar").forPrograms(),
                Column.text("epithet", "cultivar").forPeople(),
                Column.text("deed", "deed").forPrograms(),
                Column.whole("layers", "layers").forPrograms(),
                Column.whole("cuttings", "cuttings").forPrograms(),
                Column.whole("trial", "try").forPeople(),
                Column.text("deed_shown", "the plan").forPeople(),
                Column.figure("sure_shown", "sure"),
                Column.share("sure", "sure", 0).forPrograms(),
                Column.text("sure_way", "how sure").forPrograms(),
                Column.figure("learning_shown", "to learn"),
                Column.text("next", "next").forPrograms(),
                Column.number("next_cost", "next costs", 2).forPrograms(),
                Column.number("worth", "worth", 2).forPrograms(),
                Column.text("why", "why").forPrograms(),
                Column.number("rate", "rate", 4).forPrograms(),
                Column.number("trees", "trees", 2).forPrograms(),
                Column.number("sales", "sales", 2).forPrograms(),
                Column.number("spent", "spent", 2).forPrograms(),
                Column.number("learning", "learning", 2).forPrograms(),
                Column.text("positions_from", "positions from").forPrograms(),
                Column.whole("judged_layers", "layers judged").forPrograms(),
                Column.whole("judged_cuttings", "cuttings judged").forPrograms(),
                Column.whole("judged_seasons", "seasons judged").forPrograms(),
                Column.text("thin", "thin").forPrograms());
        if (choice.isEmpty()) {
            return sheet;
        }
        List<Integer> order = new ArrayList<>();
        for (int at = 0; at < choice.get().advice().size(); at++) {
            Advice advice = choice.get().advice().get(at);
            if (!trials || mothers.get(advice.mother()).trial().isPresent()) {
                order.add(at);
            }
        }
        if (trials) {
            order.sort(Comparator.comparingDouble((Integer at) ->
                            -choice.get().advice().get(at).reasons().learning())
                    .thenComparing(at -> choice.get().advice().get(at).mother()));
        } else {
            order.sort(Comparator.comparing((Integer at) ->
                            mothers.get(choice.get().advice().get(at).mother()).place())
                    .thenComparing(at -> choice.get().advice().get(at).mother()));
        }
        order.forEach(at -> add(sheet, at));
        return sheet;
    }

    private void add(Sheet.Builder sheet, int at) {
        Advice advice = choice.orElseThrow().advice().get(at);
        Candidate candidate = inputs.candidates().get(at);
        Mother mother = mothers.get(advice.mother());
        Reasons reasons = advice.reasons();
        Planned now = advice.now();
        sheet.row(
                candidate.place(),
                advice.mother(),
                candidate.cultivar(),
                ChoiceWords.epithet(candidate),
                now.deed(),
                now.layers(),
                now.cuttings(),
                mother.trial().map(ortet.choice.Trial::layers),
                ChoiceWords.deed(now.deed()),
                ChoiceWords.sure(advice),
                advice.sureness().share(),
                way(advice.sureness()),
                words.worth(reasons.learning()),
                advice.next().map(Alternative::deed),
                advice.next().map(Alternative::cost),
                advice.worth(),
                reasons.why(),
                reasons.rate(),
                reasons.trees(),
                reasons.sales(),
                reasons.spent() + 0.0,
                reasons.learning(),
                candidate.wood(),
                candidate.evidence().layers(),
                candidate.evidence().cuttings(),
                candidate.evidence().seasons(),
                thin(advice, candidate).collect(Collectors.joining(" ")));
    }

    private static Stream<String> thin(Advice advice, Candidate candidate) {
        return Thin.of(advice, candidate.evidence()).stream().map(Words::of);
    }

    /** Return how it was found how sure a deed is; nothing where that was not asked. */
    private static Optional<Sureness.Way> way(Sureness sureness) {
        return sureness.draws() == 0 ? Optional.empty() : Optional.of(sureness.way());
    }

    // ---- the plan ----

    private void notes(boolean trials, boolean explain, Sheet.Builder sheet) {
        if (choice.isEmpty()) {
            sheet.note(inputs.nothing());
            inputs.notes().forEach(sheet::note);
            return;
        }
        Choice plan = choice.get();
        if (trials
                && mothers.values().stream().noneMatch(mother -> mother.trial().isPresent())) {
            sheet.note("no mother to try out: of each the outcome of some layers is known, or she has no position");
        }
        sheet.note(margin(plan));
        demand(plan).ifPresent(sheet::note);
        List<String> scarce = scarce(plan);
        sheet.note(
                scarce.isEmpty()
                        ? "one more hour or m² would be worth nothing more: none is short"
                        : "one more would be worth" + (wanted > 0 ? "" : " (in" + currency + ")") + ": "
                                + String.join("; ", scarce));
        plan.resources().stream()
                .filter(ResourceUse::isOverused)
                .limit(SCARCE)
                .forEach(use ->
                        sheet.warning("the mothers alone need more than there is of " + words.named(use.resource())
                                + ": " + ChoiceWords.money(use.used()) + " of " + ChoiceWords.money(use.available())));
        sheet.note(search(plan));
        if (trials) {
            sheet.note(
                    "to learn: by how much the plans of the years after would gain, on average, from what so many layers"
                            + " teach about her take; what they teach about others of her cultivar is not counted");
        } else {
            sheet.note((request.draws() == 0
                            ? "how sure is not told (--draws 0)"
                            : "sure: share of " + request.draws()
                                    + " draws of what is not known in which the same deed is best, "
                                    + (plan.advice().stream()
                                                    .allMatch(one ->
                                                            one.sureness().way() == Sureness.Way.ANEW)
                                            ? "the plan made anew for each"
                                            : "each mother judged at the worth of means and trees in the plan"))
                    + "; else: the next best, and what it would cost; ~: positions expected, not counted");
        }
        if (!trials) {
            cautions(plan).forEach(sheet::note);
        }
        if (currency.isEmpty()) {
            sheet.note("no costs and prices are listed: only trees count");
        } else {
            sheet.note("money in" + currency + ", costs and prices of " + request.asOf()
                    + "; it costs what it did in the past");
        }
        inputs.notes().forEach(sheet::note);
        sheet.note("advice, not an order: look at the tree first");
        if (explain) {
            sheet.note("Mother by mother:");
            IntStream.range(0, plan.advice().size())
                    .boxed()
                    .sorted(Comparator.comparing((Integer at) -> ChoiceRound.walked(
                                    mothers.get(plan.advice().get(at).mother()).place()))
                            .thenComparing(at -> plan.advice().get(at).mother()))
                    .forEach(at -> sheet.note(words.reckoned(
                            plan.advice().get(at), inputs.candidates().get(at))));
            sheet.note("Figure by figure:");
            inputs.explained()
                    .forEach(one -> sheet.note(one.of() + ", " + one.figure() + ": " + one.value() + "; " + one.method()
                            + "; from " + one.source()));
            sheet.note(
                    "method: mixed-integer programme, relaxed by column generation (Dantzig & Wolfe 1960, Operations Research"
                            + " 8:101); trials: expected value of sample information (Raiffa & Schlaifer 1961); docs/methods/choice.md");
        }
    }

    /** Return what to bear in mind where mothers are to be sold or cut back and little is known. */
    private List<String> cautions(Choice plan) {
        List<String> cautions = new ArrayList<>();
        boolean anyTwice = false;
        int young = 0;
        for (int at = 0; at < plan.advice().size(); at++) {
            Advice advice = plan.advice().get(at);
            Candidate candidate = inputs.candidates().get(at);
            anyTwice |= ChoiceWords.caution(advice, candidate).isPresent();
            young += Thin.of(advice, candidate.evidence()).contains(Thin.YOUNG_BOOK) ? 1 : 0;
        }
        if (anyTwice) {
            cautions.add("look twice: to be sold or cut back on thin evidence, fewer than " + Thin.FEW
                    + " layers or cuttings of hers judged, or best in fewer than " + Thin.OFTEN_PERCENT
                    + " % of draws; left as she is, she can still be sold or cut back next year");
        }
        if (young > 0) {
            cautions.add("a young book: it knows outcomes of "
                    + Counts.of(inputs.candidates().get(0).evidence().bookSeasons(), "season", "seasons")
                    + " only, and " + Counts.of(young, "mother is", "mothers are")
                    + " to be sold or cut back on that; a mother sold does not come back");
        }
        return cautions;
    }

    private String margin(Choice plan) {
        double[] margins = plan.outlook().margins().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        double mean = plan.outlook().margins().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(plan.margin());
        return "expected margin of the plan, mothers' worth as trees with it: " + ChoiceWords.money(mean) + currency
                + (margins.length == 0
                        ? ""
                        : " (" + ChoiceWords.money(at(margins, LOW)) + " to " + ChoiceWords.money(at(margins, HIGH))
                                + " in nine of ten draws)");
    }

    private Optional<String> demand(Choice plan) {
        double[] met = plan.outlook().demandMet().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        int last = plan.sales().stream().mapToInt(Sales::year).max().orElse(0);
        double asked = until(request.years(), plan, Sales::demand);
        double sold = until(request.years(), plan, Sales::sold);
        return plan.demandMet()
                .map(expected -> Arrays.stream(met).average().orElse(expected))
                .map(share -> "demand met: " + ChoiceWords.percent(share) + " % of the trees asked for to "
                        + (inputs.firstYear() + last) + ", when the last of this plan are fit for sale"
                        + (met.length == 0
                                ? ""
                                : " (" + ChoiceWords.percent(at(met, LOW)) + " to " + ChoiceWords.percent(at(met, HIGH))
                                        + " % in nine of ten draws)")
                        + (asked > 0
                                ? "; to " + (inputs.firstYear() + request.years() - 1) + ", as far as is planned: "
                                        + ChoiceWords.percent(sold / asked) + " % if all goes as expected"
                                : ""));
    }

    private static double until(int years, Choice plan, ToDoubleFunction<Sales> figure) {
        return plan.sales().stream()
                .filter(sale -> sale.year() < years)
                .mapToDouble(figure)
                .sum();
    }

    /** Return how many trees the plan brings in each year, beside those asked for; nothing where none are asked for. */
    private Optional<Sheet> years(Choice plan) {
        Map<Integer, double[]> years = new TreeMap<>();
        plan.sales().forEach(sale -> {
            double[] sums = years.computeIfAbsent(sale.year(), year -> new double[3]);
            sums[0] += sale.demand();
            sums[1] += sale.ready();
            sums[2] += sale.sold();
        });
        if (years.values().stream().allMatch(sums -> sums[0] == 0)) {
            return Optional.empty();
        }
        Sheet.Builder sheet = Sheet.titled(
                "Trees from what is set in this plan, beside those asked for that are not on the way yet:",
                Column.text("year", "fit for sale"),
                Column.whole("asked", "asked for"),
                Column.whole("ready", "expected"),
                Column.whole("sold", "of these sold"));
        years.forEach((year, sums) -> sheet.row(
                Integer.toString(inputs.firstYear() + year),
                Math.round(sums[0]),
                Math.round(sums[1]),
                Math.round(sums[2])));
        return Optional.of(sheet.build());
    }

    private static double at(double[] sorted, double share) {
        return sorted[(int) Math.round(share * (sorted.length - 1))];
    }

    /** Return what one more of each scarce thing is worth: now, or in the first year in which it is, and at its dearest. */
    private List<String> scarce(Choice plan) {
        Map<List<Object>, List<ResourceUse>> all = new LinkedHashMap<>();
        plan.resources().stream()
                .filter(use -> use.worth() > Math.max(WORTH_TELLING, ChoiceWords.AS_GOOD * wanted)
                        && (use.resource().kind() == Resource.Kind.HOURS
                                || use.resource().kind() == Resource.Kind.ROOM
                                || use.resource().kind() == Resource.Kind.LICENCE))
                .sorted(Comparator.comparingInt(use -> use.resource().year()))
                .forEach(use -> all.computeIfAbsent(
                                List.of(
                                        use.resource().kind(),
                                        use.resource().name(),
                                        use.resource().season()),
                                key -> new ArrayList<>())
                        .add(use));
        return all.values().stream()
                .sorted(Comparator.comparingInt((List<ResourceUse> uses) ->
                                uses.get(0).resource().year())
                        .thenComparing(uses -> -uses.get(0).worth()))
                .limit(SCARCE)
                .map(this::scarce)
                .toList();
    }

    private String scarce(List<ResourceUse> uses) {
        ResourceUse first = uses.get(0);
        ResourceUse dearest = uses.stream()
                .max(Comparator.comparingDouble(ResourceUse::worth))
                .orElseThrow();
        return words.named(first.resource()) + ": " + words.worth(first.worth())
                + (dearest.equals(first)
                        ? ""
                        : ", up to " + words.worth(dearest.worth()) + " in "
                                + (inputs.firstYear() + dearest.resource().year()));
    }

    private static String search(Choice plan) {
        return plan.status() == Choice.Status.BEST
                ? "no better plan exists, to within " + String.format(Locale.ROOT, "%.2f", 100 * plan.gap()) + " %"
                : "the search stopped: a better plan may exist, but none by more than "
                        + String.format(Locale.ROOT, "%.2f", 100 * plan.gap()) + " %";
    }

    // ---- for programs ----

    private void tell(Json json) {
        json.field("as_of", request.asOf())
                .field("first_year", inputs.firstYear())
                .field("years", request.years())
                .field("aim", request.aim())
                .field("cultivar", request.cultivar())
                .field("seed", request.seed())
                .field("draws", request.draws())
                .field("discount", request.discount())
                .field("currency", inputs.currency().map(Object::toString));
        json.field("nothing", choice.isEmpty() ? Optional.of(inputs.nothing()) : Optional.empty());
        choice.ifPresent(plan -> {
            json.field("status", plan.status())
                    .field("worth", plan.worth())
                    .field("bound", plan.bound())
                    .field("gap", plan.gap())
                    .field("whole", plan.whole())
                    .field("margin", plan.margin())
                    .field("demand_met", plan.demandMet());
            json.array("margins", list -> plan.outlook().margins().forEach(list::value));
            json.array("demands_met", list -> plan.outlook().demandMet().forEach(list::value));
            json.array("mothers", list -> {
                for (int at = 0; at < plan.advice().size(); at++) {
                    int number = at;
                    list.object(one -> tell(
                            one, plan.advice().get(number), inputs.candidates().get(number)));
                }
            });
            json.array("resources", list -> plan.resources().forEach(use -> list.object(one -> tell(one, use))));
            json.array("sales", list -> plan.sales().forEach(sales -> list.object(one -> tell(one, sales))));
        });
        json.array(
                "explained", list -> inputs.explained().forEach(explained -> list.object(one -> tell(one, explained))));
        json.array("notes", list -> inputs.notes().forEach(list::value));
    }

    private void tell(Json json, Advice advice, Candidate candidate) {
        Mother mother = mothers.get(advice.mother());
        Reasons reasons = advice.reasons();
        Sureness sureness = advice.sureness();
        json.field("mother", advice.mother())
                .field("cultivar", candidate.cultivar())
                .field("ortet", mother.ortet())
                .field("place", candidate.place())
                .field("stock", candidate.stock())
                .field("held", candidate.held())
                .field("tried", candidate.tried())
                .field("positions_from", candidate.wood())
                .field("judged_layers", candidate.evidence().layers())
                .field("judged_cuttings", candidate.evidence().cuttings())
                .field("judged_seasons", candidate.evidence().seasons())
                .field("last_layered", candidate.lastLayered())
                .field("rest_years", mother.restYears())
                .field("rest_now", mother.restNow())
                .field("deed", advice.now().deed())
                .field("worth", advice.worth())
                .field("same", sureness.same())
                .field("of_draws", sureness.draws())
                .field("sure_way", way(sureness))
                .field("next", advice.next().map(Alternative::deed))
                .field("next_cost", advice.next().map(Alternative::cost))
                .field("why", reasons.why())
                .field("positions", reasons.positions())
                .field("rate", reasons.rate())
                .field("trees", reasons.trees())
                .field("sales", reasons.sales())
                .field("spent", reasons.spent() + 0.0)
                .field("means", reasons.means())
                .field("learning", reasons.learning())
                .field("trial_layers", mother.trial().map(ortet.choice.Trial::layers));
        json.array("thin", list -> thin(advice, candidate).forEach(list::value));
        json.array(
                "plan",
                list -> advice.years()
                        .forEach(year -> list.object(one -> {
                            one.field("year", inputs.firstYear() + year.year()).field("deed", year.deed());
                            one.array(
                                    "sets",
                                    sets -> year.sets()
                                            .forEach(set -> sets.object(told -> told.field("method", set.method())
                                                    .field(
                                                            "stem_from_mm",
                                                            set.method() == Method.LAYER
                                                                    ? Optional.of(words.band(set.band())
                                                                            .lowMm()
                                                                            .value())
                                                                    : Optional.empty())
                                                    .field(
                                                            "stem_to_mm",
                                                            set.method() == Method.LAYER
                                                                    ? Optional.of(words.band(set.band())
                                                                            .highMm()
                                                                            .value())
                                                                    : Optional.empty())
                                                    .field("count", set.count()))));
                        })));
    }

    private void tell(Json json, ResourceUse use) {
        json.field("kind", use.resource().kind())
                .field("name", use.resource().name())
                .field("year", inputs.firstYear() + use.resource().year())
                .field(
                        "season",
                        inputs.seasons()
                                .get(Math.min(
                                        use.resource().season(),
                                        inputs.seasons().size() - 1)))
                .field("used", use.used())
                .field(
                        "available",
                        use.available() >= ortet.choice.inputs.ChoiceInputs.PLENTY
                                ? Optional.empty()
                                : Optional.of(use.available()))
                .field("worth", use.worth());
    }

    private void tell(Json json, Sales sales) {
        json.field("cultivar", sales.cultivar())
                .field("size", sales.sizeClass())
                .field("year", inputs.firstYear() + sales.year())
                .field("demand", sales.demand())
                .field("ready", sales.ready())
                .field("sold", sales.sold())
                .field("worth", sales.worth())
                .field("tree_worth", sales.treeWorth());
    }

    private static void tell(Json json, Explained one) {
        json.field("of", one.of())
                .field("figure", one.figure())
                .field("value", one.value())
                .field("method", one.method())
                .field("source", one.source());
    }
}
