package ortet.commands;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Words;
import ortet.plant.Tag;

/** Gathers the fields of an entry to be written, under their names in the day book. */
final class Draft {
    private final EntryKind kind;
    private final Map<String, String> texts = new LinkedHashMap<>();

    private Draft(EntryKind kind) {
        this.kind = kind;
    }

    static Draft of(EntryKind kind) {
        return new Draft(kind);
    }

    static Draft of(EntryKind kind, List<Tag> tags) {
        return new Draft(kind).list("tags", tags);
    }

    Draft copy() {
        Draft copy = new Draft(kind);
        copy.texts.putAll(texts);
        return copy;
    }

    Draft put(String column, Object value) {
        texts.put(column, value instanceof Enum<?> choice ? Words.of(choice) : value.toString());
        return this;
    }

    Draft put(String column, Optional<?> value) {
        value.ifPresent(present -> put(column, present));
        return this;
    }

    Draft put(String column, boolean value) {
        if (value) {
            texts.put(column, "yes");
        }
        return this;
    }

    Draft list(String column, Collection<?> values) {
        if (!values.isEmpty()) {
            texts.put(
                    column,
                    String.join(" ", values.stream().map(Object::toString).toList()));
        }
        return this;
    }

    /**
     * Return the entry.
     *
     * @throws ortet.value.Refused when a field is missing or makes no sense
     */
    Entry entry() {
        return Form.of(kind).read(texts);
    }
}
