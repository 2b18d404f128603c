package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.plant.Tag;

/** A unit that is named by two of its tags in one entry is one unit all the same. */
class TwoTagsTests {
    private final Diary diary = new Diary();

    private UnitFacts facts(String tag) {
        return diary.store()
                .read(view -> view.facts(view.unit(new Tag(tag)).orElseThrow()).orElseThrow());
    }

    @Test
    void foundPlantMayBeItOnce() {
        diary.write(
                "2015-01-01 acquired K-1",
                "2016-01-01 retagged K-1; new_tag=K-9",
                "2017-01-01 found-untagged F-1; candidates=K-1 K-9");
        assertEquals(1, facts("F-1").links().size());
    }

    @Test
    void mergedTrayGivesItsUnitsOnce() {
        diary.write(
                "2015-01-01 acquired K-1",
                "2016-01-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2016-01-01 cuttings-struck T-2; mothers=K-1; count=5",
                "2016-02-01 retagged T-1; new_tag=T-8",
                "2016-03-01 merged T-3; sources=T-1 T-8 T-2");
        assertEquals(Optional.of(15), facts("T-3").standings().get(0).pending());
        assertEquals(
                List.of(Optional.of(10), Optional.of(5)),
                facts("T-3").links().stream().map(Link::count).toList());
    }

    @Test
    void motherGaveWhatBothHerTagsSay() {
        diary.write(
                "2015-01-01 acquired K-1",
                "2016-01-01 retagged K-1; new_tag=K-9",
                "2017-01-01 cuttings-struck T-1; mothers=K-1:10 K-9:5; count=15");
        assertEquals(
                List.of(Optional.of(15)),
                facts("T-1").links().stream().map(Link::count).toList());
    }
}
