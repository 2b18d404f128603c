package ortet.book;

import java.nio.file.Path;
import java.util.List;
import ortet.plant.Person;

/**
 * Is handed a whole book while it is judged, to write it: first the entries in recorded order, then the persons, then the
 * facts of every unit by number.
 *
 * <p>What it was handed counts only when the judge returns without refusing.
 */
public interface LoadSink {
    /** Return a folder in which the judge may keep what it has no room for in memory, until it returns. */
    Path scratch();

    /**
     * Take an entry.
     *
     * @param fields the canonical text of its fields
     */
    void entry(Chained chained, String fields);

    /** Take every person. */
    void persons(List<Person> persons);

    /** Take the facts of a unit. */
    void facts(UnitFacts facts);
}
