package ortet.value;

import java.util.ArrayList;
import java.util.List;

/** Says that something cannot be done as asked, with every fault found; nothing has been changed. */
public final class Refused extends OrtetException {
    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    /**
     * Refuse for the given faults.
     *
     * @param faults at least one
     */
    public Refused(List<Fault> faults) {
        super(faults.get(0).line());
        this.faults = List.copyOf(faults);
    }

    /** Refuse for one fault. */
    public Refused(Fault fault) {
        this(List.of(fault));
    }

    /** Refuse for one fault that concerns no particular place. */
    public static Refused because(String rule, String text) {
        return new Refused(Fault.of(rule, text));
    }

    /** Return the faults, in the order in which they were found. */
    public List<Fault> faults() {
        return faults;
    }

    @Override
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        faults.forEach(fault -> lines.add(fault.line()));
        return lines;
    }
}
