package ortet.yield;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.figures.Clustered;
import ortet.figures.ConditionalOdds;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.MantelHaenszel;
import ortet.figures.Needed;
import ortet.figures.Stratum;
import ortet.money.Tariff;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.value.Decimal;
import ortet.value.Defect;
import ortet.value.Warning;

/**
 * Answers what one way of raising trees yields against another: layering against cuttings, one hormone against another.
 *
 * <p>Everything is counted in whole units and follows them to the plants that they became; the definitions are in
 * docs/methods/yield.md. Linear in the nursery, with no object for a unit.
 */
public final class Compare {
    private static final int NO_GROUP = Integer.MIN_VALUE;
    private static final int NO_CODE = -1;
    private static final int MIXED = -2;

    /** The difference that is worth knowing where the observed one is smaller. */
    private static final double WORTH_KNOWING = 0.1;

    private static final double SMALL = 0.05;
    private static final int HUNDREDTHS = 100;

    /** How many of the costs that are missing are named where there is none to be told. */
    private static final int NAMED = 5;

    private final BookView view;
    private final CompareQuestion question;
    private final Samples samples;
    private final Fates fates;
    private final Grouping grouping;
    private final Clusters clusters;
    private final MotherYears motherYears;
    private final Treated treated;
    private final Fairness fairness;
    private final Stand stand;
    private final Sides sides;
    private final int[] code;
    private final int[] accountCode;
    private final boolean[] met;
    private final List<Integer> groups = new ArrayList<>();
    private Times times;
    private Optional<Costs> costs = Optional.empty();

