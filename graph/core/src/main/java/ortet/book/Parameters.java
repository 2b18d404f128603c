package ortet.book;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The parameters of a question: each a text, a whole number, or none. Days are texts of ISO 8601. */
public final class Parameters {
    /** No parameters. */
    public static final Parameters NONE = new Parameters(Map.of());

    private final Map<String, Optional<Object>> values;

    private Parameters(Map<String, Optional<Object>> values) {
        this.values = values;
    }

    /** Return these parameters and a text. */
    public Parameters with(String name, String value) {
        return and(name, Optional.of(value));
    }

    /** Return these parameters and a whole number. */
    public Parameters with(String name, long value) {
        return and(name, Optional.of(value));
    }

    /** Return these parameters and a day. */
    public Parameters with(String name, LocalDate value) {
        return and(name, Optional.of(value.toString()));
    }

    /** Return these parameters and one that has no value. */
    public Parameters without(String name) {
        return and(name, Optional.empty());
    }

    private Parameters and(String name, Optional<Object> value) {
        Map<String, Optional<Object>> more = new LinkedHashMap<>(values);
        more.put(Objects.requireNonNull(name), value);
        return new Parameters(Collections.unmodifiableMap(more));
    }

    /** Return the values by name: each a {@link String}, a {@link Long}, or empty. */
    public Map<String, Optional<Object>> values() {
        return values;
    }
}
