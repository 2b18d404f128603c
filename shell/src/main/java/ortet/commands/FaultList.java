package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import ortet.value.Fault;
import ortet.value.Refused;

/** Keeps a long list of faults to what a screen can bear; the last line tells how many there are. */
final class FaultList {
    /** How many faults are shown where nobody asked for more. */
    static final int SHOWN = 50;

    private FaultList() {}

    /** Do work; when it is refused for more faults than that, tell the first and how many there are in all. */
    static void capped(int most, Runnable work) {
        try {
            work.run();
        } catch (Refused refused) {
            int all = refused.faults().size();
            List<Fault> shown = new ArrayList<>(refused.faults().subList(0, Math.min(all, Math.max(1, most))));
            String end = (all == 1 ? "1 fault" : all + " faults") + "; nothing was written";
            shown.add(Fault.of(
                    "nothing-written",
                    all > shown.size()
                            ? "and " + (all - shown.size()) + " more: " + end + " (--faults " + all + " shows all)"
                            : end));
            throw new Refused(shown);
        }
    }
}
