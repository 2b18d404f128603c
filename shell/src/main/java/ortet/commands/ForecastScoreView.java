package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ortet.choice.ForecastBand;
import ortet.choice.ForecastCell;
import ortet.choice.ForecastKnown;
import ortet.choice.ForecastScore;
import ortet.entry.Words;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows how forecasts for an earlier day have held. */
final class ForecastScoreView {
    private static final int HUNDRED = 100;

    private ForecastScoreView() {}

    static void show(ForecastScore score, boolean explain, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(score, explain, screen);
            case CSV -> screen.show(rows(score), format);
            case JSON -> screen.json(json -> json(score, json));
        }
    }

    // ---- for people ----

    private static void words(ForecastScore score, boolean explain, Screen screen) {
        screen.headed(
                "", "forecasts for " + score.from() + " against what came", "  ", ForecastView.asked(score.question()));
        screen.println();
        screen.show(months(score), OutputFormat.TABLE);
        screen.println();
        screen.hanging("", "  ", verdict(score));
        screen.hanging("", "  ", known(score));
        notes(score).forEach(note -> screen.hanging("", "  ", note));
        if (explain) {
            screen.println();
            outside(score).forEach(line -> screen.hanging("- ", "  ", line));
        }
    }

    private static Sheet months(ForecastScore score) {
        int most = score.total().stream()
                .mapToInt(cell -> Math.max(cell.came(), cell.forecast().upper90()))
                .max()
                .orElse(0);
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("month", "month"),
                Column.whole("came", "came"),
                Column.whole("median", "forecast"),
                Column.text("half", "1 in 2"),
                Column.text("nine", "9 in 10"),
                Column.text("line", "0 to " + most),
                Column.text("held", ""));
        for (ForecastCell cell : score.total()) {
            ForecastBand band = cell.forecast();
            sheet.row(
                    cell.month().toString(),
                    cell.came(),
                    band.median(),
                    ForecastView.range(band.lower50(), band.upper50()),
                    ForecastView.range(band.lower90(), band.upper90()),
                    ForecastView.line(band, most),
                    band.holds90(cell.came()) ? "" : cell.came() > band.upper90() ? "more" : "fewer");
        }
        sheet.row(
                "in all",
                score.came(),
                score.inAll().median(),
                ForecastView.range(score.inAll().lower50(), score.inAll().upper50()),
                ForecastView.range(score.inAll().lower90(), score.inAll().upper90()),
                "",
                score.inAll().holds90(score.came())
                        ? ""
                        : score.came() > score.inAll().upper90() ? "more" : "fewer");
        return sheet.build();
    }

    static String verdict(ForecastScore score) {
        return switch (score.verdict()) {
            case HELD -> "The forecasts held: what came lay within their bands about as often as they said.";
            case TOO_LOW ->
                "The forecasts were too low: more came over the whole time than nineteen in twenty simulations had.";
            case TOO_HIGH ->
                "The forecasts were too high: fewer came over the whole time than nineteen in twenty simulations had.";
            case TOO_SURE ->
                "The forecasts were too sure of themselves: in all about right, but single cultivars and months lay outside"
                        + " the bands more often than they said.";
            case TOO_CAREFUL ->
                "The forecasts were too careful: what came lay within the narrow bands more often than they said.";
            case TOO_FEW -> "Too few months and cultivars to tell whether the forecasts held.";
        };
    }

    private static String known(ForecastScore score) {
        return score.known() == ForecastKnown.RECORDED_BY_THEN
                ? "They went by what had happened by that day and had been written into the book by then ("
                        + score.recorded() + " of " + score.begun() + " tags)."
                : "They went by what had happened by that day, as the book knows it now: of " + score.begun()
                        + " tags only " + score.recorded() + " had been written into it by then. What was written later"
                        + " may have been touched by what was known later.";
    }

    private static List<String> notes(ForecastScore score) {
        List<String> notes = new ArrayList<>();
        if (!score.cells().isEmpty()) {
            notes.add("Of " + score.cells().size() + " months of cultivars " + percent(score.within50())
                    + " lay within the 50 % band (by its own reckoning " + percent(score.expected50()) + ") and "
                    + percent(score.within90()) + " within the 90 % band (" + percent(score.expected90())
                    + "); bands of small whole numbers hold more than their name says.");
            notes.add("Mean error " + String.format(Locale.ROOT, "%+.2f", score.meanError())
                    + " trees a month and cultivar (above 0: too many forecast); median off by "
                    + String.format(Locale.ROOT, "%.2f", score.meanAbsoluteError()) + " on average.");
        }
        if (score.later() > 0) {
            notes.add(Counts.of(score.later(), "tree", "trees")
                    + " more became saleable of what was set after that day: no forecast could know of them, and they are in"
                    + " no number above.");
        }
        return notes;
    }

    private static List<String> outside(ForecastScore score) {
        List<String> lines = new ArrayList<>();
        for (ForecastCell cell : score.cells()) {
            if (!cell.forecast().holds90(cell.came())) {
                lines.add(ForecastView.name(cell.cultivar().orElse("")) + ", " + cell.month() + ": " + cell.came()
                        + " came, forecast " + cell.forecast().median() + " ("
                        + ForecastView.range(
                                cell.forecast().lower90(), cell.forecast().upper90())
                        + ")");
            }
        }
        lines.add(
                "Scored are the months and cultivars of which the 90 % band, or what came, is above 0. Held: within 10 of"
                        + " 100 of what the 90 % bands said, 15 above the 50 % bands at most, and in all within the 90 % band."
                        + " docs/methods/forecast.md");
        return lines;
    }

    private static String percent(double share) {
        return Math.round(HUNDRED * share) + " %";
    }

    // ---- for programs ----

    private static Sheet rows(ForecastScore score) {
        Sheet.Builder sheet = Sheet.titled(
                "forecasts for " + score.from(),
                Column.text("cultivar", "cultivar"),
                Column.text("month", "month"),
                Column.whole("came", "came"),
                Column.number("mean", "mean", 1),
                Column.whole("median", "median"),
                Column.whole("lower_50", "from"),
                Column.whole("upper_50", "to"),
                Column.whole("lower_90", "from"),
                Column.whole("upper_90", "to"));
        List<ForecastCell> all = new ArrayList<>(score.cells());
        all.addAll(score.total());
        for (ForecastCell cell : all) {
            ForecastBand band = cell.forecast();
            sheet.row(
                    cell.cultivar().map(ForecastView::name).orElse("all"),
                    cell.month().toString(),
                    cell.came(),
                    band.mean(),
                    band.median(),
                    band.lower50(),
                    band.upper50(),
                    band.lower90(),
                    band.upper90());
        }
        sheet.note(verdict(score));
        sheet.note(known(score));
        notes(score).forEach(sheet::note);
        return sheet.build();
    }

    private static void json(ForecastScore score, Json json) {
        json.object(document -> {
            ForecastView.question(score.question(), document);
            document.field("forecast_for", score.from());
            document.field("went_by", Words.of(score.known()));
            document.field("begun", score.begun());
            document.field("recorded_by_then", score.recorded());
            document.object("become_in_all", band -> ForecastView.band(score.inAll(), band));
            document.field("came", score.came());
            document.field("came_of_what_was_set_later", score.later());
            document.field("scored", score.cells().size());
            document.field("within_50", of(score, score.within50()));
            document.field("expected_within_50", of(score, score.expected50()));
            document.field("within_90", of(score, score.within90()));
            document.field("expected_within_90", of(score, score.expected90()));
            document.field("mean_error", of(score, score.meanError()));
            document.field("mean_absolute_error", of(score, score.meanAbsoluteError()));
            document.field("verdict", Words.of(score.verdict()));
            document.field("verdict_in_words", verdict(score));
            document.array("cells", cells -> {
                score.cells().forEach(cell -> cell(cell, cells));
                score.total().forEach(cell -> cell(cell, cells));
            });
        });
    }

    private static Optional<Double> of(ForecastScore score, double value) {
        return score.cells().isEmpty() ? Optional.empty() : Optional.of(value);
    }

    private static void cell(ForecastCell cell, Json cells) {
        cells.object(one -> {
            one.field("all_cultivars", cell.cultivar().isEmpty());
            one.field("cultivar", cell.cultivar().filter(name -> !name.isEmpty()));
            one.field("month", cell.month().toString());
            one.field("came", cell.came());
            one.object("become", band -> ForecastView.band(cell.forecast(), band));
        });
    }
}
