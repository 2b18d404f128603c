package ortet.book.mapping;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.book.mapping.Meaning.Sort;
import ortet.entry.EntryKind;
import ortet.value.Fault;
import ortet.value.Refused;

/**
 * What the cells of one row say, sorted by the acts that they belong to; the row itself is the act without a name.
 *
 * <p>The same object is filled anew for each row of a file.
 */
final class Acts {
    /** One act of a row. */
    static final class Act {
        private final Optional<EntryKind> kind;
        private final Texts.Builder told = new Texts.Builder();
        private final Texts.Builder given = new Texts.Builder();
        private final Texts.Builder cells = new Texts.Builder();
        private boolean isTold;

        private Act(Optional<EntryKind> kind) {
            this.kind = kind;
        }

        /** Return the kind of its entry; absent for the row itself. */
        Optional<EntryKind> kind() {
            return kind;
        }

        /** Tell whether a cell says anything of it. */
        boolean isTold() {
            return isTold;
        }

        /** Return what cells say of a field, "" where none does. */
        String told(String field) {
            return told.get(field);
        }

        /** Return what cells say of a field, or else the mapping; "" where neither does. */
        String get(String field) {
            String text = told.get(field);
            return text.isEmpty() ? given.get(field) : text;
        }

        /** Return the cell that says a field, as it stands; "" where none does. */
        String cell(String field) {
            return cells.get(field);
        }

        /** Return everything said of it. */
        Texts texts() {
            Texts.Builder all = new Texts.Builder();
            given.build().each(all::put);
            told.build().each(all::put);
            return all.build();
        }
    }

    private record Place(ColumnRule rule, int position, String header, boolean labelled) {}

    private static final Numbers PLAIN = new Numbers(false);

    private final MappedFile file;
    private final List<Place> places = new ArrayList<>();
    private final Map<String, Act> acts = new LinkedHashMap<>();
    private final List<Fixed> given;
    private final Map<String, Hormone> hormones = new HashMap<>();

    Acts(MappedFile file) {
        this.file = file;
        SheetRules rules = file.rules();
        this.given = rules.otherwise();
        Map<String, Integer> notes = new HashMap<>();
        for (ColumnRule rule : rules.columns()) {
            Optional<Integer> position = file.header().position(rule.names());
            if (position.isPresent() && rule.meaning().field().equals(Meaning.NOTE)) {
                notes.merge(rule.meaning().act(), 1, Integer::sum);
            }
        }
        for (ColumnRule rule : rules.columns()) {
            Meaning meaning = rule.meaning();
            file.header()
                    .position(rule.names())
                    .ifPresent(position -> places.add(new Place(
                            rule,
                            position,
                            file.header().names().get(position),
                            notes.getOrDefault(meaning.act(), 0) > 1)));
        }
    }

    /** Read the cells of a row; what cannot be read is complained of to the row. */
    void read(String[] cells, SheetRow row) {
        acts.clear();
        act("", Optional.empty());
        Optional<EntryKind> kind = kind(cells);
        for (Place place : places) {
            CellReader reader = place.rule().reader(kind);
            String text;
            try {
                text = reader.read(cells[place.position()]);
            } catch (Refused refused) {
                complain(refused, place, row);
                continue;
            }
            if (text.isEmpty()) {
                continue;
            }
            put(place, reader.meaning(), text, cells[place.position()]);
            for (Fixed fixed : place.rule().along()) {
                Meaning meaning = fixed.meaning();
                Act act = act(meaning.act(), meaning.kind());
                if (act.get(meaning.field()).isEmpty()) {
                    act.given.put(meaning.field(), fixed.text());
                }
            }
        }
        for (Fixed fixed : given) {
            Meaning meaning = fixed.meaning();
            Act act = act(meaning.act(), meaning.kind());
            if (act.get(meaning.field()).isEmpty()) {
                act.given.put(meaning.field(), fixed.text());
            }
        }
        acts.values().forEach(this::splitHormone);
    }

    private void complain(Refused refused, Place place, SheetRow row) {
        for (Fault fault : refused.faults()) {
            row.complain(new Fault(
                    fault.rule(), Optional.of(file.where(row.line(), place.header())), fault.text(), fault.nearest()));
        }
    }

    /** Return the kind of a row, where a column says it and can be read. */
    private Optional<EntryKind> kind(String[] cells) {
        for (Place place : places) {
            if (place.rule().meaning().sort() == Sort.KIND) {
                try {
                    String word = place.rule().reader().read(cells[place.position()]);
                    return word.isEmpty() ? givenKind() : Optional.of(Shape.kind(word));
                } catch (Refused refused) {
                    return Optional.empty(); // it is read again with the other cells, and told then
                }
            }
        }
        return givenKind();
    }

    private Optional<EntryKind> givenKind() {
        return given.stream()
                .filter(fixed -> fixed.meaning().sort() == Sort.KIND)
                .findFirst()
                .map(fixed -> Shape.kind(fixed.text()));
    }

    private void put(Place place, Meaning meaning, String text, String cell) {
        Act act = act(meaning.act(), meaning.kind());
        act.isTold = true;
        act.cells.put(meaning.field(), cell);
        String before = act.told.get(meaning.field());
        if (meaning.field().equals(Meaning.NOTE)) {
            String labelled = place.labelled() ? place.header() + ": " + text : text;
            act.told.put(Meaning.NOTE, before.isEmpty() ? labelled : before + "; " + labelled);
        } else if (meaning.isGathered() && !before.isEmpty()) {
            act.told.put(meaning.field(), before + " " + text);
        } else {
            act.told.put(meaning.field(), text);
        }
    }

    /** Put what a hormone's cell says of strength and carrier into their own fields. */
    private void splitHormone(Act act) {
        String cell = act.told.get(Meaning.HORMONE);
        Texts.Builder to = cell.isEmpty() ? act.given : act.told;
        String text = cell.isEmpty() ? act.given.get(Meaning.HORMONE) : cell;
        if (text.isEmpty()) {
            return;
        }
        Hormone hormone = hormones.computeIfAbsent(text, key -> Hormone.of(key, PLAIN));
        to.put(Meaning.HORMONE, hormone.substance());
        if (act.get("strength").isEmpty()) {
            to.put("strength", hormone.strength());
        }
        if (act.get("carrier").isEmpty()) {
            to.put("carrier", hormone.carrier());
        }
    }

    private Act act(String name, Optional<EntryKind> kind) {
        return acts.computeIfAbsent(name, key -> new Act(kind));
    }

    /** Return the row itself. */
    Act own() {
        return acts.get("");
    }

    /** Return an act, where a cell or the mapping says anything of it. */
    Optional<Act> act(String name) {
        return Optional.ofNullable(acts.get(name));
    }

    /** Return every act with its name, in the order of columns. */
    Map<String, Act> all() {
        return acts;
    }

    /** Return the header of the column that says something, else what the mapping calls it. */
    String header(String act, String field) {
        return places.stream()
                .filter(place -> place.rule().meaning().act().equals(act)
                        && place.rule().meaning().field().equals(field))
                .map(Place::header)
                .findFirst()
                .orElse(field.replace('_', ' '));
    }

    /** Return the positions of columns that are read. */
    List<Integer> positions() {
        return places.stream().map(Place::position).toList();
    }
}
