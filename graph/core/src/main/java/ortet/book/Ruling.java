package ortet.book;

import java.util.List;
import java.util.Objects;
import ortet.plant.Person;
import ortet.plant.UnitNumber;
import ortet.value.Warning;

/**
 * What a store has to write after a proposal was found true: entries to append, derived facts to replace.
 *
 * @param head where the book will stand
 * @param entries to append, in recorded order
 * @param persons to add
 * @param facts the facts of every unit touched, each to replace what the store has of that unit
 * @param vanished units of which nothing is left, because the entry that began them was crossed out
 * @param alreadyThere how many of those proposed are in the book, word for word
 * @param begun how many units are begun
 * @param warnings what is odd about it
 */
public record Ruling(
        Head head,
        List<Chained> entries,
        List<Person> persons,
        List<UnitFacts> facts,
        List<UnitNumber> vanished,
        int alreadyThere,
        int begun,
        List<Warning> warnings) {
    public Ruling {
        Objects.requireNonNull(head);
        entries = List.copyOf(entries);
        persons = List.copyOf(persons);
        facts = List.copyOf(facts);
        vanished = List.copyOf(vanished);
        warnings = List.copyOf(warnings);
    }

    /** Return the receipt to hand out once all of it is written. */
    public Receipt receipt() {
        return new Receipt(head, entries.stream().map(Chained::recorded).toList(), alreadyThere, begun, warnings);
    }
}
