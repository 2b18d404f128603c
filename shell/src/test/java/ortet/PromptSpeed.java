package ortet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import ortet.line.Attendant;
import ortet.line.Commands;
import ortet.line.Front;
import ortet.line.Typing;
import ortet.screen.Screen;

/**
 * Measures the program's share of recording at the prompt, on a copy of a book; a program to be run by hand, not a test.
 *
 * <p>Arguments: the file of a book, a mother in it, a person in it, and tags to be begun: {@code big.ortet K-12 Aoife
 * Z-}.
 */
public final class PromptSpeed {
    private PromptSpeed() {}

    /** Measure lines, and proposals at Tab. */
    public static void main(String[] arguments) throws IOException {
        Path copy = Files.createTempFile("prompt-speed", ".ortet");
        Files.copy(Path.of(arguments[0]), copy, StandardCopyOption.REPLACE_EXISTING);
        String mother = arguments[1];
        String person = arguments[2];
        String tag = arguments[3];
        try (Desk desk = Desk.open()) {
            List<String> lines = new ArrayList<>();
            lines.add("use --book " + copy + " --by \"" + person + "\" --place \"House 1\"");
            for (int run = 0; run < 8; run++) {
                int at = 100 + run * 40;
                lines.add("layer set " + tag + at + ".." + (at + 11) + " --mother " + mother
                        + " --stem 12x4,15x5,18x3 --ring 18 --wound full-ring --hormone IBA --strength 0.3%");
                lines.add("layer set " + tag + (at + 12) + ".." + (at + 25) + " --mother " + mother
                        + " --stem 9,12x8,15x* --ring 15");
                lines.add("layer set " + tag + (at + 26) + ".." + (at + 39) + " --mother " + mother
                        + " --stem 20 --ring 25");
                lines.add("layer check " + tag + at + ".." + (at + 39) + " --found callus");
                lines.add("layer sever " + tag + at + ".." + (at + 9) + " --roots full --container \"2 L\"");
                lines.add("pot " + tag + at + " --into \"5 L\"");
                lines.add("move " + tag + at + " --to \"House 2\"");
                lines.add("undo");
                lines.add("trace " + tag + at);
                lines.add("plant " + tag + at);
                lines.add("find " + tag + at);
            }
            lines.add("today");
            lines.add("list " + tag);
            lines.add("list --place \"House 1\"");
            lines(desk, lines);
            Typing typing = new Typing(desk.bean(Commands.class), desk.bean(Attendant.class));
            for (String line : List.of(
                    "trace ",
                    "trace " + mother.charAt(0),
                    "layer set ",
                    "layer set " + tag,
                    "move " + mother + " --to ",
                    "acquire X --cultivar ",
                    "pot " + mother + " --into ",
                    "layer set X --medium ",
                    "sell " + mother + " --to ")) {
                long[] nanos = new long[7];
                int found = 0;
                for (int run = 0; run < nanos.length; run++) {
                    long begin = System.nanoTime();
                    found = typing.at(line).size();
                    nanos[run] = System.nanoTime() - begin;
                }
                System.out.printf("Tab after %-32s %3d found  %s%n", "\"" + line + "\"", found, told(nanos));
            }
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    /** Give lines to the front one by one, each when the one before is done, and tell how long each sort of line took. */
    private static void lines(Desk desk, List<String> lines) {
        Front front = desk.bean(Front.class);
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(OutputStream.nullOutputStream(), err, Desk.PIPES);
        List<String> sorts = new ArrayList<>();
        List<Long> nanos = new ArrayList<>();
        for (String line : lines) {
            long begin = System.nanoTime();
            int status = front.run(List.of("-"), bytes(line), screen);
            nanos.add(System.nanoTime() - begin);
            String[] words = line.split(" ");
            sorts.add(words[0].equals("layer") ? words[0] + " " + words[1] : words[0]);
            if (status != 0) {
                System.out.println(line + ": " + err.toString(StandardCharsets.UTF_8));
                err.reset();
            }
        }
        for (String sort : sorts.stream().distinct().toList()) {
            long[] some = new long[(int) sorts.stream().filter(sort::equals).count()];
            int at = 0;
            for (int line = 0; line < sorts.size(); line++) {
                if (sorts.get(line).equals(sort)) {
                    some[at++] = nanos.get(line);
                }
            }
            System.out.printf("%-14s %3d lines  %s%n", sort, some.length, told(some));
        }
    }

    private static InputStream bytes(String line) {
        return new ByteArrayInputStream(line.getBytes(StandardCharsets.UTF_8));
    }

    private static String told(long[] nanos) {
        long[] sorted = nanos.clone();
        Arrays.sort(sorted);
        return String.format(
                "first %6.1f ms, median %6.1f ms, worst %6.1f ms",
                nanos[0] / 1e6, sorted[sorted.length / 2] / 1e6, sorted[sorted.length - 1] / 1e6);
    }
}
