package ortet.lineage;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import ortet.entry.Mention.Role;
import ortet.plant.Tag;

/**
 * One entry in the diary of a unit.
 *
 * @param deed what was done or seen: as amended, or, where it counts no more, as it was first written
 * @param tags the units that the entry is about and that share these words
 * @param roles the parts that the unit plays in it
 * @param recordedAt when it was written into the book
 * @param mark whether it counts as it was written
 * @param amendments what was put right in it as far as the unit is concerned, in recorded order
 */
public record DiaryLine(
        Deed deed, List<Tag> tags, Set<Role> roles, Instant recordedAt, Mark mark, List<Amendment> amendments) {
    /** Whether an entry counts as it was written. */
    public enum Mark {
        /** As it was written. */
        AS_WRITTEN,
        /** With what was put right in it since. */
        CORRECTED,
        /** Not at all: it was crossed out. */
        CROSSED_OUT,
        /** Not for this unit: it was put right so that it no longer names it. */
        NO_LONGER_ABOUT_IT
    }

    public DiaryLine {
        Objects.requireNonNull(deed);
        tags = List.copyOf(tags);
        Set<Role> parts = EnumSet.noneOf(Role.class);
        parts.addAll(roles);
        roles = Collections.unmodifiableSet(parts);
        Objects.requireNonNull(recordedAt);
        Objects.requireNonNull(mark);
        amendments = List.copyOf(amendments);
    }

    /** Tell whether the entry counts for the unit. */
    public boolean counts() {
        return mark == Mark.AS_WRITTEN || mark == Mark.CORRECTED;
    }
}
