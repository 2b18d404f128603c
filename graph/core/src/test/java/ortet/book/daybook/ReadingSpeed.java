package ortet.book.daybook;

import java.io.BufferedWriter;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import ortet.book.MemoryBookStore;
import ortet.book.Progress;

/** Measures how fast a day book is read; a program to be run by hand, not a test. */
public final class ReadingSpeed {
    private ReadingSpeed() {}

    /** Write a day book of so many rows (400,000 unless told) and read it five times. */
    public static void main(String[] arguments) throws IOException {
        int rows = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400_000;
        Path file = Files.createTempFile("reading-speed", ".csv");
        try (MemoryBookStore book = new MemoryBookStore(ZoneOffset.UTC)) {
            write(file, rows);
            for (int run = 0; run < 5; run++) {
                long begin = System.nanoTime();
                long beginCpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                Reading reading = book.read(view -> DayBook.read(List.of(file), Optional.empty(), view, Progress.NONE));
                System.out.printf(
                        "%,d rows, %,d bytes: %.2f s, of which %.2f s at work%n",
                        reading.entries(),
                        Files.size(file),
                        (System.nanoTime() - begin) / 1e9,
                        (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - beginCpu) / 1e9);
            }
        } finally {
            Files.delete(file);
        }
    }

    private static void write(Path file, int rows) throws IOException {
        LocalDate day = LocalDate.of(1995, 3, 1);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write(String.join(
                    ",",
                    Columns.OF_DAY_BOOK
                            .names()
                            .subList(3, Columns.OF_DAY_BOOK.names().size())));
            out.write('\n');
            for (int row = 0; row < rows; row++) {
                out.write(row(day.plusDays(row / 40), row));
                out.write('\n');
            }
        }
    }

    private static String row(LocalDate day, int row) {
        String tag = "J-" + row / 4;
        String[] cells = new String[Columns.OF_DAY_BOOK.names().size()];
        Arrays.fill(cells, "");
        put(cells, "day", day.toString());
        put(cells, "by", row % 3 == 0 ? "Una Thornfield" : "#2");
        put(cells, "tags", tag);
        switch (row % 4) {
            case 0 -> {
                put(cells, "kind", "layer-set");
                put(cells, "mother", "K-" + row % 500);
                put(cells, "stem_mm", "12.5");
                put(cells, "ring_mm", "14");
                put(cells, "wound", "full-ring");
                put(cells, "hormone", "IBA");
                put(cells, "strength", "0.3%");
                put(cells, "medium", "long fibre sphagnum");
                put(cells, "place", "House " + row % 7);
            }
            case 1 -> {
                put(cells, "kind", "checked");
                put(cells, "findings", "roots-showing");
            }
            case 2 -> {
                put(cells, "kind", "severed");
                put(cells, "roots", "fair");
                put(cells, "remainder", "kept");
                put(cells, "place", "House " + row % 7);
            }
            default -> {
                put(cells, "kind", "potted");
                put(cells, "container", "2 L");
                put(cells, "purpose", "pot-up");
                put(cells, "note", "\"roots \"\"teased\"\" out, then watered\"");
            }
        }
        return String.join(",", List.of(cells).subList(3, cells.length));
    }

    private static void put(String[] cells, String column, String text) {
        cells[Columns.OF_DAY_BOOK.at(column)] = text;
    }
}
