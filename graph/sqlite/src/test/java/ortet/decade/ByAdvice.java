package ortet.decade;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import ortet.book.BookView;
import ortet.book.Progress;
import ortet.book.UnitFacts.Method;
import ortet.choice.Advice;
import ortet.choice.Aim;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Chooser;
import ortet.choice.Deed;
import ortet.choice.Mother;
import ortet.choice.Plan;
import ortet.choice.PlanMother;
import ortet.choice.PlanOrder;
import ortet.choice.PlanOrders;
import ortet.choice.PlanQuestion;
import ortet.choice.Plans;
import ortet.choice.Rates;
import ortet.choice.SeasonEffects;
import ortet.choice.ToSet;
import ortet.choice.inputs.ChoiceInputs;
import ortet.choice.inputs.ChoiceRequest;
import ortet.choice.inputs.DemandLine;
import ortet.choice.inputs.InputsReader;
import ortet.choice.inputs.LimitLine;
import ortet.decade.Doing.What;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.value.Where;

/**
 * Does what {@code choose} says, and sets what {@code plan} asks for beyond that. All that is known of mothers and of their
 * layers is read out of the book; from the records come only what the two commands are told in files: the orders, what is
 * asked for, and the limits.
 */
final class ByAdvice implements Policy {
    private static final int YEARS = 5;
    private static final int LONGEST = 5;
    private static final Duration LONG = Duration.ofSeconds(20);
    private static final double NEAR = 0.1;

    private final Book book;
    private final Optional<ToDoubleFunction<Integer>> known;
    private final Set<List<Integer>> planned = new HashSet<>();
    private final Map<String, Double> spent = new TreeMap<>();

    /**
     * Ask for advice.
     *
     * @param book what was written down
     * @param known the true share of what is set on a mother that establishes, for one who knows; else empty
     */
    ByAdvice(Book book, Optional<ToDoubleFunction<Integer>> known) {
        this.book = book;
        this.known = known;
    }

    /** What the book answers in one year. */
    private record Answer(ChoiceInputs inputs, PlanOrders plans, List<List<Integer>> orders) {}

    @Override
    public List<Doing> decide(Records records) {
        LocalDate day = LocalDate.of(records.year(), 2, 15);
        Answer answer = book.store().read(view -> read(view, day, records));
        Map<Integer, Doing> doings = new TreeMap<>();
        Set<Integer> busy = new HashSet<>();
        Optional<ChoiceQuestion> question = answer.inputs().question().map(this::withWhatIsKnown);
        if (question.isPresent()) {
            long begin = now();
            for (Advice advice : Chooser.choose(question.get(), Progress.NONE).advice()) {
                int mother = number(advice.mother());
                doing(advice, mother, records).ifPresent(doing -> doings.put(mother, doing));
                if (advice.now().deed() != Deed.LEAVE_LONG && advice.now().deed() != Deed.LAYER) {
                    busy.add(mother);
                }
            }
            spend("choose", begin);
        }
        more(answer, doings, busy, records);
        return List.copyOf(doings.values());
    }

    /** Return how many seconds went into what. */
    Map<String, Double> spent() {
        return spent;
    }

    private void spend(String what, long begin) {
        spent.merge(what, (now() - begin) / 1e9, Double::sum);
    }

    /** Return the processor time of this thread, for others share the machine. */
    private static long now() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static int number(String tag) {
        return Integer.parseInt(tag.substring(2)) - 1;
    }

    private Answer read(BookView view, LocalDate day, Records records) {
        Set<Part> parts = EnumSet.copyOf(InputsReader.parts());
        parts.addAll(Plans.parts());
        long begin = now();
        Snapshot snapshot = Snapshot.of(view, day, parts);
        spend("snapshot", begin);
        begin = now();
        ChoiceInputs inputs = InputsReader.read(
                view,
                snapshot,
                new ChoiceRequest(
                        Optional.empty(),
                        day,
                        YEARS,
                        Aim.MARGIN,
                        Optional.of(demand(records, snapshot)),
                        limits(records),
                        LONG,
                        0,
                        1,
                        0),
                Progress.NONE);
        spend("inputs", begin);
        begin = now();
        List<PlanOrder> orders = new ArrayList<>();
        List<List<Integer>> keys = new ArrayList<>();
        orders(records, snapshot, day, orders, keys);
        PlanOrders plans = PlanOrders.ask(view, snapshot, orders);
        spend("plan", begin);
        return new Answer(inputs, plans, keys);
    }

