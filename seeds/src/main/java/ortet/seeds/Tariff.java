package ortet.seeds;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.entry.Per;
import ortet.entry.Task;
import ortet.value.When;

/** What work, materials and benches cost at Sallowfield and what its trees sell for: every figure is invented. */
final class Tariff {
    private static final String NOTE = "invented";
    private static final String UNGRADED = "ungraded";
    private static final LocalDate FIRST = LocalDate.of(2012, 1, 1);
    private static final LocalDate SECOND = LocalDate.of(2019, 1, 2);
    private static final LocalDate THIRD = LocalDate.of(2023, 1, 3);

    private final Nursery nursery;

    Tariff(Nursery nursery) {
        this.nursery = nursery;
    }

    /** List it from the first year on, and anew when wages, heat and prices went up. */
    void plan() {
        nursery.agenda.on(FIRST, this::first);
        nursery.agenda.on(SECOND, this::second);
        nursery.agenda.on(THIRD, this::third);
    }

    private DayBook.Draft cost(LocalDate day) {
        return nursery.book
                .on(When.on(day), Optional.empty(), EntryKind.COST_LISTED)
                .set("note", NOTE);
    }

    private void first() {
        hour(FIRST, "14.20 EUR");
        cost(FIRST)
                .set("task", Task.GRAFT_WORKED)
                .set("per", Per.HOUR)
                .set("amount", "17.50 EUR")
                .write();
        work();
        materials();
        bench(FIRST, "", "6.50 EUR");
        bench(FIRST, "Propagation house", "86 EUR");
        bench(FIRST, "House 1", "48 EUR");
        bench(FIRST, "House 2", "27 EUR");
        bench(FIRST, "Frame yard", "15 EUR");
        bench(FIRST, "Stock field", "1.10 EUR");
        bench(FIRST, "Far field", "0.80 EUR");
        spaces();
        price(FIRST, "small", Optional.empty(), "22.00 EUR");
        price(FIRST, "medium", Optional.empty(), "35.00 EUR");
        price(FIRST, "large", Optional.empty(), "60.00 EUR");
        price(FIRST, "specimen", Optional.empty(), "98.00 EUR");
        price(FIRST, "medium", Optional.of("Acer palmatum"), "38.00 EUR");
        price(FIRST, UNGRADED, Optional.empty(), "3.90 EUR");
        price(FIRST, UNGRADED, Optional.of("Acer palmatum"), "4.60 EUR");
    }

    private void second() {
        hour(SECOND, "16.40 EUR");
        bench(SECOND, "Propagation house", "97 EUR");
        bench(SECOND, "Tunnel", "22 EUR");
        price(SECOND, "small", Optional.empty(), "26.00 EUR");
        price(SECOND, "medium", Optional.empty(), "41.00 EUR");
        price(SECOND, "large", Optional.empty(), "71.00 EUR");
        price(SECOND, "medium", Optional.of("Acer palmatum"), "44.00 EUR");
        price(SECOND, UNGRADED, Optional.empty(), "4.40 EUR");
        price(SECOND, UNGRADED, Optional.of("Acer palmatum"), "5.20 EUR");
    }

    private void third() {
        hour(THIRD, "19.50 EUR");
        cost(THIRD)
                .set("task", Task.GRAFT_WORKED)
                .set("per", Per.HOUR)
                .set("amount", "23.00 EUR")
                .write();
        bench(THIRD, "Propagation house", "142 EUR");
        bench(THIRD, "House 1", "69 EUR");
        price(THIRD, "small", Optional.empty(), "29.50 EUR");
        price(THIRD, "medium", Optional.empty(), "46.00 EUR");
        price(THIRD, "large", Optional.empty(), "79.00 EUR");
        price(THIRD, "specimen", Optional.empty(), "125.00 EUR");
        price(THIRD, "medium", Optional.of("Acer palmatum"), "49.00 EUR");
        price(THIRD, UNGRADED, Optional.empty(), "4.80 EUR");
        price(THIRD, UNGRADED, Optional.of("Acer palmatum"), "5.70 EUR");
        price(THIRD, UNGRADED, Optional.of(Variety.ITOIGAWA.cultivar().toString()), "6.00 EUR");
        price(THIRD, "medium", Optional.of(Variety.DESHOJO.cultivar().toString()), "58.00 EUR");
    }

    private void hour(LocalDate day, String amount) {
        cost(day).set("per", Per.HOUR).set("amount", amount).write();
    }

    private void bench(LocalDate day, String place, String amount) {
        cost(day)
                .set("place", place)
                .set("per", Per.M2_YEAR)
                .set("amount", amount)
                .write();
    }

    private void price(LocalDate day, String size, Optional<String> cultivar, String price) {
        nursery.book
                .on(When.on(day), Optional.empty(), EntryKind.PRICE_LISTED)
                .set("size", size)
                .set("cultivar", cultivar)
                .set("price", price)
                .set("note", NOTE)
                .write();
    }

