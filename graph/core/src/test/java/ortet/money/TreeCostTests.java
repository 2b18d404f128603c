package ortet.money;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.plant.Tag;
import ortet.value.Refused;

/** Costs of small nurseries, each worked out by hand beside the check. */
class TreeCostTests {
    private final Diary diary = new Diary();

    private static BigFraction fraction(String text) {
        return Fractions.of(new BigDecimal(text));
    }

    private TreeCost cost(String tag, String asOf) {
        return diary.store().read(view -> TreeCost.of(view, new Tag(tag), LocalDate.parse(asOf), Optional.empty()));
    }

    private static BigFraction value(Total total) {
        return total.cost().orElseThrow().value();
    }

    private void layersTariff() {
        diary.write(
                "2015 acquired K-1",
                "2020-01-01 cost-listed; per=hour; amount=20 EUR",
                "2020-01-01 cost-listed; task=layer-set; hours=0.25; amount=0.60 EUR",
                "2020-01-01 cost-listed; task=severed; hours=0.1",
                "2020-01-01 cost-listed; material=sphagnum; amount=0.30 EUR",
                "2020-01-01 cost-listed; material=2 L; amount=0.40 EUR",
                "2020-01-01 cost-listed; per=m2-year; amount=36.50 EUR",
                "2020-01-01 cost-listed; units_per_m2=10; container=2 L");
    }

    private void layers() {
        diary.write(
                "2020-05-01 layer-set J-1..J-4; mother=K-1; medium=sphagnum",
                "2020-08-01 failed J-4",
                "2020-09-01 severed J-1..J-3; place=House 1; container=2 L");
    }

    /**
     * Set: 0.25 h × 20 + 0.60 + 0.30 of sphagnum = 5.90. Severed: 0.1 h × 20 + 0.40 for the pot = 2.40. Ten days on the
     * bench, ten to the square metre: 10 / 365 / 10 × 36.50 = 0.10. Together 8.40. J-4 cost 5.90, of which each of three
     * carries a third.
     */
    @Test
    void addsUpALayerWithItsShareOfTheOneThatFailed() {
        layersTariff();
        layers();
        TreeCost cost = cost("J-1", "2020-09-11");
        assertEquals(fraction("8.40"), value(cost.own().orElseThrow()));
        assertEquals(fraction("8.40"), value(cost.spent()));
        assertEquals(fraction("5.90").divide(3), value(cost.failures()));
        assertEquals(
                fraction("8.40").add(fraction("5.90").divide(3)),
                value(cost.whole().orElseThrow()));
        assertEquals(
                "10.37 EUR", cost.whole().orElseThrow().cost().orElseThrow().toString());
        assertEquals(fraction("0.35"), cost.spent().hours());
        assertEquals(BigFraction.of(1, 365), cost.spent().m2Years());
        assertEquals(0, cost.spent().notPriced());
        assertEquals(
                List.of(9L, 9L, 9L, 11L, 11L, 11L),
                cost.parts().stream().map(part -> part.line().entry()).toList());
        assertEquals(
                List.of(
                        "0.25 h × 20.00 EUR",
                        "0.60 EUR",
                        "0.30 EUR",
                        "0.1 h × 20.00 EUR",
                        "0.40 EUR",
                        "1 × 10 days / 365 / 10 on a m² × 36.50 EUR"),
                cost.parts().stream().map(part -> part.line().charge().how()).toList());
    }

    @Test
    void countsNoBenchWhileALayerIsOnItsMother() {
        layersTariff();
        layers();
        TreeCost cost = cost("J-1", "2020-08-31");
        assertEquals(fraction("5.90"), value(cost.spent()));
        assertEquals(BigFraction.ZERO, cost.spent().m2Years());
        assertTrue(cost.parts().stream().noneMatch(part -> part.line().charge().sort() == Charge.Sort.BENCH));
    }

    @Test
    void givesALayerThatFailedNoCostOfOneThatDidNot() {
        layersTariff();
        layers();
        TreeCost cost = cost("J-4", "2020-09-11");
        assertEquals(fraction("5.90"), value(cost.spent()));
        assertEquals(Optional.empty(), cost.own());
        assertFalse(cost.survives());
        assertEquals(1, cost.failed());
    }

