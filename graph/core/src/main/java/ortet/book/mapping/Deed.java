package ortet.book.mapping;

import java.util.List;
import java.util.Optional;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.value.When;

/** One thing that a row tells: what will be an entry, once it is known what it rests on. */
final class Deed {
    /** What is still open about a deed. */
    enum Turn {
        /** Nothing: it is what its kind says. */
        PLAIN,
        /** It took: severed for a layer, taken for another, nothing for what grew already. */
        TAKING,
        /** It is alive: it took, and was seen that day. */
        GROWING,
        /** It failed, or was lost if it had taken. */
        DEAD
    }

    private final SheetRow row;
    private final String act;
    private final EntryKind kind;
    private final Turn turn;
    private final Optional<When> day;
    private final String relativeDay;
    private final String by;
    private final Texts texts;
    private final String said;
    private final String key;
    private final int occurrence;
    private final String rest;

    private final List<Unit> subjects;
    private final List<Unit> parents;
    private final List<Unit> others;

    private Deed(Builder from) {
        this.row = from.row;
        this.act = from.act;
        this.kind = from.kind;
        this.turn = from.turn;
        this.day = from.day;
        this.relativeDay = from.relativeDay;
        this.by = from.by;
        this.texts = from.texts;
        this.said = from.said;
        this.key = from.key;
        this.occurrence = from.occurrence;
        this.rest = from.rest;
        this.subjects = from.subjects;
        this.parents = from.parents;
        this.others = from.others;
    }

    SheetRow row() {
        return row;
    }

    /** Return which act of the row it is; empty for the row itself. */
    String act() {
        return act;
    }

    EntryKind kind() {
        return kind;
    }

    Turn turn() {
        return turn;
    }

    /** Return its day, where the row tells it. */
    Optional<When> day() {
        return day;
    }

    /** Return {@link CellReader#SAME_YEAR} or {@link CellReader#NEXT_YEAR} where the mapping says so, else "". */
    String relativeDay() {
        return relativeDay;
    }

    /** Return who did it, by name; "" when unknown. */
    String by() {
        return by;
    }

    /** Return its fields; persons by name, tags as the row has them. */
    Texts texts() {
        return texts;
    }

    /** Return the cultivar that the row names, where the entry has no place for it; else "". */
    String said() {
        return said;
    }

    /** Return what tells it from others of its sheet. */
    String key() {
        return key;
    }

    /** Return which of those with the same key it is, from 1. */
    int occurrence() {
        return occurrence;
    }

    /** Return what stands in the row's columns that the mapping does not read. */
    String rest() {
        return rest;
    }

    /**
     * Return the identity of its entry.
     *
     * @param group which of several entries of this deed; "" for the only one
     */
    EntryId id(String group) {
        return EntryId.derived(row.file().rules().name(), "sheet\n" + key + group, occurrence);
    }

    /** Tell whether it begins its units. */
    boolean begins() {
        return Shape.begins(kind) && turn == Turn.PLAIN;
    }

    /** Return the units that it is about or begins, once they are known. */
    List<Unit> subjects() {
        return subjects;
    }

    /** Return the units that it takes wood, seed, pollen or a rootstock from. */
    List<Unit> parents() {
        return parents;
    }

    /** Return the other units that it names. */
    List<Unit> others() {
        return others;
    }

    /** Return a builder with everything that this deed has, but its units. */
    Builder but() {
        Builder builder = new Builder(row, act, kind);
        builder.turn = turn;
        builder.day = day;
        builder.relativeDay = relativeDay;
        builder.by = by;
        builder.texts = texts;
        builder.said = said;
        builder.key = key;
        builder.occurrence = occurrence;
        builder.rest = rest;
        return builder;
    }

    /** Builds a deed. */
    static final class Builder {
        private final SheetRow row;
        private final String act;
        private final EntryKind kind;
        private Turn turn = Turn.PLAIN;
        private Optional<When> day = Optional.empty();
        private String relativeDay = "";
        private String by = "";
        private Texts texts = Texts.NONE;
        private String said = "";
        private String key = "";
        private int occurrence = 1;
        private String rest = "";
        private List<Unit> subjects = List.of();
        private List<Unit> parents = List.of();
        private List<Unit> others = List.of();

        Builder(SheetRow row, String act, EntryKind kind) {
            this.row = row;
            this.act = act;
            this.kind = kind;
        }

        Builder turn(Turn value) {
            turn = value;
            return this;
        }

        /** Put the day as it was read: a day, a day told by the year the plant began in, or "". */
        Builder day(String text) {
            boolean isRelative = text.equals(CellReader.SAME_YEAR) || text.equals(CellReader.NEXT_YEAR);
            relativeDay = isRelative ? text : "";
            day = text.isEmpty() || isRelative ? Optional.empty() : Optional.of(When.parse(text));
            return this;
        }

        Builder by(String value) {
            by = value;
            return this;
        }

        Builder texts(Texts value) {
            texts = value;
            return this;
        }

        Builder said(String value) {
            said = value;
            return this;
        }

        Builder key(String value, int which) {
            key = value;
            occurrence = which;
            return this;
        }

        Builder rest(String value) {
            rest = value;
            return this;
        }

        /** Tie it to its units: those that it is about or begins, those from which it takes something, and the others. */
        Builder units(List<Unit> about, List<Unit> from, List<Unit> named) {
            subjects = List.copyOf(about);
            parents = List.copyOf(from);
            others = List.copyOf(named);
            return this;
        }

        Deed build() {
            return new Deed(this);
        }
    }
}
