package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

/** Gathers what is wrong with a mapping, by line, so that all of it can be told at once. */
final class MappingFaults {
    private final String shown;
    private final List<Fault> faults = new ArrayList<>();

    /**
     * Begin.
     *
     * @param shown the name of the mapping
     */
    MappingFaults(String shown) {
        this.shown = shown;
    }

    void add(long line, String rule, String text, Optional<String> nearest) {
        faults.add(new Fault(rule, Optional.of(new Where(shown, line, Optional.empty())), text, nearest));
    }

    /** Take a step; what it is refused for is a fault of a line. */
    void attempt(long line, Runnable step) {
        try {
            step.run();
        } catch (Refused refused) {
            refused.faults().forEach(fault -> add(line, fault.rule(), fault.text(), fault.nearest()));
        }
    }

    int size() {
        return faults.size();
    }

    /**
     * Refuse the mapping, if there are any.
     *
     * @throws Refused with all of them
     */
    void refuse() {
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
    }
}
