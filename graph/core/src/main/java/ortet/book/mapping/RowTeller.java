package ortet.book.mapping;

import java.util.List;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.value.Fault;

/** Turns the cells of one row into deeds. */
abstract class RowTeller {
    private final MappedFile file;
    private final Acts acts;

    RowTeller(MappedFile file) {
        this.file = file;
        this.acts = new Acts(file);
    }

    /** Return what reads the rows of a file. */
    static RowTeller of(MappedFile file, Occurrences occurrences) {
        return file.rules().shape().sort() == Shape.Sort.PLANT
                ? new PlantTeller(file)
                : new ListTeller(file, occurrences);
    }

    /** Read a row; what is wrong is complained of to the row, which then tells nothing. */
    final void read(String[] cells, SheetRow row, String rest) {
        acts.read(cells, row);
        String tags = acts.own().get(Meaning.TAGS);
        List<String> names = tags.isEmpty() ? List.of() : List.of(tags.split(" "));
        row.name(names);
        if (begins()) {
            row.claim(names);
        }
        if (row.faults().isEmpty()) {
            tell(row, rest);
        }
    }

    private boolean begins() {
        Shape shape = rules().shape();
        return switch (shape.sort()) {
            case PLANT -> true;
            case OUTCOME -> false;
            case ENTRY ->
                shape.kind()
                        .or(() -> kind(acts.own().get(Meaning.KIND)))
                        .filter(Shape::begins)
                        .isPresent();
        };
    }

    private static Optional<EntryKind> kind(String word) {
        return word.isEmpty() ? Optional.empty() : Optional.of(Shape.kind(word));
    }

    abstract void tell(SheetRow row, String rest);

    final MappedFile file() {
        return file;
    }

    final Acts acts() {
        return acts;
    }

    final SheetRules rules() {
        return file.rules();
    }

    final void complain(SheetRow row, String act, String field, String rule, String text) {
        row.complain(new Fault(rule, Optional.of(row.where(act, field)), text, Optional.empty()));
    }

    /** Return the name of the cultivar that a row says in one or two columns, "" where it says none. */
    final String cultivar(Acts.Act act, SheetRow row) {
        String whole = act.get(Meaning.CULTIVAR);
        if (!whole.isEmpty()) {
            return whole;
        }
        String taxon = act.get(Meaning.TAXON);
        String epithet = act.get(Meaning.EPITHET);
        if (epithet.isEmpty()) {
            return act.told(Meaning.TAXON);
        }
        if (taxon.isEmpty()) {
            complain(
                    row,
                    "",
                    Meaning.EPITHET,
                    "bad-cultivar",
                    "'" + epithet
                            + "' is an epithet alone; expected the taxon in a column of its own, or a line such as"
                            + " otherwise taxon = Acer palmatum");
            return "";
        }
        return taxon + " '" + epithet + "'";
    }

    /** Return what a cell says, as it stands, with the name of its column. */
    final String labelled(String name, Acts.Act act, String field) {
        return acts.header(name, field) + ": " + act.cell(field);
    }

    /** Return a note with something added to it. */
    static String noted(String note, String more) {
        return note.isEmpty() ? more : note + "; " + more;
    }
}
