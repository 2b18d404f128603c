package ortet.lineage;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.value.When;

/**
 * What somebody did or saw, as far as it concerns one unit, with its amendments applied.
 *
 * @param order the recorded order of the entry
 * @param kind the kind of entry
 * @param day when it was done
 * @param by who did it, as they are shown; absent when nobody said
 * @param container the container that the unit was put into, where told
 * @param place the place that it was stood in, where told
 * @param details the other words of the entry by column, in the order of the form; persons by name
 */
public record Deed(
        long order,
        EntryKind kind,
        When day,
        Optional<String> by,
        Optional<String> container,
        Optional<Place> place,
        Map<String, String> details) {
    public Deed {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(day);
        Objects.requireNonNull(by);
        Objects.requireNonNull(container);
        Objects.requireNonNull(place);
        details = Collections.unmodifiableMap(new LinkedHashMap<>(details));
    }

    /**
     * Put an entry into words.
     *
     * @param shown how persons are shown
     */
    public static Deed of(
            long order, When day, Optional<PersonNumber> by, Entry entry, Function<PersonNumber, String> shown) {
        Form form = Form.of(entry.kind());
        Map<String, String> texts = new LinkedHashMap<>();
        Form.write(entry)
                .forEach((column, text) -> texts.put(
                        column,
                        form.field(column)
                                        .filter(field -> field.nature() == Form.Nature.PERSON)
                                        .isPresent()
                                ? shown.apply(PersonNumber.parse(text))
                                : text));
        texts.remove("tags");
        Optional<String> container = Optional.ofNullable(texts.remove("container"));
        Optional<Place> place = Optional.ofNullable(texts.remove("place")).map(Place::new);
        return new Deed(order, entry.kind(), day, by.map(shown), container, place, texts);
    }

    /** Return one of the other words. */
    public Optional<String> detail(String column) {
        return Optional.ofNullable(details.get(column));
    }
}
