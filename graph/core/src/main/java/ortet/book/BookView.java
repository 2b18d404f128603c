package ortet.book;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ortet.entry.EntryId;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * One consistent view of a book, good for as long as the question or the ruling that it was handed to.
 *
 * <p>Everything but the named questions is answered from few rows: those of the units asked about.
 */
public interface BookView {
    /** Return where the book stands. */
    Head head();

    /** Return the unit that bears or bore the tag. */
    Optional<UnitNumber> unit(Tag tag);

    /** Return a tag in the book that differs from the given one in upper and lower case alone. */
    Optional<Tag> alikeButForCase(Tag tag);

    /** Return up to three tags of the book that may have been meant, the nearest first. */
    List<String> nearest(Tag tag);

    /**
     * Return up to so many tags in the order of their letters (by code points, upper and lower case alike), from a text
     * on: the text itself, if it is a tag, and those after it.
     */
    List<Tag> tagsFrom(String text, int most);

    /** Return every tag that the unit bears or bore, in the order in which they were tied on; empty when unknown. */
    List<Tag> tags(UnitNumber unit);

    /** Return the entry with this identity. */
    Optional<Recorded> entry(EntryId id);

    /** Return the entry with this recorded order. */
    Optional<Recorded> entry(long order);

    /** Return the amendments of the entry with this recorded order, in recorded order. */
    List<Recorded> amendments(long order);

    /** Return every entry that names the unit, without amendments, in recorded order, crossed-out ones too. */
    List<Recorded> entries(UnitNumber unit);

    /** Return the facts that the store holds of the unit. */
    Optional<UnitFacts> facts(UnitNumber unit);

    /** Return the links of the given acts that lead from the unit down to its offspring, by child then order. */
    List<Link> offspring(UnitNumber unit, Set<Act> acts);

    /**
     * Return the family of a unit: every unit reached through links one way, itself included, and those links.
     *
     * @param most stop when so many units have been found
     */
    Family family(UnitNumber unit, Direction way, int most);

    /** Return the entries that list cultivars and places, without amendments, in recorded order. */
    List<Recorded> listings();

    /** Return the entries that list costs and prices, without amendments, in recorded order. */
    List<Recorded> tariff();

    /** Return every person, by number. */
    Collection<Person> persons();

    /** Return the person of that number. */
    default Optional<Person> person(PersonNumber number) {
        return persons().stream()
                .filter(person -> person.number().equals(number))
                .findFirst();
    }

    /** Return the person of that name, upper and lower case alike. */
    Optional<Person> person(String name);

    /** Return every entry after the given recorded order, amendments and crossed-out ones too; close the stream. */
    Stream<Chained> since(long order);

    /**
     * Put one of the named questions in {@code queries/}. A parameter called {@code units} is a text of unit numbers with
     * commas between.
     *
     * @throws ortet.value.Refused when there is no such question or a parameter is missing or not known
     */
    Rows ask(QueryName name, Parameters parameters);

    /**
     * Put one of the named questions whose columns are whole numbers alone, and hand over its rows one by one in the order
     * of its header, without making an object for any of them; for questions about all of a book.
     *
     * @throws ortet.value.Refused when there is no such question or a parameter is missing or not known
     */
    void stream(QueryName name, Parameters parameters, NumberSink sink);
}
