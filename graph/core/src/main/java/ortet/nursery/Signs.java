package ortet.nursery;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import ortet.book.Event;
import ortet.entry.Checked;
import ortet.entry.Condition;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Finding;
import ortet.entry.Form;
import ortet.entry.Graded;
import ortet.entry.LayerSet;
import ortet.entry.Measured;
import ortet.entry.Released;
import ortet.entry.ReleasedFrom;
import ortet.value.Decimal;

/** Reads out of an entry what the questions about signs of life and about treatments read out of those nobody amended. */
final class Signs {
    /** The kinds of entry that show a unit alive, or end its time as stock. */
    static final Set<EntryKind> KINDS = EnumSet.of(
            EntryKind.CHECKED,
            EntryKind.REWORKED,
            EntryKind.LIFTED,
            EntryKind.MOVED,
            EntryKind.MEASURED,
            EntryKind.SEEN,
            EntryKind.KEPT_AS_STOCK,
            EntryKind.LEFT_LONG,
            EntryKind.CUT_BACK,
            EntryKind.GRADED,
            EntryKind.COUNTED,
            EntryKind.RELEASED);

    private static final Turn[] WHAT = {Turn.ALIVE, Turn.MEASURED, Turn.GRADED, Turn.STOCK, Turn.NO_STOCK};
    private static final double HUNDREDTHS = 100;

    private Signs() {}

    /** Return what a number in the answer to the question stands for. */
    static Turn turn(int what) {
        return WHAT[what];
    }

    /** Tell what an event of a unit shows. */
    static void add(Event event, Filling filling) {
        Entry entry = event.entry();
        int unit = event.unit().value();
        int when = Days.packed(event.day());
        if (entry instanceof Measured measured && measured.stemMm().isPresent()) {
            filling.turn(unit, Turn.MEASURED, when, hundredths(measured.stemMm()));
        } else if (entry instanceof Graded graded) {
            filling.turn(unit, Turn.GRADED, when, filling.size(graded.size()));
        } else if (entry.kind() == EntryKind.KEPT_AS_STOCK) {
            filling.turn(unit, Turn.STOCK, when, 0);
        } else if (entry instanceof Released released) {
            if (released.from().orElse(ReleasedFrom.STOCK) == ReleasedFrom.STOCK) {
                filling.turn(unit, Turn.NO_STOCK, when, 0);
            }
        } else {
            filling.turn(unit, Turn.ALIVE, when, entry instanceof Checked checked ? looked(checked) : 0);
        }
    }

    private static int looked(Checked checked) {
        return checked.findings().stream()
                        .map(Finding::condition)
                        .anyMatch(seen -> seen == Condition.ROOTS_SHOWING || seen == Condition.ROOT_BALL_FULL)
                ? Turn.ROOTS
                : Turn.NO_ROOTS;
    }

    /** Tell how a unit was set by an entry, where it had begun by a day. */
    static void set(int unit, Entry entry, LocalDate asOf, Filling filling) {
        String[] words = new String[Treatment.COLUMNS.length];
        for (int at = 0; at < words.length; at++) {
            words[at] = Form.write(entry, Treatment.COLUMNS[at]).orElse("");
        }
        if (filling.hasBegun(unit, asOf.toEpochDay())) {
            Optional<Decimal> stem = entry instanceof LayerSet layer ? layer.stemMm() : Optional.empty();
            filling.set(unit, filling.treatment(Treatment.of(words)), hundredths(stem));
        }
    }

    private static int hundredths(Optional<Decimal> stem) {
        return stem.map(mm -> (int) Math.round(Double.parseDouble(mm.toString()) * HUNDREDTHS))
                .orElse(0);
    }
}