    private void tray() {
        diary.write(
                "2015 acquired K-1",
                "2021-01-01 cost-listed; per=hour; amount=20 EUR",
                "2021-01-01 cost-listed; task=cuttings-struck; hours=0.01",
                "2021-01-01 cost-listed; task=cuttings-struck; per=tag; amount=1.50 EUR",
                "2021-01-01 cost-listed; material=tray; per=tag; amount=0.50 EUR",
                "2021-01-01 cost-listed; task=drawn; hours=0.02",
                "2021-01-01 cost-listed; material=9 cm; amount=0.12 EUR",
                "2021-01-01 cost-listed; per=m2-year; amount=36.50 EUR",
                "2021-01-01 cost-listed; per=m2-year; amount=73 EUR; place=Mist",
                "2021-01-01 cost-listed; units_per_m2=600; container=tray",
                "2021-06-01 cuttings-struck T-1; mothers=K-1; count=60; place=Mist; container=tray",
                "2021-09-09 drawn C-1..C-48; source=T-1; container=9 cm",
                "2021-09-09 failed T-1; cause=no-roots");
    }

    /**
     * Struck: 60 × 0.01 h × 20 + 1.50 + 0.50 for the tray = 14.00; a hundred days under mist: 60 × 100 / 365 / 600 × 73 =
     * 2.00. So each of sixty carries 16 / 60. Drawn: 0.02 h × 20 + 0.12 = 0.52. The twelve that failed took 12 × 16 / 60 =
     * 3.20 with them, of which each of forty-eight carries a part.
     */
    @Test
    void addsUpACuttingWithItsShareOfTheTray() {
        tray();
        TreeCost cost = cost("C-1", "2021-09-09");
        assertEquals(
                BigFraction.of(16, 60).add(fraction("0.52")), value(cost.own().orElseThrow()));
        assertEquals(fraction("3.20").divide(48), value(cost.failures()));
        assertEquals(
                fraction("16").divide(48).add(fraction("0.52")),
                value(cost.whole().orElseThrow()));
        assertEquals(BigFraction.of(1, 60), cost.parts().get(0).share());
        assertEquals(new Tag("T-1"), cost.parts().get(0).line().tag());
    }

    @Test
    void addsUpATray() {
        tray();
        TreeCost cost = cost("T-1", "2022-01-01");
        assertEquals(fraction("16"), value(cost.spent()));
        assertEquals(fraction("3.20"), value(cost.lost()));
        assertEquals(Optional.of(60), cost.ever());
        assertEquals(12, cost.failed());
        assertEquals(Optional.of(0), cost.here());
        assertEquals(BigFraction.of(16, 60), value(cost.own().orElseThrow()));
        assertEquals(BigFraction.of(16, 48), value(cost.whole().orElseThrow()));
        assertEquals(BigFraction.of(60 * 100, 365 * 600), cost.spent().m2Years());
    }

    /** The rootstock cost 1.20 and came back from the graft that failed: that one cost its work alone, 0.1 h × 20. */
    @Test
    void givesAGraftItsRootstockAndTakesNoneFromOneThatFailed() {
        diary.write(
                "2020-01-01 cost-listed; per=hour; amount=20 EUR",
                "2020-01-01 cost-listed; task=acquired; amount=1.20 EUR",
                "2020-01-01 cost-listed; task=graft-worked; hours=0.1",
                "2020-01-01 cost-listed; per=m2-year; amount=0 EUR",
                "2020-01-01 cost-listed; units_per_m2=20; place=Yard",
                "2020-01-01 acquired K-1",
                "2020-02-01 acquired R-1; count=10; place=Yard",
                "2021-02-01 graft-worked G-1 G-2; scion=K-1; stock=R-1; place=Yard",
                "2021-05-01 failed G-2; cause=union-failed");
        TreeCost graft = cost("G-1", "2021-06-01");
        assertEquals(fraction("3.20"), value(graft.own().orElseThrow()));
        assertEquals(fraction("2.00"), value(graft.failures()));
        assertEquals(0, graft.spent().notPriced());
        TreeCost failed = cost("G-2", "2021-06-01");
        assertEquals(fraction("2.00"), value(failed.spent()));
        TreeCost stocks = cost("R-1", "2021-06-01");
        assertEquals(fraction("12.00"), value(stocks.spent()));
        assertEquals(Optional.of(9), stocks.here());
        assertEquals(Optional.of(10), stocks.ever());
    }

