package ortet.decade;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ortet.book.Progress;
import ortet.choice.Aim;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Grade;
import ortet.choice.Raising;
import ortet.choice.Ways;
import ortet.choice.inputs.ChoiceInputs;
import ortet.choice.inputs.ChoiceRequest;
import ortet.choice.inputs.InputsReader;
import ortet.nursery.Snapshot;

/**
 * Tells how far the shares of size classes that are read from young books lie from the true ones; a program to be run by
 * hand, not a test.
 */
public final class ShareMeasurements {
    private static final int LEAST = 12;
    private static final int MOST = 24;

    private ShareMeasurements() {}

    /**
     * Run.
     *
     * @param arguments how many nurseries; how many seasons of diary, 3 or 4
     */
    public static void main(String[] arguments) {
        int nurseries = Integer.parseInt(arguments[0]);
        LocalDate day = LocalDate.of(Truth.PAST + Integer.parseInt(arguments[1]), 2, 15);
        double[] sums = new double[Truth.BANDS];
        int[] counts = new int[Truth.BANDS];
        int[] far = new int[Truth.BANDS];
        for (int nursery = 0; nursery < nurseries; nursery++) {
            Truth truth = Decades.truth(World.RIGHT, nursery, LEAST, MOST);
            try (Book book = new Book()) {
                new Years(truth, book).past();
                Optional<ChoiceQuestion> question = inputs(book, day).question();
                for (int at = 0; question.isPresent() && at < truth.cultivars(); at++) {
                    String name = Truth.name(at);
                    Optional<Ways> ways = question.get().ways().stream()
                            .filter(one -> one.cultivar().equals(name))
                            .findFirst();
                    for (int band = 0; ways.isPresent() && band < Truth.BANDS; band++) {
                        double error = error(truth, ways.get(), band);
                        sums[band] += error;
                        counts[band]++;
                        far[band] += error > 0.2 ? 1 : 0;
                    }
                }
            }
        }
        for (int band = 0; band < Truth.BANDS; band++) {
            System.out.printf(
                    Locale.ROOT,
                    "band %d: mean absolute error of a share %.4f over %d cultivars, above 0.2 in %d%n",
                    band,
                    sums[band] / counts[band],
                    counts[band],
                    far[band]);
        }
    }

    private static ChoiceInputs inputs(Book book, LocalDate day) {
        return book.store()
                .read(view -> InputsReader.read(
                        view,
                        Snapshot.of(view, day, InputsReader.parts()),
                        new ChoiceRequest(
                                Optional.empty(),
                                day,
                                1,
                                Aim.MARGIN,
                                Optional.empty(),
                                List.of(),
                                Duration.ofMinutes(1),
                                0,
                                1,
                                0),
                        Progress.NONE));
    }

    /** Return the mean over the size classes and those never fit for sale of how far a share is off. */
    private static double error(Truth truth, Ways ways, int band) {
        List<Raising> raisings = ways.layers().size() > band ? ways.layers().get(band) : List.of();
        List<Grade> grades = raisings.isEmpty() ? List.of() : raisings.get(0).grades();
        double sum = 0;
        double rest = 1;
        for (int size = 0; size < Truth.SIZES; size++) {
            String word = Truth.size(size);
            double found = grades.stream()
                    .filter(one -> one.sizeClass().equals(word))
                    .mapToDouble(Grade::share)
                    .sum();
            sum += Math.abs(found - truth.share(band, size));
            rest -= found;
        }
        return (sum + Math.abs(rest - truth.neverFit())) / (Truth.SIZES + 1);
    }
}
