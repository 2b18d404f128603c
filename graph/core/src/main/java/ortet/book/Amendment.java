package ortet.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.EntryId;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Recorded;
import ortet.value.Fault;
import ortet.value.Refused;

/** What an amendment makes of the entry that it is about. */
final class Amendment {
    private Amendment() {}

    /** Return the identity of the entry that an amendment is about. */
    static EntryId target(Recorded amendment) {
        return amendment.entry() instanceof Corrected corrected
                ? corrected.target()
                : ((CrossedOut) amendment.entry()).target();
    }

    /**
     * Return what an entry says once it is amended.
     *
     * @param target the entry, where there is one with the identity
     * @param before its amendments until now
     * @param today the last day on which something can have been done, where that is judged
     * @throws Refused when it cannot be amended so; the faults have no place
     */
    static List<Strand> apply(
            Recorded amendment, Optional<Recorded> target, List<Recorded> before, Optional<LocalDate> today) {
        EntryId id = target(amendment);
        if (target.isEmpty()) {
            throw Refused.because("unknown-entry", "no entry " + id + " in the book");
        }
        if (target.get().entry().kind().phase() == Phase.AMENDMENT) {
            throw Refused.because(
                    "no-amending-amendments",
                    "a " + target.get().entry().kind().word()
                            + " entry cannot itself be amended; amend the entry that it is about");
        }
        if (before.stream().anyMatch(other -> other.entry() instanceof CrossedOut)) {
            throw Refused.because("already-crossed-out", "entry " + id + " is crossed out already");
        }
        List<Recorded> all = new ArrayList<>(before);
        all.add(amendment);
        List<Strand> strands;
        try {
            strands = Strand.of(target.get(), all);
        } catch (Refused refused) {
            throw new Refused(refused.faults().stream()
                    .map(fault -> new Fault("bad-correction", Optional.empty(), fault.text(), fault.nearest()))
                    .toList());
        }
        for (Strand strand : strands) {
            if (today.isPresent() && strand.day().first().isAfter(today.get())) {
                throw Refused.because("future-day", strand.day() + " is after today, " + today.get());
            }
        }
        return strands;
    }
}
