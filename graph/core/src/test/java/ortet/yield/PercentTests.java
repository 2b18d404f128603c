package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PercentTests {
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "1, 100",
        "0.5, 50",
        "0.683, 68",
        "0.685, 69",
        "0.01, 1",
        "0.99, 99",
        "0.003, 0.3",
        "0.0004, <0.1",
        "0.0005, 0.1",
        "0.999, 99.9",
        "0.9996, >99.9",
        "1e-12, <0.1"
    })
    void roundsButNeverToNoneOrAll(double share, String text) {
        assertEquals(text, Percent.of(share));
    }
}
