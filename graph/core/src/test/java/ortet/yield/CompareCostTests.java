package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.money.TreeCost;
import ortet.plant.Tag;

/** What saleable trees cost on two sides, in small nurseries added up by hand. All costs and prices are invented. */
class CompareCostTests {
    private static final LocalDate END = LocalDate.of(2021, 9, 1);

    private final Diary diary = new Diary();

    @BeforeEach
    void aMother() {
        diary.write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'");
    }

    private void costs() {
        diary.write(
                "2020-01-01 cost-listed; per=hour; amount=20 EUR",
                "2020-01-01 cost-listed; task=layer-set; hours=0.25; amount=0.60 EUR",
                "2020-01-01 cost-listed; task=severed; hours=0.1",
                "2020-01-01 cost-listed; task=graded; amount=0.10 EUR",
                "2020-01-01 cost-listed; material=2 L; amount=0.40 EUR",
                "2020-01-01 cost-listed; per=m2-year; amount=36.50 EUR",
                "2020-01-01 cost-listed; units_per_m2=10; container=2 L",
                "2020-01-01 cost-listed; task=cuttings-struck; hours=0.01",
                "2020-01-01 cost-listed; task=cuttings-struck; amount=1 EUR; per=tag",
                "2020-01-01 cost-listed; task=drawn; amount=0.30 EUR",
                "2020-01-01 cost-listed; material=IBA; amount=0.02 EUR");
    }

    private void potting() {
        diary.write("2020-01-01 cost-listed; task=potted; hours=0.05");
    }

    private void price(String money) {
        diary.write("2020-01-01 price-listed; size=medium; price=" + money);
    }

    /** Four layers: two graded after a year, one lost after 100 days, one that never took; and those that grow on. */
    private void layers(String growOn) {
        diary.write(
                "2020-05-01 layer-set J-1..J-4; mother=K-1",
                "2020-08-01 failed J-4",
                "2020-09-01 severed J-1..J-3; roots=full",
                "2020-09-01 potted J-1..J-3; container=2 L",
                "2020-12-10 lost J-3",
                "2021-09-01 graded J-1 J-2; size=medium");
        if (!growOn.isEmpty()) {
            diary.write(
                    "2020-05-01 layer-set " + growOn + "; mother=K-1",
                    "2020-09-01 severed " + growOn + "; roots=full",
                    "2020-09-01 potted " + growOn + "; container=2 L");
        }
    }

    private ComparisonTable table() {
        return diary.store()
                .read(view -> Compare.ask(view, CompareQuestion.of(CompareOn.METHOD, "layering", "cuttings", END)));
    }

    private Comparison all() {
        return table().rows().get(0);
    }

    private static String text(Optional<?> value) {
        return value.map(Object::toString).orElse("none");
    }

    /**
     * Set: 4 × (0.25 h × 20 + 0.60) = 22.40, for two saleable 11.20. Each of them: severed 2.00, potted 1.00, pot 0.40, graded
     * 0.10, and 365 days of a tenth of a square metre at 36.50 a year, 3.65: 7.15. The lost one: 2.00 + 1.00 + 0.40 + 1.00 for
     * 100 days = 4.40, for two 2.20.
     */
    @Test
    void addsUpWhatATreeCostWithThoseThatCameToNothing() {
        costs();
        potting();
        price("50.00 EUR");
        layers("");
        assertEquals(Optional.empty(), table().noCosts());
        SideCost side = all().firstCost().orElseThrow();
        assertEquals("22.40 EUR", text(side.settingCost()));
        assertEquals(4, side.set());
        ClassCost medium = side.classes().get(0);
        assertEquals(Optional.of("medium"), medium.size());
        assertEquals(2, medium.saleable());
        assertEquals("7.15 EUR", text(medium.grown().get(0).cost()));
        assertEquals("4.40 EUR", text(side.carried().get(0).cost()));
        assertEquals(BigFraction.of(2055, 100), medium.most().orElseThrow().value());
        assertEquals(medium.most(), medium.least());
        assertEquals("50.00 EUR", text(medium.price()));
        assertEquals("29.45 EUR", text(medium.marginLeast()));
        assertEquals(medium.most(), side.most());
        assertEquals(List.of(), all().secondCost().orElseThrow().classes());
    }

    /** What {@code cost of} tells of one tree, by a way of its own: setting 5.60 and the 7.15 of growing on. */
    @Test
    void agreesWithWhatTheTreeItselfCost() {
        costs();
        potting();
        layers("");
        TreeCost tree = diary.store().read(view -> TreeCost.of(view, new Tag("J-1"), END, Optional.of(END)));
        assertEquals("12.75 EUR", text(tree.own().orElseThrow().cost()));
        SideCost side = all().firstCost().orElseThrow();
        assertEquals(
                tree.own().orElseThrow().cost(),
                side.classes()
                        .get(0)
                        .grown()
                        .get(0)
                        .cost()
                        .map(grown ->
                                grown.plus(side.settingCost().orElseThrow().times(BigFraction.of(1, side.set())))));
    }

    /**
     * One more grows on, at 2.00 + 1.00 + 0.40 + 3.65 = 7.05 so far. If it never becomes saleable two carry all: 28.00 / 2 +
     * 7.15 + 4.40 / 2 + 7.05 / 2 = 26.875; if it does, three carry 28.00 and 4.40: 28/3 + 7.15 + 4.40/3 = 17.95.
     */
    @Test
    void givesARangeWhileSomeGrowOn() {
        costs();
        potting();
        price("20 EUR");
        layers("J-5");
        ClassCost medium = all().firstCost().orElseThrow().classes().get(0);
        assertEquals(BigFraction.of(26875, 1000), medium.most().orElseThrow().value());
        assertEquals(BigFraction.of(1795, 100), medium.least().orElseThrow().value());
        // at a loss, if it dies
        assertEquals(
                BigFraction.of(-6875, 1000), medium.marginLeast().orElseThrow().value());
        assertEquals("2.05 EUR", text(medium.marginMost()));
    }

