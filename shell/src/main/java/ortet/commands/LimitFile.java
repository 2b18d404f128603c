package ortet.commands;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.choice.inputs.LimitLine;
import ortet.value.Nearest;

/** A CSV file that tells hours, room, licences and shares: what, where, year and amount. */
final class LimitFile {
    private LimitFile() {}

    static List<LimitLine> read(Path path) {
        FigureFile file = FigureFile.read(path);
        file.needs("--limits", List.of("what", "amount"));
        return file.each(row -> new LimitLine(
                what(row),
                file.has("where") ? row.text("where") : "",
                year(file, row),
                amount(row, "amount"),
                Optional.of(row.where())));
    }

    private static LimitLine.What what(FigureFile.Row row) {
        String word = row.name("what");
        List<String> known = new ArrayList<>();
        for (LimitLine.What what : LimitLine.What.values()) {
            String name = what.word();
            if (name.equalsIgnoreCase(word)) {
                return what;
            }
            known.add(name);
        }
        throw row.bad(
                "what",
                "\"" + word + "\": expected " + String.join(", ", known)
                        + Nearest.of(word, known)
                                .map(near -> "; nearest: " + near)
                                .orElse(""));
    }

    static double amount(FigureFile.Row row, String column) {
        return row.number(column).orElseThrow(() -> row.bad(column, "expected a number of at least 0, found nothing"));
    }

    static Optional<Integer> year(FigureFile file, FigureFile.Row row) {
        if (!file.has("year") || row.text("year").isEmpty()) {
            return Optional.empty();
        }
        if (!row.text("year").matches("(19|20|21)\\d\\d")) {
            throw row.bad("year", "expected a calendar year, found \"" + row.text("year") + "\"");
        }
        return Optional.of(Integer.valueOf(row.text("year")));
    }
}
