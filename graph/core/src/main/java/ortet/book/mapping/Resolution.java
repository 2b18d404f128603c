package ortet.book.mapping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Proposal;
import ortet.book.UnitFacts;
import ortet.book.daybook.Persons;
import ortet.book.mapping.Deed.Turn;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.Form.Nature;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.When;
import ortet.value.When.Precision;
import ortet.value.Where;

/**
 * Works out the entries that rows stand for, beside each other and the book.
 *
 * <p>A beginning without a day is put into the earliest year in which the plant must have existed, and counts in no rate.
 * A mother who never had a row becomes acquired in that year. What was handled as a tree must have taken: where nothing
 * tells when, it took by the first day that shows it. Good for one set of rows; rows that are refused play no part.
 */
final class Resolution {
    /**
     * An entry that rows stand for.
     *
     * @param row the row that tells it, or that it follows from
     * @param deed the deed that tells it; absent where it only follows
     * @param item the entry and its place
     */
    record Told(SheetRow row, Optional<Deed> deed, Proposal.Item item) {}

    /** The rule by which a row is refused because another is. */
    static final String RESTS = "rests-on-refused";

    private static final String UNRECORDED = "set_unrecorded";
    private static final Map<EntryKind, List<String>> PERSON_FIELDS = new HashMap<>();
    private static final int ENOUGH_TO_WONDER = 20;

    /** What is known of how a unit took. */
    private record Taking(Way way, boolean took, Optional<When> day, Optional<Deed> by, boolean isImplied) {}

    private final Nursery nursery;
    private final Set<SheetRow> refused;
    private final BookView book;
    private final boolean hasBook;
    private final Persons persons;
    private final Set<PersonNumber> erased;

    private final Map<Unit, Optional<When>> begun = new IdentityHashMap<>();
    private final Set<Unit> beingDated = new HashSet<>();
    private final Map<Unit, Taking> takings = new IdentityHashMap<>();
    private final Map<Unit, Optional<String>> names = new IdentityHashMap<>();
    private final Map<SheetRow, List<Fault>> faults = new LinkedHashMap<>();
    private final List<Told> told = new ArrayList<>();
    private final List<Warning> remarks = new ArrayList<>();
    private final Map<String, int[]> rates = new TreeMap<>();
    private int mothersAcquired;

