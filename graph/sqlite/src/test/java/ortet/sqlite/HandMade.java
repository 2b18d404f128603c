package ortet.sqlite;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import ortet.book.Act;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Digest;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.Ruling;
import ortet.book.UnitFacts;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Makes rulings by hand, for what the store has to do whatever the judge thinks: entries with their digests, and facts
 * that need not follow from them.
 */
final class HandMade {
    static final ZoneId ZONE = ZoneId.of("Europe/Dublin");
    private static final Instant RECORDED = Instant.parse("2024-06-01T08:00:00Z");

    /** The facts of one unit in the making. */
    final class Unit {
        final UnitNumber number;
        private final UnitFacts.Nature nature;
        private final UnitFacts.Begun begun;
        final List<UnitFacts.TagUse> tags = new ArrayList<>();
        final List<Long> entries = new ArrayList<>();
        final List<Link> links = new ArrayList<>();
        final List<UnitFacts.Naming> names = new ArrayList<>();
        Optional<UnitFacts.Cohort> cohort = Optional.empty();
        final List<UnitFacts.Outcome> outcomes = new ArrayList<>();
        final List<UnitFacts.Standing> standings = new ArrayList<>();
        final List<UnitFacts.Potting> pottings = new ArrayList<>();
        final List<UnitFacts.Stay> stays = new ArrayList<>();
        final List<UnitFacts.Leaving> leavings = new ArrayList<>();

        private Unit(int number, UnitFacts.Nature nature, String tag, When day, long order) {
            this.number = new UnitNumber(number);
            this.nature = nature;
            this.begun = new UnitFacts.Begun(order, 0, day);
            tags.add(new UnitFacts.TagUse(new Tag(tag), day, order));
            entries.add(order);
        }

        Unit from(Act act, Unit mother, When day, long order) {
            links.add(new Link(number, mother.number, act, day, order, Optional.empty()));
            return this;
        }

        Unit named(String cultivar, boolean isTrue, When day, long order) {
            names.add(new UnitFacts.Naming(CultivarName.parse(cultivar), isTrue, day, order));
            return this;
        }

        Unit cohort(UnitFacts.Method method, int count, When day, long order) {
            cohort = Optional.of(new UnitFacts.Cohort(
                    method, day, order, Optional.of(new PersonNumber(1)), Optional.of(count), number));
            return this;
        }

        Unit outcome(UnitFacts.Fate fate, int count, When day, long order) {
            outcomes.add(new UnitFacts.Outcome(fate, count, Optional.empty(), day, order));
            return this;
        }

        Unit standing(int pending, int growing, When day, long order) {
            standings.add(new UnitFacts.Standing(Optional.of(pending), growing, day, order));
            return this;
        }

        Unit stay(String place, When day, long order) {
            stays.add(new UnitFacts.Stay(new Place(place), day, order));
            return this;
        }

        Unit potted(String container, When day, long order) {
            pottings.add(new UnitFacts.Potting(Optional.of(container), day, order));
            return this;
        }

        UnitFacts facts() {
            return new UnitFacts(
                    number, nature, begun, tags, entries, links, names, cohort, outcomes, standings, pottings, stays,
                    leavings);
        }
    }

    private final UUID bookId;
    private final Chain chain;
    private final long before;
    private int lastUnit;
    private Digest last;
    private final List<Chained> entries = new ArrayList<>();
    private final List<Person> persons = new ArrayList<>();
    private final List<Unit> units = new ArrayList<>();

    private HandMade(Head head) {
        this.bookId = head.bookId();
        this.chain = new Chain(head.digest());
        this.last = head.digest();
        this.before = head.order();
        this.lastUnit = head.lastUnit();
    }

    /** Go on from where a book stands. */
    static HandMade after(Head head) {
        return new HandMade(head);
    }

    static When day(String day) {
        return When.parse(day);
    }

