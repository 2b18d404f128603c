package ortet.book.mapping;

import java.util.Optional;
import ortet.book.Proposal;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.plant.PersonNumber;
import ortet.value.When;
import ortet.value.Where;

/**
 * An entry that rows stand for, kept as the texts of its fields until it is needed: a nursery has a million of them.
 *
 * @param deed the deed that tells it, or that it follows from
 * @param kind its kind
 * @param texts its fields as the book writes them, persons by number
 * @param day its day
 * @param by who did it
 * @param group which of several entries of the deed it is; "" for the only one
 */
record Told(Deed deed, EntryKind kind, Texts texts, When day, Optional<PersonNumber> by, String group) {
    SheetRow row() {
        return deed.row();
    }

    /** Return where the row tells it. */
    Where where() {
        return row().where(deed.act(), Meaning.DAY);
    }

    /**
     * Return the entry.
     *
     * @throws ortet.value.Refused when its fields are not in order
     */
    Entry entry() {
        Form form = Form.of(kind);
        return form.read(at -> texts.get(form.fields().get(at).name()));
    }

    Proposed proposed() {
        return new Proposed(deed.id(group), day, by, entry());
    }

    Proposal.Item item() {
        return new Proposal.Item(proposed(), Optional.of(where()));
    }
}
