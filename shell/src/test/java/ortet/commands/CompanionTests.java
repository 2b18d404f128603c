package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.line.Attendant;
import ortet.line.Commands;
import ortet.line.Suggestion;
import ortet.line.Typing;

/** What is proposed at Tab, asked of a real book. */
class CompanionTests {
    @TempDir
    static Path folder;

    private static BookDesk desk;
    private static Typing typing;

    @BeforeAll
    static void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add 'An Example' --role customer");
        desk.done("enter place-listed 'place=Cold frame'");
        desk.done("acquire K-1 K-2 --cultivar 'Acer palmatum ‘Deshojo’' --place 'House 1' --container '2 L' --on 2020");
        desk.done("acquire R-9 --count 50 --cultivar 'Ulmus parvifolia' --place 'House 2' --on 2020");
        desk.done("layer set J-101..J-180 --mother K-1 --medium 'sphagnum moss' --stem 12 --on 2021-05");
        desk.done("move 楓-1 --to 'House 1'".replace("move 楓-1", "move K-1"));
        desk.done("use --by Aoife");
        typing = new Typing(desk.bean(Commands.class), desk.bean(Attendant.class));
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    private static List<String> at(String line) {
        return typing.at(line);
    }

    @Test
    void proposesTagsWholeWhereTheyAreFew() {
        assertEquals(List.of("K-1", "K-2"), at("trace K"));
        assertEquals(List.of("K-…"), at("trace k"));
        assertEquals(List.of("K-1", "K-2"), at("layer set J-1 --mother K-"));
    }

    @Test
    void proposesTheNextLetterWhereTagsAreMany() {
        assertEquals(
                List.of("J-10…", "J-11…", "J-12…", "J-13…", "J-14…", "J-15…", "J-16…", "J-17…", "J-180"),
                at("layer check J"));
        assertEquals("J-110", at("layer check J-11").get(0));
        assertEquals(10, at("layer check J-11").size());
    }

    @Test
    void proposesTheEndOfARange() {
        assertEquals(List.of("J-101..J-180"), at("layer check J-101..J-18"));
    }

    @Test
    void proposesTagsInAListAndBeforeACount() {
        assertEquals(List.of("K-1:40,K-1", "K-1:40,K-2"), at("cuttings strike T-1 --mother K-1:40,K"));
        assertEquals(List.of(), at("cuttings strike T-1 --mother K-1:"));
        assertEquals(List.of("K-2,K-1", "K-2,K-2"), at("found F-1 --one-of K-2,K"));
    }

    @Test
    void proposesTheNextFreeTagWhereOneBegins() {
        assertEquals(List.of(Suggestion.of("J-181", "the next free one")), typing.proposals("layer set J"));
        assertTrue(at("layer set ").contains("J-181"));
        assertEquals(List.of("K-3"), at("retag K-1 --to K-"));
        assertFalse(at("layer set J-101..").contains("J-101..J-102"));
    }

    @Test
    void proposesCultivarsByAnyPartOfTheirName() {
        assertEquals(List.of("Acer palmatum 'Deshojo'"), at("acquire K-9 --cultivar acer"));
        assertEquals(List.of("Acer palmatum 'Deshojo'"), at("take --cultivar desh"));
        assertEquals(List.of("Acer palmatum 'Deshojo'"), at("redetermine K-1 --as \"Acer palmatum 'D"));
    }

    @Test
    void proposesPlacesOfUnitsAndPlacesListed() {
        assertEquals(List.of("House 1", "House 2"), at("move K-1 --to House"));
        assertEquals(List.of("Cold frame"), at("layer sever J-101 --place cold"));
        assertEquals(
                List.of("House 1", "House 2"),
                at("seen hou").stream()
                        .map(one -> one.replace("…", ""))
                        .flatMap(one -> at("seen \"" + one).stream())
                        .toList());
        assertEquals(List.of("K-1", "K-2"), at("seen 'House 1' K-"));
    }

    @Test
    void proposesPersonsWithWhatTheyAre() {
        assertEquals(List.of(Suggestion.of("Aoife", "staff")), typing.proposals("pot K-1 --by ao"));
        assertEquals(List.of("An Example"), at("sell K-1 --to an"));
        assertEquals(
                List.of("An Example", "Aoife"),
                at("person erase ").stream()
                        .filter(one -> one.startsWith("A"))
                        .sorted()
                        .toList());
    }

    @Test
    void proposesContainersAndTextsUsedBefore() {
        assertEquals(List.of("2 L"), at("pot K-1 --into "));
        assertEquals(List.of("sphagnum moss"), at("layer set J-1 --medium s"));
    }

    @Test
    void proposesDaysAndChoices() {
        assertEquals(List.of("today", "yesterday"), at("pot K-1 --on "));
        assertEquals(List.of("dried"), at("layer fail J-1 --cause drie"));
        assertEquals(List.of("growing,pending"), at("list --state growing,p"));
        assertTrue(at("book new --zone Europe/D").contains("Europe/Dublin"));
    }

    @Test
    void proposesKindsTagsAndFieldsOfAnyEntry() {
        assertEquals(List.of("graft-worked", "graded").size(), at("enter gra").size());
        assertTrue(at("enter held K-1 ").containsAll(List.of("sign=…", "sample=…", "--on")));
        assertFalse(at("enter held K-1 sign=x ").contains("sign=…"));
        assertEquals(List.of("K-1", "K-2"), at("enter held K-"));
        assertEquals(List.of("graft=side-veneer"), at("enter graft-worked G-1 graft=side"));
        assertEquals(List.of("scion=K-1", "scion=K-2"), at("enter graft-worked G-1 scion=K"));
        assertEquals(List.of("customer=An Example"), at("enter sold K-1 customer=an"));
        assertEquals(List.of("cultivar=Ulmus parvifolia"), at("enter acquired K-7 cultivar=ulm"));
        assertEquals(List.of("place=Cold frame"), at("enter moved K-1 place=cold"));
        assertEquals(List.of(), at("enter nonsense x"));
    }

    @Test
    void proposesTheFieldsOfTheEntryThatIsCorrectedWithWhatTheySay() {
        assertTrue(typing.proposals("correct 4 --field ").contains(Suggestion.of("stem_mm", "is 12")));
        assertTrue(at("correct #4 --field ").containsAll(List.of("day", "by", "tags", "ring_mm")));
        assertEquals(
                List.of("by", "day"),
                at("correct 99 --field ").stream().sorted().toList());
    }

    @Test
    void proposesJobs() {
        assertEquals(List.of("layers"), at("record lay"));
        assertEquals(List.of("failed", "looked", "set", "severed"), at("record layers "));
    }

    @Test
    void proposesNothingLiveWithoutABook() {
        assertEquals(List.of(), at("trace --book " + folder.resolve("none.ortet") + " K"));
    }

    @Test
    void tellsWhatTheBookIs() {
        assertEquals(
                List.of("the book " + desk.book() + ": 5 entries, time zone Europe/Dublin"),
                desk.bean(Attendant.class).greeting());
    }
}
