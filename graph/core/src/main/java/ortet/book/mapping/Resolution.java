package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import ortet.book.BookView;
import ortet.book.Progress;
import ortet.book.daybook.Persons;
import ortet.book.mapping.Deed.Turn;
import ortet.book.mapping.Takings.Taking;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Warning;
import ortet.value.When;

/**
 * Works out the entries that rows stand for, beside each other and the book.
 *
 * <p>A beginning without a day is put into the earliest year in which the plant must have existed, and counts in no rate.
 * A mother who never had a row becomes acquired in that year. What was handled as a tree must have taken: where nothing
 * tells when, it took by the first day that shows it. Good for one set of rows; rows that are refused play no part.
 */
final class Resolution {
    /** The rule by which a row is refused because another is. */
    static final String RESTS = "rests-on-refused";

    private static final int PROGRESS_EVERY = 4096;
    private static final String UNRECORDED = "set_unrecorded";

    private final Nursery nursery;
    private final KeptRows kept;
    private final BookView book;
    private final boolean hasBook;
    private final BegunDays days;
    private final Takings takings;
    private final CloneNames names;
    private final EntryWriter writer;
    private final OnlyWhatTook rates = new OnlyWhatTook();
    private final List<Warning> remarks = new ArrayList<>();
    private final Optional<When> firstOfAll;
    private int acquired;

