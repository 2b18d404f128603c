package ortet.screen;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/** What came on the two streams of a screen. */
record Page(String out, String err) {
    static Page of(Surroundings surroundings, Consumer<Screen> writing) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(out, err, surroundings);
        writing.accept(screen);
        screen.flush();
        return new Page(out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    static Page piped(int width, Consumer<Screen> writing) {
        return of(new Surroundings(false, false, false, width, true, false, false), writing);
    }
}
