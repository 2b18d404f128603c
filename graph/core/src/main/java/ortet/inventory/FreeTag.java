package ortet.inventory;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.book.BookView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.EntryKind;
import ortet.entry.Recorded;
import ortet.plant.Tag;
import ortet.value.Folded;

/** Tells which tag comes after the last one of its kind. */
public final class FreeTag {
    private static final QueryName LAST_NUMBERED = new QueryName("last-numbered");
    private static final QueryName LAST_OF_KIND = new QueryName("last-of-kind");
    private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,9})");

    private FreeTag() {}

    /**
     * Return the tag after the highest that is the given beginning and a number, with as many digits: after
     * {@code J-0240} comes {@code J-0241}; nothing where there is no such tag.
     */
    public static Optional<Tag> after(BookView view, String beginning) {
        for (Rows.Row row : view.ask(LAST_NUMBERED, Parameters.NONE.with("folded", Folded.of(beginning)))) {
            Matcher last = NUMBERED.matcher(row.text("tag").orElseThrow());
            if (last.matches()) {
                String next = Integer.toString(Integer.parseInt(last.group(2)) + 1);
                String zeros = "0".repeat(Math.max(0, last.group(2).length() - next.length()));
                return Optional.of(new Tag(last.group(1) + zeros + next));
            }
        }
        return Optional.empty();
    }

    /**
     * Return the tag after the highest of those that begin as the last entry of a kind has it; nothing where there is no such
     * entry, or its tag does not end with a number.
     */
    public static Optional<Tag> of(BookView view, EntryKind kind) {
        for (Rows.Row row : view.ask(LAST_OF_KIND, Parameters.NONE.with("kind", kind.word()))) {
            Optional<Matcher> last = view.entry(row.whole("recorded_order").orElseThrow())
                    .map(Recorded::entry)
                    .filter(entry -> !entry.tags().isEmpty())
                    .map(entry -> NUMBERED.matcher(
                            entry.tags().get(entry.tags().size() - 1).text()))
                    .filter(Matcher::matches);
            if (last.isPresent()) {
                return after(view, last.get().group(1));
            }
        }
        return Optional.empty();
    }
}
