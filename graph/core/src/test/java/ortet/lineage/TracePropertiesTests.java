package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.Direction;
import ortet.book.Family;
import ortet.book.ForwardingView;
import ortet.book.Link;
import ortet.book.MemoryBookStore;
import ortet.book.UnitFacts;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;
import ortet.value.When;

/** What holds of every trace, whatever the nursery has been doing. */
class TracePropertiesTests {
    private static final List<String> DEEDS = List.of(
            "layer-set NEW; mother=ONE",
            "severed ONE",
            "cuttings-struck NEW; mothers=ONE OTHER; count=20",
            "cuttings-struck NEW; mothers=ONE; count=20",
            "seed-sown NEW; count=30; seed_parent=ONE; pollen_parent=OTHER",
            "taken ONE",
            "drawn NEW; source=ONE",
            "graft-worked NEW; scion=ONE; stock=OTHER",
            "sport-found NEW; mother=ONE",
            "split NEW; source=ONE; count=3",
            "merged NEW; sources=ONE OTHER",
            "divided NEW; mother=ONE",
            "found-untagged NEW; candidates=ONE OTHER",
            "moved ONE; place=Yard",
            "potted ONE; container=5 L",
            "acquired NEW",
            "acquired NEW; count=12; raised=seed");

    /** Keep a book of deeds, leaving out those that cannot be true; return the tags. */
    private static List<Tag> keep(MemoryBookStore book, List<Integer> choices) {
        Diary diary = new Diary(book);
        diary.write("2015-01-01 acquired N-0", "2015-01-01 acquired N-1");
        List<Tag> tags = new ArrayList<>(List.of(new Tag("N-0"), new Tag("N-1")));
        for (int at = 0; at + 2 < choices.size(); at += 3) {
            String deed = DEEDS.get(choices.get(at) % DEEDS.size());
            Tag fresh = new Tag("N-" + tags.size());
            String line = LocalDate.of(2015, 1, 2).plusDays(at) + " "
                    + deed.replace("NEW", fresh.text())
                            .replace(
                                    "ONE",
                                    tags.get(choices.get(at + 1) % tags.size()).text())
                            .replace(
                                    "OTHER",
                                    tags.get(choices.get(at + 2) % tags.size()).text());
            try {
                diary.write(line);
            } catch (Refused cannotBeTrue) {
                continue;
            }
            if (deed.contains("NEW")) {
                tags.add(fresh);
            }
        }
        return tags;
    }

    /** Every unit above one, found the obvious way. */
    private static void above(BookView view, UnitNumber unit, Set<UnitNumber> found) {
        if (found.add(unit)) {
            view.facts(unit).orElseThrow().links().forEach(link -> above(view, link.mother(), found));
        }
    }

    private static void collect(Step step, List<UnitNumber> units) {
        units.add(step.unit());
        step.sources().forEach(source -> source.step().ifPresent(next -> collect(next, units)));
    }

    @Property(tries = 150)
    void tellsEveryUnitAboveExactlyOnce(
            @ForAll @Size(min = 30, max = 150) List<@IntRange(max = 1000) Integer> choices) {
        MemoryBookStore book = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        for (Tag tag : keep(book, choices)) {
            book.read(view -> {
                Trace trace = Lineage.trace(view, tag, Diary.TODAY);
                List<UnitNumber> told = new ArrayList<>();
                collect(trace.tree(), told);
                Set<UnitNumber> expected = new HashSet<>();
                above(view, trace.tree().unit(), expected);
                assertEquals(expected, new HashSet<>(told));
                assertEquals(expected.size(), told.size());
                assertEquals(trace.units(), told.size());
                assertTrue(trace.isWhole());
                assertFalse(trace.origin().founders().isEmpty());
                assertTrue(trace.origin().founders().stream().allMatch(founder -> expected.contains(founder.unit())));
                return trace;
            });
        }
    }

