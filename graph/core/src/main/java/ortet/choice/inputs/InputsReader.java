package ortet.choice.inputs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.History;
import ortet.book.Listings;
import ortet.book.Lookup;
import ortet.book.Progress;
import ortet.book.UnitFacts.Method;
import ortet.book.UnitFacts.Nature;
import ortet.choice.Aim;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Costs;
import ortet.choice.Draws;
import ortet.choice.Limits;
import ortet.choice.Mother;
import ortet.choice.Needs;
import ortet.choice.Outlet;
import ortet.choice.Raising;
import ortet.choice.Rates;
import ortet.choice.SeasonEffects;
import ortet.choice.SetUp;
import ortet.choice.Settings;
import ortet.choice.Trial;
import ortet.choice.Ways;
import ortet.choice.Worth;
import ortet.entry.CultivarListed;
import ortet.entry.Task;
import ortet.figures.GroupDraws;
import ortet.lineage.Clones;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.money.Tariff;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.PlacesOfUnits;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.nursery.Turn;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.yield.Past;

/** Reads what the choice of stock rests on out of the book (docs/methods/choice.md). */
public final class InputsReader {
    /** How many plants are looked at, those kept as stock first, then those used as mothers last. */
    public static final int MOST = 20_000;

    private static final String NO_PLACE = "place not known";
    private static final String BENCH = "growing on";
    private static final int TRIAL = 6;
    private static final int LEAST_DRAWS = 200;
    private static final double PERCENTILE = 0.95;
    private static final int ENOUGH_SET = 10;
    private static final LocalDate USUAL_END = LocalDate.of(2001, 7, 31);
    private static final double ESTABLISHING = 0.9;
    /** The walk to a mother, and tools laid out: five minutes. */
    private static final double GOING_HOURS = 5.0 / 60;

    private static final List<Method> PLANNED = List.of(Method.LAYER, Method.CUTTING);
    private static final int NAMED = 8;

    private final BookView view;
    private final Snapshot snapshot;
    private final ChoiceRequest request;
    private final Progress progress;
    private final Names names;
    private final Past past;
    private final Lives lives;
    private final List<String> notes = new ArrayList<>();
    private final List<Explained> explained = new ArrayList<>();
    private final Map<Method, GroupDraws> seasons = new HashMap<>();
    private final Map<Method, Map<Integer, Past.Judged>> judged = new HashMap<>();
    private final Map<Method, Integer> seasonsJudged = new HashMap<>();
    private final Map<String, List<MotherDiary>> members = new HashMap<>();
    private final int lastDay;
    private final int firstYear;

    /** A plant that may be a candidate. */
    private record Plant(int unit, boolean stock, int lastUsed) {}

    private InputsReader(BookView view, Snapshot snapshot, ChoiceRequest request, Progress progress) {
        this.view = view;
        this.snapshot = snapshot;
        this.request = request;
        this.progress = progress;
        this.names = Names.of(snapshot);
        this.past = Past.of(snapshot);
        this.lives = snapshot.lives();
        this.lastDay = lastDay();
        this.firstYear = season(request.asOf());
    }

    /** Return the parts of a snapshot that this needs. */
    public static Set<Part> parts() {
        Set<Part> parts = EnumSet.copyOf(Past.parts());
        parts.addAll(Clones.parts());
        return parts;
    }

    /**
     * Read.
     *
     * @param snapshot of the day asked about, with the parts needed
     * @throws Refused when the cultivar asked for is not in the book, when a margin is asked for and no price is listed, or
     *     when costs and prices are in several currencies
     */
    public static ChoiceInputs read(BookView view, Snapshot snapshot, ChoiceRequest request, Progress progress) {
        return new InputsReader(view, snapshot, request, progress).read();
    }

    // ---- seasons ----

    /** Return the day of the year after which hardly any layer was ever set. */
    private int lastDay() {
        int[] days = Arrays.stream(past.rows(Method.LAYER))
                .filter(row -> snapshot.cohorts().isExact(row))
                .map(row ->
                        LocalDate.ofEpochDay(snapshot.cohorts().firstDay(row)).getDayOfYear())
                .sorted()
                .toArray();
        return days.length < ENOUGH_SET ? USUAL_END.getDayOfYear() : days[(int) (PERCENTILE * (days.length - 1))];
    }

    /** Return the year in whose season for setting layers a day counts: the next one when it is over. */
    private int season(LocalDate day) {
        return day.getDayOfYear() > lastDay ? day.getYear() + 1 : day.getYear();
    }

    // ---- all of it ----

