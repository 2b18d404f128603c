package ortet.choice;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.nursery.Snapshot;
import ortet.value.Refused;

/** Makes forecasts for an earlier day, and holds them against what came. */
public final class ForecastCheck {
    private static final int FEW = 12;
    private static final double APART_90 = 0.1;
    private static final double APART_50 = 0.15;
    private static final IntPredicate ANY = one -> true;

    private ForecastCheck() {}

    /**
     * Check.
     *
     * @param snapshot the nursery on the day up to which it is known what came, with the parts of {@link Forecast#parts()}
     * @param question for which cultivar and size class; its months do not count
     * @param from the day for which to forecast, before that of the snapshot
     * @throws Refused when it is not before, or what is asked for is not in the book
     */
    public static ForecastScore ask(
            BookView view, Judge judge, Snapshot snapshot, ForecastQuestion question, LocalDate from) {
        if (!from.isBefore(snapshot.asOf())) {
            throw Refused.because(
                    "bad-check-day",
                    "expected a day before " + snapshot.asOf() + ", up to which it is known what came, found " + from);
        }
        Snapshot happened = Snapshot.of(view, from, Forecast.parts());
        Optional<Snapshot> recorded = Optional.of(Snapshot.order(
                        view,
                        from.plusDays(1)
                                .atStartOfDay(view.head().zone())
                                .toInstant()
                                .minusMillis(1)))
                .filter(order -> order > 0)
                .map(order -> Snapshot.knownBy(view, judge, from, order));
        int begun = count(happened);
        int written = recorded.map(ForecastCheck::count).orElse(0);
        boolean kept = written > 0 && 2 * written >= begun;
        Snapshot then = kept ? recorded.orElseThrow() : happened;
        return score(
                ForecastHistory.of(then),
                ForecastHistory.of(snapshot),
                question,
                Forecast.asked(view, then, question),
                Forecast.asked(view, snapshot, question),
                new Basis(kept ? ForecastKnown.RECORDED_BY_THEN : ForecastKnown.RECORDED_LATER, begun, written));
    }

    /** What forecasts go by. */
    record Basis(ForecastKnown known, int begun, int recorded) {}

    private static int count(Snapshot snapshot) {
        return (int) IntStream.rangeClosed(1, snapshot.lastUnit())
                .filter(snapshot::isThere)
                .count();
    }

    static ForecastScore score(
            ForecastPast then,
            ForecastPast now,
            ForecastQuestion question,
            IntPredicate askedThen,
            IntPredicate askedNow,
            Basis basis) {
        YearMonth first = ForecastHorizon.firstMonth(then.asOf());
        LocalDate until = LocalDate.ofEpochDay(now.asOf());
        int months = Math.toIntExact(
                Math.min(ForecastQuestion.MOST_MONTHS, first.until(YearMonth.from(until), ChronoUnit.MONTHS) + 1));
        int last = Math.toIntExact(Math.min(
                until.toEpochDay(), first.plusMonths(months - 1L).atEndOfMonth().toEpochDay()));
        ForecastRun run = new ForecastRun(
                        then, months, last, question.simulations(), question.seed(), ForecastSales.NONE, askedThen)
                .run();
        IntPredicate sizeThen = size(then, question);
        IntPredicate sizeNow = size(now, question);
        if (question.size().isPresent() && !now.sizes().contains(question.size().get())) {
            Forecast.size(now, question);
        }
        Map<String, int[]> came = new TreeMap<>();
        int later = 0;
        for (ForecastEpisode one : now.episodes()) {
            int cultivar = now.kinds().get(one.kind()).cultivar();
            if (one.stage() != ForecastStage.GRADING
                    || one.how() != ForecastEnd.GOOD
                    || one.end() <= then.asOf()
                    || one.end() > last
                    || !askedNow.test(cultivar)
                    || !sizeNow.test(one.size())) {
                continue;
            }
            if (one.since() > then.asOf()) {
                later += one.count();
                continue;
            }
            YearMonth month = YearMonth.from(LocalDate.ofEpochDay(one.end()));
            came.computeIfAbsent(now.cultivars().get(cultivar), name -> new int[months])[
                            Math.toIntExact(first.until(month, ChronoUnit.MONTHS))] +=
                    one.count();
        }
        Map<String, Integer> places = new TreeMap<>();
        run.cultivars().forEach(place -> places.put(then.cultivars().get(place), place));
        Set<String> names = new TreeSet<>(came.keySet());
        names.addAll(places.keySet());
        List<ForecastCell> cells = new ArrayList<>();
        List<ForecastCell> total = new ArrayList<>();
        for (int month = 0; month < months; month++) {
            int sum = 0;
            for (String name : names) {
                int found = came.getOrDefault(name, new int[months])[month];
                int place = places.getOrDefault(name, -1);
                sum += found;
                ForecastBand band =
                        ForecastBand.of(run.became(cultivar -> cultivar == place, sizeThen, month, month + 1));
                if (found > 0 || band.upper90() > 0) {
                    cells.add(new ForecastCell(Optional.of(name), first.plusMonths(month), band, found));
                }
            }
            total.add(new ForecastCell(
                    Optional.empty(),
                    first.plusMonths(month),
                    ForecastBand.of(run.became(ANY, sizeThen, month, month + 1)),
                    sum));
        }
        ForecastBand inAll = ForecastBand.of(run.became(ANY, sizeThen, 0, months));
        int all = total.stream().mapToInt(ForecastCell::came).sum();
        double within50 = mean(cells, cell -> cell.forecast().holds50(cell.came()) ? 1 : 0);
        double expected50 = mean(cells, cell -> cell.forecast().within50());
        double within90 = mean(cells, cell -> cell.forecast().holds90(cell.came()) ? 1 : 0);
        double expected90 = mean(cells, cell -> cell.forecast().within90());
        return new ForecastScore(
                question,
                LocalDate.ofEpochDay(then.asOf()),
                basis.known(),
                basis.begun(),
                basis.recorded(),
                cells,
                total,
                inAll,
                all,
                later,
                within50,
                expected50,
                within90,
                expected90,
                mean(cells, cell -> cell.forecast().mean() - cell.came()),
                mean(cells, cell -> Math.abs(cell.forecast().median() - cell.came())),
                verdict(cells.size(), inAll, all, within50 - expected50, within90 - expected90));
    }

    private static IntPredicate size(ForecastPast past, ForecastQuestion question) {
        return question.size()
                .<IntPredicate>map(wanted -> {
                    int place = past.sizes().indexOf(wanted);
                    return one -> one == place;
                })
                .orElse(ANY);
    }

    private interface OfCell {
        double of(ForecastCell cell);
    }

    private static double mean(List<ForecastCell> cells, OfCell what) {
        return cells.stream().mapToDouble(what::of).average().orElse(0);
    }

    private static ForecastVerdict verdict(int cells, ForecastBand inAll, int came, double off50, double off90) {
        if (cells < FEW) {
            return ForecastVerdict.TOO_FEW;
        }
        if (!inAll.holds90(came)) {
            return came > inAll.upper90() ? ForecastVerdict.TOO_LOW : ForecastVerdict.TOO_HIGH;
        }
        if (off90 < -APART_90) {
            return ForecastVerdict.TOO_SURE;
        }
        return off50 > APART_50 ? ForecastVerdict.TOO_CAREFUL : ForecastVerdict.HELD;
    }
}
