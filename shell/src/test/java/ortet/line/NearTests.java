package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearTests {
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
}
