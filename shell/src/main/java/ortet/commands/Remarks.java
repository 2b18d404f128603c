package ortet.commands;

import java.util.List;
import ortet.screen.Screen;
import ortet.value.Warning;

/** Shows remarks, not more than a screen can bear. */
final class Remarks {
    private static final int SHOWN = 20;

    private Remarks() {}

    static void show(List<Warning> warnings, Screen screen) {
        warnings.stream().limit(SHOWN).forEach(warning -> screen.hanging("", "    ", "remark: " + warning.text()));
        if (warnings.size() > SHOWN) {
            screen.prose("and " + (warnings.size() - SHOWN) + " more remarks");
        }
    }
}
