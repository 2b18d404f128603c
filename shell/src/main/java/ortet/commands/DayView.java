package ortet.commands;

import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.entry.Words;
import ortet.inventory.DayRecord;
import ortet.lineage.Deed;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows what was recorded on a day. */
final class DayView {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final String TARGET = "target";
    private static final String NOBODY = "nobody named";

    private DayView() {}

    static void show(DayRecord record, OutputFormat format, Screen screen) {
        if (record.lines().isEmpty() && format == OutputFormat.TABLE) {
            screen.prose("nothing was recorded on " + record.day());
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "recorded on " + record.day(),
                Column.text("at", "at"),
                Column.whole("entry", "entry"),
                Column.text("what", "what").forPeople(),
                Column.text("by", "by"),
                Column.text("day", "day").forPrograms(),
                Column.text("kind", "kind").forPrograms(),
                Column.text("tags", "tags").forPrograms(),
                Column.text("details", "details").forPrograms(),
                Column.whole("of_entry", "of entry").forPrograms(),
                Column.text("mark", "mark").forPrograms());
        for (DayRecord.Line line : record.lines()) {
            Deed deed = line.deed();
            sheet.row(
                    line.at().format(CLOCK),
                    deed.order(),
                    words(line, deed.day().toString().equals(record.day().toString())),
                    deed.by(),
                    deed.day().toString(),
                    deed.kind().word(),
                    Tags.brief(line.tags()),
                    details(deed),
                    line.target(),
                    Words.of(line.mark()));
        }
        sheet.note(Counts.of(record.count(), "entry", "entries") + ": "
                + String.join(
                        ", ",
                        record.byWhom().entrySet().stream()
                                .map(one ->
                                        one.getValue() + " by " + one.getKey().orElse(NOBODY))
                                .toList()));
        if (record.lines().size() < record.count()) {
            sheet.note("shown are the last " + record.lines().size() + " (--most N shows more)");
        }
        screen.show(sheet.build(), format);
    }

    private static String details(Deed deed) {
        Map<String, String> details = new LinkedHashMap<>();
        deed.container().ifPresent(container -> details.put("container", container));
        deed.place().ifPresent(place -> details.put("place", place.name()));
        details.putAll(deed.details());
        details.remove(TARGET);
        return String.join(
                "; ",
                details.entrySet().stream()
                        .map(one -> one.getKey() + "=" + one.getValue())
                        .toList());
    }

    /**
     * Return an entry in words: {@code potted J-201..J-203 (3) into 2 L, at House 1, on 2026-06-14: purpose pot-up}.
     *
     * @param sameDay whether the day need not be told
     */
    static String words(DayRecord.Line line, boolean sameDay) {
        Deed deed = line.deed();
        StringBuilder text = new StringBuilder(deed.kind().word().replace('-', ' '));
        line.target().ifPresent(order -> text.append(" #").append(order));
        boolean amends = deed.kind().phase() == EntryKind.Phase.AMENDMENT;
        if (!line.tags().isEmpty()) {
            text.append(amends ? " for " : " ").append(Tags.brief(line.tags()));
            if (line.tags().size() > 1) {
                text.append(" (").append(line.tags().size()).append(')');
            }
        }
        deed.container().ifPresent(container -> text.append(", into ").append(container));
        deed.place().ifPresent(place -> text.append(", at ").append(place));
        if (!sameDay) {
            text.append(", on ").append(deed.day());
        }
        List<String> details = deed.details().entrySet().stream()
                .filter(one -> !one.getKey().equals(TARGET))
                .map(one -> Labels.of(one.getKey(), one.getValue()))
                .toList();
        if (!details.isEmpty()) {
            text.append(": ").append(String.join(", ", details));
        }
        Optional<String> mark = switch (line.mark()) {
            case AS_WRITTEN -> Optional.empty();
            case CORRECTED -> Optional.of("corrected since");
            case CROSSED_OUT -> Optional.of("crossed out since");
        };
        mark.ifPresent(told -> text.append("  [").append(told).append(']'));
        return text.toString();
    }
}
