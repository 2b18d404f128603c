package ortet.commands;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import ortet.book.daybook.FaultFile;
import ortet.value.Fault;
import ortet.value.Refused;

/** Keeps a long list of faults to what a screen can bear, and writes the whole of it into a file if there is one. */
final class FaultList {
    /** How many faults a screen can bear. */
    static final int SHOWN = 20;

    private final Optional<FaultFile> file;

    /**
     * Begin a list.
     *
     * @param file where the whole list goes
     * @throws Refused when it cannot go there
     */
    FaultList(Optional<Path> file) {
        this.file = file.map(FaultFile::at);
    }

    /** Do work; when it is refused, tell the first faults, how many there are in all, and what may be done. */
    <T> T during(Supplier<T> work) {
        try {
            return work.get();
        } catch (Refused refused) {
            throw cut(refused.faults(), "nothing was written");
        }
    }

    /** Write the whole list into the file, if there is one. */
    void write(List<Fault> faults) {
        file.ifPresent(list -> list.write(faults));
    }

    /**
     * Return faults as a refusal that a screen can bear, after writing all of them into the file.
     *
     * @param end what is to be said at the end
     */
    Refused cut(List<Fault> faults, String end) {
        write(faults);
        int all = faults.size();
        List<Fault> shown = new ArrayList<>(faults.subList(0, Math.min(all, SHOWN)));
        boolean isCut = all > shown.size();
        String where = file.map(list -> "; " + list.path() + " has " + (all == 1 ? "it" : "all of them"))
                .orElse(isCut ? "; --faults FILE lists all of them" : "");
        shown.add(Fault.of(
                "nothing-written",
                (isCut ? "and " + Counts.grouped(all - shown.size()) + " more: " : "")
                        + Counts.of(all, "fault", "faults") + "; " + end + where));
        return new Refused(shown);
    }

    /** Return where the whole list is. */
    Optional<Path> path() {
        return file.map(FaultFile::path);
    }
}