    Resolution(Nursery nursery, Set<SheetRow> refused, BookView book, Persons persons) {
        this.nursery = nursery;
        this.kept = new KeptRows(refused);
        this.book = book;
        this.hasBook = book.head().lastUnit() > 0;
        this.days = new BegunDays(kept, book);
        this.takings = new Takings(kept, days, book);
        this.names = new CloneNames(kept, book);
        this.writer = new EntryWriter(book, persons);
        this.firstOfAll = nursery.rows().stream()
                .flatMap(row -> row.deeds().stream())
                .map(Deed::day)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder())
                .map(first -> BegunDays.year(first.first().getYear()));
    }

    /** Work everything out. */
    void run(Progress progress) {
        for (Unit unit : nursery.units()) {
            if (unit.isAcquired()) {
                acquire(unit);
            }
        }
        int done = 0;
        for (SheetRow row : nursery.rows()) {
            if (++done % PROGRESS_EVERY == 0) {
                progress.at("working out entries", done, nursery.rows().size());
            }
            if (!kept.refused().contains(row)) {
                for (Deed deed : row.deeds()) {
                    tell(deed);
                }
            }
        }
        for (Unit unit : nursery.units()) {
            takings.taking(unit).filter(Taking::isImplied).ifPresent(taking -> tellTaking(unit, taking));
        }
        writer.sort();
        remarks.addAll(rates.remarks());
    }

    /** Return the rows that do not hold, with what is wrong with them. */
    Map<SheetRow, List<Fault>> faults() {
        return writer.faults();
    }

    /** Return the entries, by day. */
    List<Told> told() {
        return writer.told();
    }

    /** Return the new persons whom the entries name. */
    List<Person> persons() {
        return writer.fresh();
    }

    /** Return what should be looked at twice. */
    List<Warning> remarks() {
        return remarks;
    }

    /** Return how many plants never had a row and are acquired. */
    int acquired() {
        return acquired;
    }

    // ---- telling ----

    private void tell(Deed deed) {
        if (deed.begins()) {
            begin(deed);
        } else if (deed.turn() == Turn.PLAIN) {
            Optional<When> day = deed.kind().phase() == Phase.REGISTER
                    ? deed.day().or(() -> firstOfAll)
                    : deed.subjects().isEmpty()
                            ? deed.day()
                            : days.day(deed, deed.subjects().get(0));
            writer.write(deed, deed.kind(), deed.texts(), day, "");
            deed.subjects().forEach(unit -> count(unit, deed));
        } else {
            turn(deed);
        }
    }

    private void begin(Deed deed) {
        Optional<When> day = deed.day();
        Texts texts = deed.texts();
        if (day.isEmpty()) {
            day = deed.subjects().stream()
                    .map(days::begun)
                    .flatMap(Optional::stream)
                    .min(Comparator.naturalOrder());
            if (day.isEmpty()) {
                writer.complain(
                        deed,
                        deed.act(),
                        Meaning.DAY,
                        "no-day",
                        "must not be empty: nothing in the rows says when " + texts.get(Meaning.TAGS)
                                + " was there; expected a day, month or year, or a line such as otherwise "
                                + begunDay(deed)
                                + " = 2010 in the mapping");
                return;
            }
            if (Form.of(deed.kind()).field(UNRECORDED).isPresent()) {
                texts = texts.with(UNRECORDED, "yes");
            } else {
                texts = texts.with(
                        Meaning.NOTE,
                        RowTeller.noted(texts.get(Meaning.NOTE), "the day is not known: there by " + day.get()));
            }
        }
        if (!deed.said().isEmpty()) {
            texts = said(deed, texts);
        }
        writer.write(deed, deed.kind(), texts, day, "");
        if (Form.of(deed.kind()).field(UNRECORDED).isPresent()
                && !texts.get(UNRECORDED).equals("yes")) {
            rates.set(deed);
        }
    }

    private static String begunDay(Deed deed) {
        boolean isPlant = deed.row().file().rules().shape().sort() == Shape.Sort.PLANT;
        return isPlant ? "begun day" : "day";
    }

    /** Write down what a row says of an outcome, for each of its units as it is. */
    private void turn(Deed deed) {
        Map<EntryKind, List<Unit>> byKind = new TreeMap<>();
        Map<EntryKind, Optional<When>> dayOf = new HashMap<>();
        for (Unit unit : deed.subjects()) {
            Optional<Taking> taking = takings.taking(unit);
            if (taking.isEmpty()) {
                continue;
            }
            Way way = taking.get().way();
            EntryKind kind;
            Optional<When> day = days.day(deed, unit);
            switch (deed.turn()) {
                case TAKING -> {
                    boolean isSingle = takings.way(unit).isSingle();
                    boolean counts = isSingle
                            ? taking.get().by().filter(by -> by == deed).isPresent()
                            : way != Way.GROWN;
                    if (!counts) {
                        continue;
                    }
                    kind = way.taking();
                    day = isSingle ? taking.get().day() : day;
                }
                case DEAD ->
                    kind = lostInBook(deed, unit).orElse(taking.get().took() ? EntryKind.LOST : EntryKind.FAILED);
                default -> kind = EntryKind.SEEN;
            }
            if (day.isEmpty()) {
                if (deed.turn() == Turn.GROWING
                        && (way == Way.GROWN || taking.get().day().isPresent())) {
                    continue;
                }
                writer.complain(
                        deed,
                        deed.act(),
                        Meaning.DAY,
                        "no-day",
                        "must not be empty: nothing says when " + unit.tag()
                                + " took; expected a day, month or year, or a"
                                + " line such as otherwise outcome day = same year in the mapping");
                return;
            }
            byKind.computeIfAbsent(kind, key -> new ArrayList<>()).add(unit);
            dayOf.merge(kind, day, (one, other) -> one);
            became(unit, kind);
        }
        byKind.forEach((kind, units) -> {
            Texts texts = deed.texts();
            if (deed.subjects().size() > 1) {
                texts = texts.with(
                        Meaning.TAGS,
                        String.join(" ", units.stream().map(Unit::tag).toList()));
            }
            writer.write(
                    deed,
                    kind,
                    fitting(kind, texts, deed),
                    dayOf.get(kind),
                    deed.subjects().size() > 1 ? "\n" + kind : "");
        });
    }

    /** Return how the book has this very entry, where it has: what was once failed stays so. */
    private Optional<EntryKind> lostInBook(Deed deed, Unit unit) {
        if (!hasBook || unit.inBook().isEmpty()) {
            return Optional.empty();
        }
        return book.entry(deed.id("")).map(recorded -> recorded.entry().kind());
    }

    /** Return texts with those that a kind has no field for put into its note. */
    private static Texts fitting(EntryKind kind, Texts texts, Deed deed) {
        Texts.Builder fitting = new Texts.Builder();
        Form form = Form.of(kind);
        fitting.put(Meaning.NOTE, texts.get(Meaning.NOTE));
        texts.each((field, text) -> {
            if (form.field(field).isPresent()) {
                if (!field.equals(Meaning.NOTE)) {
                    fitting.put(field, text);
                }
            } else {
                String label = deed.row().file().column(deed.act(), field).orElse(field.replace('_', ' '));
                fitting.put(Meaning.NOTE, RowTeller.noted(fitting.get(Meaning.NOTE), label + ": " + text));
            }
        });
        return fitting.build();
    }

    private void tellTaking(Unit unit, Taking taking) {
        Optional<Deed> by = taking.by();
        if (by.isEmpty() || taking.day().isEmpty()) {
            return; // a fault has been told where the row says that it took
        }
        When taken = taking.day().get();
        Optional<SheetRow> unsure = unit.rows().stream()
                .filter(kept.refused()::contains)
                .filter(row -> mayBeBefore(row, unit, taken))
                .findFirst();
        if (unsure.isPresent()) {
            // That row, once it is mended, may tell another day: what would show that the unit took must wait for it.
            restOn(unsure.get(), unit, taking.way());
            return;
        }
        SheetRow row = by.get().row();
        String what = taking.way() == Way.LAYER ? "severed" : "taken";
        Texts.Builder texts = new Texts.Builder();
        texts.put(Meaning.TAGS, unit.tag());
        texts.put(Meaning.NOTE, "the day is not known: " + what + " by then");
        Deed deed = new Deed.Builder(row, by.get().act(), taking.way().taking())
                .texts(texts.build())
                .key("implied\n" + what + "\n" + unit.tag(), 1)
                .build();
        writer.write(deed, taking.way().taking(), deed.texts(), taking.day(), "");
        remarks.add(new Warning(
                "taking-unrecorded",
                row.where() + ": nothing tells when " + unit.tag() + " was " + what + ": it counts as " + what + " by "
                        + taking.day().get()));
        kept.beginning(unit).ifPresent(beginning -> rates.became(beginning, deed.kind()));
    }

    private boolean mayBeBefore(SheetRow row, Unit unit, When taken) {
        return row.deeds().isEmpty()
                || row.deeds().stream()
                        .map(deed -> days.day(deed, unit))
                        .anyMatch(day -> day.isEmpty() || BegunDays.BY_PLACE.compare(day.get(), taken) < 0);
    }

    private void restOn(SheetRow refusedRow, Unit unit, Way way) {
        List<Deed> resting = new ArrayList<>();
        unit.about().stream()
                .filter(deed -> way.isShownBy(deed) || deed.turn() == Turn.GROWING)
                .forEach(resting::add);
        resting.addAll(unit.children());
        resting.stream()
                .filter(kept::isKept)
                .forEach(deed -> writer.complain(
                        deed,
                        "",
                        Meaning.TAGS,
                        RESTS,
                        "rests on " + refusedRow.where() + " about " + unit.tag() + ", which is not taken"));
    }

    // ---- plants that never had a row ----

    private void acquire(Unit unit) {
        List<Deed> mentions = new ArrayList<>();
        mentions.addAll(kept.children(unit));
        mentions.addAll(kept.about(unit));
        if (mentions.isEmpty()) {
            return;
        }
        Deed first = mentions.stream()
                .min(Comparator.comparing((Deed deed) -> deed.row().number()))
                .orElseThrow();
        Optional<When> day = days.begun(unit);
        if (day.isEmpty()) {
            return; // the rows that name it have no day either, and are told
        }
        Texts.Builder texts = new Texts.Builder();
        texts.put(Meaning.TAGS, unit.tag());
        texts.put(Meaning.CULTIVAR, names.name(unit).orElse(""));
        long worked = kept.children(unit).stream()
                .filter(deed -> deed.texts().get("stock").equals(unit.tag()))
                .count();
        if (worked > 1) {
            texts.put(Meaning.COUNT, Long.toString(worked));
        }
        String others = mentions.size() == 1
                ? ""
                : " and " + (mentions.size() - 1) + (mentions.size() == 2 ? " other row" : " other rows");
        texts.put(Meaning.NOTE, "earliest known, origin unknown: had no row of its own");
        Deed deed = new Deed.Builder(first.row(), first.act(), EntryKind.ACQUIRED)
                .texts(texts.build())
                .key("without a row\n" + unit.tag(), 1)
                .build();
        writer.write(deed, EntryKind.ACQUIRED, deed.texts(), day, "");
        acquired++;
        String near = nursery.lookalike(unit.tag())
                .map(known -> "; or is it " + known + "?")
                .orElse("");
        remarks.add(new Warning(
                "without-a-row",
                first.row().where() + ": " + unit.tag() + " has no row of its own (named here" + others
                        + "): acquired in " + day.get() + ", earliest known, origin unknown" + near));
    }

    // ---- what is noticed on the way ----

    private void count(Unit unit, Deed deed) {
        takings.taking(unit).ifPresent(taking -> {
            if (taking.way().takesBy(deed)) {
                became(unit, taking.way().taking());
            } else if (deed.kind() == EntryKind.FAILED
                    || deed.texts().get("roots").equals("none")) {
                became(unit, EntryKind.FAILED);
            }
        });
    }

    private void became(Unit unit, EntryKind kind) {
        kept.beginning(unit)
                .filter(beginning -> Form.of(beginning.kind()).field(UNRECORDED).isPresent())
                .ifPresent(beginning -> rates.became(beginning, kind));
    }

    /** Keep what a row says of the cultivar where the entry has no place for it and the mother is not the same. */
    private Texts said(Deed deed, Texts texts) {
        Optional<Unit> source = CloneNames.source(deed);
        Optional<String> hers = source.flatMap(names::name);
        if (hers.filter(deed.said()::equals).isPresent()) {
            return texts;
        }
        hers.ifPresent(name -> remarks.add(new Warning(
                "cultivar-differs",
                deed.row().where("", Meaning.CULTIVAR) + ": " + texts.get(Meaning.TAGS) + " is said to be "
                        + deed.said() + ", but " + source.get().tag() + " is " + name)));
        return texts.with(Meaning.NOTE, RowTeller.noted(texts.get(Meaning.NOTE), "said to be " + deed.said()));
    }
}
