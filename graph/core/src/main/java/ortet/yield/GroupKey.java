package ortet.yield;

import java.util.List;
import java.util.Locale;
import ortet.book.UnitFacts.Method;
import ortet.entry.Words;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;

/**
 * The group that a unit belongs to, and its place among the groups.
 *
 * <p>What is known comes first, then what may be one of several, then what is not known; within these by number, then
 * by words.
 */
record GroupKey(int standing, List<Tag> tags, long number, String words, Group group) implements Comparable<GroupKey> {
    private static final int KNOWN = 0;
    private static final int SEVERAL = 1;
    private static final int UNKNOWN = 2;

    static GroupKey named(TakeBy by, String name) {
        return new GroupKey(KNOWN, List.of(), 0, name, Group.known(by, name));
    }

    /** Return the group of what is from one of these mothers, sorted; of none when nobody knows. */
    static GroupKey mother(TakeBy by, List<Tag> mothers) {
        if (mothers.isEmpty()) {
            return unknown(by);
        }
        String tags = String.join(" + ", mothers.stream().map(Tag::text).toList());
        return mothers.size() == 1
                ? new GroupKey(KNOWN, mothers, 0, "", Group.known(by, tags))
                : new GroupKey(SEVERAL, mothers, 0, "", Group.known(by, tags, "several mothers: " + tags));
    }

    static GroupKey method(TakeBy by, Method method) {
        return new GroupKey(KNOWN, List.of(), method.ordinal(), "", Group.known(by, Words.of(method), plural(method)));
    }

    static GroupKey season(TakeBy by, int year) {
        return new GroupKey(KNOWN, List.of(), year, "", Group.known(by, Integer.toString(year)));
    }

    static GroupKey operator(TakeBy by, PersonNumber person, String name) {
        return new GroupKey(
                KNOWN, List.of(), 0, name.toLowerCase(Locale.ROOT), Group.known(by, person.toString(), name));
    }

    static String plural(Method method) {
        return switch (method) {
            case LAYER -> "layers";
            case CUTTING -> "cuttings";
            case GRAFT -> "grafts";
            case SEED -> "seed";
        };
    }

    static GroupKey unknown(TakeBy by) {
        return new GroupKey(UNKNOWN, List.of(), 0, "", Group.unknown(by));
    }

    @Override
    public int compareTo(GroupKey other) {
        if (standing != other.standing) {
            return Integer.compare(standing, other.standing);
        }
        if (number != other.number) {
            return Long.compare(number, other.number);
        }
        for (int at = 0; at < Math.min(tags.size(), other.tags.size()); at++) {
            int byTag = tags.get(at).compareTo(other.tags.get(at));
            if (byTag != 0) {
                return byTag;
            }
        }
        int bySize = Integer.compare(tags.size(), other.tags.size());
        int byWords = bySize != 0 ? bySize : words.compareTo(other.words);
        return byWords != 0 ? byWords : group.shown().compareTo(other.group.shown());
    }
}