    @Test
    void pricesEachActByTheTariffOfItsDayUnlessAskedOtherwise() {
        layersTariff();
        diary.write(
                "2020-09-06 cost-listed; per=m2-year; amount=73 EUR",
                "2020-09-06 cost-listed; task=layer-set; amount=7 EUR");
        layers();
        TreeCost cost = cost("J-1", "2020-09-11");
        // 5.90 + 2.40, five days at 36.50 and five at 73
        assertEquals(fraction("8.30").add(fraction("0.05")).add(fraction("0.10")), value(cost.spent()));
        TreeCost then = diary.store()
                .read(view -> TreeCost.of(
                        view,
                        new Tag("J-1"),
                        LocalDate.parse("2020-09-11"),
                        Optional.of(LocalDate.parse("2020-09-10"))));
        // 7.00 + 0.30, 2.40, ten days at 73
        assertEquals(fraction("9.70").add(fraction("0.20")), value(then.spent()));
    }

    @Test
    void listsWhatHasNoPriceAndNeverTakesItForZero() {
        diary.write(
                "2015 acquired K-1",
                "2020-01-01 cost-listed; task=layer-set; hours=0.25; amount=0.60 EUR",
                "2020-01-01 cost-listed; per=m2-year; amount=36.50 EUR",
                "2020-05-01 layer-set J-1; mother=K-1; medium=sphagnum",
                "2020-09-01 severed J-1; place=House 1; container=2 L");
        TreeCost cost = cost("J-1", "2020-09-11");
        assertEquals(fraction("0.60"), value(cost.spent()));
        assertEquals(fraction("0.25"), cost.spent().hours());
        assertEquals(
                List.of(
                        "no cost of an hour is listed",
                        "no cost of \"sphagnum\" is listed",
                        "no cost of \"severed\" is listed",
                        "no cost of \"2 L\" is listed",
                        "nothing lists how many stand on a square metre in 2 L"),
                cost.parts().stream()
                        .flatMap(part -> part.line().charge().missing().stream())
                        .toList());
        assertEquals(5, cost.spent().notPriced());
    }

    @Test
    void hasNoCostWhereNothingIsPriced() {
        diary.write("2015 acquired K-1", "2020-05-01 layer-set J-1; mother=K-1");
        TreeCost cost = cost("J-1", "2020-09-11");
        assertEquals(Optional.empty(), cost.spent().cost());
        assertEquals(1, cost.spent().notPriced());
    }

    @Test
    void countsALineWithoutAPriceOnceInEverySum() {
        diary.write(
                "2015 acquired K-1",
                "2020-01-01 cost-listed; per=m2-year; amount=0 EUR",
                "2020-01-01 cost-listed; units_per_m2=100; place=Mist",
                "2020-05-01 cuttings-struck T-1; mothers=K-1; count=6; place=Mist",
                "2020-05-03 failed T-1; count=2");
        TreeCost cost = cost("T-1", "2020-05-04");
        assertEquals(1, cost.spent().notPriced());
        assertEquals(1, cost.lost().notPriced());
        assertEquals(1, cost.own().orElseThrow().notPriced());
        assertEquals(1, cost.failures().notPriced());
        assertEquals(1, cost.whole().orElseThrow().notPriced());
    }

    @Test
    void refusesToAddCurrencies() {
        layersTariff();
        diary.write("2020-08-15 cost-listed; material=2 L; amount=0.35 GBP");
        layers();
        Refused refused = assertThrows(Refused.class, () -> cost("J-1", "2020-09-11"));
        assertEquals(
                List.of(
                        "what J-1 cost is in EUR (listed in #2) and GBP (listed in #9) and cannot be added; list all of it"
                                + " in one currency"),
                refused.lines());
        assertEquals(fraction("5.90"), value(cost("J-1", "2020-08-31").spent()));
    }

    @Test
    void givesNoShareOfSeedThatNobodyCounted() {
        diary.write(
                "2020-01-01 cost-listed; task=seed-sown; per=tag; amount=4 EUR",
                "2020-03-01 seed-sown S-1; grams=20",
                "2020-08-01 drawn P-1; source=S-1");
        TreeCost cost = cost("P-1", "2020-08-01");
        assertEquals(
                List.of("nobody had counted the units of S-1", "no cost of \"drawn\" is listed"),
                cost.parts().stream()
                        .flatMap(part -> part.line().charge().missing().stream())
                        .toList());
        assertEquals(fraction("4"), value(cost("S-1", "2020-08-01").spent()));
        assertEquals(Optional.empty(), cost("S-1", "2020-08-01").own());
    }

