package ortet.figures;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.function.Predicate;

/** Reads the followed and looked-at times of {@code oracles/data}; where they come from is told by those who use them. */
final class Followings {
    private Followings() {}

    /** Return times of which the column says what happened: a number, 0 for censored. */
    static List<Followed> of(String file, String column, Predicate<NamedCsvRecord> which) {
        return Oracle.rows("data/" + file + ".csv").stream()
                .filter(which)
                .map(row ->
                        new Followed(Double.parseDouble(row.getField("time")), Integer.parseInt(row.getField(column))))
                .toList();
    }

    /** Return times between looks. */
    static List<Within> within(String file, Predicate<NamedCsvRecord> which) {
        return Oracle.rows("data/" + file + ".csv").stream()
                .filter(which)
                .map(row -> new Within(
                        Double.parseDouble(row.getField("left")),
                        row.getField("right").isEmpty()
                                ? Double.POSITIVE_INFINITY
                                : Double.parseDouble(row.getField("right"))))
                .toList();
    }

    /** Return the followed times of a case in {@code oracles/survival.csv}, those of the group alone unless it is all. */
    static List<Followed> caseOf(String data, String group) {
        return switch (data) {
            case "aml" -> of("aml", "event", row -> row.getField("group").equals(group));
            case "lung", "lung by sex" ->
                of(
                        "lung",
                        "event",
                        row -> group.equals("all") || row.getField("sex").equals(group));
            case "layers-competing (death as censoring)" ->
                of("layers-competing", "status", row -> true).stream()
                        .map(one -> one.cause() == 1 ? one : Followed.censored(one.time()))
                        .toList();
            default -> of(data, "status", row -> true);
        };
    }
}
