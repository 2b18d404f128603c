package ortet.line;

import java.util.List;
import org.jline.reader.CompletingParsedLine;
import org.jline.reader.ParsedLine;
import org.jline.reader.Parser;

/**
 * An answer to a question, as JLine wants to see it: one word, whatever is in it, without quotes.
 *
 * @param line the answer
 * @param cursor where the cursor stands in it
 */
record AnswerLine(String line, int cursor) implements CompletingParsedLine {
    @Override
    public String word() {
        return line.substring(0, cursor);
    }

    @Override
    public int wordCursor() {
        return cursor;
    }

    @Override
    public int wordIndex() {
        return 0;
    }

    @Override
    public List<String> words() {
        return List.of(word());
    }

    @Override
    public CharSequence escape(CharSequence candidate, boolean complete) {
        return candidate;
    }

    @Override
    public int rawWordCursor() {
        return cursor;
    }

    @Override
    public int rawWordLength() {
        return cursor;
    }

    /** Leaves answers whole. */
    static final class Whole implements Parser {
        @Override
        public ParsedLine parse(String line, int cursor, ParseContext context) {
            return new AnswerLine(line, cursor);
        }
    }
}
