package ortet.choice.inputs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import ortet.book.Event;
import ortet.entry.Band;
import ortet.entry.CutBack;
import ortet.entry.CuttingsStruck;
import ortet.entry.LayerSet;
import ortet.entry.Measured;
import ortet.entry.Mention.Role;
import ortet.entry.Share;
import ortet.lineage.Marks;
import ortet.plant.Tag;
import ortet.value.When;

/** What the diary of one plant says of her as a mother. */
final class MotherDiary {
    /** Positions counted on one day. */
    record Counting(LocalDate day, int season, Map<MotherBand, Integer> positions) {
        int total() {
            return positions.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    /** Layers set on one day, by stem in millimetres; empty where nobody measured it. */
    record Setting(LocalDate day, int season, Optional<Double> stemMm, int count) {}

    final List<Counting> countings = new ArrayList<>();
    final List<Setting> settings = new ArrayList<>();
    /** The seasons before whose growth she was cut back. */
    final TreeSet<Integer> cutBack = new TreeSet<>();

    final List<Integer> cuttings = new ArrayList<>();
    final Optional<Double> stemMm;
    final boolean held;
    final boolean reserved;

    /**
     * Read a diary.
     *
     * @param tags all tags that she bears or bore
     * @param season tells in which season a day counts
     */
    MotherDiary(List<Event> history, List<Tag> tags, LocalDate asOf, ToIntFunction<LocalDate> season) {
        Optional<Double> stem = Optional.empty();
        for (Event event : history) {
            LocalDate day = placed(event.day());
            if (event.entry() instanceof Measured measured && event.roles().contains(Role.SUBJECT)) {
                stem = measured.stemMm().map(mm -> mm.value().doubleValue()).or(stem(stem));
                if (!measured.positions().isEmpty()) {
                    Map<MotherBand, Integer> positions = new TreeMap<>();
                    for (Band band : measured.positions()) {
                        positions.merge(new MotherBand(band.lowMm(), band.highMm()), band.count(), Integer::sum);
                    }
                    countings.add(new Counting(day, season.applyAsInt(day), Collections.unmodifiableMap(positions)));
                }
            } else if (event.entry() instanceof LayerSet set && tags.contains(set.mother())) {
                settings.add(new Setting(
                        day,
                        day.getYear(),
                        set.stemMm().map(mm -> mm.value().doubleValue()),
                        set.tags().size()));
            } else if (event.entry() instanceof CutBack && event.roles().contains(Role.SUBJECT)) {
                cutBack.add(season.applyAsInt(day));
            } else if (event.entry() instanceof CuttingsStruck struck) {
                cuttings(struck, tags).ifPresent(cuttings::add);
            }
        }
        Marks marks = Marks.of(history, asOf);
        stemMm = stem;
        held = marks.held().isPresent();
        reserved = !marks.reserved().isEmpty();
    }

    private static java.util.function.Supplier<Optional<Double>> stem(Optional<Double> before) {
        return () -> before;
    }

    private static LocalDate placed(When day) {
        return day.isExact() ? day.first() : day.last();
    }

    private static Optional<Integer> cuttings(CuttingsStruck struck, List<Tag> tags) {
        for (Share share : struck.mothers()) {
            if (tags.contains(share.tag())) {
                int all = struck.count() * Math.max(1, struck.tags().size());
                return Optional.of(
                        share.count().orElse(Math.max(1, all / struck.mothers().size())));
            }
        }
        return Optional.empty();
    }

    /** Return the seasons in which layers were set on her. */
    TreeSet<Integer> layered() {
        TreeSet<Integer> seasons = new TreeSet<>();
        settings.forEach(one -> seasons.add(one.season()));
        return seasons;
    }

    /** Return the last season before one in which she was cropped: layered, or cut back. */
    Optional<Integer> croppedBefore(int season) {
        Integer layered = layered().lower(season);
        // cut back before a season's growth: that is the season of which nothing is left
        Integer cut = cutBack.floor(season);
        if (layered == null && cut == null) {
            return Optional.empty();
        }
        return Optional.of(
                Math.max(layered == null ? Integer.MIN_VALUE : layered, cut == null ? Integer.MIN_VALUE : cut));
    }

    Optional<Counting> last() {
        return countings.isEmpty() ? Optional.empty() : Optional.of(countings.get(countings.size() - 1));
    }
}
