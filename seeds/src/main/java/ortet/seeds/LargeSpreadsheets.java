package ortet.seeds;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import ortet.entry.Acquired;
import ortet.entry.CuttingsStruck;
import ortet.entry.Drawn;
import ortet.entry.Entry;
import ortet.entry.Failed;
import ortet.entry.Form;
import ortet.entry.LayerSet;
import ortet.entry.Lost;
import ortet.entry.Potted;
import ortet.entry.Severed;
import ortet.entry.Sold;
import ortet.plant.Tag;
import ortet.value.Refused;

/**
 * Writes the nursery of {@link LargeNursery} as somebody else would have kept it, for benchmarks: four spreadsheets and the
 * mapping that reads them.
 *
 * <p>{@code plants.csv} has one row for each mother, tray, layer and plant drawn, children often before their mothers;
 * {@code pots.csv}, {@code sales.csv} and {@code losses.csv} are lists. Days are as the Irish write them, prices have a
 * decimal comma, tags are now and then in small letters, a row in a hundred stands twice, one mother in fifty has no row.
 * In memory is what waits for its outcome: one year of layers and trays.
 */
public final class LargeSpreadsheets {
    private static final long SEED = 20261031;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("dd/MM/yyyy");
    private static final String MAPPING = """
            # The spreadsheets of an invented nursery.

            tags = upper case
            dates = dd/MM/yyyy
            numbers = decimal comma

            sheet plants
            files = plants.csv
            row = plant
            column Label = tag
            column Variety = cultivar
            column Raised as = method
              word A/L = layer
              word ctg = cuttings
              word bought = acquired
              word pricked = drawn
            column From = mother
            column Date = begun day
            column Severed = severed day
            column Result = outcome
              word no roots = failed no-roots
            column Result on = outcome day
            column Number = count
            column Stem = stem
            column Ring = ring
            column Hormone = hormone
            column By = by

            sheet pots
            files = pots.csv
            row = potted
            column Date = day
            column Label = tag
            column Pot = container
            column Mix = medium
            column Bench = place

            sheet sales
            files = sales.csv
            row = sold
            column Date = day
            column Label = tag
            column Customer = customer
            column Net EUR = price in EUR
            column Invoice = invoice

            sheet losses
            files = losses.csv
            row = lost
            column Date = day
            column Label = tag
            column Why = cause
            """;

    private final CsvWriter plants;
    private final CsvWriter pots;
    private final CsvWriter sales;
    private final CsvWriter losses;
    private final Map<Tag, Map<String, String>> waiting = new LinkedHashMap<>();
    private long rows;

    private LargeSpreadsheets(CsvWriter plants, CsvWriter pots, CsvWriter sales, CsvWriter losses) {
        this.plants = plants;
        this.pots = pots;
        this.sales = sales;
        this.losses = losses;
    }

    /**
     * Write four spreadsheets and {@code mapping.txt} into a folder.
     *
     * @param plants how many plants, at least 1 and at most 10 million
     * @param seed what decides on everything else
     * @return how many rows there are below the headers
     */
    public static long write(long plants, long seed, Path folder) throws IOException {
        Files.writeString(folder.resolve("mapping.txt"), MAPPING);
        try (CsvWriter plantRows = writer(folder.resolve("plants.csv"));
                CsvWriter potRows = writer(folder.resolve("pots.csv"));
                CsvWriter saleRows = writer(folder.resolve("sales.csv"));
                CsvWriter lossRows = writer(folder.resolve("losses.csv"))) {
            LargeSpreadsheets sheets = new LargeSpreadsheets(plantRows, potRows, saleRows, lossRows);
            sheets.write(plants, seed);
            return sheets.rows;
        }
    }

