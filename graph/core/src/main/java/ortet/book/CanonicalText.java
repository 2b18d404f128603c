package ortet.book;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.LinkedHashMap;
import java.util.Map;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Recorded;
import ortet.value.Defect;

/**
 * Writes entries as one exact text, so that the same entry has the same bytes on every machine.
 *
 * <p>JSON (RFC 8259) without blanks, in UTF-8: an object with {@code order}, {@code recorded}, {@code id}, {@code day},
 * {@code by} (absent when unknown), {@code kind} and {@code fields}, in this order; {@code fields} has the columns of the
 * kind in the order of {@link Form}, each a string, absent ones left out. Strings escape the quotation mark and the
 * backslash with a backslash and characters below U+0020 as {@code \}{@code u00xx}, and nothing else.
 */
public final class CanonicalText {
    /** The instant of recording: UTC, always with three decimals. */
    public static final DateTimeFormatter INSTANT =
            new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

    private static final JsonFactory JSON = new JsonFactory();
    private static final String HEX = "0123456789abcdef";

    private CanonicalText() {}

    /** Return the canonical bytes of an entry. */
    public static byte[] bytes(Recorded recorded) {
        return bytes(recorded, fields(recorded.entry()));
    }

    /** Return the canonical bytes of an entry whose fields are known as canonical text. */
    static byte[] bytes(Recorded recorded, String fields) {
        return bytes(recorded, INSTANT.format(recorded.recordedAt()), fields);
    }

    /** Return the canonical bytes of an entry whose instant and fields are known as text. */
    static byte[] bytes(Recorded recorded, String instant, String fields) {
        StringBuilder text = new StringBuilder(256);
        text.append("{\"order\":").append(recorded.order()).append(",\"recorded\":");
        string(text, instant);
        text.append(",\"id\":");
        string(text, recorded.proposed().id().toString());
        text.append(",\"day\":");
        string(text, recorded.proposed().day().toString());
        recorded.proposed().by().ifPresent(by -> text.append(",\"by\":").append(by.value()));
        text.append(",\"kind\":");
        string(text, recorded.entry().kind().word());
        text.append(",\"fields\":");
        text.append(fields).append('}');
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Return the fields of an entry as canonical text: the object {@code fields} of the canonical bytes. */
    public static String fields(Entry entry) {
        StringBuilder text = new StringBuilder(128);
        fields(text, entry);
        return text.toString();
    }

    private static void fields(StringBuilder text, Entry entry) {
        char before = '{';
        for (Map.Entry<String, String> field : Form.write(entry).entrySet()) {
            text.append(before);
            string(text, field.getKey());
            text.append(':');
            string(text, field.getValue());
            before = ',';
        }
        if (before == '{') {
            text.append('{');
        }
        text.append('}');
    }

    private static void string(StringBuilder text, String value) {
        text.append('"');
        for (int at = 0; at < value.length(); at++) {
            char letter = value.charAt(at);
            if (letter == '"' || letter == '\\') {
                text.append('\\').append(letter);
            } else if (letter < ' ') {
                text.append("\\u00").append(HEX.charAt(letter >> 4)).append(HEX.charAt(letter & 15));
            } else {
                text.append(letter);
            }
        }
        text.append('"');
    }

    /**
     * Read an entry from the canonical text of its fields.
     *
     * @throws Defect when the text is damaged
     */
    public static Entry read(EntryKind kind, String fields) {
        Map<String, String> texts = new LinkedHashMap<>();
        try (JsonParser parser = JSON.createParser(fields)) {
            parser.nextToken();
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String column = parser.currentName();
                parser.nextToken();
                texts.put(column, parser.getText());
            }
        } catch (IOException damaged) {
            throw new Defect("an entry of the book is damaged: " + fields, damaged);
        }
        return Form.of(kind).read(texts);
    }
}
