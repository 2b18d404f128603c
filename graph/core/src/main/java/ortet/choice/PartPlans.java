package ortet.choice;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import ortet.book.Progress;

/**
 * Plans parts that share nothing, the small ones first, each within its share of the time ({@link Turns}). What time is left
 * after that goes to those that did not come to their end, the greatest gap first: anew where there is more time than they
 * had, so that they come to the same as without a limit if that is enough, else on from where they stood.
 */
final class PartPlans {
    /** A part and its plan. */
    record One(Parts.Part part, Planner.Plan plan) {}

    /** A part, its plan, whether time cut it short, and how many seconds it had. */
    private record Tried(Parts.Part part, Planner.Plan plan, boolean cut, double had) {}

    private final Settings settings;
    private final Deadline late;
    private final Progress progress;
    private final int atOnce;

    /**
     * Plan by some settings.
     *
     * @param atOnce how many parts are planned at once: 1 for one after the other
     */
    PartPlans(Settings settings, Deadline late, Progress progress, int atOnce) {
        this.settings = settings;
        this.late = late;
        this.progress = progress;
        this.atOnce = atOnce;
    }

    /** Plan, and return each part with its plan, in the same order. */
    List<One> of(List<Parts.Part> parts) {
        Tried[] all = new Tried[parts.size()];
        List<Integer> open = IntStream.range(0, all.length)
                .boxed()
                .sorted(Comparator.comparingInt(at -> parts.get(at).members().length))
                .toList();
        round(open, parts, all);
        open = cut(all);
        while (!open.isEmpty() && !late.isOver()) {
            round(open, parts, all);
            open = cut(all);
        }
        return Arrays.stream(all).map(one -> new One(one.part(), one.plan())).toList();
    }

    /** Return the parts that time cut short and that may lack something, the greatest gap first. */
    private static List<Integer> cut(Tried[] all) {
        return IntStream.range(0, all.length)
                .filter(at -> all[at].cut() && !all[at].plan().isBest())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        at -> all[at].plan().account().worth() - all[at].plan().bound()))
                .toList();
    }

    private void round(List<Integer> which, List<Parts.Part> parts, Tried[] all) {
        Turns turns = new Turns(
                late,
                which.stream().map(at -> parts.get(at).members().length).toList(),
                Math.min(which.size(), atOnce));
        IntStream turnsOfAll = IntStream.range(0, which.size());
        (atOnce == 1 ? turnsOfAll : turnsOfAll.parallel()).forEach(turn -> {
            Deadline mine = turns.begin(turn);
            int at = which.get(turn);
            all[at] = all[at] == null ? first(parts.get(at), mine) : again(all[at], mine);
            turns.done(turn);
        });
    }

    private Tried first(Parts.Part part, Deadline mine) {
        double had = mine.seconds();
        Planner.Plan plan = plan(part.paths(), new Planner(settings.gap(), mine, progress));
        return new Tried(part, plan, mine.isOver(), had);
    }

    private Tried again(Tried known, Deadline mine) {
        double had = mine.seconds();
        boolean anew = had > known.had();
        if (anew) {
            Tried other = first(known.part().afresh(), mine);
            return other.cut() ? better(known, other) : other;
        }
        Planner planner = new Planner(settings.gap(), mine, progress);
        Planner.Plan plan = planner.plan(known.part().paths(), known.plan().prices(), true);
        return better(known, new Tried(known.part(), plan, mine.isOver(), known.had()));
    }

    /** Return the better plan, with the lesser of both bounds, for each holds. */
    private Tried better(Tried one, Tried other) {
        Tried more = other.plan().account().worth() > one.plan().account().worth() ? other : one;
        return new Tried(
                more.part(),
                more.plan().within(Math.min(one.plan().bound(), other.plan().bound()), settings.gap()),
                other.cut(),
                Math.max(one.had(), other.had()));
    }

    private Planner.Plan plan(Paths paths, Planner planner) {
        boolean tries = Arrays.stream(paths.stocks)
                .anyMatch(stock -> stock.mother.trial().isPresent());
        double[] first = tries ? learn(paths, paths.first(), planner) : paths.first();
        return planner.plan(paths, first, tries);
    }

    /** Find what trials teach at the prices of the plan without that, and return those prices. */
    private double[] learn(Paths paths, double[] first, Planner planner) {
        double[] prices = planner.relax(paths, first, false, settings.gap()).prices();
        Priced priced = new Priced(paths.layout, paths.products, prices);
        IntStream.range(0, paths.stocks.length)
                .parallel()
                .forEach(at -> paths.stocks[at].learning =
                        Learning.of(new Walk(paths.layout), paths.stocks[at], priced, paths.takings[at]));
        return prices;
    }
}
