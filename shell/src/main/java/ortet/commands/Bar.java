package ortet.commands;

import ortet.book.Progress;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;

/** Shows the progress of long work, one bar after another for its steps. */
final class Bar implements Progress, AutoCloseable {
    private final Screen screen;
    private String step = "";
    private ProgressBar bar;

    Bar(Screen screen) {
        this.screen = screen;
        this.bar = screen.progress("");
    }

    @Override
    public void at(String what, long done, long total) {
        if (!what.equals(step)) {
            bar.close();
            step = what;
            bar = screen.progress(what);
        }
        bar.at(done, total);
    }

    @Override
    public void close() {
        bar.close();
    }
}
