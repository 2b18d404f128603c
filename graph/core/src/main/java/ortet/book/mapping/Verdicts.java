package ortet.book.mapping;

import ortet.book.mapping.Deed.Turn;
import ortet.entry.EntryKind;
import ortet.value.Defect;

/** What the words for outcomes are in the book, as far as that can be told without the rest of the rows. */
final class Verdicts {
    private Verdicts() {}

    /** Return what is still open about an outcome. */
    static Turn turn(Verdict.Word word) {
        return switch (word) {
            case TAKEN -> Turn.TAKING;
            case GROWING -> Turn.GROWING;
            case DEAD -> Turn.DEAD;
            case PENDING, FAILED, WITHDRAWN, LOST, SOLD, CULLED -> Turn.PLAIN;
        };
    }

    /** Return the kind of entry that an outcome is, or may be. */
    static EntryKind kind(Verdict.Word word) {
        return switch (word) {
            case TAKEN -> EntryKind.TAKEN;
            case GROWING -> EntryKind.SEEN;
            case FAILED, WITHDRAWN, DEAD -> EntryKind.FAILED;
            case LOST -> EntryKind.LOST;
            case SOLD -> EntryKind.SOLD;
            case CULLED -> EntryKind.CULLED;
            case PENDING -> throw new Defect("pending is no entry");
        };
    }

    /** Return the field that says why. */
    static String whyField(Verdict.Word word) {
        return word == Verdict.Word.CULLED ? "cull" : Meaning.CAUSE;
    }
}
