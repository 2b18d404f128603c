package ortet.line;

import java.util.List;

/** What is proposed at Tab on a line as it stands. */
public final class Typing {
    private final Completion completion;

    /** Watch what is proposed for these commands, with this attendant. */
    public Typing(Commands commands, Attendant attendant) {
        this.completion = new Completion(commands, attendant);
    }

    /** Return the proposals for a line, values alone, with … after what is only a beginning. */
    public List<String> at(String line) {
        return proposals(line).stream()
                .map(one -> one.value() + (one.whole() ? "" : "…"))
                .toList();
    }

    /** Return the proposals for a line. */
    public List<Suggestion> proposals(String line) {
        Unfinished typed = Splitter.unfinished(line);
        return completion.matching(typed.words(), typed.begun());
    }
}
