package ortet.screen;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Writes a JSON document as it goes, nested as deep as needed; numbers unrounded, days as {@code yyyy-mm-dd}, what is
 * unknown as {@code null}.
 *
 * <pre>{@code
 * screen.json(json -> json.object(tree -> tree
 *         .field("tag", "J-201")
 *         .array("steps", steps -> steps.object(step -> step.field("act", "severed")))));
 * }</pre>
 */
public final class Json {
    private final JsonGenerator out;

    private Json(JsonGenerator out) {
        this.out = out;
    }

    static void write(Writer writer, Consumer<Json> document) {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(indenter);
        printer.indentArraysWith(indenter);
        JsonFactory factory = JsonFactory.builder()
                .disable(JsonWriteFeature.ESCAPE_FORWARD_SLASHES)
                .build();
        try (JsonGenerator generator = factory.createGenerator(writer)) {
            generator.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            generator.disable(JsonGenerator.Feature.FLUSH_PASSED_TO_STREAM);
            generator.setPrettyPrinter(printer);
            document.accept(new Json(generator));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Write an object, as the document or as an array's next value. */
    public Json object(Consumer<Json> fields) {
        return written(() -> {
            out.writeStartObject();
            fields.accept(this);
            out.writeEndObject();
        });
    }

    /** Write an array, as the document or as an array's next value. */
    public Json array(Consumer<Json> values) {
        return written(() -> {
            out.writeStartArray();
            values.accept(this);
            out.writeEndArray();
        });
    }

    /** Write a field that is an object. */
    public Json object(String name, Consumer<Json> fields) {
        return named(name).object(fields);
    }

    /** Write a field that is an array. */
    public Json array(String name, Consumer<Json> values) {
        return named(name).array(values);
    }

    /** Write a field with a plain value, see {@link Cell#of}. */
    public Json field(String name, Object value) {
        return named(name).value(value);
    }

    /** Write a field only if there is a value. */
    public Json fieldIfAny(String name, Optional<?> value) {
        return value.isPresent() ? field(name, value.get()) : this;
    }

    /** Write a plain value as an array's next, see {@link Cell#of}. */
    public Json value(Object value) {
        Cell cell = Cell.of(value);
        return written(() -> {
            if (cell instanceof Cell.Words words) {
                out.writeString(words.text());
            } else if (cell instanceof Cell.Whole whole) {
                out.writeNumber(whole.value());
            } else if (cell instanceof Cell.Number number && Double.isFinite(number.value())) {
                out.writeNumber(number.value());
            } else if (cell instanceof Cell.Exact exact) {
                writeExact(exact.value());
            } else if (cell instanceof Cell.Day day) {
                writeDay(day.day());
            } else if (cell instanceof Cell.Truth truth) {
                out.writeBoolean(truth.value());
            } else {
                out.writeNull();
            }
        });
    }

    private void writeExact(BigDecimal value) throws IOException {
        out.writeNumber(value.toPlainString());
    }

    private void writeDay(LocalDate day) throws IOException {
        out.writeString(day.toString());
    }

    private Json named(String name) {
        return written(() -> out.writeFieldName(name));
    }

    private Json written(Writing writing) {
        try {
            writing.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    @FunctionalInterface
    private interface Writing {
        void run() throws IOException;
    }
}