    /**
     * Ten cuttings in one tray with hormone: 10 × 0.20 + 1.00 + 10 × 0.02 = 3.20, for four that are saleable 0.80 each. Two
     * are drawn into pots after 100 days in the tray and graded after 265 more: drawn 0.30, pot 0.40, graded 0.10, bench 365
     * days 3.65: 4.45. Two are sold out of the tray after 265 days: 2.65.
     */
    @Test
    void followsCuttingsOutOfTheirTray() {
        costs();
        potting();
        diary.write(
                "2020-01-01 cost-listed; units_per_m2=10; place=Mist",
                "2020-09-01 cuttings-struck T-1; mothers=K-1; count=10; hormone=IBA; place=Mist",
                "2020-11-01 failed T-1; count=6",
                "2020-12-01 taken T-1; count=4",
                "2020-12-10 drawn D-1 D-2; source=T-1; container=2 L; place=Yard",
                "2021-05-24 sold T-1; count=2",
                "2021-09-01 graded D-1 D-2; size=medium");
        SideCost side = all().secondCost().orElseThrow();
        assertEquals("3.20 EUR", text(side.settingCost()));
        assertEquals(2, side.classes().size());
        ClassCost medium = side.classes().get(0);
        ClassCost ungraded = side.classes().get(1);
        assertEquals(Optional.empty(), ungraded.size());
        assertEquals(
                BigFraction.of(80 + 265, 100), ungraded.most().orElseThrow().value());
        assertEquals(Optional.empty(), ungraded.price());
        assertEquals(BigFraction.of(80 + 445, 100), medium.most().orElseThrow().value());
        assertEquals(List.of("no price of \"medium\" is listed for Acer palmatum 'Deshojo'"), medium.missing());
        // the mean of two of each
        assertEquals(BigFraction.of(435, 100), side.most().orElseThrow().value());
    }

    @Test
    void hasNoCostWhereAPartIsNotListedAndSaysWhich() {
        costs();
        price("50 EUR");
        layers("J-5");
        ClassCost medium = all().firstCost().orElseThrow().classes().get(0);
        assertEquals(Optional.empty(), medium.least());
        assertEquals(Optional.empty(), medium.most());
        assertEquals(Optional.empty(), medium.marginMost());
        assertEquals("50.00 EUR", text(medium.price()));
        assertEquals(List.of("no cost of \"potted\" is listed"), medium.missing());
        assertEquals(Optional.empty(), all().firstCost().orElseThrow().most());
    }

    @Test
    void tellsNothingWhereNothingIsListed() {
        layers("");
        assertEquals(
                Optional.of("neither what raising them costs nor what they sell for is listed"), table().noCosts());
        assertEquals(Optional.empty(), all().firstCost());
        // a listing that has nothing to do with these trees changes nothing
        diary.write("2020-01-01 cost-listed; material=perlite; amount=0.40 EUR");
        assertTrue(table().noCosts().isPresent());
        assertEquals(Optional.empty(), all().firstCost());
        // nor does one that comes to hold after the day
        diary.write("2022-01-01 price-listed; size=medium; price=50 EUR");
        assertTrue(table().noCosts().isPresent());
    }

    @Test
    void saysNothingOfCostsWhereNothingIsSaleable() {
        diary.write("2020-05-01 layer-set J-1..J-4; mother=K-1");
        assertEquals(Optional.empty(), table().noCosts());
        assertEquals(Optional.empty(), all().firstCost());
    }

    @Test
    void addsNoTwoCurrencies() {
        costs();
        potting();
        price("50 GBP");
        layers("J-5");
        assertEquals(
                Optional.of("costs and prices are listed in EUR and GBP, and cannot be added; list all of them in one"
                        + " currency"),
                table().noCosts());
        assertEquals(Optional.empty(), all().firstCost());
        assertEquals(Optional.empty(), all().secondCost());
    }

    @Test
    void takesThePriceOfEachTreesCultivar() {
        costs();
        potting();
        price("50 EUR");
        layers("");
        diary.write(
                "2020-01-01 price-listed; size=medium; price=80 EUR; cultivar=Acer palmatum 'Katsura'",
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2020-05-01 layer-set J-9; mother=K-2",
                "2020-09-01 severed J-9; roots=full",
                "2021-09-01 graded J-9; size=medium");
        // (50 + 50 + 80) / 3
        assertEquals(
                "60.00 EUR",
                text(all().firstCost().orElseThrow().classes().get(0).price()));
    }

    @Test
    void looksAtTwentyTagsOfAKindHoweverManyThereAre() {
        costs();
        potting();
        diary.write(
                "2020-05-01 layer-set J-1..J-60; mother=K-1",
                "2020-09-01 severed J-1..J-60; roots=full",
                "2020-09-01 potted J-1..J-60; container=2 L",
                "2021-09-01 graded J-1..J-60; size=medium");
        Grown grown = all().firstCost().orElseThrow().classes().get(0).grown().get(0);
        assertEquals(60, grown.count());
        assertEquals(60, grown.tags());
        assertEquals(20, grown.looked());
        assertEquals("7.15 EUR", text(grown.cost()));
        assertEquals("52.1", grown.weeks().toString());
    }
}
