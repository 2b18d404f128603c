package ortet.commands;

import java.util.List;
import ortet.plant.Tag;

/**
 * The tags at the end of a line, ranges counted out.
 *
 * @param tags at least one
 */
public record TagList(List<Tag> tags) {
    /** Keep a copy. */
    public TagList {
        tags = List.copyOf(tags);
    }
}
