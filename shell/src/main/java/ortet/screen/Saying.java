package ortet.screen;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Entry;
import ortet.entry.Form;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.Tags;

/** Says entries in words: every field under its name in the day book, with its unit after the value. */
public final class Saying {
    private static final Map<String, String> UNITS =
            Map.of("_mm", "mm", "_c", "°C", "_years", "years", "_m2", "m²", "grams", "g");

    private Saying() {}

    /** Return the tags of an entry, briefly. */
    public static String tags(List<Tag> tags) {
        return Tags.brief(tags);
    }

    /** Return the fields of an entry but its tags and those named, in words: {@code mother K-12, stem 12 mm}. */
    public static String fields(Entry entry, Names names, String... without) {
        Map<String, String> texts = new LinkedHashMap<>(Form.write(entry));
        texts.remove("tags");
        List.of(without).forEach(texts::remove);
        StringBuilder line = new StringBuilder();
        texts.forEach((column, text) -> {
            if (line.length() > 0) {
                line.append(", ");
            }
            line.append(field(column, text, names));
        });
        return line.toString();
    }

    private static String field(String column, String text, Names names) {
        if (column.equals("note")) {
            return "“" + text + "”";
        }
        String value = PersonNumber.isWritten(text) ? names.of(PersonNumber.parse(text)) : text;
        for (Map.Entry<String, String> unit : UNITS.entrySet()) {
            if (unit.getKey().startsWith("_") && column.endsWith(unit.getKey())) {
                String name = column.substring(0, column.length() - unit.getKey().length());
                return name.replace('_', ' ') + " " + value + " " + unit.getValue();
            }
        }
        String unit = Optional.ofNullable(UNITS.get(column)).map(found -> " " + found).orElse("");
        return (column.equals("grams") ? "weight" : column.replace('_', ' ')) + " " + value + unit;
    }

    /** Gives the names of persons. */
    @FunctionalInterface
    public interface Names {
        /** Return what to call a person. */
        String of(PersonNumber number);
    }
}
