package ortet.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jline.reader.Candidate;
import org.jline.reader.CompletingParsedLine;
import org.jline.reader.CompletionMatcher;
import org.jline.reader.EOFError;
import org.jline.reader.LineReader;
import org.jline.reader.ParsedLine;
import org.jline.reader.Parser;

/**
 * A line at the prompt as JLine wants to see it, split as {@link Splitter} splits it, so that what is completed is what
 * will be run. Of several pasted lines the one with the cursor is meant.
 */
final class PromptLine implements CompletingParsedLine {
    private final String line;
    private final int cursor;
    private final Unfinished typed;
    private final int rawLength;

    private PromptLine(String line, int cursor) {
        int from = line.lastIndexOf('\n', cursor - 1) + 1;
        String upTo = line.substring(from, cursor);
        this.line = line;
        this.cursor = cursor;
        this.typed = Splitter.unfinished(upTo);
        this.rawLength = upTo.length() - typed.start();
    }

    /** Return the words before the one with the cursor. */
    List<String> before() {
        return typed.words();
    }

    @Override
    public String word() {
        return typed.begun();
    }

    @Override
    public int wordCursor() {
        return typed.begun().length();
    }

    @Override
    public int wordIndex() {
        return typed.words().size();
    }

    @Override
    public List<String> words() {
        List<String> words = new ArrayList<>(typed.words());
        words.add(typed.begun());
        return words;
    }

    @Override
    public String line() {
        return line;
    }

    @Override
    public int cursor() {
        return cursor;
    }

    @Override
    public CharSequence escape(CharSequence candidate, boolean complete) {
        return complete ? Splitter.quoted(candidate.toString()) : Splitter.opened(candidate.toString());
    }

    @Override
    public int rawWordCursor() {
        return rawLength;
    }

    @Override
    public int rawWordLength() {
        return rawLength;
    }

    /** Splits lines for JLine, and asks for more after a backslash. */
    static final class Splitting implements Parser {
        @Override
        public ParsedLine parse(String line, int cursor, ParseContext context) {
            boolean goesOn = Splitter.isContinued(line.substring(line.lastIndexOf('\n') + 1));
            if (context == ParseContext.ACCEPT_LINE && goesOn) {
                throw new EOFError(-1, cursor, "the line goes on", "");
            }
            return new PromptLine(line, cursor);
        }
    }

    /** Takes every candidate for a match, since only matching ones are proposed. */
    static final class Taking implements CompletionMatcher {
        private List<Candidate> matching = List.of();

        @Override
        public void compile(
                Map<LineReader.Option, Boolean> options,
                boolean prefix,
                CompletingParsedLine line,
                boolean caseInsensitive,
                int errors,
                String originalGroupName) {
            matching = List.of();
        }

        @Override
        public List<Candidate> matches(List<Candidate> candidates) {
            matching = List.copyOf(candidates);
            return new ArrayList<>(matching);
        }

        @Override
        public Candidate exactMatch() {
            return matching.stream().findFirst().orElseThrow();
        }

        @Override
        public String getCommonPrefix() {
            return Completion.shared(matching.stream()
                    .map(candidate -> Suggestion.of(candidate.value()))
                    .toList());
        }
    }
}
