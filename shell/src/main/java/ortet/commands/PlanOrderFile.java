package ortet.commands;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.book.UnitFacts.Method;
import ortet.choice.PlanOrder;
import ortet.choice.PlanQuestion;
import ortet.entry.PlannedMethod;
import ortet.entry.Words;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

/** Orders in a CSV file: cultivar, count, by, and where they are wanted so size, sure and method. */
final class PlanOrderFile {
    private static final List<String> NEEDED = List.of("cultivar", "count", "by");
    private static final Set<String> COLUMNS = Set.of("cultivar", "count", "by", "size", "sure", "method");

    private PlanOrderFile() {}

    /**
     * Read orders.
     *
     * @throws Refused with everything that is wrong in the file, by line and column
     */
    static List<PlanOrder> read(Path path, LocalDate asOf) {
        FigureFile file = FigureFile.read(path);
        List<Fault> faults = new ArrayList<>();
        file.needs("--orders", NEEDED);
        for (String column : file.columns()) {
            if (!COLUMNS.contains(column)) {
                faults.add(Fault.of(
                                "unknown-column",
                                "expected the columns cultivar, count, by, size, sure and method, found \"" + column
                                        + "\"")
                        .at(new Where(path.toString(), 1, Optional.of(column))));
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        return file.each(row -> order(row, file.columns(), asOf));
    }

    private static PlanOrder order(FigureFile.Row row, Set<String> columns, LocalDate asOf) {
        String cultivar = row.name("cultivar");
        long count = row.whole("count");
        if (count < 1 || count > PlanQuestion.MOST) {
            throw row.bad("count", "expected 1 to " + PlanQuestion.MOST + " trees, found " + count);
        }
        LocalDate by = day(row);
        if (!by.isAfter(asOf)) {
            throw row.bad("by", "expected a day after " + asOf + ", found " + by);
        }
        Optional<Double> sure = columns.contains("sure") ? row.number("sure") : Optional.empty();
        if (sure.filter(share -> share < 0.01 || share > 0.999).isPresent()) {
            throw row.bad("sure", "expected a share from 0.01 to 0.999, such as 0.9, found " + sure.get());
        }
        Optional<String> size = columns.contains("size") ? text(row, "size") : Optional.empty();
        Optional<String> method = columns.contains("method") ? text(row, "method") : Optional.empty();
        return new PlanOrder(
                new PlanQuestion(
                        cultivar,
                        (int) count,
                        by,
                        sure.orElse(PlanQuestion.SURE),
                        size,
                        method.map(word -> method(row, word)),
                        asOf),
                row.where());
    }

    private static Optional<String> text(FigureFile.Row row, String column) {
        return Optional.of(row.text(column)).filter(text -> !text.isEmpty());
    }

    private static LocalDate day(FigureFile.Row row) {
        String text = row.name("by");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException none) {
            throw row.bad("by", "expected a day such as 2027-10-01, found \"" + text + "\"");
        }
    }

    private static Method method(FigureFile.Row row, String word) {
        try {
            return Method.valueOf(Words.parse(PlannedMethod.class, word).name());
        } catch (Refused unknown) {
            throw row.bad(
                    "method",
                    "expected " + String.join(", ", Words.all(PlannedMethod.class)) + " or nothing, found \"" + word
                            + "\"");
        }
    }
}
