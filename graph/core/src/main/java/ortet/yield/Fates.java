package ortet.yield;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import ortet.book.Act;
import ortet.book.UnitFacts.Method;
import ortet.nursery.ClonalOrder;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;

/**
 * What became of the units of every cohort after they had taken, fates through severing, drawing, splitting and
 * merging: columns of whole numbers, one place for each row of {@link Cohorts}.
 *
 * <p>Trays that were split, and batches that were merged when some of their units were growing already, are one
 * <b>account</b>: within it nobody knows which plant was struck in which tray, so it is counted as a whole, in the place of
 * one of its rows. Where units of an account went into a batch with plants that count for no rate, or where a recount found
 * more than had taken, the account is {@link #isBlurred blurred} and counted nowhere. No unit is ever counted in shares.
 *
 * <p>O(V + E) time, and 12 bytes for each unit, 40 for each row.
 */
final class Fates {
    /** What a snapshot must have. */
    static final Set<Part> PARTS = EnumSet.of(Part.LINKS, Part.COHORTS, Part.NAMES, Part.STANDINGS, Part.LIVES);

    /** How plants that have taken stand as to establishing. */
    enum Established {
        /** Seen alive when it was due or later. */
        YES,
        /** Lost, or culled for quality, before it was ever seen alive when due. */
        NO,
        /** Left in good health before it was due: sold, surplus, worked or used up. */
        CENSORED,
        /** Not potted yet, or not long enough ago. */
        TOO_YOUNG,
        /** Due, and nobody has written that it was seen. */
        UNSEEN
    }

    /** How plants that have taken stand as to being fit for sale. */
    enum Saleable {
        /** Graded in a size class and not culled for quality since, or sold. */
        YES,
        /** Lost before it was graded, or culled for quality. */
        NO,
        /** Left without being graded: surplus, worked or used up. */
        CENSORED,
        /** Growing on. */
        GROWING_ON
    }

    private static final Established[] ESTABLISHED = Established.values();
    private static final int FIRST = 1024;
    private static final Saleable[] SALEABLE = Saleable.values();
    private static final int HOW_BITS = 3;
    private static final int SALE_BITS = 2;
    private static final int NONE = Integer.MIN_VALUE;
    private static final int NOBODY = -1;
    private static final int FOREIGN = -2;
    private static final int NOT_YET = -3;

    private final Samples samples;
    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Establishment establishment;
    private final int asOf;

    private final int[] own;
    private final int[] rows;
    private final int[] accounts;
    private final int[] start;
    private final int[] established;
    private final int[] graded;
    private final int[][] ofEstablished;
    private final int[][] ofSaleable;
    private final int[][] bySize;
    private final boolean[] blurred;
    private int[] eventRow = new int[FIRST];
    private int[] eventDay = new int[FIRST];
    private int[] eventWhat = new int[FIRST];
    private int[] eventUnit = new int[FIRST];
    private int[] eventSale = new int[FIRST];
    private int[] eventEnd = new int[FIRST];
    private int events;

    private Fates(Samples samples, Establishment establishment) {
        this.samples = samples;
        this.snapshot = samples.snapshot();
        this.cohorts = samples.cohorts();
        this.lives = snapshot.lives();
        this.establishment = establishment;
        this.asOf = Math.toIntExact(snapshot.asOf().toEpochDay());
        int units = snapshot.lastUnit() + 1;
        int size = cohorts.size();
        own = filled(units, NOBODY);
        rows = filled(units, NOT_YET);
        start = filled(units, NONE);
        established = filled(units, NONE);
        graded = filled(units, NONE);
        accounts = new int[size];
        ofEstablished = new int[Established.values().length][size];
        ofSaleable = new int[Saleable.values().length][size];
        bySize = new int[lives.sizes().size() + 1][size];
        blurred = new boolean[size];
        for (int row = 0; row < size; row++) {
            accounts[row] = row;
            if (samples.isThere(row)) {
                own[cohorts.unit(row)] = row;
            }
        }
    }

    private static int[] filled(int size, int value) {
        int[] column = new int[size];
        Arrays.fill(column, value);
        return column;
    }

    /** Follow every cohort of a snapshot to its day. */
    static Fates of(Samples samples, Establishment establishment) {
        Fates fates = new Fates(samples, establishment);
        ClonalOrder.settle(fates.snapshot, unit -> fates.rows[unit] != NOT_YET, fates::settle);
        fates.close();
        return fates;
    }