    Resolution(Nursery nursery, Set<SheetRow> refused, BookView book, Persons persons) {
        this.nursery = nursery;
        this.refused = refused;
        this.book = book;
        this.hasBook = book.head().lastUnit() > 0;
        this.persons = persons;
        this.erased = book.persons().stream()
                .filter(person -> person.name().isEmpty())
                .map(Person::number)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Work everything out. */
    void run() {
        for (Unit unit : nursery.units()) {
            if (unit.isAcquired()) {
                acquire(unit);
            }
        }
        for (SheetRow row : nursery.rows()) {
            if (!refused.contains(row)) {
                for (Deed deed : row.deeds()) {
                    tell(deed);
                }
            }
        }
        for (Unit unit : nursery.units()) {
            taking(unit).filter(Taking::isImplied).ifPresent(taking -> tellTaking(unit, taking));
        }
        told.sort(Comparator.comparing((Told one) -> one.item().proposed().day())
                .thenComparing(one -> one.item().proposed().entry().kind().rank())
                .thenComparing(one -> one.row().number()));
        rates.forEach(this::wonder);
    }

    /** Return the rows that do not hold, with what is wrong with them. */
    Map<SheetRow, List<Fault>> faults() {
        return faults;
    }

    /** Return the entries, by day. */
    List<Told> told() {
        return told;
    }

    /** Return the entries as a proposal, with the new persons whom they name. */
    Proposal proposal() {
        Set<PersonNumber> used = new HashSet<>();
        for (Told one : told) {
            Proposed proposed = one.item().proposed();
            proposed.by().ifPresent(used::add);
            for (String field : personFields(proposed.entry().kind())) {
                Optional.ofNullable(Form.write(proposed.entry()).get(field))
                        .map(PersonNumber::parse)
                        .ifPresent(used::add);
            }
        }
        List<Person> fresh = persons.added().stream()
                .filter(person -> used.contains(person.number()))
                .toList();
        return new Proposal(told.stream().map(Told::item).toList(), fresh);
    }

    /** Return what should be looked at twice. */
    List<Warning> remarks() {
        return remarks;
    }

    /** Return how many mothers and plants never had a row and are acquired. */
    int acquired() {
        return mothersAcquired;
    }

    private boolean isKept(Deed deed) {
        return !refused.contains(deed.row());
    }

    private Optional<Deed> beginning(Unit unit) {
        return unit.beginnings().stream().filter(this::isKept).findFirst();
    }

    // ---- days ----

    /** Return the day on which a unit began, where that can be told. */
    private Optional<When> begun(Unit unit) {
        Optional<When> known = begun.get(unit);
        if (known == null) {
            if (!beingDated.add(unit)) {
                return Optional.empty();
            }
            known = dated(unit);
            begun.put(unit, known);
            beingDated.remove(unit);
        }
        return known;
    }

    private Optional<When> dated(Unit unit) {
        if (unit.inBook().isPresent()) {
            return book.facts(unit.inBook().get()).map(facts -> facts.begun().day());
        }
        Optional<Deed> beginning = beginning(unit);
        Optional<When> day = beginning.flatMap(Deed::day);
        if (day.isPresent()) {
            return day;
        }
        return beginning.flatMap(this::dayInBook).or(() -> earliest(unit));
    }

    private Optional<When> dayInBook(Deed deed) {
        return hasBook
                ? book.entry(id(deed, "")).map(recorded -> recorded.proposed().day())
                : Optional.empty();
    }

    /** Return the earliest year in which a unit must have existed. */
    private Optional<When> earliest(Unit unit) {
        TreeSet<Integer> years = new TreeSet<>();
        unit.about().stream()
                .filter(this::isKept)
                .map(Deed::day)
                .flatMap(Optional::stream)
                .forEach(day -> years.add(day.first().getYear()));
        for (Deed child : unit.children()) {
            if (isKept(child)) {
                child.day()
                        .or(() -> child.subjects().stream()
                                .map(this::begun)
                                .flatMap(Optional::stream)
                                .min(Comparator.naturalOrder()))
                        .ifPresent(day -> years.add(day.first().getYear()));
            }
        }
        if (years.isEmpty()) {
            return Optional.empty();
        }
        int year = years.first();
        int latest = beginning(unit).stream()
                .flatMap(deed -> deed.parents().stream())
                .map(this::end)
                .flatMap(Optional::stream)
                .mapToInt(end -> end.first().getYear())
                .min()
                .orElse(year);
        return Optional.of(year(Math.min(year, latest)));
    }

    private static When year(int year) {
        return new When(LocalDate.of(year, 1, 1), Precision.YEAR);
    }

    /** Return when a unit went as a whole, where rows tell. */
    private Optional<When> end(Unit unit) {
        return unit.about().stream()
                .filter(this::isKept)
                .filter(deed -> deed.turn() == Turn.PLAIN || deed.turn() == Turn.DEAD)
                .filter(deed -> switch (deed.kind()) {
                    case SOLD, LOST, CULLED, FAILED -> !deed.texts().has(Meaning.COUNT);
                    default -> false;
                })
                .map(Deed::day)
                .flatMap(Optional::stream)
                .min(BY_PLACE);
    }

    /** By the day on which the book places what begins nothing: the last that it may have been. */
    private static final Comparator<When> BY_PLACE =
            Comparator.comparing(When::last).thenComparing(Comparator.naturalOrder());

    private Optional<When> day(Deed deed, Unit unit) {
        if (deed.day().isPresent() || deed.relativeDay().isEmpty()) {
            return deed.day();
        }
        int later = deed.relativeDay().equals(CellReader.NEXT_YEAR) ? 1 : 0;
        return begun(unit).map(when -> year(when.first().getYear() + later));
    }

    // ---- how units took ----

    /** Return how a unit took; empty for one that is not there, or has no beginning that holds. */
    private Optional<Taking> taking(Unit unit) {
        boolean isThere = beginning(unit).isPresent() || unit.inBook().isPresent() || unit.isAcquired();
        return isThere ? Optional.of(takings.computeIfAbsent(unit, this::worked)) : Optional.empty();
    }

    /** How a unit must take, and whether it is one plant. */
    private record Raising(Way way, boolean isSingle) {}

    private Raising way(Unit unit) {
        Optional<Deed> beginning = beginning(unit);
        if (beginning.isPresent()) {
            String count = beginning.get().texts().get(Meaning.COUNT);
            boolean single = (count.isEmpty() || count.equals("1"))
                    && !beginning.get().texts().has("grams");
            return new Raising(Way.of(beginning.get().kind()), single);
        }
        return unit.inBook().flatMap(book::facts).map(Resolution::way).orElse(new Raising(Way.GROWN, true));
    }

    private static Raising way(UnitFacts facts) {
        int pending = pending(facts);
        if (facts.nature() == UnitFacts.Nature.LAYER) {
            return new Raising(Way.LAYER, true);
        }
        boolean isGraft = facts.nature() == UnitFacts.Nature.PLANT;
        return pending == 0
                ? new Raising(Way.GROWN, true)
                : new Raising(isGraft ? Way.GRAFT : Way.SOWN_OR_STRUCK, pending == 1);
    }

    private static int pending(UnitFacts facts) {
        UnitFacts.Standing last = facts.standings().get(facts.standings().size() - 1);
        return last.pending().orElse(Integer.MAX_VALUE);
    }

    private Taking worked(Unit unit) {
        Raising how = way(unit);
        Way way = how.way();
        List<Deed> about = unit.about().stream().filter(this::isKept).toList();
        if (way == Way.GROWN) {
            return new Taking(way, true, Optional.empty(), Optional.empty(), false);
        }
        boolean isTold = about.stream().anyMatch(deed -> deed.turn() == Turn.PLAIN && way.takesBy(deed));
        boolean hasFailed = about.stream()
                .anyMatch(deed -> deed.turn() == Turn.PLAIN
                        && (deed.kind() == EntryKind.FAILED && !deed.texts().has(Meaning.COUNT)
                                || deed.texts().get("roots").equals("none")));
        Optional<Deed> firstTaking = about.stream()
                .filter(deed -> deed.turn() == Turn.TAKING)
                .min(Comparator.comparing(
                        deed -> day(deed, unit).map(When::last).orElse(LocalDate.MAX)));
        Optional<When> death = about.stream()
                .filter(deed -> deed.turn() == Turn.DEAD)
                .map(deed -> day(deed, unit))
                .flatMap(Optional::stream)
                .min(BY_PLACE);
        Optional<Deed> shown = about.stream()
                .filter(deed -> deed.turn() == Turn.PLAIN && way.isShownBy(deed)
                        || deed.turn() == Turn.GROWING && deed.day().isPresent())
                .filter(deed -> isBefore(day(deed, unit), death))
                .min(Comparator.comparing((Deed deed) -> day(deed, unit).orElseThrow(), BY_PLACE));
        Optional<When> evidence = shown.flatMap(deed -> day(deed, unit));
        Optional<Deed> shownBy = shown;
        for (Deed child : unit.children()) {
            if (isKept(child)) {
                Optional<When> when = child.day()
                        .or(() -> child.subjects().stream().findFirst().flatMap(this::begun))
                        .map(Resolution::before);
                if (when.isPresent()
                        && isBefore(when, death)
                        && (evidence.isEmpty() || BY_PLACE.compare(when.get(), evidence.get()) < 0)) {
                    evidence = when;
                    shownBy = Optional.of(child);
                }
            }
        }
        boolean isGrowing = about.stream().anyMatch(deed -> deed.turn() == Turn.GROWING);
        boolean took = isTold || firstTaking.isPresent() || isGrowing || evidence.isPresent();
        boolean mayBeImplied = took && !isTold && !hasFailed && how.isSingle() && !isTakenInBook(unit);
        if (!mayBeImplied) {
            return new Taking(way, took, Optional.empty(), Optional.empty(), false);
        }
        Optional<When> day = firstTaking.flatMap(deed -> day(deed, unit)).or(() -> given(unit, way));
        if (day.isEmpty() || evidence.isPresent() && BY_PLACE.compare(evidence.get(), day.get()) < 0) {
            boolean isFromRow =
                    firstTaking.isPresent() && firstTaking.get().day().isPresent();
            day = isFromRow ? day : evidence;
        }
        if (way == Way.LAYER && day.isPresent()) {
            When so = day.get();
            Optional<When> mothersEnd = beginning(unit).stream()
                    .flatMap(deed -> deed.parents().stream())
                    .map(this::end)
                    .flatMap(Optional::stream)
                    .filter(end -> BY_PLACE.compare(end, so) < 0)
                    .findFirst();
            boolean isFromRow =
                    firstTaking.isPresent() && firstTaking.get().day().isPresent();
            day = isFromRow ? day : mothersEnd.or(() -> Optional.of(so));
        }
        return new Taking(
                way,
                true,
                day,
                firstTaking.isPresent() ? firstTaking : shownBy.or(() -> growing(about)),
                firstTaking.isEmpty());
    }

    /** Tell whether something was not after a death; what comes after cannot show that it took. */
    private static boolean isBefore(Optional<When> day, Optional<When> death) {
        return day.isPresent() && (death.isEmpty() || BY_PLACE.compare(day.get(), death.get()) <= 0);
    }

    /**
     * Return the day, month or year before: of one day the book reads what gives wood before what takes, so that a plant
     * must have taken before the day on which something came from it.
     */
    private static When before(When when) {
        LocalDate first = when.first();
        return new When(
                switch (when.precision()) {
                    case DAY -> first.minusDays(1);
                    case MONTH -> first.minusMonths(1);
                    case YEAR -> first.minusYears(1);
                },
                when.precision());
    }

    private static Optional<Deed> growing(List<Deed> about) {
        return about.stream().filter(deed -> deed.turn() == Turn.GROWING).findFirst();
    }

    private boolean isTakenInBook(Unit unit) {
        if (!hasBook) {
            return false;
        }
        Optional<UnitNumber> number = unit.inBook().or(() -> book.unit(new Tag(unit.tag())));
        return number.flatMap(book::facts).map(facts -> pending(facts) == 0).orElse(false);
    }

    /** Return the day that the mapping gives for taking, where the row's own sheet does. */
    private Optional<When> given(Unit unit, Way way) {
        return beginning(unit)
                .map(deed -> deed.row().file().rules())
                .flatMap(rules -> rules.fixed(way == Way.LAYER ? "severed" : "taken", Meaning.DAY)
                        .or(() -> rules.fixed(Meaning.OUTCOME, Meaning.DAY)))
                .flatMap(fixed -> {
                    Deed.Builder as =
                            new Deed.Builder(beginning(unit).orElseThrow().row(), "", way.taking());
                    return day(as.day(fixed.text()).build(), unit);
                });
    }

    // ---- telling ----

    private void tell(Deed deed) {
        if (deed.begins()) {
            begin(deed);
        } else if (deed.turn() == Turn.PLAIN) {
            Optional<When> day = deed.kind().phase() == Phase.REGISTER
                    ? deed.day().or(this::firstOfAll)
                    : deed.subjects().isEmpty()
                            ? deed.day()
                            : day(deed, deed.subjects().get(0));
            write(deed, deed.kind(), deed.texts(), day, "");
            deed.subjects().forEach(unit -> count(unit, deed));
        } else {
            turn(deed);
        }
    }

    private Optional<When> firstOfAll() {
        return nursery.rows().stream()
                .flatMap(row -> row.deeds().stream())
                .map(Deed::day)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder())
                .map(first -> year(first.first().getYear()));
    }

