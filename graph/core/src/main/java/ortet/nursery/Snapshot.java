package ortet.nursery;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jgrapht.Graph;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.plant.CultivarName;
import ortet.value.Defect;
import ortet.value.When;

/**
 * A nursery as it stood on a day, as far as it was known by some entry: immutable columns of whole numbers, one place for
 * each unit number.
 *
 * <p>For questions about all of it; a question about one family is answered sooner from the few rows of that family. Only
 * the parts asked for are there. Tags stay in the book until something is printed.
 *
 * <p>Takes 5 bytes for each unit, and with every part 42; 17 for each link; 49 for each unit that counts for take; 8
 * for each turn of a unit's life. A million
 * plants that come from one other each and of which two in three count take 80 MiB. Made in one pass over the rows of the
 * book. Safe for use by several threads.
 */
public final class Snapshot {
    /** Where there is no number. */
    public static final int NONE = -1;

    private static final QueryName ORDER = new QueryName("order-by-instant");
    private static final Nature[] NATURES = Nature.values();
    private static final Act[] ACTS = Act.values();
    private static final Reason[] REASONS = Reason.values();

    private final Head head;
    private final long knownBy;
    private final LocalDate asOf;
    private final Columns columns;

    Snapshot(Head head, long knownBy, LocalDate asOf, Columns columns) {
        this.head = head;
        this.knownBy = knownBy;
        this.asOf = asOf;
        this.columns = columns;
    }

    /** Return a nursery as it stood on a day, as the book knows it now. */
    public static Snapshot of(BookView view, LocalDate asOf, Set<Part> parts) {
        Head head = view.head();
        return new Snapshot(head, head.order(), asOf, Streamed.columns(view, asOf, parts, Columns.NONE));
    }

    /**
     * Return a nursery as it stood on a day, as the book knew it when it ended with some entry.
     *
     * <p>Reads every entry up to that one and judges them anew, which takes about as long as their import.
     *
     * @param knownBy the recorded order of the last entry that counts, with all that was recorded at one go with it
     */
    public static Snapshot knownBy(BookView view, Judge judge, LocalDate asOf, long knownBy) {
        return new Snapshot(view.head(), knownBy, asOf, Retold.columns(view, judge, asOf, knownBy));
    }

    /** Return the recorded order of the last entry that was recorded at or before an instant, 0 where there is none. */
    public static long order(BookView view, Instant instant) {
        return view.ask(ORDER, Parameters.NONE.with("instant", CanonicalText.INSTANT.format(instant)))
                .iterator()
                .next()
                .whole("recorded_order")
                .orElse(0L);
    }

    /** Return this snapshot with more parts, read from the same book. */
    Snapshot with(BookView view, Set<Part> more) {
        return new Snapshot(head, knownBy, asOf, Streamed.columns(view, asOf, more, columns));
    }

    /** Return the day. */
    public LocalDate asOf() {
        return asOf;
    }

    /** Return where the book stood when this was read. */
    public Head head() {
        return head;
    }

    /** Return the recorded order of the last entry that counts. */
    public long knownBy() {
        return knownBy;
    }

    /** Return the parts that are there. */
    public Set<Part> parts() {
        Set<Part> parts = EnumSet.noneOf(Part.class);
        for (Part part : Part.values()) {
            if (columns.has(part)) {
                parts.add(part);
            }
        }
        return parts;
    }

    // ---- units ----

    /** Return the highest unit number; every number from 1 to it may stand for a unit. */
    public int lastUnit() {
        return columns.nature().length - 1;
    }

    /** Tell whether a unit had begun by the day. */
    public boolean isThere(int unit) {
        return unit > 0
                && unit < columns.nature().length
                && columns.nature()[unit] >= 0
                && Days.first(columns.begun()[unit]) <= asOf.toEpochDay();
    }

    /** Return what a unit is. */
    public Nature nature(int unit) {
        return NATURES[columns.nature()[unit]];
    }

    /** Tell whether a unit is one plant, or a branch, rather than many under one tag. */
    public boolean isSingle(int unit) {
        return columns.nature()[unit] != Nature.BATCH.ordinal();
    }

    /** Return when a unit began. */
    public When begun(int unit) {
        return Days.when(columns.begun()[unit]);
    }

    /** Return the first day on which a unit may have begun, in days since 1970. */
    public int begunDay(int unit) {
        return Days.first(columns.begun()[unit]);
    }

