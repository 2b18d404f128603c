package ortet.choice;

import java.util.List;
import ortet.value.Fault;
import ortet.value.Refused;

/** What must be so of numbers in a question; written so that NaN fails too. */
final class Checks {
    private Checks() {}

    static void atLeastZero(double figure, String what) {
        if (!(figure >= 0 && figure < Double.POSITIVE_INFINITY)) {
            throw bad(what, "at least 0", figure);
        }
    }

    static void finite(double figure, String what) {
        if (!Double.isFinite(figure)) {
            throw bad(what, "a number", figure);
        }
    }

    static void share(double figure, String what) {
        if (!(figure >= 0 && figure <= 1)) {
            throw bad(what, "0 to 1", figure);
        }
    }

    static <T> T lastRepeats(List<T> list, int at) {
        return list.get(Math.min(at, list.size() - 1));
    }

    private static Refused bad(String what, String expected, double found) {
        return new Refused(Fault.of("bad-value", what + ": expected " + expected + ", found " + found));
    }
}