    /** Add an entry and return its order. */
    long entry(EntryKind kind, When day, Map<String, String> fields) {
        long order = before + entries.size() + 1;
        Recorded recorded = new Recorded(
                order,
                RECORDED.plusMillis(order),
                new Proposed(
                        EntryId.derived("hand-made", bookId.toString(), (int) order),
                        day,
                        persons.isEmpty()
                                ? Optional.empty()
                                : Optional.of(persons.get(0).number()),
                        Form.of(kind).read(fields)));
        Chained chained = chain.add(recorded);
        entries.add(chained);
        last = chained.digest();
        return order;
    }

    EntryId id(long order) {
        return entries.get((int) (order - before - 1)).recorded().proposed().id();
    }

    void person(int number, String name) {
        persons.add(new Person(
                new PersonNumber(number), Optional.of(name), Person.Role.STAFF, Optional.of("particulars of " + name)));
    }

    /** Begin a unit. */
    Unit unit(UnitFacts.Nature nature, String tag, When day, long order) {
        Unit unit = new Unit(++lastUnit, nature, tag, day, order);
        units.add(unit);
        return unit;
    }

    Ruling ruling() {
        return new Ruling(
                new Head(bookId, ZONE, before + entries.size(), last, lastUnit),
                entries,
                persons,
                units.stream().map(Unit::facts).toList(),
                List.of(),
                0,
                units.size(),
                List.of());
    }