    private ChoiceInputs read() {
        List<Plant> plants = plants();
        if (plants.isEmpty()) {
            return ChoiceInputs.nothing(
                    "Nothing to choose among yet: no plant is kept as stock (\"keep TAG\" says so) or has given a layer or a"
                            + " cutting.",
                    firstYear,
                    notes);
        }
        Optional<Set<CultivarName>> wanted = request.cultivar()
                .map(name -> Lookup.cultivars(
                        view,
                        name,
                        plants.stream()
                                .map(Plant::unit)
                                .map(names::name)
                                .filter(one -> one >= 0)
                                .map(snapshot.cultivars()::get)
                                .collect(Collectors.toSet())));
        Tariff tariff = Tariff.of(view, request.asOf());
        Optional<Currency> currency = currency(tariff);
        if (request.aim() == Aim.MARGIN && tariff.prices().isEmpty()) {
            throw Refused.because(
                    "no-prices",
                    "no price is listed, so nothing has a margin; list prices with \"price set\" and costs with \"cost work\","
                            + " \"cost material\", \"cost hour\", \"cost bench\" and \"cost space\", or ask with --aim demand");
        }
        Map<Integer, MotherDiary> diaries = diaries(plants);
        List<MotherBand> bands = Woods.bands(diaries.values());
        Regrowth regrowth = Regrowth.of(diaries.values());
        explain(
                "all",
                "season",
                Integer.toString(firstYear),
                "the year of the day asked about; the next when the day is"
                        + " after the one by which 95 % of all layers were set (31 July, common practice, where fewer than 10 were)",
                past.rows(Method.LAYER).length + " layers set");
        explain(
                "all",
                "regrowth of wood",
                regrowth.told(),
                "mean of countings by years since cropping",
                "entries measured, with positions");
        Woods woods = new Woods(bands, regrowth, firstYear, request.years());
        Rearing rearing = new Rearing(snapshot, past, woods);
        gather(diaries, rearing);
        int draws = Math.max(LEAST_DRAWS, request.draws());
        Map<Method, Optional<GroupDraws>> takes = new HashMap<>();
        Map<Method, Optional<GroupDraws>> establishments = new HashMap<>();
        int step = 0;
        for (Method method : PLANNED) {
            progress.at("reading how " + (method == Method.LAYER ? "layers" : "cuttings") + " took", step++, 4);
            Optional<Past.Takes> took = past.take(method, draws, request.seed());
            takes.put(method, took.map(Past.Takes::mothers));
            took.ifPresent(one -> seasons.put(method, one.seasons()));
            explain(
                    "all",
                    method == Method.LAYER ? "model of layers" : "model of cuttings",
                    took.map(one -> one.plain() ? "mothers and seasons apart" : "mothers, seasons and trays together")
                            .orElse("none"),
                    "binomial mixed model; apart where so little is known that either is estimated not to differ",
                    past.rows(method).length + " cohorts");
            establishments.put(
                    method, past.establishment(method).draws(List.of(Past.CULTIVAR), draws, request.seed() + 1));
            progress.at("reading what growing on costs", step++, 4);
            rearing.price(view, tariff, method);
            rearing.explainCosts(method, money(tariff), explained);
        }
        if (takes.values().stream().allMatch(Optional::isEmpty)) {
            return ChoiceInputs.nothing(
                    "Nothing can be reckoned yet: of no layer and no cutting from a mother is it known whether it took."
                            + " Record what was severed, drawn and failed, and ask again.",
                    firstYear,
                    notes);
        }
        List<Plant> chosen = plants.stream()
                .filter(plant -> wanted.isEmpty()
                        || names.name(plant.unit()) >= 0
                                && wanted.get().contains(snapshot.cultivars().get(names.name(plant.unit()))))
                .toList();
        if (chosen.isEmpty()) {
            return ChoiceInputs.nothing(
                    "Nothing to choose among: no plant of this name is kept as stock or has been a mother.",
                    firstYear,
                    notes);
        }
        LimitsRead limits = new LimitsRead(request.limits(), firstYear, request.years(), view);
        return question(
                chosen,
                plants,
                diaries,
                bands,
                regrowth,
                woods,
                rearing,
                takes,
                establishments,
                tariff,
                currency,
                limits,
                draws);
    }

    private void explain(String of, String figure, String value, String method, String source) {
        explained.add(new Explained(of, figure, value, method, source));
    }

    /** Return the currency of what is listed, or a word for it where nothing is. */
    private String money(Tariff tariff) {
        return currency(tariff).map(Currency::getCurrencyCode).orElse("in money");
    }

    private Optional<Currency> currency(Tariff tariff) {
        SortedMap<String, Long> currencies = tariff.currencies();
        if (currencies.size() > 1) {
            throw Refused.because(
                    "mixed-currencies",
                    "costs and prices are listed in "
                            + currencies.entrySet().stream()
                                    .map(one -> one.getKey() + " (first in #" + one.getValue() + ")")
                                    .collect(Collectors.joining(" and "))
                            + "; expected one currency");
        }
        return currencies.keySet().stream().findFirst().map(Currency::getInstance);
    }

    // ---- who ----

