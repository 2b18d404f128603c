package ortet.seeds;

import java.time.LocalDate;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.entry.PlannedMethod;
import ortet.value.When;

/** What Sallowfield has accepted to set in the coming year, for orders that are invented like everything else. */
final class Plans {
    private static final LocalDate ACCEPTED = LocalDate.of(2026, 10, 30);

    private final Nursery nursery;

    Plans(Nursery nursery) {
        this.nursery = nursery;
    }

    /** Accept the plans when the year's work is done. */
    void plan() {
        nursery.agenda.on(ACCEPTED, this::accept);
    }

    /** Keep what "ortet plan --keep" works out of this book on that day. */
    private void accept() {
        planned("Arakawa 2031", "Acer palmatum 'Arakawa'", PlannedMethod.LAYER, "3", "10", "6")
                .set("set_from", "2027-04-18")
                .set("set_to", "2027-06-08")
                .write();
        planned("Deshojo trays", "Acer palmatum 'Deshojo'", PlannedMethod.CUTTING, "6", "70", "13.6")
                .set("size", "small")
                .set("set_from", "2027-06-10")
                .set("set_to", "2027-08-24")
                .set("note", "invented: for the autumn sale of 2031")
                .write();
        planned("Beni-chidori 2031", "Prunus mume 'Beni-chidori'", PlannedMethod.GRAFT, "5", "17", "8.8")
                .set("set_from", "2027-03-08")
                .set("set_to", "2027-08-13")
                .write();
    }

    private DayBook.Draft planned(
            String name, String cultivar, PlannedMethod method, String wanted, String toSet, String expected) {
        return nursery.book
                .on(When.on(ACCEPTED), Optional.empty(), EntryKind.PLANNED)
                .set("name", name)
                .set("cultivar", cultivar)
                .set("method", method)
                .set("wanted", wanted)
                .set("wanted_by", "2031-10-01")
                .set("sure_percent", "90")
                .set("to_set", toSet)
                .set("expected", expected);
    }
}
