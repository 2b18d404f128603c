package ortet.screen;

import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What a command writes on: always UTF-8, as wide as the user's screen, coloured only where that helps.
 *
 * <p>A reader that goes away early ({@code … | head -1}) is no failure: the rest is written nowhere. Anything else that
 * stops the writing, a full disk say, is kept and told by {@link #trouble()}. Not safe to share between threads.
 */
public final class Screen extends PrintWriter {
    private final Surroundings surroundings;
    private final PrintWriter asides;
    private final Optional<Guarded> guarded;
    private final Pager pager;

    /**
     * Make a screen.
     *
     * @param out where answers go
     * @param err where asides, warnings and bars go
     */
    public Screen(OutputStream out, OutputStream err, Surroundings surroundings) {
        this(
                new Guarded(out),
                new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), false),
                surroundings,
                Pager.opening());
    }

    private Screen(Guarded out, PrintWriter asides, Surroundings surroundings, Pager pager) {
        super(new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)), false);
        this.surroundings = surroundings;
        this.asides = asides;
        this.guarded = Optional.of(out);
        this.pager = pager;
    }

    private Screen(PrintWriter out, Surroundings surroundings) {
        super(out, false);
        this.surroundings = surroundings;
        this.asides = out;
        this.guarded = Optional.empty();
        this.pager = Pager.opening();
    }

    /** Return the writer itself if it is a screen, else a plain screen of 80 columns on it. */
    public static Screen on(PrintWriter writer) {
        return writer instanceof Screen screen
                ? screen
                : new Screen(writer, new Surroundings(false, false, false, 80, false, true, false));
    }

    /** Return a screen with the same streams, other surroundings and another pager; flush this one first. */
    public Screen in(Surroundings others, Pager otherPager) {
        return guarded.map(out -> new Screen(out, asides, others, otherPager))
                .orElseGet(() -> new Screen((PrintWriter) this, others));
    }

    /** Return what stands around. */
    public Surroundings surroundings() {
        return surroundings;
    }

    /** Return how many columns a line may have. */
    public int width() {
        return surroundings.width();
    }

    /** Return the text in a style, or the text alone where there are no colours. */
    public String styled(Style style, String text) {
        return surroundings.outTerminal() && surroundings.colours() ? style.on(text) : text;
    }

    /** Write a line of prose, broken at blanks to the width. */
    public void prose(String text) {
        Text.wrap(text, width()).forEach(this::println);
    }

    /** Write a line of prose under an indent, which every further line of it gets too. */
    public void prose(String indent, String text) {
        int room = Math.max(1, width() - indent.length());
        Text.wrap(text, room).forEach(line -> println(indent + line));
    }

    /** Write prose after a label, its further lines under an indent as wide as the label. */
    public void hanging(String label, String indent, String text) {
        String before = label;
        int taken = Math.max(Text.columns(label), Text.columns(indent));
        for (String line : Text.wrap(text, Math.max(1, width() - taken))) {
            println(before + line);
            before = indent;
        }
    }

    /** Write prose after a label, as {@link #hanging} does, its first words in bold. */
    public void headed(String label, String bold, String indent, String text) {
        int taken = Math.max(Text.columns(label), Text.columns(indent));
        List<String> lines = Text.wrap(bold + text, Math.max(1, width() - taken));
        String first = lines.get(0);
        println(
                first.startsWith(bold)
                        ? label + styled(Style.STRONG, bold) + first.substring(bold.length())
                        : label + first);
        lines.subList(1, lines.size()).forEach(line -> println(indent + line));
    }

    /**
     * Write an answer that may be long: page by page where it has more lines than the screen, and somebody sits at it.
     *
     * @throws Stopped when the user stopped it before it was shown
     */
    public void page(Consumer<Screen> answer) {
        Surroundings.Paging paging = surroundings.paging();
        if (!paging.wanted() || !surroundings.outTerminal() || surroundings.dumb() || surroundings.height() < 2) {
            answer.accept(this);
            return;
        }
        ByteArrayOutputStream kept = new ByteArrayOutputStream();
        Screen keeping = new Screen(new Guarded(kept), asides, surroundings, pager);
        answer.accept(keeping);
        keeping.flush();
        Stopped.check();
        String text = kept.toString(StandardCharsets.UTF_8);
        flush();
        if (Text.rows(text, width()) < surroundings.height()) {
            print(text);
            return;
        }
        try {
            pager.show(text, paging.program());
        } catch (IOException unable) {
            print(text);
        }
    }

    /** Show a sheet. Notes and warnings stand under a table, inside JSON, and beside CSV as asides. */
    public void show(Sheet sheet, OutputFormat format) {
        switch (format) {
            case TABLE -> TableLayout.write(sheet, this);
            case CSV -> {
                SheetData.writeCsv(sheet, this);
                sheet.notes().forEach(note -> aside("note: " + note));
                sheet.warnings().forEach(warning -> aside("warning: " + warning));
            }
            case JSON -> json(json -> SheetData.writeJson(sheet, json));
        }
    }

    /** Write one JSON document, with a line end after it. */
    public void json(Consumer<Json> document) {
        Json.write(this, document);
        println();
    }

    /**
     * Write a line beside the answer, on the error stream, at once, broken at blanks where somebody sits at it; control
     * characters are shown, not sent.
     */
    public void aside(String line) {
        flush();
        if (surroundings.errTerminal()) {
            Text.wrap(line, width()).forEach(asides::println);
        } else {
            asides.println(Text.printable(line));
        }
        asides.flush();
    }

    /** Write what is meant for the error stream as it is. */
    public void trace(Throwable thrown) {
        flush();
        thrown.printStackTrace(asides);
        asides.flush();
    }

    /** Return a bar that shows how far long work has come, where somebody can see it; close it when the work ends. */
    public ProgressBar progress() {
        boolean shown = surroundings.errTerminal() && !surroundings.dumb();
        return new ProgressBar(asides, shown, surroundings.width(), System::nanoTime);
    }

    /** Return what stopped the writing, unless nothing did or the reader just went away. */
    public Optional<IOException> trouble() {
        flush();
        return guarded.flatMap(Guarded::trouble);
    }

    /** Keeps the first failure, which a PrintWriter would swallow. */
    private static final class Guarded extends OutputStream {
        private final OutputStream out;
        private Optional<IOException> failed = Optional.empty();

        Guarded(OutputStream out) {
            this.out = out;
        }

        @Override
        public void write(int b) throws IOException {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            if (failed.isPresent()) {
                return;
            }
            try {
                out.write(bytes, from, count);
            } catch (IOException e) {
                failed = Optional.of(e);
            }
        }

        @Override
        public void flush() throws IOException {
            if (failed.isPresent()) {
                return;
            }
            try {
                out.flush();
            } catch (IOException e) {
                failed = Optional.of(e);
            }
        }

        Optional<IOException> trouble() {
            return failed.filter(e -> !String.valueOf(e.getMessage()).contains("Broken pipe"));
        }
    }
}