    private Compare(BookView view, Snapshot snapshot, CompareQuestion question) {
        this.view = view;
        this.question = question;
        this.samples = Samples.of(snapshot, question.periods());
        this.fates = Fates.of(samples, question.establishment());
        this.grouping = new Grouping(view, samples);
        this.clusters = new Clusters(samples, fates);
        this.motherYears = new MotherYears(samples, clusters);
        this.treated = new Treated(snapshot);
        this.fairness = new Fairness(samples, grouping, treated);
        this.stand = new Stand(samples);
        this.sides = Sides.of(view, question, samples, treated);
        this.code = new int[samples.cohorts().size()];
        this.accountCode = new int[code.length];
        this.met = new boolean[code.length];
    }

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        return Fates.PARTS;
    }

    /**
     * Return the comparison.
     *
     * @throws ortet.value.Refused when a side, the cultivar, mother or operator asked for is not in the book; the nearest
     *     are named
     */
    public static ComparisonTable ask(BookView view, CompareQuestion question) {
        return ask(view, Snapshot.of(view, question.asOf(), parts()), question);
    }

    /**
     * Return the comparison out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused as {@link #ask(BookView, CompareQuestion)} does
     */
    public static ComparisonTable ask(BookView view, Snapshot snapshot, CompareQuestion question) {
        if (!snapshot.asOf().equals(question.asOf())) {
            throw new Defect("a snapshot of " + snapshot.asOf() + " for a question about " + question.asOf());
        }
        return new Compare(view, snapshot, question).table();
    }

    private ComparisonTable table() {
        Selection selection = Selection.of(view, question.filter(), samples);
        Map<Integer, Integer> places = new HashMap<>();
        int shared = 0;
        for (int row = 0; row < code.length; row++) {
            code[row] = NO_CODE;
            if (selection.shares(row) && samples.isCounted(row) && sides.side(row) != Sides.NEITHER) {
                shared += samples.set(row);
            }
            if (selection.keeps(row) && samples.isCounted(row)) {
                int side = sides.side(row);
                if (side != Sides.NEITHER) {
                    int group = question.by().isPresent()
                            ? grouping.number(question.by().get(), row)
                            : NO_GROUP;
                    Integer place = places.putIfAbsent(group, groups.size());
                    if (place == null) {
                        place = groups.size();
                        groups.add(group);
                    }
                    code[row] = 2 * place + side;
                }
            }
        }
        settleAccounts();
        times = new Times(samples, fates, this::codeOfAccount, 2 * groups.size());
        if (question.by().isEmpty()) {
            Tariff tariff = Tariff.of(view, question.asOf());
            costs = tariff.costs().isEmpty() && tariff.prices().isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Costs(view, samples, fates, treated, stand, tariff, this::codeOfAccount));
        }
        int[][] rows = sorted();
        if (question.by().isEmpty()) {
            Comparison all = groups.isEmpty()
                    ? comparison(NO_CODE, Optional.empty(), new int[0], new int[0])
                    : comparison(0, Optional.empty(), rows[0], rows[1]);
            return answer(List.of(all), List.of(), shared);
        }
        Map<Integer, GroupKey> keys = grouping.keys(question.by().get(), new LinkedHashSet<>(groups));
        List<Comparison> found = new ArrayList<>();
        List<Group> oneSided = new ArrayList<>();
        IntStream.range(0, groups.size())
                .boxed()
                .sorted(Comparator.comparing(place -> keys.get(groups.get(place))))
                .forEach(place -> {
                    Group group = keys.get(groups.get(place)).group();
                    if (units(rows[2 * place]) > 0 && units(rows[2 * place + 1]) > 0) {
                        found.add(comparison(place, Optional.of(group), rows[2 * place], rows[2 * place + 1]));
                    } else if (units(rows[2 * place]) > 0 || units(rows[2 * place + 1]) > 0) {
                        oneSided.add(group);
                    }
                });
        return answer(found, oneSided, shared);
    }

    private ComparisonTable answer(List<Comparison> rows, List<Group> oneSided, int shared) {
        boolean anySaleable = question.by().isEmpty()
                && rows.stream()
                        .anyMatch(row -> row.first().saleable().yes()
                                        + row.second().saleable().yes()
                                > 0);
        Optional<String> noCosts = anySaleable ? noCosts(rows) : Optional.empty();
        List<Comparison> told = anySaleable && noCosts.isEmpty()
                ? rows
                : rows.stream().map(Comparison::withoutCosts).toList();
        return new ComparisonTable(question, told, oneSided, shared, noCosts, warnings(rows));
    }

    private Optional<String> noCosts(List<Comparison> rows) {
        List<String> codes = costs.stream()
                .flatMap(one -> one.currencies().stream())
                .map(Currency::getCurrencyCode)
                .sorted()
                .toList();
        if (codes.size() > 1) {
            return Optional.of("costs and prices are listed in " + String.join(" and ", codes)
                    + ", and cannot be added; list all of them in one currency");
        }
        List<ClassCost> classes = rows.stream()
                .flatMap(row -> Stream.of(row.firstCost(), row.secondCost()))
                .flatMap(Optional::stream)
                .flatMap(side -> side.classes().stream())
                .toList();
        if (classes.stream().anyMatch(ClassCost::isTold)) {
            return Optional.empty();
        }
        List<String> missing = classes.stream()
                .flatMap(one -> one.missing().stream())
                .distinct()
                .toList();
        return Optional.of(
                missing.isEmpty()
                        ? "neither what raising it costs nor what it sells for is listed"
                        : String.join("; ", missing.subList(0, Math.min(NAMED, missing.size())))
                                + (missing.size() > NAMED ? "; and " + (missing.size() - NAMED) + " more" : ""));
    }

    private int units(int[] rows) {
        return IntStream.of(rows).map(samples::set).sum();
    }

    /** Find the accounts whose rows are all on one side of one comparison. */
    private void settleAccounts() {
        Arrays.fill(accountCode, NO_CODE - 2);
        for (int row = 0; row < code.length; row++) {
            if (samples.isThere(row)
                    && (samples.set(row) > 0 || samples.cohorts().taken(row) > 0)) {
                int account = fates.account(row);
                accountCode[account] =
                        accountCode[account] == NO_CODE - 2 || accountCode[account] == code[row] ? code[row] : MIXED;
            }
        }
    }

    private int codeOfAccount(int row) {
        int account = fates.account(row);
        return fates.isBlurred(account) ? NO_CODE : accountCode[account];
    }

    private static int hundredths(Decimal mm) {
        return (int) Math.round(mm.doubleValue() * HUNDREDTHS);
    }

    /** Return the rows of every group and side. */
    private int[][] sorted() {
        int[] sizes = new int[2 * groups.size()];
        for (int one : code) {
            if (one >= 0) {
                sizes[one]++;
            }
        }
        int[][] rows = new int[sizes.length][];
        for (int at = 0; at < sizes.length; at++) {
            rows[at] = new int[sizes[at]];
            sizes[at] = 0;
        }
        for (int row = 0; row < code.length; row++) {
            if (code[row] >= 0) {
                rows[code[row]][sizes[code[row]]++] = row;
            }
        }
        return rows;
    }

    // ---- one side ----

    /** One side of one comparison, being counted. */
    private final class Side {
        private final int code;
        private final String name;
        private final int[] rows;
        private final int[] taken;
        private final int[] takeKnown;
        private final int[] established;
        private final int[] establishedKnown;
        private final int[] saleable;
        private final int[] ofEstablished = new int[Fates.Established.values().length];
        private final int[] ofSaleable = new int[Fates.Saleable.values().length];
        private final Map<String, Integer> bySize = new TreeMap<>();
        private int failed;
        private int withdrawn;
        private int pending;
        private int leftOut;

        Side(int code, String name, int[] rows) {
            this.code = code;
            this.name = name;
            this.rows = rows;
            taken = new int[rows.length];
            takeKnown = new int[rows.length];
            established = new int[rows.length];
            establishedKnown = new int[rows.length];
            saleable = new int[rows.length];
            for (int at = 0; at < rows.length; at++) {
                count(at);
            }
            for (int row : rows) {
                met[fates.account(row)] = false;
            }
        }

        private void count(int at) {
            int row = rows[at];
            taken[at] = samples.cohorts().taken(row);
            takeKnown[at] = taken[at] + samples.cohorts().failed(row);
            int account = fates.account(row);
            if (fates.isBlurred(account) || accountCode[account] == MIXED) {
                leftOut += samples.set(row);
                return;
            }
            failed += samples.cohorts().failed(row);
            withdrawn += samples.cohorts().withdrawn(row);
            pending += samples.set(row) - takeKnown[at] - samples.cohorts().withdrawn(row);
            establishedKnown[at] = samples.cohorts().failed(row);
            if (met[account]) {
                return;
            }
            met[account] = true;
            for (Fates.Established how : Fates.Established.values()) {
                ofEstablished[how.ordinal()] += fates.count(account, how);
            }
            for (Fates.Saleable how : Fates.Saleable.values()) {
                ofSaleable[how.ordinal()] += fates.count(account, how);
            }
            established[at] = fates.count(account, Fates.Established.YES);
            establishedKnown[at] += established[at] + fates.count(account, Fates.Established.NO);
            saleable[at] = fates.count(account, Fates.Saleable.YES);
            List<String> sizes = samples.snapshot().lives().sizes();
            for (int size = 0; size <= sizes.size(); size++) {
                int saleable = fates.saleable(account, size);
                if (saleable > 0) {
                    bySize.merge(size == sizes.size() ? "" : sizes.get(size), saleable, Integer::sum);
                }
            }
        }

        private int of(Fates.Established how) {
            return ofEstablished[how.ordinal()];
        }

        private int of(Fates.Saleable how) {
            return ofSaleable[how.ordinal()];
        }

        Clustered clustered(Measure measure) {
            return measure == Measure.TAKE
                    ? clusters.of(rows, taken, takeKnown)
                    : clusters.of(rows, established, establishedKnown);
        }

        int yes(Measure measure, int at) {
            return measure == Measure.TAKE ? taken[at] : established[at];
        }

        int known(Measure measure, int at) {
            return measure == Measure.TAKE ? takeKnown[at] : establishedKnown[at];
        }

        /** Return what a saleable tree costs; absent where nothing is listed. */
        Optional<SideCost> cost(Raised saleable) {
            int[] counted =
                    IntStream.of(rows).filter(row -> codeOfAccount(row) == code).toArray();
            return costs.filter(any -> code >= 0).map(all -> all.of(code, counted, saleable));
        }

        SideYield told() {
            Samples.Sums sums = new Samples.Sums();
            for (int row : rows) {
                samples.addTo(sums, row);
            }
            Tally tally = sums.tally();
            Raised raised = new Raised(
                    of(Fates.Established.YES),
                    of(Fates.Established.NO) + failed,
                    of(Fates.Established.CENSORED),
                    withdrawn,
                    of(Fates.Established.TOO_YOUNG) + of(Fates.Established.UNSEEN) + pending,
                    of(Fates.Established.UNSEEN),
                    leftOut);
            Raised fit = new Raised(
                    of(Fates.Saleable.YES),
                    of(Fates.Saleable.NO) + failed,
                    of(Fates.Saleable.CENSORED),
                    withdrawn,
                    of(Fates.Saleable.GROWING_ON) + pending,
                    0,
                    leftOut);
            return new SideYield(
                    name,
                    tally,
                    stand.of(rows, 0, rows.length),
                    raised,
                    fit,
                    bySize,
                    motherYears.ratio(rows, this.saleable),
                    times.toRoots(rows),
                    question.stemMm().map(stem -> times.toStem(code, hundredths(stem))),
                    times.taking(rows, question.confidence()),
                    times.establishing(code, rows, question.confidence()),
                    YieldRate.of(clustered(Measure.TAKE), tally.pending(), question.confidence()),
                    YieldRate.of(clustered(Measure.ESTABLISHED), raised.unknown(), question.confidence()));
        }
    }

    // ---- both sides ----

    private Comparison comparison(int place, Optional<Group> group, int[] firstRows, int[] secondRows) {
        Side one = new Side(place < 0 ? NO_CODE : 2 * place, sides.name(0), firstRows);
        Side other = new Side(place < 0 ? NO_CODE : 2 * place + 1, sides.name(1), secondRows);
        SideYield first = one.told();
        SideYield second = other.told();
        Measure measure = isKnown(first) && isKnown(second) ? Measure.ESTABLISHED : Measure.TAKE;
        Clustered a = one.clustered(measure);
        Clustered b = other.clustered(measure);
        Optional<Double> difference = a.share().flatMap(p -> b.share().map(q -> p - q));
        Optional<Clustered.Answer> answer = Clustered.difference(a, b, question.confidence());
        boolean allows = answer.filter(Clustered.Widened.class::isInstance).isPresent();
        Optional<Interval> interval = answer.map(Clustered.Answer::interval);
        Optional<Stratified> stratified = question.within().map(within -> stratified(within, measure, one, other));
        Verdict verdict = verdict(interval, allows, stratified);
        return new Comparison(
                group,
                measure,
                first,
                second,
                difference,
                interval,
                allows,
                ConditionalOdds.of(a.total(), b.total(), question.confidence()),
                stratified,
                fairness.between(question, firstRows, secondRows),
                verdict,
                interval.filter(between -> allows && verdict(between) == Verdict.NOT_TOLD_APART)
                                .isPresent()
                        ? settle(a, b)
                        : Optional.empty(),
                one.cost(first.saleable()),
                other.cost(second.saleable()));
    }

    /** Tell whether establishing is known of enough units: of all but a fifth of those that count. */
    private static boolean isKnown(SideYield side) {
        return side.established().counting() > 0 && !side.established().isMuchUnknown();
    }

    private static Verdict verdict(Optional<Interval> interval, boolean allows, Optional<Stratified> stratified) {
        if (interval.isEmpty()) {
            return Verdict.NOTHING_KNOWN;
        }
        if (!allows) {
            return Verdict.ONE_CLUSTER;
        }
        Verdict alone = verdict(interval.get());
        // within strata the interval takes units for independent; it can take a verdict back, but cannot give one
        Verdict within = stratified
                .flatMap(Stratified::difference)
                .map(difference -> difference.interval().map(Compare::verdict).orElse(Verdict.NOT_TOLD_APART))
                .orElse(alone);
        return stratified.filter(strata -> strata.strata() == 0).isPresent() || within != alone
                ? Verdict.NOT_TOLD_APART
                : alone;
    }

    private static Verdict verdict(Interval interval) {
        if (interval.lower() > 0) {
            return Verdict.FIRST_YIELDS_MORE;
        }
        return interval.upper() < 0 ? Verdict.SECOND_YIELDS_MORE : Verdict.NOT_TOLD_APART;
    }

    private Optional<Settle> settle(Clustered first, Clustered second) {
        double p = first.share().orElseThrow();
        double q = second.share().orElseThrow();
        boolean observed = Math.abs(p - q) >= SMALL;
        double other = observed ? q : p > 0.5 ? p - WORTH_KNOWING : p + WORTH_KNOWING;
        int size = (int) Math.max(
                1,
                Math.round((double) (first.total().trials() + second.total().trials())
                        / (first.clusters() + second.clusters())));
        double correlation =
                Math.max(first.correlation().orElse(0.0), second.correlation().orElse(0.0));
        Needed needed = Needed.clustered(p, other, size, correlation, question.confidence(), Needed.POWER);
        return Optional.of(new Settle(Math.abs(p - other), observed, size, correlation, needed));
    }

    private Stratified stratified(Strata within, Measure measure, Side one, Side other) {
        TakeBy by = within == Strata.SEASON ? TakeBy.SEASON : TakeBy.MOTHER;
        Map<Integer, long[]> sums = new TreeMap<>();
        int leftOut = add(by, measure, one, 0, sums) + add(by, measure, other, 2, sums);
        Map<Integer, GroupKey> keys = grouping.keys(by, sums.keySet());
        List<Stratum> strata = new ArrayList<>();
        sums.forEach((stratum, sum) -> strata.add(
                new Stratum(keys.get(stratum).group().shown(), new Count(sum[0], sum[1]), new Count(sum[2], sum[3]))));
        MantelHaenszel all = MantelHaenszel.of(strata, question.confidence());
        int both = (int) strata.stream()
                .filter(stratum ->
                        stratum.first().trials() > 0 && stratum.second().trials() > 0)
                .count();
        return new Stratified(
                within,
                both,
                all.informing(),
                all.difference(),
                all.oddsRatio(),
                all.oddsRatioInterval(),
                all.test().map(test -> test.p()),
                all.tarone().map(test -> test.p()),
                leftOut);
    }

    /** Add the units of a side to the sums of their strata; return how many are in none, or nobody can tell in which. */
    private int add(TakeBy by, Measure measure, Side side, int place, Map<Integer, long[]> sums) {
        Map<Integer, Integer> stratumOf = new HashMap<>();
        Set<Integer> straddling = new LinkedHashSet<>();
        for (int row : side.rows) {
            int account = fates.account(row);
            int stratum = grouping.number(by, row);
            if (samples.set(row) > 0 && stratumOf.getOrDefault(account, stratum) != stratum) {
                straddling.add(account);
            }
            if (samples.set(row) > 0) {
                stratumOf.put(account, stratum);
            }
        }
        int leftOut = 0;
        for (int at = 0; at < side.rows.length; at++) {
            int row = side.rows[at];
            boolean unknown = by == TakeBy.MOTHER && samples.mother(row) <= 0;
            if (unknown || measure == Measure.ESTABLISHED && straddling.contains(fates.account(row))) {
                leftOut += Math.max(0, samples.set(row));
                continue;
            }
            long[] sum = sums.computeIfAbsent(grouping.number(by, row), one -> new long[4]);
            sum[place] += side.yes(measure, at);
            sum[place + 1] += side.known(measure, at);
        }
        return leftOut;
    }

    private List<Warning> warnings(List<Comparison> rows) {
        List<Warning> warnings = new ArrayList<>();
        for (Comparison row : rows) {
            for (SideYield side : List.of(row.first(), row.second())) {
                if (side.tally().isMuchPending()) {
                    warnings.add(new Warning(
                            "much-pending",
                            (row.group().isPresent() ? row.shown() + ", " : "") + side.name() + ": "
                                    + side.tally().pending() + " of "
                                    + side.tally().counting()
                                    + " are not known yet, more than a fifth; the rate may still change much"));
                }
            }
        }
        return warnings;
    }
}