    /** Write the spreadsheets of a nursery of so many plants into a folder. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 2 || !arguments[0].matches("\\d{1,8}")) {
            System.err.println("expected: ortet.seeds.LargeSpreadsheets PLANTS FOLDER");
            System.exit(2);
        }
        try {
            Path folder = Files.createDirectories(Path.of(arguments[1]));
            System.out.println(write(Long.parseLong(arguments[0]), SEED, folder) + " rows");
        } catch (Refused refused) {
            System.err.println("ortet: " + refused.getMessage());
            System.exit(1);
        }
    }

    private static CsvWriter writer(Path file) throws IOException {
        return CsvWriter.builder()
                .lineDelimiter(LineDelimiter.CRLF)
                .bufferSize(1 << 16)
                .build(file, StandardCharsets.UTF_8);
    }

    private void write(long count, long seed) throws IOException {
        plants.writeRecord(
                "Label",
                "Variety",
                "Raised as",
                "From",
                "Date",
                "Severed",
                "Result",
                "Result on",
                "Number",
                "Stem",
                "Ring",
                "Hormone",
                "By");
        pots.writeRecord("Date", "Label", "Pot", "Mix", "Bench");
        sales.writeRecord("Date", "Label", "Customer", "Net EUR", "Invoice");
        losses.writeRecord("Date", "Label", "Why");
        LargeNursery.tell(count, seed, this::take);
        for (Map.Entry<Tag, Map<String, String>> left : waiting.entrySet()) {
            plant(left.getKey(), left.getValue());
        }
    }

    // ---- entries become rows, once all is known that a row says ----

    private void take(String day, String by, Entry entry) {
        Map<String, String> texts = Form.write(entry);
        if (entry instanceof Acquired acquired) {
            for (Tag tag : acquired.tags()) {
                boolean isForgotten = number(tag) % 50 == 49;
                if (!isForgotten) {
                    plant(tag, row("bought", "", day, by, texts));
                }
            }
        } else if (entry instanceof LayerSet set) {
            set.tags().forEach(tag -> waiting.put(tag, row("A/L", set.mother().text(), day, by, texts)));
        } else if (entry instanceof CuttingsStruck struck) {
            String mother = struck.mothers().get(0).tag().text();
            struck.tags().forEach(tag -> waiting.put(tag, row("ctg", mother, day, by, texts)));
        } else if (entry instanceof Severed severed) {
            severed.tags().forEach(tag -> settle(tag, "Severed", day));
        } else if (entry instanceof Failed failed) {
            failed.tags().forEach(tag -> {
                waiting.get(tag).put("Result", "No roots ");
                settle(tag, "Result on", day);
            });
        } else if (entry instanceof Drawn drawn) {
            drawn.tags().forEach(tag -> plant(tag, row("pricked", drawn.source().text(), day, by, texts)));
        } else if (entry instanceof Potted potted) {
            listed(
                    pots,
                    potted.tags().get(0),
                    irish(day),
                    potted.container(),
                    get(texts, "medium"),
                    get(texts, "place"));
        } else if (entry instanceof Sold sold) {
            String price = get(texts, "price").replace(" EUR", "").replace('.', ',');
            String customer = LargeNursery.person(get(texts, "customer"));
            listed(sales, sold.tags().get(0), irish(day), customer, price, get(texts, "invoice"));
        } else if (entry instanceof Lost lost) {
            listed(losses, lost.tags().get(0), irish(day), get(texts, "cause"));
        }
    }

    private static long number(Tag tag) {
        return Long.parseLong(tag.text().substring(2));
    }

    private static String get(Map<String, String> texts, String field) {
        return texts.getOrDefault(field, "");
    }

    private static String irish(String day) {
        return day.length() == 10 ? LocalDate.parse(day).format(DAY) : day;
    }

    private static Map<String, String> row(
            String raised, String from, String day, String by, Map<String, String> texts) {
        Map<String, String> row = new HashMap<>();
        row.put("Variety", get(texts, "cultivar"));
        row.put("Raised as", raised);
        row.put("From", from);
        row.put("Date", irish(day));
        row.put("Number", get(texts, "count"));
        row.put("Stem", get(texts, "stem_mm").replace('.', ','));
        row.put("Ring", get(texts, "ring_mm").replace('.', ','));
        row.put("Hormone", texts.containsKey("hormone") ? "IBA 0,3 % powder" : "");
        row.put("By", by);
        return row;
    }

    private void settle(Tag tag, String column, String day) {
        Map<String, String> row = waiting.remove(tag);
        row.put(column, irish(day));
        plant(tag, row);
    }

    private void plant(Tag tag, Map<String, String> row) {
        boolean isTwice = number(tag) % 100 == 17;
        for (int time = 0; time < (isTwice ? 2 : 1); time++) {
            plants.writeRecord(
                    label(tag),
                    get(row, "Variety"),
                    get(row, "Raised as"),
                    get(row, "From"),
                    get(row, "Date"),
                    get(row, "Severed"),
                    get(row, "Result"),
                    get(row, "Result on"),
                    get(row, "Number"),
                    get(row, "Stem"),
                    get(row, "Ring"),
                    get(row, "Hormone"),
                    get(row, "By"));
            rows++;
        }
    }

    private void listed(CsvWriter csv, Tag tag, String day, String... more) {
        boolean isTwice = number(tag) % 100 == 42;
        for (int time = 0; time < (isTwice ? 2 : 1); time++) {
            String[] cells = new String[more.length + 2];
            cells[0] = day;
            cells[1] = label(tag);
            System.arraycopy(more, 0, cells, 2, more.length);
            csv.writeRecord(cells);
            rows++;
        }
    }

    /** Return a tag as it is scribbled: now and then in small letters, or with a blank behind it. */
    private static String label(Tag tag) {
        long number = number(tag);
        String text = number % 13 == 5 ? tag.text().toLowerCase(Locale.ROOT) : tag.text();
        return number % 17 == 3 ? text + " " : text;
    }
}
