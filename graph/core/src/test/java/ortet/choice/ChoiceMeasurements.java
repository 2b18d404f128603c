package ortet.choice;

import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;

/** Measures how long a choice takes and how good it is: mothers, cultivars, draws, and up to how many are solved whole. */
final class ChoiceMeasurements {
    private ChoiceMeasurements() {}

    /**
     * Run.
     *
     * @param arguments size, cultivars, draws, anewUpTo, seconds, and the aim
     */
    public static void main(String[] arguments) {
        int size = Integer.parseInt(arguments[0]);
        int draws = Integer.parseInt(arguments[2]);
        Settings settings = Settings.DEFAULTS
                .anewUpTo(Integer.parseInt(arguments[3]))
                .draws(draws)
                .aim(arguments.length > 5 ? Aim.valueOf(arguments[5]) : Aim.MARGIN)
                .atMost(Duration.ofSeconds(Integer.parseInt(arguments[4])));
        ChoiceQuestion question =
                Nurseries.like(size, Integer.parseInt(arguments[1]), Math.max(draws, 20), 7, settings);
        long begin = System.nanoTime();
        long[] last = {begin, begin};
        Choice choice = Chooser.choose(question, (step, done, total) -> {
            if (step.equals("draws") && done == 1) {
                last[0] = System.nanoTime();
            }
            if (!step.equals("draws")) {
                System.out.printf("%6.2f s %s %d%n", (System.nanoTime() - begin) / 1e9, step, done);
            }
        });
        long end = System.nanoTime();
        Map<Deed, Integer> deeds = new TreeMap<>();
        choice.advice().forEach(one -> deeds.merge(one.now().deed(), 1, Integer::sum));
        System.out.printf(
                "%d mothers: %s worth %.2f bound %.2f gap %.6f margin %.2f met %s, %.1f s in all, first draw %.1f s, %s%n",
                size,
                choice.status(),
                choice.worth(),
                choice.bound(),
                choice.gap(),
                choice.margin(),
                choice.demandMet(),
                (end - begin) / 1e9,
                (last[0] - begin) / 1e9,
                deeds);
        if (draws > 0 && settings.anewUpTo() > 0) {
            agreement(choice, question);
        }
        System.out.println("overused "
                + choice.resources().stream().filter(ResourceUse::isOverused).count() + ", scarce "
                + choice.resources().stream().filter(one -> one.worth() > 0).count());
    }

    /** Say how far the two ways to find sureness lie apart. */
    private static void agreement(Choice anew, ChoiceQuestion question) {
        Choice priced = Chooser.choose(question.with(question.settings().anewUpTo(0)), ortet.book.Progress.NONE);
        double apart = 0;
        double most = 0;
        int both = 0;
        for (int at = 0; at < anew.advice().size(); at++) {
            Advice one = anew.advice().get(at);
            Advice other = priced.advice().get(at);
            if (one.now().deed() == other.now().deed()) {
                both++;
                double difference = Math.abs(one.sureness().share().orElseThrow()
                        - other.sureness().share().orElseThrow());
                apart += difference;
                most = Math.max(most, difference);
            }
        }
        System.out.printf(
                "same deed for %d of %d; sureness anew against priced: apart by %.3f on the mean, %.3f at most%n",
                both, anew.advice().size(), apart / both, most);
    }
}
