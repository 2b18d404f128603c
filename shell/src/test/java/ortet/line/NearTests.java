package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearTests {
    // Expected values: worked by hand from the definition. "ca" and "abc" is the case where optimal string alignment
    // (3)
    // and the unrestricted Damerau distance (2) differ.
    @ParameterizedTest
    @CsvSource({
        "plant,plant,0",
        "plnat,plant,1",
        "plan,plant,1",
        "sevre,sever,1",
        "kitten,sitting,3",
        "ca,abc,3",
        "'',take,4"
    })
    void countsSlips(String typed, String meant, int slips) {
        assertEquals(slips, Near.distance(typed, meant));
    }

    @Test
    void findsTheNearestAndNothingFar() {
        List<String> known = List.of("trace", "take", "plant", "layer set");
        assertEquals(Optional.of("plant"), Near.of("plnat", known));
        assertEquals(Optional.of("take"), Near.of("TAKE", known));
        assertEquals(Optional.of("layer set"), Near.of("layr sett", known));
        assertEquals(Optional.empty(), Near.of("export", known));
        assertEquals(Optional.empty(), Near.of("x", known));
    }

    @Test
    void takesAWordThatWasOnlyBegun() {
        assertEquals(Optional.of("--hormone"), Near.of("--hor", List.of("--count", "--hormone")));
    }

    @Property
    void isZeroForEqualWordsAndTheSameBothWays(
            @ForAll @AlphaChars @StringLength(max = 12) String one,
            @ForAll @AlphaChars @StringLength(max = 12) String other) {
        assertEquals(0, Near.distance(one, one));
        assertEquals(Near.distance(one, other), Near.distance(other, one));
        assertTrue(Near.distance(one, other) >= Math.abs(one.length() - other.length()));
        assertTrue(Near.distance(one, other) <= Math.max(one.length(), other.length()));
    }
}