    /** Return the plants that grow and are stock or were mothers; those kept as stock first, then the last used. */
    private List<Plant> plants() {
        List<Plant> found = new ArrayList<>();
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            if (!snapshot.isThere(unit)
                    || snapshot.nature(unit) == Nature.SPORT
                    || !snapshot.isSingle(unit)
                    || snapshot.growing(unit) <= 0) {
                continue;
            }
            boolean stock = false;
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                stock = lives.turn(at) == Turn.STOCK || stock && lives.turn(at) != Turn.NO_STOCK;
            }
            int last = Integer.MIN_VALUE;
            for (int at = 0; at < snapshot.countDown(unit); at++) {
                int link = snapshot.down(unit, at);
                Act act = snapshot.act(link);
                if ((act.isLayering() || act == Act.STRUCK_FROM) && snapshot.isThere(snapshot.child(link))) {
                    last = Math.max(last, snapshot.begunDay(snapshot.child(link)));
                }
            }
            if (stock || last > Integer.MIN_VALUE) {
                found.add(new Plant(unit, stock, last));
            }
        }
        found.sort(Comparator.comparing((Plant plant) -> !plant.stock())
                .thenComparing(Comparator.comparingInt(Plant::lastUsed).reversed())
                .thenComparingInt(Plant::unit));
        if (found.size() > MOST) {
            notes.add((found.size() - MOST) + " of " + found.size()
                    + " plants are left out: at most " + MOST
                    + " are planned, those kept as stock first, then those used last"
                    + " (--cultivar asks for fewer)");
            return List.copyOf(found.subList(0, MOST));
        }
        return found;
    }

    private Map<Integer, MotherDiary> diaries(List<Plant> plants) {
        Map<Integer, MotherDiary> diaries = new LinkedHashMap<>();
        for (Plant plant : plants) {
            progress.at("reading diaries", diaries.size(), plants.size());
            UnitNumber unit = new UnitNumber(plant.unit());
            diaries.put(
                    plant.unit(),
                    new MotherDiary(
                            History.of(view, unit, request.asOf()), view.tags(unit), request.asOf(), this::season));
        }
        return diaries;
    }

    /** Return the circles of mothers by whom one may be told: her cultivar, her species, her genus, all. */
    private List<Regrowth.Circle> circles(int unit, Rearing rearing) {
        return around(unit, rearing).stream()
                .map(name -> new Regrowth.Circle(name, members.getOrDefault(name, List.of())))
                .toList();
    }

    private Set<String> around(int unit, Rearing rearing) {
        int name = names.name(unit);
        return new LinkedHashSet<>(List.of(rearing.name(name), rearing.species(name), rearing.genus(name), "all"));
    }

    /** Sort the diaries into the circles by which others are told. */
    private void gather(Map<Integer, MotherDiary> diaries, Rearing rearing) {
        diaries.forEach((unit, diary) -> around(unit, rearing)
                .forEach(circle -> members.computeIfAbsent(circle, key -> new ArrayList<>())
                        .add(diary)));
    }

    // ---- the question ----

    private ChoiceInputs question(
            List<Plant> chosen,
            List<Plant> plants,
            Map<Integer, MotherDiary> diaries,
            List<MotherBand> bands,
            Regrowth regrowth,
            Woods woods,
            Rearing rearing,
            Map<Method, Optional<GroupDraws>> takes,
            Map<Method, Optional<GroupDraws>> establishments,
            Tariff tariff,
            Optional<Currency> currency,
            LimitsRead limits,
            int draws) {
        List<Integer> units = chosen.stream().map(Plant::unit).toList();
        Map<Integer, Tag> tags = TagsOfUnits.of(view, units, request.asOf());
        Map<Integer, Place> places = PlacesOfUnits.of(view, units, request.asOf());
        Clones clones = Clones.of(snapshot);
        Set<Integer> firsts = new TreeSet<>();
        units.forEach(unit -> firsts.add(Math.max(clones.first(unit), 0)));
        firsts.remove(0);
        Map<Integer, Tag> ortets = TagsOfUnits.of(view, firsts, request.asOf());
        Listings listings = Listings.of(view);
        Map<Integer, String> growingAt = growingAt(limits);
        Optional<Integer> setIn = limits.isBySeason() ? Optional.of(LimitsRead.season(usualMonth())) : Optional.empty();

        Map<Integer, Ways> ways = new TreeMap<>();
        List<Mother> mothers = new ArrayList<>();
        List<Candidate> candidates = new ArrayList<>();
        List<String> barred = new ArrayList<>();
        List<String> bare = new ArrayList<>();
        Set<String> unlicensed = new TreeSet<>();
        for (Plant plant : chosen) {
            int unit = plant.unit();
            int name = names.name(unit);
            MotherDiary diary = diaries.get(unit);
            String tag = tags.get(unit).text();
            String cultivar = rearing.name(name);
            List<Regrowth.Circle> circles = circles(unit, rearing);
            Optional<CultivarListed> listed = name < 0
                    ? Optional.empty()
                    : listings.cultivar(snapshot.cultivars().get(name));
            double growthMm = listed.flatMap(CultivarListed::growthMm)
                    .map(mm -> mm.value().doubleValue())
                    .orElse(0.0);
            Woods.Full full = woods.full(diary, circles);
            double cuttings = cuttings(tag, diary, circles);
            Regrowth.Rest rest = Regrowth.rest(circles);
            Optional<Integer> last = diary.layered().isEmpty()
                    ? Optional.empty()
                    : Optional.of(diary.layered().last());
            boolean tried = takes.get(Method.LAYER)
                    .map(all -> all.knows(Past.MOTHER, Integer.toString(unit)))
                    .orElse(false);
            Rates rates = rates(tag, unit, name, takes, establishments, full, draws);
            if (diary.held) {
                barred.add(tag);
            }
            if (full.from() == Candidate.WoodFrom.NOTHING) {
                bare.add(tag);
            }
            if (name >= 0 && listings.isProtected(snapshot.cultivars().get(name), request.asOf())) {
                unlicensed.add(cultivar);
            }
            ortet.choice.Growth growth = woods.growth(diary, full, growthMm, cuttings);
            int now = growth.leftLong().get(0).positions().stream()
                    .mapToInt(Integer::intValue)
                    .sum();
            Optional<Worth> asTree = asTree(unit, name, tariff, diary);
            Optional<Place> place = Optional.ofNullable(places.get(unit));
            String stands = place.map(Place::name).orElse(NO_PLACE);
            mothers.add(new Mother(
                    tag,
                    cultivar,
                    Optional.ofNullable(ortets.get(clones.first(unit)))
                            .map(Tag::text)
                            .orElse(tag),
                    stands,
                    1,
                    rest.years(),
                    last.map(season -> Math.max(0, season + rest.years() - firstYear))
                            .orElse(0),
                    diary.held ? request.years() : 0,
                    growth,
                    asTree,
                    asTree.orElse(Worth.NOTHING),
                    upkeep(tariff, place, limits, false, setIn),
                    upkeep(tariff, place, limits, true, setIn),
                    rates,
                    tried || now == 0 || takes.get(Method.LAYER).isEmpty()
                            ? Optional.empty()
                            : trial(rates, Math.min(TRIAL, now))));
            candidates.add(new Candidate(
                    unit,
                    tags.get(unit),
                    name < 0 ? Optional.empty() : Optional.of(cultivar),
                    place.map(Place::name),
                    plant.stock(),
                    diary.held,
                    tried,
                    evidence(unit),
                    full.from(),
                    last));
            explain(tag, "positions when rested", told(full.full(), bands), wordsOf(full), from(full));
            explain(
                    tag,
                    "positions this season",
                    told(growth, bands),
                    "those, by years since she was cropped, thickened by " + growthMm + " mm a year",
                    "diary and listing of the cultivar");
            explain(
                    tag,
                    "years between layerings",
                    Integer.toString(rest.years()),
                    rest.intervals() == 0 ? "common practice" : "median of " + rest.intervals() + " intervals",
                    rest.of());
            if (!ways.containsKey(name)) {
                ways.put(name, ways(name, cultivar, bands, rearing, takes, growingAt, setIn));
            }
        }
        List<Outlet> outlets = outlets(ways, rearing, tariff);
        notes(barred, bare, unlicensed, rearing, candidates);
        Settings settings = Settings.DEFAULTS
                .aim(request.aim())
                .years(request.years())
                .draws(request.draws())
                .discount(request.discount())
                .atMost(request.atMost());
        Limits within = limits.limits(unlicensed, this::wholeName);
        notes.addAll(limits.notes());
        return new ChoiceInputs(
                Optional.of(new ChoiceQuestion(
                        mothers,
                        List.copyOf(ways.values()),
                        outlets,
                        within,
                        Costs.NONE,
                        seasons(),
                        goings(tariff, setIn),
                        settings)),
                "",
                candidates,
                bands,
                limits.seasons(),
                firstYear,
                currency,
                notes,
                explained);
    }

    private Evidence evidence(int unit) {
        int[] units = new int[PLANNED.size()];
        int seasons = 0;
        int all = 0;
        for (int at = 0; at < units.length; at++) {
            Method method = PLANNED.get(at);
            Past.Judged hers =
                    judged.computeIfAbsent(method, past::judgedByMother).getOrDefault(unit, Past.Judged.NONE);
            units[at] = hers.units();
            seasons = Math.max(seasons, hers.seasons());
            all = Math.max(
                    all,
                    seasonsJudged.computeIfAbsent(
                            method, one -> past.judged(one).seasons()));
        }
        return new Evidence(units[0], units[1], seasons, all);
    }

    private static String from(Woods.Full full) {
        return switch (full.from()) {
            case MEASURED -> "her own counting";
            case OTHERS -> full.behind() + " mothers counted of " + full.of();
            case SET_BEFORE -> full.behind() + " seasons in which layers were set, of " + full.of();
            case NOTHING -> "nothing";
        };
    }

    private static String wordsOf(Woods.Full full) {
        return switch (full.from()) {
            case MEASURED -> "measured on her, by the regrowth since her last cropping";
            case OTHERS -> "mean of those measured on others, in proportion to the stems";
            case SET_BEFORE -> "mean of the layers set in one season: common practice, for nobody counted positions";
            case NOTHING -> "nobody counted, and nothing was ever set";
        };
    }

    private static String told(double[] positions, List<MotherBand> bands) {
        StringBuilder told = new StringBuilder();
        for (int at = 0; at < bands.size(); at++) {
            told.append(at == 0 ? "" : ", ")
                    .append(String.format(java.util.Locale.ROOT, "%.1f", positions[at]))
                    .append(" of ")
                    .append(bands.get(at))
                    .append(" mm");
        }
        return told.toString();
    }

    private static String told(ortet.choice.Growth growth, List<MotherBand> bands) {
        return told(
                growth.leftLong().get(0).positions().stream()
                        .mapToDouble(Integer::doubleValue)
                        .toArray(),
                bands);
    }

    private double cuttings(String tag, MotherDiary diary, List<Regrowth.Circle> circles) {
        if (!diary.cuttings.isEmpty()) {
            double mean = diary.cuttings.stream()
                    .mapToInt(Integer::intValue)
                    .average()
                    .orElse(0);
            explain(
                    tag,
                    "cuttings",
                    cuttings(mean),
                    "mean of what she gave at one striking",
                    diary.cuttings.size() + " strikings");
            return mean;
        }
        for (Regrowth.Circle circle : circles) {
            List<Integer> all = circle.diaries().stream()
                    .flatMap(other -> other.cuttings.stream())
                    .toList();
            if (!all.isEmpty()) {
                double mean = all.stream().mapToInt(Integer::intValue).average().orElse(0);
                explain(
                        tag,
                        "cuttings",
                        cuttings(mean),
                        "mean of what others gave at one striking",
                        all.size() + " strikings of " + circle.name());
                return mean;
            }
        }
        return 0;
    }

    private static String cuttings(double mean) {
        return String.format(java.util.Locale.ROOT, "%.1f", mean);
    }

    private Rates rates(
            String tag,
            int unit,
            int name,
            Map<Method, Optional<GroupDraws>> takes,
            Map<Method, Optional<GroupDraws>> establishments,
            Woods.Full full,
            int draws) {
        Draws[] take = new Draws[2];
        Draws[] establish = new Draws[2];
        for (int at = 0; at < 2; at++) {
            Method method = PLANNED.get(at);
            take[at] = takes.get(method)
                    .map(all -> Draws.of(take(all, unit, name)))
                    .orElse(Draws.of(0));
            Optional<GroupDraws> model = establishments
                    .get(method)
                    .or(() -> establishments.get(method == Method.LAYER ? Method.CUTTING : Method.LAYER));
            establish[at] =
                    model.map(all -> Draws.of(logistic(established(all, name)))).orElse(Draws.of(ESTABLISHING));
            explain(
                    tag,
                    method == Method.LAYER ? "layers taken that establish" : "cuttings taken that establish",
                    model.map(all -> percent(logistic(established(all, name)))).orElse("90 %"),
                    model.isPresent()
                            ? "mean and 90 % of draws from a binomial mixed model of cultivars and seasons"
                            : "common practice",
                    establishments.get(method).isPresent()
                            ? "what became of those taken"
                            : "the other method, or nothing");
            if (takes.get(method).isPresent()) {
                GroupDraws all = takes.get(method).get();
                String from = all.knows(Past.MOTHER, Integer.toString(unit))
                        ? "her own layers or cuttings, with the help of the others"
                        : all.knows(Past.CULTIVAR, Integer.toString(name))
                                ? "untried: her cultivar's others, and how far mothers lie apart"
                                : "untried: all cultivars, and how far they and mothers lie apart";
                explain(
                        tag,
                        method == Method.LAYER ? "take of layers" : "take of cuttings",
                        percent(logistic(take(all, unit, name))),
                        "mean and 90 % of " + all.draws() + " draws from a binomial mixed model, docs/methods/mixed.md",
                        from);
            }
        }
        Draws wood = full.spread() == 0 ? Draws.of(1) : spread(full.spread(), unit, draws);
        return new Rates(take[0], establish[0], take[1], establish[1], wood);
    }

    private static String percent(double[] shares) {
        double[] sorted = shares.clone();
        Arrays.sort(sorted);
        return String.format(
                java.util.Locale.ROOT,
                "%.0f %% (%.0f to %.0f)",
                100 * Arrays.stream(shares).average().orElse(0),
                100 * sorted[(int) (0.05 * (sorted.length - 1))],
                100 * sorted[(int) (0.95 * (sorted.length - 1))]);
    }

    private Draws spread(double deviation, int unit, int draws) {
        double[] factors = new double[draws];
        java.util.SplittableRandom random = new java.util.SplittableRandom(request.seed() * 1_000_003 + unit);
        for (int draw = 0; draw < draws; draw++) {
            factors[draw] = Math.exp(deviation * random.nextGaussian() - deviation * deviation / 2);
        }
        return Draws.of(factors);
    }

    private static double[] take(GroupDraws all, int unit, int name) {
        String mother = Integer.toString(unit);
        String cultivar = Integer.toString(name);
        if (all.knows(Past.MOTHER, mother)) {
            return all.of(Past.MOTHER, mother);
        }
        double[] around = all.knows(Past.CULTIVAR, cultivar)
                ? all.of(Past.CULTIVAR, cultivar)
                : GroupDraws.plus(all.average(), all.unmet(Past.CULTIVAR, name));
        return GroupDraws.plus(around, all.unmet(Past.MOTHER, unit));
    }

    private static double[] established(GroupDraws all, int name) {
        String cultivar = Integer.toString(name);
        return all.knows(Past.CULTIVAR, cultivar)
                ? all.of(Past.CULTIVAR, cultivar)
                : GroupDraws.plus(all.average(), all.unmet(Past.CULTIVAR, name));
    }

    private static double[] logistic(double[] logOdds) {
        return Arrays.stream(logOdds).map(one -> 1 / (1 + Math.exp(-one))).toArray();
    }

    /** Return the trial, with a beta distribution of the mean and variance of her take's draws. */
    private static Optional<Trial> trial(Rates rates, int layers) {
        int draws = rates.layerTake().size();
        double mean = 0;
        double square = 0;
        for (int draw = 0; draw < draws; draw++) {
            double share = 1 / (1 + Math.exp(-rates.layerTake().at(draw)));
            mean += share / draws;
            square += share * share / draws;
        }
        double variance = square - mean * mean;
        double sum = mean * (1 - mean) / Math.max(1e-9, variance) - 1;
        return sum > 0 && mean > 0 && mean < 1
                ? Optional.of(new Trial(layers, mean * sum, (1 - mean) * sum))
                : Optional.empty();
    }

    private SeasonEffects seasons() {
        List<List<Draws>> both = new ArrayList<>();
        for (Method method : PLANNED) {
            List<Draws> list = new ArrayList<>();
            Optional.ofNullable(seasons.get(method)).ifPresent(all -> {
                for (int year = 0; year < request.years(); year++) {
                    list.add(Draws.of(all.unmet(Past.SEASON, firstYear + year)));
                }
            });
            both.add(list);
        }
        return new SeasonEffects(both.get(0), both.get(1));
    }

    /** Return what a plant would fetch as a tree: the price of the size class that she was graded in last. */
    private Optional<Worth> asTree(int unit, int name, Tariff tariff, MotherDiary diary) {
        int size = -1;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            size = lives.turn(at) == Turn.GRADED ? lives.value(at) : size;
        }
        return size < 0 || diary.reserved || diary.held
                ? Optional.empty()
                : tariff.price(
                                lives.sizes().get(size),
                                name < 0
                                        ? Optional.empty()
                                        : Optional.of(snapshot.cultivars().get(name)))
                        .map(Cost::of)
                        .map(price -> Worth.always(price.value().doubleValue()));
    }

    /** Return what a mother needs in a year: her room, and the work of cutting her back. */
    private Needs upkeep(
            Tariff tariff, Optional<Place> place, LimitsRead limits, boolean cut, Optional<Integer> season) {
        double area = tariff.unitsPerM2(Optional.empty(), Optional.empty(), place)
                .map(units -> 1 / units.value().doubleValue())
                .orElse(0.0);
        double money = tariff.bench(place)
                .map(Cost::of)
                .map(cost -> cost.value().doubleValue() * area)
                .orElse(0.0);
        double hours = 0;
        if (cut) {
            for (Charge charge : tariff.work(Task.CUT_BACK, Optional.empty(), Optional.of(1))) {
                hours += charge.hours().doubleValue();
                money += charge.cost().map(cost -> cost.value().doubleValue()).orElse(0.0);
            }
        }
        String where = limits.place(place);
        return new Needs(
                money,
                hours == 0 ? List.of() : Rearing.within(hours, season.map(one -> 0)),
                area == 0 ? List.of() : limits.evenly(area),
                area == 0 ? "" : where);
    }

    /** Return what going to a mother takes: as listed for each mother, else five minutes. */
    private SetUp goings(Tariff tariff, Optional<Integer> setIn) {
        Optional<Integer> winter = setIn.map(one -> 0);
        return new SetUp(
                going(tariff.visits(Task.LAYER_SET, BigFraction.ONE), "layer her", tariff, setIn),
                going(tariff.visits(Task.CUTTINGS_STRUCK, BigFraction.ONE), "take cuttings", tariff, setIn),
                // the work of cutting back is listed for one plant, and so for one mother
                tariff.work(Task.CUT_BACK, Optional.empty(), Optional.of(1)).stream()
                                .anyMatch(Charge::isPriced)
                        ? Needs.NONE
                        : going(List.of(), "cut her back", tariff, winter),
                going(
                        tariff.work(Task.SOLD, Optional.empty(), Optional.of(1)).stream()
                                .filter(Charge::isPriced)
                                .toList(),
                        "sell her",
                        tariff,
                        setIn));
    }

    private Needs going(List<Charge> listed, String what, Tariff tariff, Optional<Integer> season) {
        double hours = GOING_HOURS;
        double money = GOING_HOURS
                * tariff.wage(Optional.empty())
                        .map(amount -> Cost.of(amount).value().doubleValue())
                        .orElse(0.0);
        if (!listed.isEmpty()) {
            hours = listed.stream()
                    .mapToDouble(charge -> charge.hours().doubleValue())
                    .sum();
            money = listed.stream()
                    .mapToDouble(charge -> charge.cost()
                            .map(cost -> cost.value().doubleValue())
                            .orElse(0.0))
                    .sum();
        }
        explain(
                "all",
                "going to a mother to " + what,
                String.format(java.util.Locale.ROOT, "%.2f hours, %.2f %s", hours, money, money(tariff)),
                "once for each mother and year, however much is done with her",
                listed.isEmpty()
                        ? "common practice (5 minutes), for nobody listed it (\"cost work\" with --per-mother)"
                        : "listed in "
                                + listed.stream()
                                        .flatMap(charge -> charge.sources().stream())
                                        .distinct()
                                        .map(order -> "#" + order)
                                        .collect(Collectors.joining(", ")));
        return new Needs(money, hours == 0 ? List.of() : Rearing.within(hours, season), List.of(), "");
    }

    private int usualMonth() {
        int[] months = Arrays.stream(past.rows(Method.LAYER))
                .map(row ->
                        LocalDate.ofEpochDay(snapshot.cohorts().firstDay(row)).getMonthValue())
                .sorted()
                .toArray();
        return months.length == 0 ? 5 : months[months.length / 2];
    }

    /** Return by cultivar the place where its young trees mostly stand, as the limits name it. */
    private Map<Integer, String> growingAt(LimitsRead limits) {
        Map<Integer, String> found = new HashMap<>();
        if (!limits.hasRoom()) {
            return found;
        }
        Map<Integer, Integer> cultivars = new HashMap<>();
        for (Past.Ended one : past.ended()) {
            if (one.end() == Past.End.GROWING_ON && one.count() > 0) {
                cultivars.put(one.unit(), past.cultivar(one.row()));
            }
        }
        Map<Integer, Map<String, Integer>> counts = new TreeMap<>();
        PlacesOfUnits.of(view, cultivars.keySet(), request.asOf())
                .forEach((unit, place) -> counts.computeIfAbsent(cultivars.get(unit), key -> new TreeMap<>())
                        .merge(limits.place(Optional.of(place)), 1, Integer::sum));
        counts.forEach((cultivar, at) -> at.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue())
                .ifPresent(most -> found.put(cultivar, most.getKey())));
        return found;
    }

    private Ways ways(
            int name,
            String cultivar,
            List<MotherBand> bands,
            Rearing rearing,
            Map<Method, Optional<GroupDraws>> takes,
            Map<Integer, String> growingAt,
            Optional<Integer> season) {
        String place = growingAt.getOrDefault(name, BENCH);
        List<List<Raising>> layers = new ArrayList<>();
        for (int band = 0; band < bands.size(); band++) {
            Rearing.Graded graded = rearing.graded(Method.LAYER, name, Optional.of(band));
            layers.add(
                    takes.get(Method.LAYER).isEmpty() || graded.grades().isEmpty()
                            ? List.of()
                            : List.of(rearing.raising(Method.LAYER, graded, place, season)));
            explainGrades(cultivar, "layers of " + bands.get(band) + " mm", graded);
        }
        Rearing.Graded graded = rearing.graded(Method.CUTTING, name, Optional.empty());
        explainGrades(cultivar, "cuttings", graded);
        return new Ways(
                cultivar,
                layers,
                takes.get(Method.CUTTING).isEmpty() || graded.grades().isEmpty()
                        ? List.of()
                        : List.of(rearing.raising(Method.CUTTING, graded, place, season)));
    }

    private void explainGrades(String cultivar, String what, Rearing.Graded graded) {
        explain(
                cultivar,
                "what becomes of " + what,
                graded.grades().stream()
                        .map(grade -> Math.round(100 * grade.share()) + " % " + grade.sizeClass() + " after "
                                + grade.years() + (grade.years() == 1 ? " year" : " years"))
                        .collect(Collectors.collectingAndThen(
                                Collectors.joining(", "), all -> all.isEmpty() ? "nothing known" : all)),
                "incidence of each end, those that grow on told apart (Aalen and Johansen), leaning on wider kinds"
                        + " (Dirichlet); median years",
                (graded.followed() == 0
                                ? "no tree followed"
                                : graded.followed() + " trees of " + graded.of() + ", the end of " + graded.behind()
                                        + " known")
                        + (graded.leaning().isBlank() ? "" : "; leaning on " + graded.leaning()));
    }

    private List<Outlet> outlets(Map<Integer, Ways> ways, Rearing rearing, Tariff tariff) {
        int longest = ways.values().stream()
                .flatMap(one -> java.util.stream.Stream.concat(
                        one.layers().stream().flatMap(List::stream), one.cuttings().stream()))
                .flatMap(raising -> raising.grades().stream())
                .mapToInt(ortet.choice.Grade::years)
                .max()
                .orElse(0);
        Demands demands = new Demands(snapshot, firstYear, request.years() + longest + 1);
        Map<Demands.Kind, Double> sold = request.demand().isPresent() ? Map.of() : demands.sold();
        Map<Demands.Kind, double[]> ready = demands.onTheWay(past, rearing);
        Map<Demands.Kind, List<DemandLine>> lines = lines();
        List<Outlet> outlets = new ArrayList<>();
        Set<String> unpriced = new TreeSet<>();
        for (Map.Entry<Integer, Ways> one : ways.entrySet()) {
            Set<String> sizes = new TreeSet<>();
            one.getValue()
                    .layers()
                    .forEach(band ->
                            band.forEach(raising -> raising.grades().forEach(grade -> sizes.add(grade.sizeClass()))));
            one.getValue()
                    .cuttings()
                    .forEach(raising -> raising.grades().forEach(grade -> sizes.add(grade.sizeClass())));
            for (String size : sizes) {
                Demands.Kind kind = new Demands.Kind(one.getKey(), size);
                Optional<Double> price = tariff.price(
                                size,
                                one.getKey() < 0
                                        ? Optional.empty()
                                        : Optional.of(snapshot.cultivars().get(one.getKey())))
                        .map(Cost::of)
                        .map(cost -> cost.value().doubleValue());
                if (price.isEmpty()) {
                    unpriced.add(size);
                }
                double[] asked = request.demand().isPresent()
                        ? demands.asked(lines.getOrDefault(kind, List.of()))
                        : demands.everyYear(sold.getOrDefault(kind, 0.0));
                List<Double> net = Demands.net(asked, ready.getOrDefault(kind, demands.everyYear(0)));
                outlets.add(new Outlet(one.getValue().cultivar(), size, price.orElse(0.0), 0, net));
                explain(
                        one.getValue().cultivar(),
                        "demand for " + size,
                        String.format(
                                java.util.Locale.ROOT,
                                "%.1f a year, of which the nursery's own trees on the way leave %.1f over %d %s",
                                asked[0],
                                net.stream()
                                        .limit(request.years())
                                        .mapToDouble(Double::doubleValue)
                                        .sum(),
                                request.years(),
                                request.years() == 1 ? "year" : "years"),
                        "trees asked for, less those graded, growing on and set already",
                        request.demand().isPresent()
                                ? "the demand file"
                                : "sales from " + demands.from() + " to " + request.asOf());
            }
        }
        if (request.demand().isEmpty()) {
            notes.add("demand: what was sold a year from " + demands.from() + " to " + request.asOf()
                    + ", by cultivar and size class, less what is on the way already (--demand FILE tells it)");
        }
        int[] ungraded = rearing.ungraded();
        if (request.aim() == Aim.MARGIN && unpriced.remove(Tariff.UNGRADED)) {
            notes.add(
                    ungraded[0] + " of " + ungraded[1]
                            + " trees from layers and cuttings were sold ungraded, and no price"
                            + " is listed for such, so that those to come count for nothing (\"price set ungraded\" lists one)");
        }
        if (request.aim() == Aim.MARGIN && !unpriced.isEmpty()) {
            notes.add("no price is listed for every cultivar of " + String.join(", ", unpriced)
                    + ": such trees count for nothing (\"price set\" lists one)");
        }
        return outlets;
    }

    private Map<Demands.Kind, List<DemandLine>> lines() {
        Map<Demands.Kind, List<DemandLine>> lines = new HashMap<>();
        List<Fault> faults = new ArrayList<>();
        for (DemandLine line : request.demand().orElse(List.of())) {
            try {
                int name = snapshot.cultivars().indexOf(one(line.cultivar(), "demand"));
                lines.computeIfAbsent(new Demands.Kind(name, size(line.size())), key -> new ArrayList<>())
                        .add(line);
            } catch (Refused refused) {
                refused.faults()
                        .forEach(fault -> faults.add(line.at().map(fault::at).orElse(fault)));
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        return lines;
    }

    private String wholeName(String word) {
        return one(word, "a licence").toString();
    }

    /** Return the one cultivar that a name stands for. */
    private CultivarName one(String word, String what) {
        Set<CultivarName> meant = Lookup.cultivars(view, word, snapshot.cultivars());
        return meant.stream()
                .filter(one -> meant.size() == 1 || one.toString().equalsIgnoreCase(word))
                .findFirst()
                .orElseThrow(() -> Refused.because(
                        "several-cultivars",
                        what + " for \"" + word + "\": expected one cultivar, but these are so called: "
                                + named(meant.stream()
                                        .map(CultivarName::toString)
                                        .sorted()
                                        .toList())));
    }

    private String size(String word) {
        List<String> known = new ArrayList<>(lives.sizes());
        known.add(Tariff.UNGRADED);
        return known.stream()
                .filter(word::equalsIgnoreCase)
                .findFirst()
                .orElseThrow(() -> new Refused(Fault.of(
                                "unknown-size",
                                "nothing was ever graded in the size class \"" + word + "\"; there are "
                                        + String.join(", ", known))
                        .nearest(Nearest.of(word, known))));
    }

    private void notes(
            List<String> barred,
            List<String> bare,
            Set<String> unlicensed,
            Rearing rearing,
            List<Candidate> candidates) {
        if (!barred.isEmpty()) {
            notes.add("held for plant health, so that nothing is taken: " + named(barred));
        }
        if (!unlicensed.isEmpty()) {
            notes.add("protected, and no licence is listed: " + String.join("; ", unlicensed)
                    + "; propagating without the right holder's licence can be unlawful");
        }
        if (!bare.isEmpty()) {
            notes.add("nobody counted positions, and nothing was ever set: " + named(bare)
                    + "; \"measure\" tells positions");
        }
        long expected = candidates.stream()
                .filter(one -> one.wood() == Candidate.WoodFrom.OTHERS || one.wood() == Candidate.WoodFrom.SET_BEFORE)
                .count();
        if (expected > 0) {
            notes.add("positions of " + expected + " of " + candidates.size()
                    + " mothers were never counted and are expected by others, or by what was set before (~)");
        }
        if (!rearing.missing().isEmpty()) {
            notes.add("not listed, and counted for nothing: " + named(List.copyOf(rearing.missing())));
        }
    }

    private static String named(List<String> all) {
        return all.stream().limit(NAMED).collect(Collectors.joining(", "))
                + (all.size() > NAMED ? " and " + (all.size() - NAMED) + " more" : "");
    }
}
