package ortet.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import ortet.entry.Entry;
import ortet.entry.Recorded;
import ortet.value.When;

/**
 * An entry of the register as amended, with the day from which on it holds.
 *
 * @param order the recorded order of the entry
 * @param day from when on
 * @param entry its words
 */
public record Listed(long order, When day, Entry entry) {
    public Listed {
        Objects.requireNonNull(day);
        Objects.requireNonNull(entry);
    }

    /**
     * Return the costs and prices that were listed up to a day, as amended, crossed-out ones left out, in the order in
     * which they came to hold: by the first day that each may have been listed, then as recorded.
     */
    public static List<Listed> tariff(BookView view, LocalDate asOf) {
        List<Listed> listed = new ArrayList<>();
        for (Recorded recorded : view.tariff()) {
            for (Strand strand : Strand.of(recorded, view.amendments(recorded.order()))) {
                if (!strand.day().first().isAfter(asOf)) {
                    listed.add(new Listed(recorded.order(), strand.day(), strand.entry()));
                }
            }
        }
        listed.sort(Comparator.comparing((Listed one) -> one.day().first()).thenComparingLong(Listed::order));
        return List.copyOf(listed);
    }
}
