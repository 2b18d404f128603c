package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Lists: each row tells one thing that was done or seen. */
class ListRowsTests {
    private static Sheets with(Sheets sheets) {
        sheets.diary().write("2010 acquired K-1", "2010 acquired S-1", "2012 layer-set L-1..L-3; mother=K-1");
        return sheets;
    }

    private static List<String> after(Sheets sheets, String... lines) {
        int before = sheets.entries().size();
        Imported imported = sheets.write(lines);
        assertEquals(List.of(), Sheets.lines(imported));
        return sheets.entries().subList(before, sheets.entries().size());
    }

    @Test
    void readsPottingsSalesAndLosses() {
        assertEquals(
                List.of("2013 potted tags=K-1 container=5 L medium=akadama"),
                after(
                        with(Sheets.of("potted", "tag,day,container,medium")),
                        "tag,day,container,medium",
                        "K-1,2013,5 L,akadama"));
        assertEquals(
                List.of("2014-03-01 sold tags=S-1 customer=Anna Quill price=60.00 EUR"),
                after(
                        with(Sheets.of("sold", "tag,day,customer,price in EUR")),
                        "tag,day,customer,price in EUR",
                        "S-1,2014-03-01,Anna Quill,60"));
        assertEquals(
                List.of("2013 lost tags=S-1 cause=frost"),
                after(with(Sheets.of("lost", "tag,day,cause")), "tag,day,cause", "S-1,2013,Frost"));
    }

    @Test
    void settlesAnOutcomeByWhatTheUnitIs() {
        assertEquals(
                List.of("2013 severed tags=L-1", "2013 failed tags=L-2", "2014 lost tags=L-1"),
                after(
                        with(Sheets.of("outcome", "tag,day,outcome")),
                        "tag,day,outcome",
                        "L-1,2014,dead",
                        "L-1,2013,taken",
                        "L-2,2013,dead"));
    }

    @Test
    void takesARowThatStandsTwiceOnceAndTwoThatDifferTwice() {
        Sheets sheets = with(Sheets.of("moved", "tag,day,place,note"));
        Imported imported = sheets.write(
                "tag,day,place,note", "K-1,2013-05-01,House 1,", "K-1,2013-05-01,House 1,", "K-1,2013-05-01,House 2,");
        assertEquals(List.of(), Sheets.lines(imported));
        assertEquals(1, imported.files().get(0).repeated());
        assertEquals(5, sheets.entries().size());
    }

    @Test
    void countsRowsAlikeEachWhereTheMappingSaysSo() {
        Sheets sheets = Sheets.of("lost", "tag,day,count", "repeated rows = each");
        sheets.diary().write("2010 acquired K-1; count=60");
        sheets.write("tag,day,count", "K-1,2013-05-01,5", "K-1,2013-05-01,5");
        assertEquals("50", sheets.diary().standing("K-1").substring(2));
    }

    @Test
    void refusesAPlantThatNobodyKnowsUnlessTheMappingAcquiresIt() {
        assertEquals(
                List.of("a.csv:2:tag: no plant or batch K-2 in the rows or in the book; nearest: K-1, L-2, L-1"),
                with(Sheets.of("moved", "tag,day,place")).faults("tag,day,place", "K-2,2013-05-01,House 1"));
        assertEquals(
                List.of(
                        "2013 acquired tags=K-2 note=earliest known, origin unknown: had no row of its own",
                        "2013-05-01 moved tags=K-2 place=House 1"),
                after(
                        with(Sheets.of("moved", "tag,day,place", "plants without a row = acquire")),
                        "tag,day,place",
                        "K-2,2013-05-01,House 1"));
    }

    @Test
    void readsADiaryWhoseColumnsMeanWhatWasDone() {
        Sheets sheets = with(new Sheets(
                "sheet diary",
                "files = a.csv",
                "row = entry",
                "column Day = day",
                "column Tags = tags",
                "column What = kind",
                "  word shifted = moved",
                "column More = note",
                "  for moved = place",
                "  for potted, severed = container"));
        assertEquals(
                List.of(
                        "2013 severed tags=L-1 L-2 container=1 L",
                        "2014 moved tags=L-1 L-2 place=House 2",
                        "2015 noted tags=K-1 note=broad"),
                after(
                        sheets,
                        "Day,Tags,What,More",
                        "2013,L-1 to L-2,severed,1 L",
                        "2014,\"L-1, L-2\",Shifted,House 2",
                        "2015,K-1,noted,broad"));
    }