    /** Tell what is asked for, of the size classes that the book knows: of others it would not know what is meant. */
    private static List<DemandLine> demand(Records records, Snapshot snapshot) {
        List<DemandLine> lines = new ArrayList<>();
        for (int cultivar = 0; cultivar < records.cultivars(); cultivar++) {
            for (int size = 0; size < Truth.SIZES; size++) {
                if (!snapshot.lives().sizes().contains(Truth.size(size))) {
                    continue;
                }
                for (int due = records.year(); due <= records.year() + YEARS + LONGEST; due++) {
                    lines.add(new DemandLine(
                            Truth.name(cultivar),
                            Truth.size(size),
                            records.expected(cultivar, size, due),
                            Optional.of(due),
                            Optional.empty()));
                }
            }
        }
        return lines;
    }

    private static List<LimitLine> limits(Records records) {
        List<LimitLine> lines = new ArrayList<>();
        lines.add(new LimitLine(
                LimitLine.What.HOURS,
                "spring",
                Optional.empty(),
                records.means().springHours(),
                Optional.empty()));
        for (int due = records.year(); due <= records.year() + YEARS + LONGEST; due++) {
            lines.add(new LimitLine(
                    LimitLine.What.ROOM,
                    "House",
                    Optional.of(due),
                    Math.max(0, records.means().roomM2() - taken(records, due)),
                    Optional.empty()));
        }
        return lines;
    }

    /** Return the room that trees that stand already take in a year: those whose time has come will be sold. */
    private static double taken(Records records, int due) {
        double squares = 0;
        for (Records.Tree tree : records.trees) {
            boolean stands = tree.size < 0 ? due <= tree.set + 1 + tree.band : due == records.year();
            squares += stands ? Cost.square(due - tree.set) : 0;
        }
        return squares;
    }

    /** Tell the orders for which nothing was set yet, as far as the book knows their size and their name. */
    private void orders(
            Records records, Snapshot snapshot, LocalDate day, List<PlanOrder> orders, List<List<Integer>> keys) {
        Set<String> names = new HashSet<>();
        snapshot.cultivars().forEach(name -> names.add(name.toString()));
        for (int due = records.year(); due <= records.year() + Truth.AHEAD; due++) {
            for (int cultivar = 0; cultivar < records.cultivars(); cultivar++) {
                for (int size = 0; size < Truth.SIZES; size++) {
                    int wanted = records.ordered(cultivar, size, due);
                    List<Integer> key = List.of(due, cultivar, size);
                    boolean isKnown =
                            snapshot.lives().sizes().contains(Truth.size(size)) && names.contains(Truth.name(cultivar));
                    boolean isTime = due <= records.year() + size + 2;
                    if (wanted > 0 && isKnown && isTime && !planned.contains(key)) {
                        keys.add(key);
                        orders.add(new PlanOrder(
                                PlanQuestion.of(Truth.name(cultivar), wanted, LocalDate.of(due, 11, 15), day)
                                        .size(Truth.size(size))
                                        .method(Method.LAYER),
                                new Where("orders", keys.size(), Optional.empty())));
                    }
                }
            }
        }
    }

