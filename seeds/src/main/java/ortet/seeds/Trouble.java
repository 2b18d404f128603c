package ortet.seeds;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import ortet.entry.EntryKind;
import ortet.entry.Wood;
import ortet.plant.Person;
import ortet.seeds.Troubles.Story;
import ortet.value.When;

/** Something that went wrong at Sallowfield, with the tags to look it up by; and what such stories need to be told. */
abstract class Trouble {
    /** Everybody and everything that a story may need. */
    record Cast(
            Nursery nursery,
            Mothers mothers,
            Layering layering,
            Cutting cutting,
            Grafting grafting,
            Growing growing,
            Chance chance,
            List<Story> stories) {}

    final Nursery nursery;
    final Mothers mothers;
    final Layering layering;
    final Cutting cutting;
    final Grafting grafting;
    final Growing growing;
    final Chance chance;
    private final List<Story> stories;

    Trouble(Cast cast) {
        nursery = cast.nursery();
        mothers = cast.mothers();
        layering = cast.layering();
        cutting = cast.cutting();
        grafting = cast.grafting();
        growing = cast.growing();
        chance = cast.chance();
        stories = cast.stories();
    }

    /** Plan what happens. */
    abstract void plan();

    final void tell(Story story) {
        stories.add(story);
    }

    final void tell(String what, Unit... about) {
        tell(what, Arrays.asList(about));
    }

    final void tell(String what, Collection<Unit> about) {
        stories.add(new Story(what, Nursery.tags(about)));
    }

    final void on(String day, Runnable work) {
        nursery.agenda.on(When.parse(day).first(), work);
    }

    final Unit buy(String day, Variety variety, double stemMm, Person supplier) {
        return mothers.buy(When.parse(day), variety, stemMm, Optional.of(supplier), Nursery.PLAIN);
    }

    final DayBook.Draft old(String when, EntryKind kind, List<Unit> about) {
        return nursery.book.on(When.parse(when), Optional.empty(), kind).tags(Nursery.tags(about));
    }

    final Unit begin(String letter, Unit.Nature nature, Unit mother) {
        Unit unit = nursery.unit(nature, nursery.nextTags(letter, 1).get(0), mother.variety);
        unit.mother = Optional.of(mother);
        unit.generation = mother.generation + 1;
        unit.vigour = mother.vigour;
        return unit;
    }

    final Unit tray(List<Unit> from, Wood wood, int count) {
        return cutting.strike(from, wood, count, nursery.hand(People.Work.BENCH, chance), Nursery.PLAIN);
    }

    /** Return a young tree of that cultivar that stands about and is promised to nobody. */
    final Unit aTree(Variety variety) {
        return trees(variety, 1).get(0);
    }

    final List<Unit> trees(Variety variety, int count) {
        List<Unit> free = nursery.units().stream()
                .filter(unit -> unit.variety == variety
                        && unit.isStanding()
                        && !unit.stock
                        && !unit.held
                        && !unit.inGround
                        && !unit.container.isEmpty()
                        && unit.layersOn().isEmpty()
                        && unit.begun.isBefore(nursery.today().minusDays(150))
                        && unit.promisedTo.isEmpty())
                .toList();
        if (free.size() < count) {
            throw new IllegalStateException("not " + count + " of " + variety + " on " + nursery.today());
        }
        return free.subList(0, count);
    }
}
