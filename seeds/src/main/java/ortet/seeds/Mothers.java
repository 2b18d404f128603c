package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import ortet.entry.EntryKind;
import ortet.entry.Ownership;
import ortet.entry.Purpose;
import ortet.entry.Raised;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;
import ortet.value.When;

/** The stock plants: bought in or raised at Sallowfield, left long, layered, cut back, let go. */
final class Mothers {
    private static final int ENOUGH_OF_ONE_CULTIVAR = 6;

    private final Nursery nursery;
    private final Chance chance;
    private final List<Unit> all = new ArrayList<>();
    private final List<Unit> longOnes = new ArrayList<>();
    private int rows;

    Mothers(Nursery nursery, Chance chance) {
        this.nursery = nursery;
        this.chance = chance;
    }

    /** Return the mothers that may give wood now. */
    List<Unit> giving() {
        return all.stream().filter(Unit::givesWood).toList();
    }

    List<Unit> giving(Variety variety) {
        return giving().stream().filter(mother -> mother.variety == variety).toList();
    }

    Place nextRow() {
        return nursery.grounds.stockRows.get(rows++ % nursery.grounds.stockRows.size());
    }

    /**
     * Buy a plant to be a mother.
     *
     * @param when the day, as well as it is known
     * @param stemMm how thick it is
     */
    Unit buy(When when, Variety variety, double stemMm, Optional<Person> supplier, UnaryOperator<Draft> more) {
        Tag tag = nursery.nextTags("K", 1).get(0);
        Unit mother = nursery.unit(Unit.Nature.PLANT, tag, variety);
        mother.growing = 1;
        mother.stemMm = stemMm;
        mother.heightMm = 25 * stemMm;
        mother.stock = true;
        mother.inGround = true;
        mother.vigour = 0.55 * chance.normal();
        Place row = nextRow();
        mother.place = Optional.of(row);
        Optional<Person> by = when.isExact() ? Optional.of(nursery.people.maire.person()) : Optional.empty();
        more.apply(nursery.book
                        .on(when, by, EntryKind.ACQUIRED)
                        .tags(List.of(tag))
                        .set("cultivar", variety.cultivar())
                        .set("supplier", supplier)
                        .mm("stem_mm", stemMm)
                        .set("place", row))
                .write();
        return mother;
    }

    /** Let the everyday programme use a mother. */
    Unit enlist(Unit mother) {
        all.add(mother);
        return mother;
    }

    void dismiss(Unit mother) {
        all.remove(mother);
        longOnes.remove(mother);
    }

    /** Keep a plant of some lot as a mother, where its cultivar wants more of them. */
    void choose(List<Unit> plants) {
        Unit best = plants.stream()
                .max(Comparator.comparingDouble(plant -> plant.stemMm))
                .orElseThrow();
        if (best.variety.cultivar().epithet().isEmpty() || best.graded || best.promisedTo.isPresent()) {
            return;
        }
        int there = giving(best.variety).size();
        // the youngest stock is the most wanted: mothers of mothers of mothers
        double wanted = there >= ENOUGH_OF_ONE_CULTIVAR ? 0 : 0.10 + 0.05 * Math.min(4, best.generation);
        if (!chance.happens(wanted)) {
            return;
        }
        Hand by = nursery.people.maire;
        Place row = nextRow();
        nursery.plantOut(by, List.of(best), row, Nursery.PLAIN);
        nursery.keep(
                by,
                List.of(best),
                draft -> draft.set(
                        "note",
                        chance.any("", "well branched low down", "good roots, keep for wood", "máthair mhaith")));
        best.vigour += 0.35 * chance.normal();
        enlist(best);
    }

    /** Plan a year's work on the mothers, and return by and by those to be layered to the one who layers. */
    void year(int year, java.util.function.Consumer<Unit> layer) {
        LocalDate walk = LocalDate.of(year, 2, 3).plusDays(chance.between(0, 18));
        nursery.later(walk, () -> {
            List<Unit> toLayer = new ArrayList<>();
            List<Unit> toLeave = new ArrayList<>();
            List<Unit> toCut = new ArrayList<>();
            for (Unit mother : giving()) {
                mother.stemMm += 1.5 + 2 * chance.share();
                mother.heightMm += 60 * chance.share();
                if (mother.stemMm < 14 || mother.nature == Unit.Nature.SPORT) {
                    continue;
                }
                if (longOnes.contains(mother)) {
                    if (chance.happens(0.8)) {
                        toLayer.add(mother);
                    }
                } else if (chance.happens(0.62)) {
                    toLeave.add(mother);
                } else if (chance.happens(0.35)) {
                    toCut.add(mother);
                }
            }
            rows(toLeave, EntryKind.LEFT_LONG);
            rows(toCut, EntryKind.CUT_BACK);
            longOnes.addAll(toLeave);
            for (Unit mother : toLayer) {
                longOnes.remove(mother);
                if (chance.happens(0.45)) {
                    positions(mother);
                }
                layer.accept(mother);
            }
        });
    }