    private ChoiceQuestion withWhatIsKnown(ChoiceQuestion read) {
        ChoiceQuestion question = read.with(read.settings().gap(NEAR).anewUpTo(0));
        if (known.isEmpty()) {
            return question;
        }
        List<Mother> mothers = new ArrayList<>();
        for (Mother one : question.mothers()) {
            Rates rates = Rates.known(known.get().applyAsDouble(number(one.key())), 0);
            mothers.add(new Mother(
                    one.key(),
                    one.cultivar(),
                    one.ortet(),
                    one.place(),
                    one.parts(),
                    one.restYears(),
                    one.restNow(),
                    one.heldYears(),
                    one.growth(),
                    one.asTree(),
                    one.atEnd(),
                    one.whileLong(),
                    one.whileShort(),
                    rates,
                    Optional.empty()));
        }
        return new ChoiceQuestion(
                mothers,
                question.ways(),
                question.outlets(),
                question.limits(),
                question.costs(),
                SeasonEffects.NONE,
                question.settings());
    }

    private static Optional<Doing> doing(Advice advice, int mother, Records records) {
        Integer[] sets = {0, 0, 0};
        for (ToSet set : advice.now().sets()) {
            if (set.method() == ortet.choice.Method.LAYER) {
                sets[set.band()] += set.count();
            }
        }
        for (int band = 0; band < sets.length; band++) {
            sets[band] = Math.min(sets[band], records.positions[mother][band]);
        }
        return switch (advice.now().deed()) {
            case LAYER -> Optional.of(new Doing(mother, Arrays.asList(sets), What.CROPPED));
            case LAYER_AND_SELL -> Optional.of(new Doing(mother, Arrays.asList(sets), What.CROPPED_AND_SOLD));
            case TRY_OUT -> Optional.of(new Doing(mother, Arrays.asList(sets), What.TRIED));
            case SELL -> Optional.of(Doing.without(mother, What.SOLD));
            case CUT_BACK -> Optional.of(Doing.without(mother, What.CUT_BACK));
            case LEAVE_LONG, REST -> Optional.empty();
            case TAKE_CUTTINGS -> throw new IllegalStateException("cuttings, of which nothing was ever heard");
        };
    }

    /** Set what plan asks for this year beyond what choose sets of the cultivar. */
    private void more(Answer answer, Map<Integer, Doing> doings, Set<Integer> busy, Records records) {
        double layers =
                Math.floor(records.means().springHours() / records.means().setHours());
        int[] set = new int[records.cultivars()];
        for (Doing doing : doings.values()) {
            layers -= doing.layers();
            set[records.cultivar(doing.mother())] += doing.layers();
        }
        for (PlanOrders.Filled filled : answer.plans().filled()) {
            List<Integer> key =
                    answer.orders().get(Math.toIntExact(filled.order().where().line()) - 1);
            Plan plan = filled.plan();
            Optional<LocalDate> from = plan.answer()
                    .map(Plan.Answer::from)
                    .or(() -> plan.shortfall().flatMap(Plan.Shortfall::from));
            if (from.isEmpty() || from.get().getYear() != records.year()) {
                continue;
            }
            planned.add(key);
            int cultivar = key.get(1);
            for (PlanMother mother : plan.mothers()) {
                int number = number(mother.tag().text());
                for (PlanMother.Position position : mother.positions()) {
                    int wanted = position.use();
                    int served = Math.min(wanted, set[cultivar]);
                    set[cultivar] -= served;
                    wanted -= served;
                    if (wanted > 0 && !busy.contains(number) && !records.gone[number]) {
                        layers -= add(doings, number, band(position), (int) Math.min(wanted, layers), records);
                    }
                }
            }
        }
    }

    private static int band(PlanMother.Position position) {
        double low = position.lowMm().value().doubleValue();
        return low < 8 ? 0 : low < 13 ? 1 : 2;
    }

    private static int add(Map<Integer, Doing> doings, int mother, int band, int wanted, Records records) {
        List<Integer> sets = doings.containsKey(mother)
                ? new ArrayList<>(doings.get(mother).sets())
                : new ArrayList<>(Collections.nCopies(Truth.BANDS, 0));
        int more = Math.max(0, Math.min(wanted, records.positions[mother][band] - sets.get(band)));
        if (more > 0) {
            sets.set(band, sets.get(band) + more);
            doings.put(mother, new Doing(mother, sets, What.CROPPED));
        }
        return more;
    }
}