    // ---- answers ----

    /** Return the row that stands for the account of a row: the same for all rows of one account. */
    int account(int row) {
        int at = row;
        while (accounts[at] != at) {
            accounts[at] = accounts[accounts[at]];
            at = accounts[at];
        }
        return at;
    }

    /** Return the row whose account a unit belongs to; negative where it belongs to none, or nobody can tell. */
    int row(int unit) {
        return rows[unit];
    }

    /** Tell whether it is not known what became of the units of an account. */
    boolean isBlurred(int account) {
        return blurred[account];
    }

    /** Return how many plants of an account stand so as to establishing. */
    int count(int account, Established how) {
        return ofEstablished[how.ordinal()][account];
    }

    /** Return how many plants of an account stand so as to being fit for sale. */
    int count(int account, Saleable how) {
        return ofSaleable[how.ordinal()][account];
    }

    /** Return how many plants of an account are or were saleable in a size class; in none where the place is after all. */
    int saleable(int account, int size) {
        return bySize[size][account];
    }

    /** Return how many events there are: plants of one tag that came to the same end, or to none yet, on one day. */
    int events() {
        return events;
    }

    /** Return the row whose account the plants of an event belong to. */
    int eventRow(int event) {
        return eventRow[event];
    }

    /** Return how the plants of an event stand as to establishing. */
    Established eventHow(int event) {
        return ESTABLISHED[eventWhat[event] & (1 << HOW_BITS) - 1];
    }

    /** Return how many plants an event is about; below 0 for those that came back. */
    int eventCount(int event) {
        return eventWhat[event] >> HOW_BITS;
    }

    /**
     * Return the day, in days since 1970: on which they were due, where they established; lost or culled, where they did
     * not; else the last on which it was known that nothing had happened to them yet.
     */
    int eventDay(int event) {
        return eventDay[event];
    }

    /** Return the unit whose tag the plants of an event bore. */
    int eventUnit(int event) {
        return eventUnit[event];
    }

    /** Return how the plants of an event stand as to being fit for sale. */
    Saleable eventSale(int event) {
        return SALEABLE[eventSale[event] & (1 << SALE_BITS) - 1];
    }

    /** Return the size class of the plants of an event; that after all of them where they have none. */
    int eventSize(int event) {
        return eventSale[event] >> SALE_BITS;
    }

    /**
     * Return the day, in days since 1970: on which they came into their size class, or were sold without one, where they are
     * fit for sale; on which they left, where they are not; the day of the snapshot, where they grow on.
     */
    int eventEnd(int event) {
        return eventEnd[event];
    }

    // ---- following ----