    @Test
    void refusesAPlantThatDoesNotExistOrNotYet() {
        layersTariff();
        layers();
        assertEquals(
                List.of("J-1 began on 2020-05-01, after 2020-04-30"),
                assertThrows(Refused.class, () -> cost("J-1", "2020-04-30")).lines());
        assertTrue(assertThrows(Refused.class, () -> cost("J-9", "2020-06-01"))
                .lines()
                .get(0)
                .startsWith("no plant or batch J-9"));
    }

    @Test
    void readsListingsAsTheyWereCorrectedAndLeavesOutThoseCrossedOut() {
        diary.write(
                "2015 acquired K-1",
                "wrong: 2020-01-01 cost-listed; task=layer-set; amount=6 EUR",
                "oops: 2020-02-01 cost-listed; task=layer-set; amount=9 EUR",
                "2020-05-01 layer-set J-1; mother=K-1");
        assertEquals(fraction("9"), value(cost("J-1", "2020-05-01").spent()));
        diary.write(
                "2020-06-01 crossed-out; target=oops; reason=another nursery's",
                "2020-06-01 corrected; target=wrong; field=amount; value=6.50 EUR");
        assertEquals(fraction("6.50"), value(cost("J-1", "2020-05-01").spent()));
    }

    /**
     * Two trays, 4 × 0.30 and 6 × 0.10, are put together as ten that carry 1.80, the putting together costs 1.00: each
     * carries 0.28. Three are sold, packed for 0.50 each, and one of them comes back: 5 there that carry what ten, less two
     * sold, less three drawn, carried.
     */
    @Test
    void carriesCostsThroughMergingSellingAndComingBack() {
        diary.write(
                "2020-01-01 cost-listed; per=hour; amount=10 EUR",
                "2020-01-01 cost-listed; task=acquired; container=9 cm; amount=0.30 EUR",
                "2020-01-01 cost-listed; task=acquired; amount=0.10 EUR",
                "2020-01-01 cost-listed; task=merged; per=tag; hours=0.1",
                "2020-01-01 cost-listed; task=sold; amount=0.50 EUR",
                "2020-01-01 cost-listed; task=drawn; amount=0 EUR",
                "2020-01-01 cost-listed; per=m2-year; amount=0 EUR",
                "2020-01-01 cost-listed; units_per_m2=100; place=Yard",
                "2020-02-01 acquired A-1; count=4; container=9 cm; place=Yard",
                "2020-02-01 acquired B-1; count=6; place=Yard",
                "2020-03-01 merged M-1; sources=A-1 B-1; place=Yard",
                "2020-04-01 sold M-1; count=3",
                "2020-05-01 returned M-1; count=1",
                "2020-06-01 drawn C-1..C-3; source=M-1; place=Yard");
        TreeCost batch = cost("M-1", "2020-06-01");
        assertEquals(fraction("1.80").add(fraction("1.00")).add(fraction("1.50")), value(batch.spent()));
        assertEquals(Optional.of(10), batch.ever());
        assertEquals(Optional.of(5), batch.here());
        assertEquals(0, batch.spent().notPriced());
        // seven kept 0.28 each, and one brought back 0.28 and its packing, 0.50: each of eight carries 2.74 / 8
        assertEquals(
                fraction("2.74").divide(8),
                value(cost("C-1", "2020-06-01").own().orElseThrow()));
        assertEquals(Total.NOTHING, cost("C-1", "2020-06-01").failures());
    }

    /** A mother of 3.00 is divided in two and used up: each part carries 1.50. One that is kept gives her parts nothing. */
    @Test
    void dividesTheCostOfAMotherThatIsUsedUpAlone() {
        diary.write(
                "2020-01-01 cost-listed; task=acquired; amount=3 EUR",
                "2020-01-01 cost-listed; task=divided; amount=0.20 EUR",
                "2020-02-01 acquired K-1 K-2",
                "2020-02-01 divided D-1 D-2; mother=K-1; remainder=used-up",
                "2020-02-01 divided D-3; mother=K-2; remainder=kept");
        assertEquals(fraction("1.70"), value(cost("D-1", "2020-02-01").spent()));
        assertEquals(fraction("0.20"), value(cost("D-3", "2020-02-01").spent()));
        assertEquals(fraction("3.00"), value(cost("K-2", "2020-02-01").spent()));
    }