    /** A book of so many plants: stock plants, layers, trays of cuttings and what was drawn from them. */
    static Ruling nursery(Head head, int plants) {
        HandMade book = new HandMade(head);
        book.person(1, "Bench One");
        int stock = plants / 50;
        int layers = plants * 2 / 5 - stock;
        int trays = plants / 50;
        int drawn = plants - stock - layers;
        List<Unit> mothers = new ArrayList<>();
        LocalDate start = LocalDate.of(2014, 3, 1);
        for (int at = 0; at < stock; at++) {
            When day = When.on(start.plusDays(at % 700));
            String tag = String.format("K-%05d", at);
            String cultivar = "Acer palmatum 'Number " + letters(at % 25) + "'";
            long order = book.entry(
                    EntryKind.ACQUIRED, day, Map.of("tags", tag, "cultivar", cultivar, "place", "House " + at % 9));
            Unit unit = book.unit(UnitFacts.Nature.PLANT, tag, day, order);
            if (at % 3 == 2) {
                unit.from(Act.DIVIDED_FROM, mothers.get(at / 2), day, order);
            } else {
                unit.named(cultivar, false, day, order);
            }
            unit.standing(0, 1, day, order).stay("House " + at % 9, day, order);
            mothers.add(unit);
        }
        for (int at = 0; at < layers; at++) {
            Unit mother = mothers.get(at * 7919 % stock);
            LocalDate set = start.plusDays(750 + at % 2500L);
            String tag = String.format("J-%06d", at);
            Map<String, String> about = Map.of("tags", tag);
            long order = book.entry(
                    EntryKind.LAYER_SET,
                    When.on(set),
                    Map.of(
                            "tags",
                            tag,
                            "mother",
                            mother.tags.get(0).tag().text(),
                            "stem_mm",
                            "14",
                            "ring_mm",
                            "15",
                            "wound",
                            "full-ring",
                            "medium",
                            "sphagnum"));
            mother.entries.add(order);
            Unit unit = book.unit(UnitFacts.Nature.LAYER, tag, When.on(set), order)
                    .from(Act.LAYERED_FROM, mother, When.on(set), order)
                    .cohort(UnitFacts.Method.LAYER, 1, When.on(set), order)
                    .standing(1, 0, When.on(set), order);
            When checked = When.on(set.plusDays(60));
            long seen = book.entry(EntryKind.CHECKED, checked, Map.of("tags", tag, "findings", "callus"));
            unit.entries.add(seen);
            unit.outcome(UnitFacts.Fate.STILL_ON, 1, checked, seen);
            When severed = When.on(set.plusDays(110));
            if (at % 4 == 3) {
                long failed = book.entry(EntryKind.FAILED, severed, Map.of("tags", tag, "cause", "dried"));
                unit.entries.add(failed);
                unit.outcome(UnitFacts.Fate.FAILED, 1, severed, failed).standing(0, 0, severed, failed);
                continue;
            }
            long cut = book.entry(EntryKind.SEVERED, severed, Map.of("tags", tag, "roots", "full", "container", "2 L"));
            unit.entries.add(cut);
            unit.outcome(UnitFacts.Fate.TAKEN, 1, severed, cut)
                    .standing(0, 1, severed, cut)
                    .potted("2 L", severed, cut);
            book.life(unit, set.plusDays(400), about);
        }
        for (int at = 0; at < trays; at++) {
            Unit mother = mothers.get(at * 7919 % stock);
            When day = When.on(start.plusDays(800 + at % 2500L));
            String tag = String.format("T-%05d", at);
            long order = book.entry(
                    EntryKind.CUTTINGS_STRUCK,
                    day,
                    Map.of(
                            "tags",
                            tag,
                            "mothers",
                            mother.tags.get(0).tag().text(),
                            "count",
                            "60",
                            "wood",
                            "semi-ripe"));
            mother.entries.add(order);
            Unit tray = book.unit(UnitFacts.Nature.BATCH, tag, day, order)
                    .from(Act.STRUCK_FROM, mother, day, order)
                    .cohort(UnitFacts.Method.CUTTING, 60, day, order)
                    .standing(60, 0, day, order)
                    .stay("House 1 bench " + at % 20, day, order);
            int from = (int) ((long) drawn * at / trays);
            int to = (int) ((long) drawn * (at + 1) / trays);
            for (int plant = from; plant < to; plant++) {
                String label = String.format("C-%06d", plant);
                LocalDate out = day.first().plusDays(120);
                long draw = book.entry(
                        EntryKind.DRAWN,
                        When.on(out),
                        Map.of("tags", label, "source", tag, "container", "9 cm", "place", "House 2"));
                tray.entries.add(draw);
                tray.outcome(UnitFacts.Fate.TAKEN, 1, When.on(out), draw)
                        .standing(60 - (plant - from) - 1, 0, When.on(out), draw);
                Unit unit = book.unit(UnitFacts.Nature.PLANT, label, When.on(out), draw)
                        .from(Act.DRAWN_FROM, tray, When.on(out), draw)
                        .standing(0, 1, When.on(out), draw)
                        .potted("9 cm", When.on(out), draw)
                        .stay("House 2", When.on(out), draw);
                book.life(unit, out.plusDays(300), Map.of("tags", label));
            }
        }
        return book.ruling();
    }

    private void life(Unit unit, LocalDate day, Map<String, String> about) {
        String tag = about.get("tags");
        When potted = When.on(day);
        long pot = entry(EntryKind.POTTED, potted, Map.of("tags", tag, "container", "5 L", "medium", "bark and grit"));
        unit.entries.add(pot);
        unit.potted("5 L", potted, pot);
        When moved = When.on(day.plusDays(30));
        long move = entry(EntryKind.MOVED, moved, Map.of("tags", tag, "place", "Field 3 row " + day.getDayOfMonth()));
        unit.entries.add(move);
        unit.stay("Field 3 row " + day.getDayOfMonth(), moved, move);
        if (unit.number.value() % 3 == 0) {
            When sold = When.on(day.plusDays(500));
            long sale = entry(EntryKind.SOLD, sold, Map.of("tags", tag, "price", "40.00 EUR"));
            unit.entries.add(sale);
            unit.leavings.add(new UnitFacts.Leaving(UnitFacts.Reason.SOLD, 1, Optional.empty(), sold, sale));
            unit.standing(0, 0, sold, sale);
        }
    }

    private static String letters(int number) {
        return String.valueOf((char) ('A' + number));
    }
}
