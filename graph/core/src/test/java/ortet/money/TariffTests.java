package ortet.money;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.book.Diary;
import ortet.book.UnitFacts.Method;
import ortet.entry.Task;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.value.Decimal;
import ortet.value.Refused;

class TariffTests {
    private final Diary diary = new Diary();

    private Tariff on(String day) {
        return diary.store().read(view -> Tariff.of(view, LocalDate.parse(day)));
    }

    private static Optional<CultivarName> name(String text) {
        return Optional.of(CultivarName.parse(text));
    }

    private static String text(Optional<?> value) {
        return value.map(Object::toString).orElse("none");
    }

    @Test
    void isEmptyWhereNothingIsListed() {
        Tariff tariff = on("2020-01-01");
        assertEquals(Optional.empty(), tariff.price("M", name("Acer palmatum")));
        assertEquals(Optional.empty(), tariff.wage(Optional.empty()));
        assertEquals(Optional.empty(), tariff.bench(Optional.of(new Place("House 1"))));
        assertEquals(Optional.empty(), tariff.material("2 L", Optional.empty()));
        assertEquals(Optional.empty(), tariff.unitsPerM2(Optional.of("2 L"), Optional.empty(), Optional.empty()));
        assertEquals(List.of(), tariff.costs());
        assertEquals(List.of(), tariff.prices());
        assertEquals(
                List.of("no cost of \"layer set\" is listed"),
                tariff.work(Task.LAYER_SET, Optional.empty(), Optional.of(1)).stream()
                        .flatMap(charge -> charge.missing().stream())
                        .toList());
    }

    @Test
    void laterListingsTakeThePlaceOfEarlierOnesFromTheirDayOn() {
        diary.write(
                "2021-01-01 price-listed; size=M; price=48.00 EUR",
                "2019 price-listed; size=M; price=40.00 EUR",
                "2020-07 price-listed; size=m; price=45.00 EUR");
        assertEquals("none", text(on("2018-12-31").price("M", Optional.empty())));
        assertEquals("40.00 EUR", text(on("2019-01-01").price("M", Optional.empty())));
        assertEquals("40.00 EUR", text(on("2020-06-30").price("M", Optional.empty())));
        assertEquals("45.00 EUR", text(on("2020-07-01").price("M", Optional.empty())));
        assertEquals("48.00 EUR", text(on("2026-06-15").price("M", Optional.empty())));
        assertEquals(1, on("2026-06-15").prices().size());
    }

    @Test
    void ofTwoOnOneDayTheOneRecordedLaterCounts() {
        diary.write(
                "2020-01-01 cost-listed; per=hour; amount=18 EUR", "2020-01-01 cost-listed; per=hour; amount=19 EUR");
        assertEquals("19.00 EUR", text(on("2020-01-01").wage(Optional.empty())));
    }

    @Test
    void aPriceOfACultivarCountsBeforeThatOfItsBotanicalNameAndThatBeforeThePriceOfAll() {
        diary.write(
                "2020 price-listed; size=M; price=40.00 EUR",
                "2020 price-listed; size=M; cultivar=Acer; price=50.00 EUR",
                "2020 price-listed; size=M; cultivar=Acer palmatum var. dissectum; price=60.00 EUR",
                "2020 price-listed; size=M; cultivar=Acer palmatum 'Deshojo'; price=70.00 EUR");
        Tariff tariff = on("2020-01-01");
        assertEquals("70.00 EUR", text(tariff.price("M", name("Acer palmatum 'Deshojo'"))));
        assertEquals("50.00 EUR", text(tariff.price("M", name("Acer palmatum 'Katsura'"))));
        assertEquals("60.00 EUR", text(tariff.price("M", name("Acer palmatum var. dissectum 'Seiryu'"))));
        assertEquals("40.00 EUR", text(tariff.price("M", name("Ulmus parvifolia"))));
        assertEquals("40.00 EUR", text(tariff.price("m", Optional.empty())));
        assertEquals("none", text(tariff.price("L", name("Acer palmatum 'Deshojo'"))));
    }

    @Test
    void whatIsListedForAContainerOrAPlaceCountsThereAndWithin() {
        diary.write(
                "2019 place-listed; place=House 1",
                "2019 place-listed; place=Bench 2; within=House 1",
                "2019 place-listed; place=Mist; within=Bench 2",
                "2020 cost-listed; per=m2-year; amount=30 EUR",
                "2020 cost-listed; per=m2-year; amount=50 EUR; place=House 1",
                "2020 cost-listed; per=m2-year; amount=90 EUR; place=Mist",
                "2020 cost-listed; per=hour; amount=18 EUR",
                "2020 cost-listed; per=hour; amount=24 EUR; task=graft-worked",
                "2020 cost-listed; material=bark; amount=0.2 EUR",
                "2020 cost-listed; material=bark; container=15 L; amount=1.4 EUR",
                "2020 cost-listed; units_per_m2=100; place=House 1",
                "2020 cost-listed; units_per_m2=25; container=2 L",
                "2020 cost-listed; units_per_m2=16; container=2 L; size=M");
        Tariff tariff = on("2020-01-01");
        assertEquals("30.00 EUR", text(tariff.bench(Optional.empty())));
        assertEquals("30.00 EUR", text(tariff.bench(Optional.of(new Place("Yard")))));
        assertEquals("50.00 EUR", text(tariff.bench(Optional.of(new Place("Bench 2")))));
        assertEquals("90.00 EUR", text(tariff.bench(Optional.of(new Place("Mist")))));
        assertEquals("24.00 EUR", text(tariff.wage(Optional.of(Task.GRAFT_WORKED))));
        assertEquals("18.00 EUR", text(tariff.wage(Optional.of(Task.POTTED))));
        assertEquals("1.40 EUR", text(tariff.material("Bark", Optional.of("15L"))));
        assertEquals("0.20 EUR", text(tariff.material("bark", Optional.of("2 L"))));
        Optional<Place> mist = Optional.of(new Place("Mist"));
        assertEquals("100", text(tariff.unitsPerM2(Optional.of("9 cm"), Optional.empty(), mist)));
        assertEquals("25", text(tariff.unitsPerM2(Optional.of("2 l"), Optional.of("L"), mist)));
        assertEquals("16", text(tariff.unitsPerM2(Optional.of("2 L"), Optional.of("M"), Optional.empty())));
        assertEquals("none", text(tariff.unitsPerM2(Optional.empty(), Optional.empty(), Optional.empty())));
    }

