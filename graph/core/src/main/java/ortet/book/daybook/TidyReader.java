package ortet.book.daybook;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Reads text in UTF-8 with every line ended by a line feed, the last one too, and without a byte order mark.
 *
 * <p>What is not UTF-8 is never guessed at: reading it throws {@link Unreadable} with its line, after all before it has
 * been handed out.
 */
public final class TidyReader extends Reader {
    private static final int CHUNK = 1 << 16;
    private static final int MAGIC = 4;

    private final InputStream in;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    private final ByteBuffer bytes = ByteBuffer.allocate(CHUNK).flip();
    private final char[] chars = new char[CHUNK];
    private int from;
    private int to;
    private long line = 1;
    private long bytesRead;
    private boolean begun;
    private boolean lastWasReturn;
    private boolean lineIsOpen;
    private boolean atEndOfBytes;
    private boolean finished;
    private boolean ended;
    private Unreadable pending;

    /** Read the bytes of a stream, which is closed with the reader. */
    public TidyReader(InputStream in) {
        this.in = in;
    }

    /** Return as much of the beginning as is held at one time, without consuming it. */
    public String head() throws IOException {
        while (!finished && to < chars.length - 2) {
            fill();
        }
        if (from == to && pending != null) {
            throw pending;
        }
        return new String(chars, from, to - from);
    }

    /** Tell whether the end has been reported to whoever reads. */
    public boolean hasEnded() {
        return ended;
    }

    /** Return how many bytes have been read. */
    public long bytesRead() {
        return bytesRead;
    }

    @Override
    public int read(char[] target, int offset, int length) throws IOException {
        while (from == to) {
            if (finished) {
                if (pending != null) {
                    throw pending;
                }
                ended = true;
                return -1;
            }
            from = 0;
            to = 0;
            fill();
        }
        int count = Math.min(length, to - from);
        System.arraycopy(chars, from, target, offset, count);
        from += count;
        return count;
    }

    private void fill() throws IOException {
        if (!begun) {
            begin();
        }
        CharBuffer room = CharBuffer.wrap(chars, to, chars.length - to);
        CoderResult result = decoder.decode(bytes, room, atEndOfBytes);
        tidy(room.position());
        if (result.isError()) {
            int found = bytes.get(bytes.position()) & 0xFF;
            pending = new Unreadable(
                    line,
                    String.format(
                            "expected text in UTF-8, found the byte 0x%02X; save the file as CSV in UTF-8", found));
            finished = true;
        } else if (result.isUnderflow() && !atEndOfBytes) {
            more();
        } else if (result.isUnderflow() && to < chars.length) {
            if (lineIsOpen) {
                chars[to++] = '\n';
            }
            finished = true;
        }
    }

    private void begin() throws IOException {
        begun = true;
        while (bytes.remaining() < MAGIC && !atEndOfBytes) {
            more();
        }
        byte[] first = Arrays.copyOf(bytes.array(), Math.min(bytes.limit(), MAGIC));
        if (startsWith(first, 0xFF, 0xFE) || startsWith(first, 0xFE, 0xFF)) {
            throw new Unreadable(1, "expected text in UTF-8, found UTF-16; save the file as CSV in UTF-8");
        }
        if (startsWith(first, 'P', 'K', 3, 4)) {
            throw new Unreadable(1, "expected text, found a spreadsheet or archive; save the sheet as CSV in UTF-8");
        }
        if (startsWith(first, 0xEF, 0xBB, 0xBF)) {
            bytes.position(3);
        }
    }

    private static boolean startsWith(byte[] bytes, int... expected) {
        if (bytes.length < expected.length) {
            return false;
        }
        for (int at = 0; at < expected.length; at++) {
            if ((bytes[at] & 0xFF) != expected[at]) {
                return false;
            }
        }
        return true;
    }

    private void more() throws IOException {
        bytes.compact();
        int count = in.read(bytes.array(), bytes.position(), bytes.remaining());
        if (count < 0) {
            atEndOfBytes = true;
        } else {
            bytes.position(bytes.position() + count);
            bytesRead += count;
        }
        bytes.flip();
    }

    private void tidy(int end) {
        int write = to;
        for (int read = to; read < end; read++) {
            char letter = chars[read];
            if (letter == '\n' && lastWasReturn) {
                lastWasReturn = false;
                continue;
            }
            lastWasReturn = letter == '\r';
            if (letter == '\r' || letter == '\n') {
                letter = '\n';
                line++;
            }
            chars[write++] = letter;
            lineIsOpen = letter != '\n';
        }
        to = write;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