    // ---- links ----

    private Links links() {
        return columns.links().orElseThrow(() -> missing(Part.LINKS));
    }

    /** Return how many links there are. */
    public int linkCount() {
        return links().mother().length;
    }

    /** Return the first of the links from a unit to what it comes from; they are numbered without a gap. */
    public int firstUp(int unit) {
        return links().up()[unit];
    }

    /** Return the number after the last of the links from a unit to what it comes from. */
    public int endUp(int unit) {
        return links().up()[unit + 1];
    }

    /** Return how many links lead from a unit down to what was raised from it. */
    public int countDown(int unit) {
        return links().down()[unit + 1] - links().down()[unit];
    }

    /** Return one of the links that lead from a unit down to what was raised from it, by child; the first is 0. */
    public int down(int unit, int at) {
        return links().below()[links().down()[unit] + at];
    }

    /** Return the unit that comes from the other. */
    public int child(int link) {
        return links().child()[link];
    }

    /** Return the unit that its child comes from. */
    public int mother(int link) {
        return links().mother()[link];
    }

    /** Return how a child comes from its mother. */
    public Act act(int link) {
        return ACTS[links().act()[link]];
    }

    /** Return how many of the child's units come from the mother, {@link #NONE} where nobody said. */
    public int count(int link) {
        int count = links().count()[link];
        return count == 0 ? NONE : count;
    }

    /** Return when a link was made: when its child began. */
    public When day(int link) {
        return begun(child(link));
    }

    /** Return how a unit began that keeps the clone of no other; absent where it does keep one. */
    public Optional<Beginning> beginning(int unit) {
        int[] units = columns.beginningUnits().orElseThrow(() -> missing(Part.BEGINNINGS));
        int at = Arrays.binarySearch(units, unit);
        return at < 0 ? Optional.empty() : Optional.of(columns.beginnings().get(at));
    }

    /** Return the nursery as a graph without a copy: units are vertices, links are edges from mother to child. */
    public Graph<Integer, Integer> graph() {
        return new NurseryGraph(this);
    }

    // ---- standings ----

    /** Return how many units of a tag were pending, {@link #NONE} where nobody counted them. */
    public int pending(int unit) {
        return columns.pending().orElseThrow(() -> missing(Part.STANDINGS))[unit];
    }

    /** Return how many units of a tag were growing; of a sport, 1 on its plant. */
    public int growing(int unit) {
        return columns.growing().orElseThrow(() -> missing(Part.STANDINGS))[unit];
    }

    /** Return how many units were sold and have not come back. */
    public int sold(int unit) {
        return columns.sold().orElseThrow(() -> missing(Part.LEAVINGS))[unit];
    }

    /** Return why the last unit left that did so; absent where none did. */
    public Optional<Reason> left(int unit) {
        int reason = columns.left().orElseThrow(() -> missing(Part.LEAVINGS))[unit];
        return reason < 0 ? Optional.empty() : Optional.of(REASONS[reason]);
    }

    /** Return how units count for take. */
    public Cohorts cohorts() {
        return columns.cohorts().orElseThrow(() -> missing(Part.COHORTS));
    }

    /** Return what happened to units, turn by turn. */
    public Lives lives() {
        return columns.lives().orElseThrow(() -> missing(Part.LIVES));
    }

    // ---- words ----

    /**
     * Return the name that a unit bears by its own entries, as the place in {@link #cultivars()}, {@link #NONE} where it
     * bears none: the last that was determined, else the last that was said.
     */
    public int ownName(int unit) {
        int name = columns.names().orElseThrow(() -> missing(Part.NAMES))[unit];
        return name < 0 ? NONE : name >> 1;
    }

    /** Tell whether the name that a unit bears by its own entries was determined rather than said. */
    public boolean isDetermined(int unit) {
        int name = columns.names().orElseThrow(() -> missing(Part.NAMES))[unit];
        return name >= 0 && (name & 1) == 1;
    }

    /** Return every name that some unit was said or found to bear, in the order of their letters. */
    public List<CultivarName> cultivars() {
        return columns.cultivars();
    }

    private static Defect missing(Part part) {
        return new Defect("a snapshot without " + part);
    }

    /** Return how many bytes the columns take. */
    public long bytes() {
        return columns.bytes();
    }
}
