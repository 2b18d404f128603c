package ortet.line;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Reads a script command by command, as the lines come in: UTF-8, with or without a byte order mark; blank lines and
 * comments are passed over; a backslash at the end continues a line.
 */
final class ScriptLines {
    private final InputStream in;
    private int read;
    private int first;

    ScriptLines(InputStream in) {
        this.in = in;
    }

    /** Return the line that the last command began on, 1 for the first. */
    int firstLine() {
        return first;
    }

    /**
     * Return the words of the next command, or nothing at the end.
     *
     * @throws UsageException if a line is not UTF-8 or its quotes do not close
     */
    Optional<List<String>> next() throws IOException {
        while (true) {
            Optional<String> line = readLine();
            if (line.isEmpty()) {
                return Optional.empty();
            }
            first = read;
            StringBuilder whole = new StringBuilder(line.get());
            while (Splitter.isContinued(whole.toString())) {
                Optional<String> more = readLine();
                if (more.isEmpty()) {
                    throw new UsageException("the line ends with a backslash and nothing follows");
                }
                whole.setLength(whole.length() - 1);
                whole.append(more.get());
            }
            List<String> words = Splitter.split(whole.toString());
            if (!words.isEmpty()) {
                return Optional.of(words);
            }
        }
    }

    private Optional<String> readLine() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        int b = in.read();
        if (b < 0) {
            return Optional.empty();
        }
        while (b >= 0 && b != '\n') {
            bytes.write(b);
            b = in.read();
        }
        read++;
        String line;
        try {
            line = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes.toByteArray()))
                    .toString();
        } catch (CharacterCodingException e) {
            first = read;
            throw new UsageException("the line is not UTF-8", e);
        }
        if (read == 1 && line.startsWith("\ufeff")) {
            line = line.substring(1);
        }
        return Optional.of(line.endsWith("\r") ? line.substring(0, line.length() - 1) : line);
    }
}