    private void begin(Deed deed) {
        Optional<When> day = deed.day();
        Texts texts = deed.texts();
        if (day.isEmpty()) {
            day = deed.subjects().stream()
                    .map(this::begun)
                    .flatMap(Optional::stream)
                    .min(Comparator.naturalOrder());
            if (day.isEmpty()) {
                complain(
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
        write(deed, deed.kind(), texts, day, "");
        if (Form.of(deed.kind()).field(UNRECORDED).isPresent()
                && !texts.get(UNRECORDED).equals("yes")) {
            rate(deed)[0]++;
        }
    }

    private static String begunDay(Deed deed) {
        boolean isPlant = deed.row().file().rules().shape().sort() == Shape.Sort.PLANT;
        return isPlant ? "begun day" : "day";
    }

    /** Write down what a row says of an outcome, for each of its units as it is. */
    private void turn(Deed deed) {
        Map<EntryKind, List<Unit>> byKind = new TreeMap<>();
        Map<EntryKind, Optional<When>> days = new HashMap<>();
        for (Unit unit : deed.subjects()) {
            Optional<Taking> taking = taking(unit);
            if (taking.isEmpty()) {
                continue;
            }
            Way way = taking.get().way();
            EntryKind kind;
            Optional<When> day = day(deed, unit);
            switch (deed.turn()) {
                case TAKING -> {
                    boolean isSingle = way(unit).isSingle();
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
                complain(
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
            days.merge(kind, day, (one, other) -> one);
            outcome(unit, deed, kind);
        }
        byKind.forEach((kind, units) -> {
            Texts texts = deed.texts();
            if (deed.subjects().size() > 1) {
                texts = texts.with(
                        Meaning.TAGS,
                        String.join(" ", units.stream().map(Unit::tag).toList()));
            }
            write(
                    deed,
                    kind,
                    fitting(kind, texts, deed),
                    days.get(kind),
                    deed.subjects().size() > 1 ? "\n" + kind : "");
        });
    }

    /** Return how the book has this very entry, where it has: what was once failed stays so. */
    private Optional<EntryKind> lostInBook(Deed deed, Unit unit) {
        if (!hasBook || unit.inBook().isEmpty()) {
            return Optional.empty();
        }
        return book.entry(id(deed, "")).map(recorded -> recorded.entry().kind());
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
                .filter(refused::contains)
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
        write(deed, taking.way().taking(), deed.texts(), taking.day(), "");
        remarks.add(new Warning(
                "taking-unrecorded",
                row.where() + ": nothing tells when " + unit.tag() + " was " + what + "; taken as " + what + " by "
                        + taking.day().get()));
        beginning(unit).ifPresent(beginning -> rate(beginning)[1]++);
    }

    private boolean mayBeBefore(SheetRow row, Unit unit, When taken) {
        return row.deeds().isEmpty()
                || row.deeds().stream()
                        .map(deed -> day(deed, unit))
                        .anyMatch(day -> day.isEmpty() || BY_PLACE.compare(day.get(), taken) < 0);
    }

    private void restOn(SheetRow refusedRow, Unit unit, Way way) {
        List<Deed> resting = new ArrayList<>();
        unit.about().stream()
                .filter(deed -> way.isShownBy(deed) || deed.turn() == Turn.GROWING)
                .forEach(resting::add);
        resting.addAll(unit.children());
        resting.stream()
                .filter(this::isKept)
                .forEach(deed -> complain(
                        deed,
                        "",
                        Meaning.TAGS,
                        RESTS,
                        "rests on " + refusedRow.where() + " about " + unit.tag() + ", which is not taken"));
    }

    // ---- plants that never had a row ----

    private void acquire(Unit unit) {
        List<Deed> mentions = new ArrayList<>();
        unit.children().stream().filter(this::isKept).forEach(mentions::add);
        unit.about().stream().filter(this::isKept).forEach(mentions::add);
        if (mentions.isEmpty()) {
            return;
        }
        Deed first = mentions.stream()
                .min(Comparator.comparing((Deed deed) -> deed.row().number()))
                .orElseThrow();
        Optional<When> day = begun(unit);
        if (day.isEmpty()) {
            return; // the rows that name it have no day either, and are told
        }
        Texts.Builder texts = new Texts.Builder();
        texts.put(Meaning.TAGS, unit.tag());
        texts.put(Meaning.CULTIVAR, name(unit).orElse(""));
        long worked = unit.children().stream()
                .filter(this::isKept)
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
        write(deed, EntryKind.ACQUIRED, deed.texts(), day, "");
        mothersAcquired++;
        String near = nursery.lookalike(unit.tag())
                .map(known -> "; or is it " + known + "?")
                .orElse("");
        remarks.add(new Warning(
                "without-a-row",
                first.row().where() + ": " + unit.tag() + " has no row of its own (named here" + others
                        + "): acquired in " + day.get() + ", earliest known, origin unknown" + near));
    }

    // ---- names ----

    /** Return the cultivar of a unit: its own name, or that of the plant whose clone it keeps. */
    private Optional<String> name(Unit unit) {
        Optional<String> known = names.get(unit);
        if (known == null) {
            names.put(unit, Optional.empty()); // what comes round to itself has no name by that way
            known = named(unit);
            names.put(unit, known);
        }
        return known;
    }

    private Optional<String> named(Unit unit) {
        if (unit.inBook().isPresent()) {
            return nameInBook(unit.inBook().get(), 0);
        }
        if (unit.isAcquired()) {
            Set<String> said = new TreeSet<>();
            for (Deed child : unit.children()) {
                boolean isClone = child.kind() != EntryKind.SEED_SOWN
                        && !child.texts().get("stock").equals(unit.tag());
                if (isKept(child) && isClone) {
                    String name = child.said().isEmpty() ? child.texts().get(Meaning.CULTIVAR) : child.said();
                    if (!name.isEmpty()) {
                        said.add(name);
                    }
                }
            }
            return said.size() == 1 ? Optional.of(said.iterator().next()) : Optional.empty();
        }
        Optional<Deed> beginning = beginning(unit);
        if (beginning.isEmpty()) {
            return Optional.empty();
        }
        String own = beginning.get().texts().get(Meaning.CULTIVAR);
        if (!own.isEmpty()) {
            return Optional.of(own);
        }
        return source(beginning.get()).flatMap(this::name);
    }

    /** Return the unit whose clone a beginning keeps. */
    private static Optional<Unit> source(Deed beginning) {
        return switch (beginning.kind()) {
            case LAYER_SET, DIVIDED, CUTTINGS_STRUCK ->
                beginning.parents().size() == 1
                        ? Optional.of(beginning.parents().get(0))
                        : Optional.empty();
            case GRAFT_WORKED ->
                beginning.texts().has("scion")
                        ? beginning.parents().stream()
                                .filter(parent ->
                                        parent.tag().equals(beginning.texts().get("scion")))
                                .findFirst()
                        : Optional.empty();
            case DRAWN, SPLIT -> beginning.others().stream().findFirst();
            default -> Optional.empty();
        };
    }

    private Optional<String> nameInBook(UnitNumber number, int depth) {
        Optional<UnitFacts> facts = depth > 100 ? Optional.empty() : book.facts(number);
        if (facts.isEmpty()) {
            return Optional.empty();
        }
        List<UnitFacts.Naming> namings = facts.get().names();
        if (!namings.isEmpty()) {
            return Optional.of(namings.get(namings.size() - 1).cultivar().toString());
        }
        return facts.get().links().stream()
                .filter(link -> link.act().keepsTheClone())
                .findFirst()
                .flatMap(link -> nameInBook(link.mother(), depth + 1));
    }

    /** Keep what a row says of the cultivar where the entry has no place for it and the mother is not the same. */
    private Texts said(Deed deed, Texts texts) {
        Optional<Unit> source = source(deed);
        Optional<String> hers = source.flatMap(this::name);
        if (hers.filter(deed.said()::equals).isPresent()) {
            return texts;
        }
        hers.ifPresent(name -> remarks.add(new Warning(
                "cultivar-differs",
                deed.row().where("", Meaning.CULTIVAR) + ": " + texts.get(Meaning.TAGS) + " is said to be "
                        + deed.said() + ", but " + source.get().tag() + " is " + name)));
        return texts.with(Meaning.NOTE, RowTeller.noted(texts.get(Meaning.NOTE), "said to be " + deed.said()));
    }

    // ---- writing ----

    private static EntryId id(Deed deed, String group) {
        return EntryId.derived(deed.row().file().rules().name(), "sheet\n" + deed.key() + group, deed.occurrence());
    }

    private void write(Deed deed, EntryKind kind, Texts texts, Optional<When> day, String group) {
        SheetRow row = deed.row();
        if (day.isEmpty()) {
            complain(
                    deed,
                    deed.act(),
                    Meaning.DAY,
                    "no-day",
                    "must not be empty: nothing says when it was " + kind.word().replace('-', ' '));
            return;
        }
        Where where = row.where(deed.act(), Meaning.DAY);
        try {
            EntryId id = id(deed, group);
            Optional<PersonNumber> by = deed.by().isEmpty()
                    ? Optional.empty()
                    : Optional.of(person(deed, "", Meaning.BY, deed.by(), Role.STAFF, id));
            Texts numbered = texts;
            for (String field : personFields(kind)) {
                if (texts.has(field)) {
                    Role role = field.equals("supplier") ? Role.SUPPLIER : Role.CUSTOMER;
                    numbered = numbered.with(
                            field,
                            person(deed, deed.act(), field, texts.get(field), role, id)
                                    .toString());
                }
            }
            Form form = Form.of(kind);
            Texts all = numbered;
            Entry entry = form.read(at -> all.get(form.fields().get(at).name()));
            told.add(new Told(
                    row,
                    Optional.of(deed),
                    new Proposal.Item(new Proposed(id, day.get(), by, entry), Optional.of(where))));
        } catch (Refused refused) {
            for (Fault fault : refused.faults()) {
                complain(deed, kind, fault);
            }
        }
    }

    private PersonNumber person(Deed deed, String act, String field, String name, Role role, EntryId id) {
        try {
            PersonNumber number = persons.number(name, role, deed.row().where());
            return erased(field, number, id).orElse(number);
        } catch (Refused refused) {
            Fault fault = refused.faults().get(0);
            throw new Refused(new Fault(fault.rule(), Optional.empty(), field + ": " + fault.text(), fault.nearest()));
        }
    }

    /** Return whom the book names in the same place of this very entry, where that name was erased since. */
    private Optional<PersonNumber> erased(String field, PersonNumber number, EntryId id) {
        if (erased.isEmpty()
                || persons.added().stream().noneMatch(person -> person.number().equals(number))) {
            return Optional.empty();
        }
        return book.entry(id)
                .flatMap(recorded -> field.equals(Meaning.BY)
                        ? recorded.proposed().by()
                        : Optional.ofNullable(Form.write(recorded.entry()).get(field))
                                .map(PersonNumber::parse))
                .filter(erased::contains);
    }

    private static synchronized List<String> personFields(EntryKind kind) {
        return PERSON_FIELDS.computeIfAbsent(
                kind,
                key -> Form.of(key).fields().stream()
                        .filter(field -> field.nature() == Nature.PERSON)
                        .map(Form.Field::name)
                        .toList());
    }

    private void complain(Deed deed, EntryKind kind, Fault fault) {
        int colon = fault.text().indexOf(": ");
        String field = colon < 0 ? "" : fault.text().substring(0, colon);
        boolean isField = Form.of(kind).field(field).isPresent() || field.equals(Meaning.BY);
        String text = isField ? fault.text().substring(colon + 2) : fault.text();
        if (fault.rule().equals("missing-value")) {
            text = "must not be empty for what was " + kind.word().replace('-', ' ') + ": its "
                    + field.replace('_', ' ');
        }
        String column = isField ? field : Meaning.TAGS;
        Where where =
                deed.row().where(deed.row().file().column(deed.act(), column).isPresent() ? deed.act() : "", column);
        add(deed.row(), new Fault(fault.rule(), Optional.of(where), text, fault.nearest()));
    }

    private void complain(Deed deed, String act, String field, String rule, String text) {
        add(deed.row(), new Fault(rule, Optional.of(deed.row().where(act, field)), text, Optional.empty()));
    }

    private void add(SheetRow row, Fault fault) {
        List<Fault> all = faults.computeIfAbsent(row, key -> new ArrayList<>());
        if (!all.contains(fault)) {
            all.add(fault);
        }
    }

    // ---- sheets that hold only what took ----

    /** Return how many of a sheet were set, took and failed, by the sheet and the method. */
    private int[] rate(Deed beginning) {
        String sheet = beginning.row().file().source().shown() + "\n"
                + Method.of(beginning.kind()).map(Method::word).orElse("plant");
        return rates.computeIfAbsent(sheet, key -> new int[3]);
    }

    private void count(Unit unit, Deed deed) {
        taking(unit).ifPresent(taking -> {
            if (taking.way().takesBy(deed)) {
                outcome(unit, deed, taking.way().taking());
            } else if (deed.kind() == EntryKind.FAILED
                    || deed.texts().get("roots").equals("none")) {
                outcome(unit, deed, EntryKind.FAILED);
            }
        });
    }

    private void outcome(Unit unit, Deed deed, EntryKind kind) {
        beginning(unit)
                .filter(beginning -> Form.of(beginning.kind()).field(UNRECORDED).isPresent())
                .ifPresent(beginning -> {
                    if (kind == EntryKind.FAILED) {
                        rate(beginning)[2]++;
                    } else if (kind == EntryKind.SEVERED || kind == EntryKind.TAKEN) {
                        rate(beginning)[1]++;
                    }
                });
    }

    private void wonder(String sheet, int[] counts) {
        if (counts[0] >= ENOUGH_TO_WONDER && counts[1] >= ENOUGH_TO_WONDER && counts[2] == 0) {
            String[] parts = sheet.split("\n");
            remarks.add(
                    new Warning(
                            "only-what-took",
                            parts[0] + ": of " + counts[0] + " raised as " + parts[1]
                                    + " none failed; if the sheet holds only what"
                                    + " took, a line otherwise set unrecorded = yes in the mapping keeps them out of every rate"));
        }
    }
}