    private void work() {
        each(Task.ACQUIRED, "", "2.20 EUR", Optional.empty());
        each(Task.LAYER_SET, "0.18", "0.15 EUR", Optional.empty());
        each(Task.CUTTINGS_STRUCK, "0.008", "", Optional.empty());
        tag(Task.CUTTINGS_STRUCK, "0.1");
        mother(Task.LAYER_SET, "0.1");
        mother(Task.CUTTINGS_STRUCK, "0.12");
        mother(Task.GRAFT_WORKED, "0.12");
        each(Task.GRAFT_WORKED, "0.12", "0.10 EUR", Optional.empty());
        tag(Task.SEED_SOWN, "0.25");
        each(Task.DIVIDED, "0.2", "", Optional.empty());
        tag(Task.CHECKED, "0.02");
        each(Task.REWORKED, "0.12", "0.15 EUR", Optional.empty());
        each(Task.SEVERED, "0.08", "", Optional.empty());
        each(Task.DRAWN, "0.02", "", Optional.empty());
        each(Task.POTTED, "0.06", "", Optional.empty());
        each(Task.POTTED, "0.15", "", Optional.of("10 L"));
        each(Task.POTTED, "0.3", "", Optional.of("20 L"));
        each(Task.PLANTED_OUT, "0.1", "", Optional.empty());
        each(Task.LIFTED, "0.25", "", Optional.empty());
        each(Task.MOVED, "0.01", "", Optional.empty());
        each(Task.MEASURED, "0.02", "", Optional.empty());
        each(Task.CUT_BACK, "0.1", "", Optional.empty());
        each(Task.GRADED, "0.01", "", Optional.empty());
        tag(Task.COUNTED, "0.05");
        each(Task.SPLIT, "0.005", "", Optional.empty());
        tag(Task.MERGED, "0.1");
        each(Task.SOLD, "0.08", "1.20 EUR", Optional.empty());
    }

    private void each(Task task, String hours, String amount, Optional<String> container) {
        cost(FIRST)
                .set("task", task)
                .set("container", container)
                .set("per", Per.UNIT)
                .set("hours", hours)
                .set("amount", amount)
                .write();
    }

    private void tag(Task task, String hours) {
        cost(FIRST).set("task", task).set("per", Per.TAG).set("hours", hours).write();
    }

    /** List going to a mother: the way along the rows, ladder and tools. */
    private void mother(Task task, String hours) {
        cost(FIRST).set("task", task).set("per", Per.MOTHER).set("hours", hours).write();
    }

    private void materials() {
        for (String pot :
                List.of("7 cm 0.05", "9 cm 0.07", "1.5 L 0.22", "3 L 0.34", "5 L 0.52", "10 L 1.10", "20 L 2.40")) {
            material(pot, Optional.empty(), Per.UNIT);
        }
        for (String pot : List.of(
                "oval pot 24 cm 9.50",
                "oval pot 34 cm 16",
                "round pot 18 cm 7",
                "drum pot 20 cm 8.50",
                "rectangular pot 30 cm 14",
                "wooden box 50 cm 11")) {
            material(pot, Optional.empty(), Per.UNIT);
        }
        for (String tray : List.of("tray of 60 0.90", "tray of 84 0.95", "tray of 104 1.05", "pan 30 cm 1.40")) {
            material(tray, Optional.empty(), Per.TAG);
        }
        for (String medium : List.of(
                "sphagnum moss 0.28",
                "moss and pumice 0.24",
                "coir 0.12",
                "pumice 0.009",
                "perlite 0.006",
                "peat-free mix and perlite 0.008",
                "akadama and pumice 0.62",
                "bark and grit 0.21",
                "coir and perlite 0.19",
                "pumice and bark 0.33",
                "loam and grit 0.18")) {
            material(medium, Optional.empty(), Per.UNIT);
        }
        material("bark and grit 1.05", Optional.of("10 L"), Per.UNIT);
        for (String rest :
                List.of("black film 0.06", "clear film and foil 0.09", "split pot 0.35", "IBA 0.004", "NAA 0.004")) {
            material(rest, Optional.empty(), Per.UNIT);
        }
    }

    /** List a material: its name, and after the last blank what it costs in euros. */
    private void material(String words, Optional<String> container, Per per) {
        int end = words.lastIndexOf(' ');
        cost(FIRST)
                .set("material", words.substring(0, end))
                .set("container", container)
                .set("per", per)
                .set("amount", words.substring(end + 1) + " EUR")
                .write();
    }

    private void spaces() {
        for (String pot : List.of(
                "7 cm 180",
                "9 cm 110",
                "1.5 L 45",
                "3 L 28",
                "5 L 20",
                "10 L 11",
                "20 L 6",
                "tray of 60 440",
                "tray of 84 600",
                "tray of 104 750",
                "pan 30 cm 900",
                "oval pot 24 cm 11",
                "oval pot 34 cm 6",
                "round pot 18 cm 18",
                "drum pot 20 cm 15",
                "rectangular pot 30 cm 7",
                "wooden box 50 cm 2.5")) {
            int end = pot.lastIndexOf(' ');
            cost(FIRST)
                    .set("container", pot.substring(0, end))
                    .set("units_per_m2", pot.substring(end + 1))
                    .write();
        }
        Map.of("Stock field", "0.5", "Far field", "3").entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(field -> cost(FIRST)
                        .set("place", field.getKey())
                        .set("units_per_m2", field.getValue())
                        .write());
        cost(FIRST).set("size", "specimen").set("units_per_m2", "2").write();
    }
}