    private void raising() {
        diary.write(
                "2020 cost-listed; per=hour; amount=20 EUR",
                "2020 cost-listed; task=layer-set; hours=0.25; amount=0.60 EUR",
                "2020 cost-listed; task=severed; hours=0.1",
                "2020 cost-listed; task=potted; hours=0.05",
                "2020 cost-listed; material=2 L; amount=0.40 EUR",
                "2020 cost-listed; per=m2-year; amount=36.50 EUR",
                "2020 cost-listed; units_per_m2=10; size=M",
                "2020 cost-listed; task=cuttings-struck; hours=0.01",
                "2020 cost-listed; task=cuttings-struck; amount=1 EUR; per=tag");
    }

    /** 0.25 h + 0.1 h + 0.05 h at 20, 0.60 and 0.40 are 9.00; ten weeks are 70 days / 365 / 10 × 36.50 = 0.70. */
    @Test
    void addsUpWhatRaisingALayerTakes() {
        raising();
        Raising layer =
                on("2020-01-01").raising(Method.LAYER, "M", Optional.of("2 L"), Optional.empty(), Decimal.parse("10"));
        assertEquals(List.of(), layer.missing());
        assertEquals("9.70 EUR", text(layer.cost()));
        assertEquals(
                Fractions.of(new BigDecimal("9.70")), layer.cost().orElseThrow().value());
        assertEquals(Fractions.of(new BigDecimal("0.4")), layer.total().hours());
        assertEquals(BigFraction.of(70, 3650), layer.total().m2Years());
    }

    @Test
    void saysWhatRaisingLacksAndThenHasNoCost() {
        raising();
        Raising cutting =
                on("2020-01-01").raising(Method.CUTTING, "XL", Optional.empty(), Optional.empty(), Decimal.parse("52"));
        assertEquals(Optional.empty(), cutting.cost());
        assertEquals(
                List.of(
                        "it is listed for a tag, and how many units that will have is not known",
                        "no cost of \"drawn\" is listed",
                        "nothing lists how many stand on a square metre"),
                cutting.missing());
        assertEquals("1.20 EUR", text(cutting.total().cost()));
        assertEquals(3, cutting.total().notPriced());
    }

    @ParameterizedTest
    @CsvSource({
        "'task=layer-set', 'amount: expected an amount, hours or both'",
        "'amount=3 EUR', 'task: expected what it is that costs: a task, a material, per hour, per m2-year, or units_per_m2'",
        "'material=bark', 'amount: expected what the material costs'",
        "'material=bark; amount=1 EUR; per=hour', 'per: expected unit or tag for a material'",
        "'per=hour; amount=3 EUR; place=Yard', 'place: expected nothing here: the cost of an hour has none'",
        "'per=m2-year; amount=3 EUR; container=2 L', 'container: expected nothing here: the cost of a bench has none'",
        "'units_per_m2=3', 'units_per_m2: expected a container, a size or a place that it is true of'",
        "'units_per_m2=0; size=M', 'units_per_m2: expected above 0, found 0'",
        "'task=potted; hours=0', 'hours: expected above 0, found 0'",
        "'task=potted; amount=3 EYR', 'amount: no currency EYR; expected a code of ISO 4217 such as EUR'",
        "'task=potted; amount=3', 'amount: expected an amount such as 0.35 EUR, found \"3\"'",
    })
    void refusesListingsWithoutAMeaning(String fields, String text) {
        Refused refused = assertThrows(Refused.class, () -> diary.write("2020-01-01 cost-listed; " + fields));
        assertEquals(List.of(text), refused.lines());
    }

    @Test
    void remarksOnPlacesAndCultivarsThatAreNotListed() {
        diary.write("2019 place-listed; place=House 1", "2019 cultivar-listed; cultivar=Acer palmatum 'Deshojo'");
        assertEquals(
                List.of("place-unlisted: Hause 1 is not listed; nearest: House 1"),
                diary.remarks("2020 cost-listed; per=m2-year; amount=3 EUR; place=Hause 1"));
        assertEquals(
                List.of("cultivar-unlisted: Acer palmatum 'Deshoju' is not listed; nearest: Acer palmatum 'Deshojo'"),
                diary.remarks("2020 price-listed; size=M; price=3 EUR; cultivar=Acer palmatum 'Deshoju'"));
        assertTrue(diary.remarks("2020 price-listed; size=M; price=3 EUR; cultivar=Acer palmatum")
                .isEmpty());
    }
}