    private void settle(int unit) {
        rows[unit] = own[unit];
        if (!snapshot.isThere(unit)) {
            return;
        }
        boolean rooted = false;
        int given = 0;
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            switch (snapshot.act(link)) {
                case DRAWN_FROM -> {
                    rooted = true;
                    join(unit, rows[snapshot.mother(link)]);
                    inherit(unit, snapshot.mother(link), false);
                }
                case SPLIT_FROM -> {
                    rooted |= growing(unit, link) > 0;
                    join(unit, rows[snapshot.mother(link)]);
                    inherit(unit, snapshot.mother(link), false);
                }
                case MERGED_FROM -> given += Math.max(0, snapshot.count(link));
                default -> {}
            }
        }
        int undecided = own[unit] == NOBODY ? 0 : Math.max(0, cohorts.count(own[unit]));
        if (given > undecided) {
            rooted = true;
            merge(unit, given - undecided);
        }
        if (rows[unit] >= 0) {
            live(unit, rooted);
        }
    }

    /** Return how many of the units that came by splitting were growing. */
    private int growing(int unit, int link) {
        int undecided = own[unit] == NOBODY ? 0 : Math.max(0, cohorts.count(own[unit]));
        return Math.max(0, snapshot.count(link)) - undecided;
    }

    private void join(int unit, int row) {
        if (row == NOBODY || row == NOT_YET) {
            return;
        }
        if (row == FOREIGN || rows[unit] == FOREIGN) {
            blurOwn(unit);
        } else if (rows[unit] < 0) {
            rows[unit] = row;
        } else {
            accounts[account(row)] = account(rows[unit]);
        }
    }

    private void blurOwn(int unit) {
        if (own[unit] >= 0) {
            blurred[account(own[unit])] = true;
        }
        rows[unit] = FOREIGN;
    }

    /** Join the accounts of batches that were merged while some of their units were growing. */
    private void merge(int unit, int growing) {
        boolean foreign = false;
        boolean first = true;
        int told = 0;
        for (int pass = 0; pass < 2; pass++) {
            for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
                if (snapshot.act(link) != Act.MERGED_FROM) {
                    continue;
                }
                int source = snapshot.mother(link);
                int grew = Math.max(0, snapshot.count(link)) - passedOn(source, snapshot.begunDay(unit));
                if (pass == 0) {
                    told += Math.max(0, grew);
                } else if (grew > 0 || told != growing) {
                    foreign |= rows[source] == NOBODY || rows[source] == FOREIGN || rows[source] == NOT_YET;
                    join(unit, rows[source]);
                    inherit(unit, source, !first);
                    first = false;
                }
            }
        }
        if (foreign) {
            if (rows[unit] >= 0) {
                blurred[account(rows[unit])] = true;
            }
            rows[unit] = FOREIGN;
        }
    }

    /** Return how many undecided units a batch gave when it was merged on a day. */
    private int passedOn(int source, int day) {
        for (int at = lives.end(source) - 1; at >= lives.first(source); at--) {
            if (lives.turn(at) == Turn.PASSED_ON) {
                return lives.day(at) == day ? lives.value(at) : 0;
            }
        }
        return 0;
    }

    /** Take over how the plants stood when they came from another tag; of several sources the latest day counts. */
    private void inherit(int unit, int source, boolean more) {
        int day = snapshot.begunDay(unit);
        start[unit] = both(start[unit], start[source], day, more);
        established[unit] = both(established[unit], established[source], day, more);
        graded[unit] = both(graded[unit], graded[source], day, more);
    }

    private static int both(int mine, int theirs, int day, boolean more) {
        int then = theirs != NONE && theirs <= day ? theirs : NONE;
        if (!more) {
            return then;
        }
        return mine == NONE || then == NONE ? NONE : Math.max(mine, then);
    }

    /** Go through the turns of a unit and count what became of its plants. */
    private void live(int unit, boolean grew) {
        boolean rooted = grew;
        if (grew && start[unit] == NONE && isDrawn(unit)) {
            start[unit] = Math.toIntExact(snapshot.begun(unit).last().toEpochDay());
        }
        int due = start[unit] == NONE ? NONE : establishment.due(start[unit]);
        int size = lives.sizes().size();
        Established sold = Established.CENSORED;
        Established worked = Established.CENSORED;
        int soldSize = size;
        int soldDay = NONE;
        int workedDay = NONE;
        int soldEnd = NONE;
        int workedEnd = NONE;
        int sized = graded[unit];
        int known = start[unit];
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            Turn turn = lives.turn(at);
            int day = lives.day(at);
            rooted |= turn == Turn.TAKEN;
            if (start[unit] == NONE && rooted && (turn == Turn.POTTED || turn == Turn.TAKEN && standsAlready(unit))) {
                start[unit] = lives.lastDay(at);
                due = establishment.due(start[unit]);
            }
            if (turn.showsLife() && due != NONE && day >= due && established[unit] == NONE) {
                established[unit] = day;
            }
            switch (turn) {
                case GRADED -> {
                    graded[unit] = graded[unit] == NONE ? day : graded[unit];
                    sized = sized == NONE || size != lives.value(at) ? day : sized;
                    size = lives.value(at);
                }
                case SOLD -> {
                    sold = left(unit, day, due);
                    soldSize = size;
                    soldDay = when(sold, day, due);
                    soldEnd = sized == NONE ? day : sized;
                    add(unit, sold, soldDay, Saleable.YES, size, soldEnd, lives.value(at));
                }
                case RETURNED -> add(unit, sold, soldDay, Saleable.YES, soldSize, soldEnd, -lives.value(at));
                case LOST -> {
                    Established how = established[unit] == NONE ? Established.NO : Established.YES;
                    Saleable sale = graded[unit] == NONE ? Saleable.NO : Saleable.YES;
                    add(unit, how, when(how, day, due), sale, size, sized == NONE ? day : sized, lives.value(at));
                }
                case CULLED -> {
                    Established how = left(unit, day, due) == Established.YES ? Established.YES : Established.NO;
                    add(unit, how, when(how, day, due), Saleable.NO, size, day, lives.value(at));
                }
                case SURPLUS, USED_UP -> {
                    Established how = left(unit, day, due);
                    add(
                            unit,
                            how,
                            when(how, day, due),
                            ungraded(unit),
                            size,
                            sized == NONE ? day : sized,
                            lives.value(at));
                }
                case WORKED -> {
                    worked = left(unit, day, due);
                    workedDay = when(worked, day, due);
                    workedEnd = sized == NONE ? day : sized;
                    add(unit, worked, workedDay, ungraded(unit), size, workedEnd, lives.value(at));
                }
                case UNWORKED -> add(unit, worked, workedDay, ungraded(unit), size, workedEnd, -lives.value(at));
                default -> {}
            }
            if (turn.showsLife() || turn == Turn.TAKEN) {
                known = Math.max(known, day);
            }
        }
        int there = snapshot.growing(unit);
        if (there > 0) {
            Established how = established[unit] != NONE
                    ? Established.YES
                    : due == NONE || asOf < due ? Established.TOO_YOUNG : Established.UNSEEN;
            int day = how == Established.YES ? due : how == Established.UNSEEN || known != NONE ? known : begun(unit);
            add(
                    unit,
                    how,
                    day,
                    graded[unit] == NONE ? Saleable.GROWING_ON : Saleable.YES,
                    size,
                    sized == NONE ? asOf : sized,
                    there);
        }
    }

    private int begun(int unit) {
        return snapshot.begunDay(unit);
    }

    /** Return the day that counts for an end: that on which plants were due, where they established. */
    private static int when(Established how, int day, int due) {
        return how == Established.YES && due != NONE ? due : day;
    }

    private boolean isDrawn(int unit) {
        for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
            if (snapshot.act(link) == Act.DRAWN_FROM) {
                return true;
            }
        }
        return false;
    }

    /** Tell whether what takes stands on roots of its own from that day on: a severed layer, and a graft on its stock. */
    private boolean standsAlready(int unit) {
        return own[unit] >= 0
                && (cohorts.method(own[unit]) == Method.LAYER || cohorts.method(own[unit]) == Method.GRAFT);
    }

    private Established left(int unit, int day, int due) {
        if (established[unit] != NONE) {
            return Established.YES;
        }
        return due != NONE && day >= due ? Established.YES : Established.CENSORED;
    }

    private Saleable ungraded(int unit) {
        return graded[unit] == NONE ? Saleable.CENSORED : Saleable.YES;
    }

    private void add(int unit, Established how, int day, Saleable sale, int size, int end, int count) {
        int row = rows[unit];
        if (events == eventRow.length) {
            eventRow = Arrays.copyOf(eventRow, 2 * events);
            eventDay = Arrays.copyOf(eventDay, 2 * events);
            eventWhat = Arrays.copyOf(eventWhat, 2 * events);
            eventUnit = Arrays.copyOf(eventUnit, 2 * events);
            eventSale = Arrays.copyOf(eventSale, 2 * events);
            eventEnd = Arrays.copyOf(eventEnd, 2 * events);
        }
        eventRow[events] = row;
        eventUnit[events] = unit;
        eventSale[events] = size << SALE_BITS | sale.ordinal();
        eventEnd[events] = end;
        eventDay[events] = day;
        eventWhat[events++] = count << HOW_BITS | how.ordinal();
        ofEstablished[how.ordinal()][row] += count;
        ofSaleable[sale.ordinal()][row] += count;
        if (sale == Saleable.YES) {
            bySize[size][row] += count;
        }
    }

    /** Put the sums of every account in one place, and find the accounts of which something is missing or too much. */
    private void close() {
        int[] taken = new int[accounts.length];
        for (int row = 0; row < accounts.length; row++) {
            int account = account(row);
            taken[account] += cohorts.taken(row);
            blurred[account] |= blurred[row];
            if (account != row) {
                gather(ofEstablished, row, account);
                gather(ofSaleable, row, account);
                gather(bySize, row, account);
            }
        }
        for (int account = 0; account < accounts.length; account++) {
            int told = 0;
            for (int[] column : ofEstablished) {
                told += column[account];
            }
            blurred[account] |= account(account) == account && told != taken[account];
        }
    }

    private static void gather(int[][] columns, int row, int account) {
        for (int[] column : columns) {
            column[account] += column[row];
            column[row] = 0;
        }
    }
}
