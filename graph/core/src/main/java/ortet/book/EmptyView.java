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
import ortet.value.Fault;
import ortet.value.Refused;

/** A view of a book that holds nothing, from which a whole book is judged anew. */
record EmptyView(Head head) implements BookView {
    @Override
    public Optional<UnitNumber> unit(Tag tag) {
        return Optional.empty();
    }

    @Override
    public Optional<Tag> alikeButForCase(Tag tag) {
        return Optional.empty();
    }

    @Override
    public List<String> nearest(Tag tag) {
        return List.of();
    }

    @Override
    public List<Tag> tagsFrom(String text, int most) {
        return List.of();
    }

    @Override
    public List<Tag> tags(UnitNumber unit) {
        return List.of();
    }

    @Override
    public Optional<Recorded> entry(EntryId id) {
        return Optional.empty();
    }

    @Override
    public Optional<Recorded> entry(long order) {
        return Optional.empty();
    }

    @Override
    public List<Recorded> amendments(long order) {
        return List.of();
    }

    @Override
    public List<Recorded> entries(UnitNumber unit) {
        return List.of();
    }

    @Override
    public Optional<UnitFacts> facts(UnitNumber unit) {
        return Optional.empty();
    }

    @Override
    public List<Link> offspring(UnitNumber unit, Set<Act> acts) {
        return List.of();
    }

    @Override
    public Family family(UnitNumber unit, Direction way, int most) {
        return new Family(List.of(), List.of(), true);
    }

    @Override
    public List<Recorded> tariff() {
        return List.of();
    }

    @Override
    public List<Recorded> listings() {
        return List.of();
    }

    @Override
    public Collection<Person> persons() {
        return List.of();
    }

    @Override
    public Optional<Person> person(String name) {
        return Optional.empty();
    }

    @Override
    public Stream<Chained> since(long order) {
        return Stream.empty();
    }

    @Override
    public Rows ask(QueryName name, Parameters parameters) {
        throw new Refused(Fault.of("unknown-question", "an empty book cannot be asked " + name));
    }

    @Override
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        throw new Refused(Fault.of("unknown-question", "an empty book cannot be asked " + name));
    }
}