    @Property(tries = 50)
    void findsTheSameBeginningForWhateverKeepsTheCloneOfOnePlant(
            @ForAll @Size(min = 30, max = 150) List<@IntRange(max = 1000) Integer> choices) {
        MemoryBookStore book = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        for (Tag tag : keep(book, choices)) {
            book.read(view -> {
                UnitFacts facts = view.facts(view.unit(tag).orElseThrow()).orElseThrow();
                List<Link> clonal = facts.links().stream()
                        .filter(link -> link.act() == Act.LAYERED_FROM
                                || link.act() == Act.SCION_OF
                                || link.act() == Act.DIVIDED_FROM)
                        .toList();
                Origin origin = Lineage.trace(view, tag, Diary.TODAY).origin();
                for (Link link : clonal) {
                    Tag mother = view.facts(link.mother()).orElseThrow().tag();
                    Origin hers = Lineage.trace(view, mother, Diary.TODAY).origin();
                    boolean isOne = hers.founders().stream()
                            .noneMatch(founder -> founder.kind().name().startsWith("EACH"));
                    if (isOne) {
                        assertEquals(hers, origin);
                    }
                }
                return origin;
            });
        }
    }

    @Property(tries = 100)
    void accountsForEveryUnitWithoutObjecting(
            @ForAll @Size(min = 30, max = 150) List<@IntRange(max = 1000) Integer> choices) {
        MemoryBookStore book = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        for (Tag tag : keep(book, choices)) {
            book.read(view -> {
                Account account = Lineage.plant(view, tag, Diary.TODAY);
                assertEquals(
                        view.entries(account.unit()).size(), account.diary().size());
                for (OffspringTally tally : account.offspring()) {
                    assertTrue(tally.pending() >= 0 && tally.merged() >= 0 && tally.growing() >= 0, tally::toString);
                    if (tally.countsForTake()) {
                        assertEquals(
                                tally.set(),
                                tally.taken() + tally.failed() + tally.withdrawn() + tally.pending() + tally.merged());
                    }
                }
                return account;
            });
        }
    }

    /** A book so damaged that a mother comes from her own layer. */
    @Test
    void comesToAnEndEvenInACircle() {
        Diary diary = new Diary();
        diary.write("2015-01-01 acquired K-1", "2016-01-01 layer-set J-1; mother=K-1", "2017-01-01 severed J-1");
        UnitNumber mother = diary.unit("K-1");
        UnitNumber layer = diary.unit("J-1");
        Link back = new Link(mother, layer, Act.LAYERED_FROM, When.parse("2016-01-01"), 2, Optional.empty());
        Trace trace = diary.store()
                .read(view -> Lineage.trace(
                        new ForwardingView(view) {
                            @Override
                            public Optional<UnitFacts> facts(UnitNumber unit) {
                                return super.facts(unit).map(facts -> unit.equals(mother) ? with(facts, back) : facts);
                            }

                            @Override
                            public Family family(UnitNumber unit, Direction way, int most) {
                                List<Link> links = new ArrayList<>(
                                        super.facts(layer).orElseThrow().links());
                                links.add(back);
                                return new Family(List.of(layer, mother), links, true);
                            }
                        },
                        new Tag("J-1"),
                        Diary.TODAY));
        Source source = trace.tree().sources().get(0);
        assertEquals(mother, source.unit());
        Source again = source.step().orElseThrow().sources().get(0);
        assertTrue(again.isToldElsewhere());
        assertEquals(2, trace.units());
        assertEquals("cultivar not known", trace.tree().named().toString());
        assertFalse(trace.origin().founders().isEmpty());
    }

    private static UnitFacts with(UnitFacts facts, Link link) {
        return new UnitFacts(
                facts.unit(),
                facts.nature(),
                facts.begun(),
                facts.tags(),
                facts.entries(),
                List.of(link),
                facts.names(),
                facts.cohort(),
                facts.outcomes(),
                facts.standings(),
                facts.pottings(),
                facts.stays(),
                facts.leavings());
    }
}
