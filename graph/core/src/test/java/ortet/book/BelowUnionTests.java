package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Wood from below a graft union: whose clone it follows, and when there is none. */
class BelowUnionTests {
    private final Diary diary = new Diary();

    private void graft() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2010-03-01 acquired R-1; count=9; cultivar=Acer palmatum",
                "2012-03-01 graft-worked G-1; scion=K-1; stock=R-1",
                "2012-06-01 taken G-1");
    }

    @Test
    void woodBelowAUnionFollowsTheStock() {
        graft();
        diary.write(
                "2014-05-01 layer-set J-1; mother=G-1",
                "2014-05-01 layer-set J-2; mother=G-1; below_union=yes",
                "2014-06-01 cuttings-struck T-1; mothers=G-1:4; count=4; below_union=yes");
        assertEquals(List.of(Act.LAYERED_FROM), acts("J-1"));
        assertEquals(List.of(Act.LAYERED_BELOW, Act.STOCK_WOOD_OF), acts("J-2"));
        assertEquals(List.of(Act.STRUCK_BELOW, Act.STOCK_WOOD_OF), acts("T-1"));
        assertEquals(diary.unit("G-1"), diary.facts("J-2").links().get(0).mother());
        assertEquals(diary.unit("R-1"), diary.facts("J-2").links().get(1).mother());
    }

    private List<Act> acts(String tag) {
        return diary.facts(tag).links().stream().map(Link::act).toList();
    }

    @Test
    void refusesWoodBelowAUnionOfWhatIsNoGraft() {
        graft();
        diary.write(
                "2013-05-01 layer-set J-1; mother=G-1",
                "2013-09-01 severed J-1",
                "2013-01-01 acquired P-1; raised=seed");
        assertEquals(
                List.of("no-graft: J-1 is no graft, so no wood of it is from below a union"),
                diary.refusal("2014-05-01 layer-set J-2; mother=J-1; below_union=yes"));
        assertEquals(
                List.of("no-graft: P-1 is no graft, so no wood of it is from below a union"),
                diary.refusal("2014-05-01 cuttings-struck T-2; count=3; mothers=P-1; below_union=yes"));
    }

    @Test
    void knowsTheStockOfWhatWasDrawnFromABatchOfGrafts() {
        graft();
        diary.write(
                "2013-03-01 graft-worked GB-1; count=4; scion=K-1; stock=R-1",
                "2013-06-01 taken GB-1",
                "2013-07-01 split GB-2; source=GB-1; count=2",
                "2014-03-01 drawn C-1; source=GB-2",
                "2015-05-01 layer-set J-1; mother=C-1; below_union=yes");
        assertEquals(List.of(Act.LAYERED_BELOW, Act.STOCK_WOOD_OF), acts("J-1"));
        assertEquals(diary.unit("R-1"), diary.facts("J-1").links().get(1).mother());
    }

    @Test
    void takesTheNameOfAStockThatIsNotInTheBook() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2012-03-01 graft-worked G-1; scion=K-1; stock_cultivar=Acer palmatum",
                "2012-06-01 taken G-1",
                "2014-05-01 layer-set J-1; mother=G-1; below_union=yes");
        assertEquals(List.of(Act.LAYERED_BELOW), acts("J-1"));
        assertEquals(
                "Acer palmatum", diary.facts("J-1").names().get(0).cultivar().toString());
    }

    @Test
    void remarksOnAUnionThatTheBookDoesNotTellOf() {
        diary.write("2010-03-01 acquired K-1", "2010-03-01 acquired K-2; raised=graft");
        assertEquals(
                List.of("union-unrecorded: J-1: the book does not say that K-1 is a graft"),
                diary.remarks("2014-05-01 layer-set J-1; mother=K-1; below_union=yes"));
        assertEquals(List.of(), diary.remarks("2014-05-01 layer-set J-2; mother=K-2; below_union=yes"));
        assertEquals(List.of(Act.LAYERED_BELOW), acts("J-2"));
    }

    @Test
    void namesNoStockWhereOneOfSeveralIsNotKnown() {
        graft();
        diary.write("2010-03-01 acquired K-2; raised=graft");
        diary.write("2014-05-01 cuttings-struck T-1; mothers=G-1 K-2; count=6; below_union=yes");
        assertEquals(List.of(Act.STRUCK_BELOW, Act.STRUCK_BELOW), acts("T-1"));
    }

    @Test
    void followsAStockThatIsPutRight() {
        graft();
        diary.write(
                "2010-03-01 acquired R-2; count=9",
                "w: 2013-03-01 graft-worked GB-1; count=4; scion=K-1; stock=R-1",
                "2013-06-01 taken GB-1",
                "2014-03-01 drawn C-1; source=GB-1",
                "2015-05-01 layer-set J-1; mother=C-1; below_union=yes");
        diary.write("2016-01-01 corrected; target=w; field=stock; value=R-2");
        assertEquals(diary.unit("R-2"), diary.facts("J-1").links().get(1).mother());
    }
}
