package ortet.book.mapping;

import java.util.Optional;
import ortet.book.mapping.Numbers.Measure;
import ortet.entry.EntryKind;

/**
 * What a column says: a field of the row itself, or of one of the acts that the row tells of.
 *
 * @param act which act, such as {@code potted 2}; empty for the row itself
 * @param kind the kind of the act's entry; absent for the row itself
 * @param field the name of the field, as the book has it or one of the mapping's own
 * @param sort how its cells are read
 * @param part the part of a field that the column counts, such as {@code callus} of the findings; empty for the whole
 * @param name what a mapping calls it
 */
record Meaning(String act, Optional<EntryKind> kind, String field, Sort sort, String part, String name) {
    /** The mapping's own fields. */
    static final String TAGS = "tags";

    static final String METHOD = "method";
    static final String MOTHER = "mother";
    static final String MOTHERS = "mothers";
    static final String OTHER_PARENT = "other_parent";
    static final String OUTCOME = "outcome";
    static final String KIND = "kind";
    static final String DAY = "day";
    static final String BY = "by";
    static final String NOTE = "note";
    static final String TAXON = "taxon";
    static final String EPITHET = "epithet";
    static final String CULTIVAR = "cultivar";
    static final String CAUSE = "cause";
    static final String COUNT = "count";
    static final String HORMONE = "hormone";
    static final String FINDINGS = "findings";
    static final String POSITIONS = "positions";

    /** How the cells of a column are read. */
    enum Sort {
        /** One tag: the whole cell. */
        TAG,
        /** Tags parted by commas or blanks, and ranges. */
        TAGS,
        /** Mothers with or without counts. */
        MOTHERS,
        /** A tag, or the name of a rootstock. */
        ROOTSTOCK,
        /** How a plant began. */
        METHOD,
        /** What became of it. */
        OUTCOME,
        /** A kind of entry. */
        KIND,
        /** A day, month or year. */
        DAY,
        /** The name of a person. */
        PERSON,
        /** A whole number; 0 is nothing. */
        COUNT,
        /** A number. */
        NUMBER,
        /** A rooting hormone, perhaps with strength and carrier. */
        HORMONE,
        /** The strength of a hormone. */
        STRENGTH,
        /** An amount of money. */
        MONEY,
        /** A cultivar's whole name. */
        CULTIVAR,
        /** The botanical name without the epithet. */
        TAXON,
        /** The epithet alone. */
        EPITHET,
        /** One of a few words. */
        CHOICE,
        /** Yes or no. */
        YES_NO,
        /** What was seen, in words. */
        FINDINGS,
        /** On how many one thing was seen, or a mark that it was. */
        FINDING,
        /** How many positions there are in a band of diameters. */
        POSITION,
        /** Words as they are. */
        TEXT
    }

    /** Return what numbers in it measure. */
    Measure measure() {
        if (field.endsWith("_mm")) {
            return Measure.LENGTH;
        }
        return switch (field) {
            case "grams" -> Measure.WEIGHT;
            case "heat_c" -> Measure.HEAT;
            case "area_m2" -> Measure.AREA;
            case "stock_age_years" -> Measure.AGE;
            default -> Measure.NONE;
        };
    }

    /** Tell whether it belongs to the row itself rather than to an act. */
    boolean isOwn() {
        return act.isEmpty();
    }

    /** Tell whether several columns may say it. */
    boolean isGathered() {
        return field.equals(NOTE) || sort == Sort.FINDING || sort == Sort.POSITION;
    }

    /** Tell whether it says the same as another. */
    boolean isSame(Meaning other) {
        return act.equals(other.act) && field.equals(other.field) && part.equals(other.part);
    }
}
