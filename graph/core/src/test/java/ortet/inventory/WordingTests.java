package ortet.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

class WordingTests {
    @Test
    void wantsEveryWordInAnyOrderWhateverCaseAndAccents() {
        Wording wording = new Wording(List.of("june", "maire"));
        assertTrue(wording.isIn("Máire: layer in JUNE"));
        assertFalse(wording.isIn("layer in June"));
    }

    @Test
    void lendsThePatternOfItsLongestWord() {
        assertEquals("%bleeds%", new Wording(List.of("in", "bleeds")).pattern());
        assertEquals("%J-20%", new Wording(List.of("J-20")).pattern());
        assertEquals("%M_ire%", new Wording(List.of("Máire")).pattern());
    }

    @Test
    void takesNoSignOfTheUserForASignOfThePattern() {
        assertEquals("%50_%", new Wording(List.of("50%")).pattern());
        assertEquals("%a_b%", new Wording(List.of("a_b")).pattern());
        assertEquals("%2%%", new Wording(List.of("2\"")).pattern());
    }

    @Test
    void refusesNoWordAtAll() {
        assertThrows(Refused.class, () -> new Wording(List.of(" ")));
    }
}
