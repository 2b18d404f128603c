package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class TidyReaderTests {
    /** Hands out a few bytes at a time, as a pipe may. */
    private static InputStream dripping(byte[] bytes, int most) {
        return new ByteArrayInputStream(bytes) {
            @Override
            public synchronized int read(byte[] target, int offset, int length) {
                return super.read(target, offset, Math.min(most, length));
            }
        };
    }

    private static String all(TidyReader reader, int most) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] chars = new char[most];
        int count;
        while ((count = reader.read(chars, 0, most)) >= 0) {
            text.append(chars, 0, count);
        }
        assertTrue(reader.hasEnded());
        return text.toString();
    }

    @Property
    void endsEveryLineWithALineFeed(
            @ForAll("texts") String text, @ForAll @IntRange(min = 1, max = 7) int drop, @ForAll boolean marked)
            throws IOException {
        byte[] bytes = ((marked ? "\uFEFF" : "") + text).getBytes(StandardCharsets.UTF_8);
        String tidy = text.replace("\r\n", "\n").replace('\r', '\n');
        String expected = tidy.isEmpty() || tidy.endsWith("\n") ? tidy : tidy + "\n";
        TidyReader reader = new TidyReader(dripping(bytes, drop));
        assertEquals(expected, all(reader, drop));
        assertEquals(bytes.length, reader.bytesRead());
        TidyReader peeked = new TidyReader(dripping(bytes, drop));
        assertEquals(expected, peeked.head());
        assertEquals(expected, all(peeked, drop + 1));
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.of("a", "\r", "\n", "\r\n", "é", "楓", "😀", "\"")
                .list()
                .ofMaxSize(40)
                .map(letters -> String.join("", letters));
    }

    @Test
    void readsALongFileWhole() throws IOException {
        String text = "é楓😀,\r\n".repeat(60_000);
        TidyReader reader = new TidyReader(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        String head = reader.head();
        String whole = all(reader, 8192);
        assertTrue(whole.startsWith(head) && head.length() > 60_000);
        assertEquals("é楓😀,\n".repeat(60_000), whole);
    }

    @Test
    void tellsTheLineOfWhatIsNotUtf8AfterAllBeforeIt() throws IOException {
        byte[] bytes = "one\r\ntwo\rMáire\n".getBytes(StandardCharsets.ISO_8859_1);
        TidyReader reader = new TidyReader(new ByteArrayInputStream(bytes));
        char[] chars = new char[100];
        assertEquals("one\ntwo\nM", new String(chars, 0, reader.read(chars, 0, 100)));
        Unreadable unreadable = assertThrows(Unreadable.class, () -> reader.read(chars, 0, 100));
        assertEquals(3, unreadable.line());
        assertEquals(
                "expected text in UTF-8, found the byte 0xE1; save the file as CSV in UTF-8", unreadable.getMessage());
    }

    @Test
    void noticesATextThatBreaksOffWithinALetter() {
        TidyReader reader = new TidyReader(new ByteArrayInputStream(new byte[] {(byte) 0xC3}));
        assertEquals(1, assertThrows(Unreadable.class, reader::head).line());
    }
}
