package ortet.book;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ortet.entry.EntryId;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/** A view that passes everything on to another, so that a test can change one answer. */
public abstract class ForwardingView implements BookView {
    private final BookView book;

    /** Pass everything on to the given view. */
    protected ForwardingView(BookView book) {
        this.book = book;
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        return book.ask(name, parameters);
    }

    @Override
    public Head head() {
        return book.head();
    }

    @Override
    public Optional<UnitNumber> unit(Tag tag) {
        return book.unit(tag);
    }

    @Override
    public Optional<Tag> alikeButForCase(Tag tag) {
        return book.alikeButForCase(tag);
    }

    @Override
    public List<String> nearest(Tag tag) {
        return book.nearest(tag);
    }

    @Override
    public List<Tag> tagsFrom(String text, int most) {
        return book.tagsFrom(text, most);
    }

    @Override
    public List<Tag> tags(UnitNumber unit) {
        return book.tags(unit);
    }

    @Override
    public Optional<Recorded> entry(EntryId id) {
        return book.entry(id);
    }

    @Override
    public Optional<Recorded> entry(long order) {
        return book.entry(order);
    }

    @Override
    public List<Recorded> amendments(long order) {
        return book.amendments(order);
    }

    @Override
    public List<Recorded> entries(UnitNumber unit) {
        return book.entries(unit);
    }

    @Override
    public Optional<UnitFacts> facts(UnitNumber unit) {
        return book.facts(unit);
    }

    @Override
    public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
        return book.offspring(unit, acts);
    }

    @Override
    public Family family(UnitNumber unit, Direction way, int most) {
        return book.family(unit, way, most);
    }

    @Override
    public List<Recorded> listings() {
        return book.listings();
    }

    @Override
    public List<Recorded> tariff() {
        return book.tariff();
    }

    @Override
    public Collection<Person> persons() {
        return book.persons();
    }

    @Override
    public Optional<Person> person(String name) {
        return book.person(name);
    }

    @Override
    public Stream<Chained> since(long order) {
        return book.since(order);
    }

    @Override
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        book.stream(name, parameters, sink);
    }
}
