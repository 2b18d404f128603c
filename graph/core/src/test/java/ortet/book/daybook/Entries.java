package ortet.book.daybook;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.plant.PersonNumber;
import ortet.value.Refused;
import ortet.value.When;

/** Makes up entries of every kind, valid in themselves, with odd texts in them. */
final class Entries {
    private static final Arbitrary<String> ODD = Arbitraries.oneOf(
                    Arbitraries.strings()
                            .withChars("='\"+-@,;\t\n a1:.\u00e9\u00d7\u2019\u00a0")
                            .ofMinLength(1)
                            .ofMaxLength(9),
                    Arbitraries.strings().all().ofMinLength(1).ofMaxLength(9),
                    Arbitraries.of("plain words", "'Deshojo'", "=SUM(A1)", "line one\nline two", "楓 😀", "Ma\u0301ire"))
            .filter(Entries::isWhole);

    private Entries() {}

    /** Tell whether a text can be written in UTF-8: a half of a pair cannot. */
    private static boolean isWhole(String text) {
        return text.codePoints().noneMatch(point -> point >= 0xD800 && point <= 0xDFFF);
    }

    private static Arbitrary<String> tags() {
        return Arbitraries.of("J-201..J-240 except J-217", "J-9..J-12", "007..012", "A.1 A.2 A.3", "É-5 楓1", "X")
                .edgeCases(config -> config.none());
    }

    private static Arbitrary<String> texts(Form.Field field) {
        return switch (field.nature()) {
            case TEXT -> field.name().equals("field") ? Arbitraries.of("note", "day", "supplier") : ODD;
            case NUMBER -> Arbitraries.of("1", "2", "12", "12.5", "0.125", "7,5");
            case CHOICE -> Arbitraries.of(field.choices());
            case YES_NO -> Arbitraries.of("yes", "no");
            case DAY -> Arbitraries.of("2021-05-03", "2021-05", "2021");
            case TAG -> Arbitraries.of("K-1", "K/2#b", "Ü-3.");
            case TAGS ->
                field.name().equals("tags")
                        ? Arbitraries.oneOf(tags(), Arbitraries.of("Q.", "J-1. J-2. J-3.", "10 11 12 13 9"))
                        : Arbitraries.of("B-1 B-2", "B-3..B-5");
            case PERSON -> Arbitraries.of("#1", "#2", "#3");
            case OTHER -> other(field.name());
        };
    }

    private static Arbitrary<String> other(String column) {
        return switch (column) {
            case "cultivar", "stock_cultivar" ->
                Arbitraries.of(
                        "Acer palmatum 'Deshojo'",
                        "Juniperus × pfitzeriana",
                        "Prunus mume",
                        "×Cuprocyparis leylandii 'Castlewellan'",
                        "Acer palmatum var. dissectum 'Inaba-shidare'");
            case "place", "within" ->
                Arbitraries.oneOf(
                        Arbitraries.of("House 1", "=Bench 2", "Yard, west"), ODD.filter(text -> !text.isBlank()));
            case "strength" ->
                Arbitraries.of("0.3%", "3000 ppm", "1 %", "12.34 ppm", "0.01ppm", "12.345 ppm", "0,000001 %");
            case "amount" -> Arbitraries.of("0.004 EUR", "0 GBP", "12.5 EUR", "3,25 JPY");
            case "price" -> Arbitraries.of("24.50 EUR", "300 JPY");
            case "mothers" -> Arbitraries.of("K-1:2 K-2", "K-7", "");
            case "findings" -> Arbitraries.of("callus:3 dead", "roots-showing");
            case "positions" -> Arbitraries.of("8-12:5", "8-12:5 12.5-20:2");
            case "target" -> Arbitraries.create(() -> EntryId.random().toString());
            default -> throw new AssertionError("no texts for " + column);
        };
    }

    /** Return entries of one kind; none that the kind itself refuses. */
    static Arbitrary<Entry> of(EntryKind kind) {
        List<Arbitrary<Map.Entry<String, String>>> cells = Form.of(kind).fields().stream()
                .map(field -> (field.required() || field.name().equals("tags")
                                ? texts(field)
                                : Arbitraries.oneOf(texts(field), Arbitraries.of("")))
                        .map(text -> Map.entry(field.name(), text)))
                .toList();
        return Combinators.combine(cells)
                .as(list -> {
                    Map<String, String> texts = new LinkedHashMap<>();
                    list.forEach(cell -> texts.put(cell.getKey(), cell.getValue()));
                    if (kind == EntryKind.CORRECTED && texts.get("field").equals("supplier")) {
                        texts.put("value", "#2");
                    }
                    return texts;
                })
                .map(texts -> read(kind, texts))
                .filter(Optional::isPresent)
                .map(Optional::get);
    }

    private static Optional<Entry> read(EntryKind kind, Map<String, String> texts) {
        try {
            return Optional.of(Form.of(kind).read(texts));
        } catch (Refused refused) {
            return Optional.empty();
        }
    }

    /** Return entries of every kind, with a day and a hand. */
    static Arbitrary<Proposed> any() {
        Arbitrary<Entry> entries = Arbitraries.of(EntryKind.values()).flatMap(Entries::of);
        Arbitrary<When> days = Arbitraries.of("2019", "2020-02", "2020-02-29", "1000-01-01", "9999")
                .map(When::parse);
        Arbitrary<Optional<PersonNumber>> hands =
                Arbitraries.integers().between(1, 3).map(PersonNumber::new).optional(0.5);
        return Combinators.combine(days, hands, entries)
                .as((day, by, entry) -> new Proposed(EntryId.random(), day, by, entry));
    }
}