    @Test
    void listsPlacesInTheYearOfTheFirstRowOfAll() {
        Sheets sheets = with(new Sheets(
                "sheet places", "files = a.csv", "row = place listed", "column Name = place", "column In = within"));
        Imported alone = sheets.write("Name,In", "Bench 1,House 1");
        assertEquals(List.of("a.csv:2: must not be empty: nothing says when it was place listed"), Sheets.lines(alone));
        Sheets beside = with(new Sheets(
                "sheet places",
                "files = a.csv",
                "row = place listed",
                "column Name = place",
                "column In = within",
                "sheet moves",
                "files = b.csv",
                "row = moved",
                "column T = tag",
                "column D = day",
                "column P = place"));
        beside.write(List.of(
                Sheets.file("a.csv", "Name,In", "Bench 1,House 1"),
                Sheets.file("b.csv", "T,D,P", "K-1,2013-05-01,Bench 1")));
        assertEquals(
                "2013 place-listed place=Bench 1 within=House 1",
                beside.entries().get(3));
    }

    @Test
    void listsCostsAndPrices() {
        Sheets costs = with(new Sheets(
                "sheet pots",
                "files = a.csv",
                "row = cost listed",
                "column From = day",
                "column Pot = material",
                "column Each = amount in EUR"));
        assertEquals(
                List.of(
                        "2020-01-02 cost-listed material=2 L amount=0.38 EUR",
                        "2021-01-02 cost-listed material=9 cm amount=0.004 EUR",
                        "2021-01-02 cost-listed material=7 cm amount=12.00 GBP"),
                after(costs, "From,Pot,Each", "2020-01-02,2 L,0.38", "2021-01-02,9 cm,0.0040", "2021-01-02,7 cm,£12"));
        Sheets prices = with(new Sheets(
                "sheet prices",
                "files = a.csv",
                "row = price listed",
                "column From = day",
                "column Size = size",
                "column Price = price in EUR"));
        assertEquals(
                List.of("2020-01-02 price-listed size=M price=38.00 EUR"),
                after(prices, "From,Size,Price", "2020-01-02,M,38"));
    }

    @Test
    void followsANewTagWhateverTheOrderOfTheRows() {
        Sheets sheets = with(new Sheets(
                "sheet labels",
                "files = labels.csv",
                "row = retagged",
                "column Day = day",
                "column Old = tag",
                "column New = new tag",
                "sheet moves",
                "files = a.csv",
                "row = moved",
                "column Day = day",
                "column Tag = tag",
                "column To = place"));
        Imported imported = sheets.write(List.of(
                Sheets.file("a.csv", "Day,Tag,To", "2016,K-30,House 3"),
                Sheets.file("labels.csv", "Day,Old,New", "2015,K-20,K-30", "2014,K-1,K-20")));
        assertEquals(List.of(), Sheets.lines(imported));
        assertEquals(
                List.of(
                        "2014 retagged tags=K-1 new_tag=K-20",
                        "2015 retagged tags=K-20 new_tag=K-30",
                        "2016 moved tags=K-30 place=House 3"),
                sheets.entries().subList(3, 6));
    }

    @Test
    void givesEachPersonOneNumberWhateverTheCase() {
        Sheets sheets = with(Sheets.of("moved", "tag,day,place,by"));
        Imported imported = sheets.write(
                "tag,day,place,by", "K-1,2013-05-01,House 1,Una Thornfield", "K-1,2013-05-02,House 2,UNA THORNFIELD");
        assertEquals(1, imported.loaded().orElseThrow().persons());
        assertEquals(
                "2013-05-02 moved tags=K-1 place=House 2 by=Una Thornfield",
                sheets.entries().get(4));
    }
}
