package ortet.book.mapping;

import ortet.book.Proposal;

/**
 * An entry that rows stand for.
 *
 * @param deed the deed that tells it, or that it follows from
 * @param item the entry and its place
 */
record Told(Deed deed, Proposal.Item item) {
    SheetRow row() {
        return deed.row();
    }
}