    /** What every cutting of a tray carries adds up to what was spent on the tray, and on the tray split off it. */
    @Property(tries = 60)
    void whatIsDrawnCarriesAllThatWasSpentOnTheTray(
            @ForAll @IntRange(min = 3, max = 40) int struck,
            @ForAll @IntRange(min = 1, max = 39) int splitOff,
            @ForAll @IntRange(min = 0, max = 39) int failed,
            @ForAll @IntRange(min = 1, max = 39) int drawnEarly,
            @ForAll @IntRange(min = 1, max = 39) int failedOfSplit) {
        int split = Math.min(splitOff, struck - 2);
        int left = struck - split;
        int early = Math.min(drawnEarly, left - 1);
        int fails = Math.min(failed, left - early - 1);
        int late = left - early - fails;
        int splitFails = Math.min(failedOfSplit, split) - 1;
        int splitDrawn = split - splitFails;
        Diary book = new Diary();
        book.write(
                "2015 acquired K-1",
                "2020-01-01 cost-listed; per=hour; amount=19.35 EUR",
                "2020-01-01 cost-listed; task=cuttings-struck; hours=0.013; amount=0.007 EUR",
                "2020-01-01 cost-listed; task=cuttings-struck; per=tag; amount=1.31 EUR",
                "2020-01-01 cost-listed; task=checked; per=tag; hours=0.03",
                "2020-01-01 cost-listed; task=split; amount=0.011 EUR",
                "2020-01-01 cost-listed; task=drawn; amount=0 EUR",
                "2020-01-01 cost-listed; per=m2-year; amount=41.17 EUR",
                "2020-06-20 cost-listed; per=m2-year; amount=43.70 EUR",
                "2020-01-01 cost-listed; units_per_m2=617; place=Mist",
                "2020-01-01 cost-listed; units_per_m2=83; place=Frame",
                "2020-06-01 cuttings-struck T-1; mothers=K-1; place=Mist; count=" + struck,
                "2020-06-15 checked T-1; findings=callus",
                "2020-07-01 split T-2; source=T-1; place=Frame; count=" + split,
                "2020-07-11 drawn A-1..A-" + early + "; source=T-1",
                "2020-08-01 checked T-1 T-2; findings=callus");
        if (fails > 0) {
            book.write("2020-08-03 failed T-1; count=" + fails);
        }
        if (splitFails > 0) {
            book.write("2020-08-09 failed T-2; count=" + splitFails);
        }
        book.write(
                "2020-09-01 drawn B-1..B-" + late + "; source=T-1",
                "2020-09-02 drawn C-1..C-" + splitDrawn + "; source=T-2");
        LocalDate asOf = LocalDate.parse("2020-09-02");
        Set<CostLine> lines = new LinkedHashSet<>();
        BigFraction ofAll = BigFraction.ZERO;
        BigFraction own = BigFraction.ZERO;
        for (String group : List.of("A-" + early, "B-" + late, "C-" + splitDrawn)) {
            int count = Integer.parseInt(group.substring(2));
            TreeCost one = book.store()
                    .read(view -> TreeCost.of(view, new Tag(group.charAt(0) + "-1"), asOf, Optional.empty()));
            TreeCost last = book.store().read(view -> TreeCost.of(view, new Tag(group), asOf, Optional.empty()));
            for (CostPart part : one.parts()) {
                if (part.line().tag().text().startsWith("T-")) {
                    own = own.add(part.cost().orElseThrow().value().multiply(count));
                }
            }
            assertEquals(value(one.spent()), value(last.spent()), "of one draw all carry alike");
            ofAll = ofAll.add(one.failures()
                    .cost()
                    .map(Cost::value)
                    .orElse(BigFraction.ZERO)
                    .multiply(count));
        }
        TreeCost first = book.store().read(view -> TreeCost.of(view, new Tag("T-1"), asOf, Optional.empty()));
        TreeCost second = book.store().read(view -> TreeCost.of(view, new Tag("T-2"), asOf, Optional.empty()));
        first.parts().forEach(part -> lines.add(part.line()));
        second.parts().forEach(part -> lines.add(part.line()));
        BigFraction spent = lines.stream()
                .map(line -> line.charge().cost().orElseThrow().value())
                .reduce(BigFraction.ZERO, BigFraction::add);
        BigFraction lost = second.lost()
                .cost()
                .map(Cost::value)
                .orElse(BigFraction.ZERO)
                .add(first.lost().cost().map(Cost::value).orElse(BigFraction.ZERO));
        assertEquals(spent, own.add(lost), "what is drawn and what failed is all that was spent");
        assertEquals(spent, own.add(ofAll), "and with its share of what failed, what is drawn carries all of it");
    }
}
