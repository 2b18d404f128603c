package ortet.choice;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.plant.CultivarName;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Answers which trees will become saleable, and when (docs/methods/forecast.md). */
public final class Forecast {
    private static final IntPredicate ANY = one -> true;

    private Forecast() {}

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        return EnumSet.of(Part.LINKS, Part.COHORTS, Part.NAMES, Part.STANDINGS, Part.LIVES);
    }

    /**
     * Forecast from a snapshot of the day asked about, with the parts needed.
     *
     * @throws Refused when the cultivar or size class asked for is not in the book; the nearest are named
     */
    public static ForecastTable ask(BookView view, Snapshot snapshot, ForecastQuestion question) {
        ForecastPast past = ForecastHistory.of(snapshot);
        return ask(past, question, asked(view, snapshot, question));
    }

    /** Return which cultivars are asked for, by their place. */
    static IntPredicate asked(BookView view, Snapshot snapshot, ForecastQuestion question) {
        if (question.cultivar().isEmpty()) {
            return ANY;
        }
        Set<CultivarName> found = Lookup.cultivars(view, question.cultivar().get(), snapshot.cultivars());
        Set<Integer> places = new HashSet<>();
        for (int place = 0; place < snapshot.cultivars().size(); place++) {
            if (found.contains(snapshot.cultivars().get(place))) {
                places.add(place);
            }
        }
        return places::contains;
    }

    static ForecastTable ask(ForecastPast past, ForecastQuestion question, IntPredicate asked) {
        IntPredicate size = size(past, question);
        ForecastRun run = new ForecastRun(
                past,
                question.months(),
                Integer.MAX_VALUE,
                question.simulations(),
                question.seed(),
                question.sales(),
                asked);
        YearMonth first = ForecastHorizon.firstMonth(past.asOf());
        List<YearMonth> months = IntStream.range(0, question.months())
                .mapToObj(first::plusMonths)
                .toList();
        List<ForecastRow> rows = new ArrayList<>();
        List<ForecastRow> total = new ArrayList<>();
        long saleable = came(past, ForecastStage.GRADING);
        if (saleable > 0 && !run.cultivars().isEmpty() || !past.stock().isEmpty()) {
            run.run();
            for (int cultivar : run.cultivars()) {
                rows(past, question, run, Optional.of(cultivar), size, rows);
            }
            rows(past, question, run, Optional.empty(), size, total);
        }
        List<ForecastBehind> behind = new ArrayList<>();
        List<ForecastLuck> luck = new ArrayList<>();
        int[] waiting = new int[ForecastStage.values().length];
        for (ForecastStage stage : ForecastStage.values()) {
            ForecastModel model = run.model(stage);
            ForecastCurve[] told = model.kinds().told(run.kinds(stage));
            for (int kind : run.kinds(stage)) {
                int units = run.waiting(stage, kind);
                waiting[stage.ordinal()] += units;
                behind.add(model.kinds().behind(kind, told[kind], units));
            }
            luck.add(new ForecastLuck(
                    stage,
                    model.fate().season(),
                    model.fate().cluster(),
                    model.timing().season(),
                    model.timing().cluster(),
                    model.fate().seasons(),
                    model.own(),
                    run.inOneGo(stage)));
        }
        return new ForecastTable(
                question,
                months,
                rows,
                total,
                behind,
                luck,
                waiting[0],
                waiting[1],
                run.tooOld(ForecastStage.TAKING),
                run.tooOld(ForecastStage.GRADING, ForecastStage.SELLING),
                past.boughtIn(),
                came(past, ForecastStage.TAKING),
                saleable);
    }

    private static long came(ForecastPast past, ForecastStage stage) {
        return past.episodes().stream()
                .filter(one -> one.stage() == stage && one.how() == ForecastEnd.GOOD)
                .mapToLong(ForecastEpisode::count)
                .sum();
    }

    static IntPredicate size(ForecastPast past, ForecastQuestion question) {
        if (question.size().isEmpty()) {
            return ANY;
        }
        String wanted = question.size().get();
        int place = past.sizes().indexOf(wanted);
        if (place < 0) {
            throw new Refused(Fault.of(
                            "unknown-size",
                            "no size class " + wanted
                                    + (past.sizes().isEmpty()
                                            ? ""
                                            : "; expected one of " + String.join(", ", past.sizes())))
                    .nearest(past.sizes().isEmpty() ? Optional.empty() : Nearest.of(wanted, past.sizes())));
        }
        return one -> one == place;
    }

    private static void rows(
            ForecastPast past,
            ForecastQuestion question,
            ForecastRun run,
            Optional<Integer> cultivar,
            IntPredicate asked,
            List<ForecastRow> rows) {
        IntPredicate of =
                cultivar.<IntPredicate>map(place -> one -> one == place).orElse(ANY);
        Optional<String> name = cultivar.map(place -> past.cultivars().get(place));
        if (question.size().isEmpty()) {
            rows.add(row(past, question, run, of, name, ANY, Optional.empty()));
        }
        for (int size = 0; size <= past.ungraded(); size++) {
            int one = size;
            if (asked.test(size)) {
                ForecastRow row = row(
                        past,
                        question,
                        run,
                        of,
                        name,
                        place -> place == one,
                        Optional.of(size == past.ungraded() ? "" : past.sizes().get(size)));
                boolean any = row.now() > 0
                        || row.inAll().mean() > 0
                        || question.size().isPresent();
                if (any) {
                    rows.add(row);
                }
            }
        }
    }

    private static ForecastRow row(
            ForecastPast past,
            ForecastQuestion question,
            ForecastRun run,
            IntPredicate cultivar,
            Optional<String> name,
            IntPredicate size,
            Optional<String> sizeName) {
        int months = question.months();
        return new ForecastRow(
                name,
                sizeName,
                past.stock().stream()
                        .filter(one -> run.cultivars().contains(one.cultivar())
                                && cultivar.test(one.cultivar())
                                && size.test(one.size()))
                        .mapToInt(ForecastStock::count)
                        .sum(),
                IntStream.range(0, months)
                        .parallel()
                        .mapToObj(month -> ForecastBand.of(run.became(cultivar, size, month, month + 1)))
                        .toList(),
                IntStream.range(0, months)
                        .parallel()
                        .mapToObj(month -> ForecastBand.of(run.standing(cultivar, size, month)))
                        .toList(),
                ForecastBand.of(run.became(cultivar, size, 0, months)));
    }
}