    /** Say before the first spring which old mothers have been left long. */
    void leaveLongAtFirst() {
        longOnes.addAll(all.stream().filter(mother -> chance.happens(0.6)).toList());
    }

    private void rows(List<Unit> mothers, EntryKind kind) {
        for (int at = 0; at < mothers.size(); at += 8) {
            nursery.row(nursery.people.maire, kind, mothers.subList(at, Math.min(mothers.size(), at + 8)))
                    .set("note", chance.happens(0.1) ? "le linn sneachta; walked the rows" : "")
                    .write();
        }
    }

    private void positions(Unit mother) {
        nursery.row(nursery.people.maire, EntryKind.MEASURED, List.of(mother))
                .mm("stem_mm", mother.stemMm)
                .set("height_mm", Math.round(mother.heightMm / 10) * 10)
                .set(
                        "positions",
                        "6-10:" + chance.between(2, 9) + " 10-16:" + chance.between(1, 6)
                                + (mother.stemMm > 35 ? " 16-25:" + chance.between(0, 3) : ""))
                .set("note", chance.happens(0.05) ? "one more branch to come on the north side" : "")
                .write();
    }

    // ---- where the first ones came from ---------------------------------------------------------------------------

    private record Old(String when, Variety variety, double stemMm, Raised raised, String born, String note) {}

    /** Write down the mothers that stood at Sallowfield before the book was begun. */
    void oldStock() {
        List<Old> stock = List.of(
                new Old("1989", Variety.SAN_JOSE, 58, Raised.CUTTING, "1983", ""),
                new Old("1990", Variety.NANA, 44, Raised.CUTTING, "", "from the old rockery"),
                new Old("1992-10", Variety.ACER_BUERGERIANUM, 70, Raised.SEED, "1984", ""),
                new Old("1995", Variety.ZELKOVA_SERRATA, 62, Raised.SEED, "1988", "broom style, left to grow"),
                new Old("1995-11", Variety.GOLDEN_HORNET, 55, Raised.GRAFT, "", ""),
                new Old("1996-04", Variety.DESHOJO, 48, Raised.LAYER, "1990", ""),
                new Old("1997", Variety.ITOIGAWA, 46, Raised.CUTTING, "1989", ""),
                new Old("1998-03", Variety.KIYOHIME, 38, Raised.LAYER, "", ""),
                new Old("1999", Variety.CATLIN, 50, Raised.CUTTING, "1994", ""),
                new Old("2000-05", Variety.SEIJU, 42, Raised.CUTTING, "", ""),
                new Old("2000-05", Variety.HOKKAIDO, 34, Raised.CUTTING, "", ""),
                new Old("2001", Variety.BENI_CHIDORI, 45, Raised.GRAFT, "1995", ""),
                new Old("2002", Variety.ITOIGAWA, 40, Raised.LAYER, "", ""),
                new Old("2003-09", Variety.ARAKAWA, 44, Raised.GRAFT, "1996", ""),
                new Old("2004", Variety.SEIJU, 36, Raised.CUTTING, "", ""),
                new Old("2005-03", Variety.KATSURA, 36, Raised.GRAFT, "1999", ""),
                new Old("2005-10", Variety.CHOJUBAI, 22, Raised.DIVISION, "", ""),
                new Old("2006", Variety.MINO_YATSUBUSA, 32, Raised.LAYER, "", ""),
                new Old("2007-02", Variety.KOTOBUKI, 38, Raised.GRAFT, "1998", ""),
                new Old("2008-03-14", Variety.ITOIGAWA, 34, Raised.CUTTING, "2000", ""),
                new Old("2008-03-14", Variety.KISHU, 33, Raised.CUTTING, "2000", ""),
                new Old("2009-11-20", Variety.CHOJUBAI, 18, Raised.DIVISION, "", ""),
                new Old("2010-04-07", Variety.DESHOJO, 30, Raised.GRAFT, "2002", ""),
                new Old("2010-04-07", Variety.SHISHIGASHIRA, 32, Raised.GRAFT, "2001", ""),
                new Old("2011-03-22", Variety.NANA, 28, Raised.CUTTING, "2004", ""));
        for (Old old : stock) {
            When when = When.parse(old.when());
            Optional<Person> supplier =
                    Optional.of(chance.of(nursery.people.suppliers())).filter(person -> when.isExact());
            nursery.agenda.on(
                    when.first(),
                    () -> enlist(buy(
                            when,
                            old.variety(),
                            old.stemMm(),
                            supplier,
                            draft -> draft.set("raised", old.raised())
                                    .set("born", old.born())
                                    .set("note", old.note()))));
        }
    }

