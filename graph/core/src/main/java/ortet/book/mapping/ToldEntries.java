package ortet.book.mapping;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import ortet.book.EntrySource;
import ortet.book.Intake;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Where;

/**
 * The entries that rows stand for, to be judged and written.
 *
 * <p>The judge is told the number of an entry for its place, since a row may tell several: {@link #told} finds the entry of
 * a fault, and {@link #placed} puts the places of rows into what the judge says.
 */
final class ToldEntries implements EntrySource {
    /** Stands for all files; no file is called so. */
    private static final String ANY_FILE = "\uE000";

    private static final Pattern PLACE = Pattern.compile(ANY_FILE + ":(\\d+)");

    private final List<Told> told;
    private final List<Person> persons;

    ToldEntries(List<Told> told, List<Person> persons) {
        this.told = told;
        this.persons = List.copyOf(persons);
    }

    boolean isEmpty() {
        return told.isEmpty();
    }

    private static Where place(int index) {
        return new Where(ANY_FILE, index + 1L, Optional.empty());
    }

    @Override
    public void read(Intake intake, Progress progress) {
        for (int at = 0; at < told.size(); at++) {
            intake.take(told.get(at).proposed(), place(at));
        }
    }

    /** Return them as a proposal. */
    Proposal proposal() {
        return new Proposal(
                IntStream.range(0, told.size())
                        .mapToObj(at -> new Proposal.Item(told.get(at).proposed(), Optional.of(place(at))))
                        .toList(),
                persons);
    }

    @Override
    public List<Person> persons() {
        return persons;
    }

    /** Return the entry that a fault of the judge is about, where it is about one of these. */
    Optional<Told> told(Fault fault) {
        return fault.where()
                .filter(where -> where.file().equals(ANY_FILE))
                .map(where -> told.get((int) where.line() - 1));
    }

    /** Return what the judge says, with the places of rows. */
    String placed(String text) {
        return PLACE.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(
                        told.get(Integer.parseInt(found.group(1)) - 1).where().toString()));
    }
}