    /** Plan what is bought later on: mothers of new cultivars, and more of the old. */
    void laterStock() {
        bought("2012-03-19", Variety.CATLIN, 26, 2);
        bought("2013-03-11", Variety.GOSHIKI_KAEDE, 24, 2);
        bought("2013-04-02", Variety.BONIN_ISLES, 22, 2);
        bought("2014-02-18", Variety.FROSTY, 24, 2);
        bought("2014-02-18", Variety.GOBLIN, 20, 2);
        bought("2014-11-12", Variety.OMOI_NO_MAMA, 28, 1);
        bought("2015-03-03", Variety.THUNDERHEAD, 30, 1);
        bought("2015-03-03", Variety.ITOIGAWA, 26, 2);
        bought("2016-03-08", Variety.DESHOJO, 25, 2);
        bought("2017-02-27", Variety.KIYOHIME, 22, 1);
        bought("2017-02-27", Variety.SHISHIGASHIRA, 27, 1);
        bought("2018-03-13", Variety.ARAKAWA, 26, 1);
        bought("2019-03-05", Variety.KISHU, 24, 2);
        bought("2020-02-24", Variety.MINO_YATSUBUSA, 22, 1);
        bought("2021-03-16", Variety.KOTOBUKI, 26, 1);
        elsewhere("2013-05-21", Variety.SAN_JOSE, 110, "in the walled garden of a friend of the house");
        elsewhere("2016-06-14", Variety.ZELKOVA_SERRATA, 240, "avenue tree; ask at the gate lodge");
        elsewhere("2019-05-28", Variety.CATLIN, 85, "gairdín na scoile; wood may be taken every second year");
    }

    private void bought(String day, Variety variety, double stemMm, int count) {
        When when = When.parse(day);
        nursery.agenda.on(when.first(), () -> {
            Person supplier = chance.of(nursery.people.suppliers());
            String consignment = "C" + when.first().getYear() % 100 + "-" + chance.between(100, 999);
            for (int more = 0; more < count; more++) {
                Unit mother = enlist(buy(
                        when,
                        variety,
                        stemMm + 4 * chance.share(),
                        Optional.of(supplier),
                        draft -> draft.set("consignment", consignment)
                                .set("ownership", Ownership.OWNED)
                                .set("raised", chance.any(Raised.CUTTING, Raised.GRAFT, Raised.LAYER, Raised.UNKNOWN))
                                .set("height_mm", 10 * chance.between(50, 140))
                                .set("container", "10 L")
                                .set("passport", consignment + "/A")));
                mother.inGround = false;
                mother.container = "10 L";
                // one of a pair stays in a pot for a year, the other goes straight into its row
                if (more == 0) {
                    nursery.later(
                            when.first().plusDays(12),
                            () -> nursery.plantOut(
                                    nursery.hand(Work.POTS, chance), List.of(mother), nextRow(), Nursery.PLAIN));
                } else {
                    nursery.later(
                            when.first().plusDays(370),
                            () -> nursery.pot(
                                    nursery.hand(Work.POTS, chance),
                                    List.of(mother),
                                    "20 L",
                                    Purpose.POT_ON,
                                    "loam and grit",
                                    Optional.empty(),
                                    Nursery.PLAIN));
                }
                nursery.later(
                        when.first().plusDays(13),
                        () -> nursery.keep(nursery.people.maire, List.of(mother), Nursery.PLAIN));
            }
        });
    }

    private void elsewhere(String day, Variety variety, double stemMm, String note) {
        When when = When.parse(day);
        nursery.agenda.on(when.first(), () -> {
            Tag tag = nursery.nextTags("K", 1).get(0);
            Unit mother = nursery.unit(Unit.Nature.PLANT, tag, variety);
            mother.growing = 1;
            mother.stemMm = stemMm;
            mother.heightMm = 4000;
            mother.stock = true;
            mother.inGround = true;
            mother.vigour = -0.3;
            nursery.row(nursery.people.maire, EntryKind.ACQUIRED, List.of(mother))
                    .set("cultivar", variety.cultivar())
                    .set("ownership", Ownership.ELSEWHERE)
                    .mm("stem_mm", stemMm)
                    .set("note", note)
                    .write();
            enlist(mother);
        });
    }
}
