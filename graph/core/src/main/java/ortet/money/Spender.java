package ortet.money;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.entry.Acquired;
import ortet.entry.CuttingsStruck;
import ortet.entry.Divided;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Graded;
import ortet.entry.Mention.Role;
import ortet.entry.Task;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;

/**
 * Goes through the timelines of units and works out what was spent on them and who carries it.
 *
 * <p>What is spent on units under one tag is carried by all of them alike. Units that leave take with them what they carry:
 * to the tag under which they go on, to the customer, or, when they fail, to nobody. A unit is read once.
 */
final class Spender {
    private static final List<String> MATERIALS = List.of("container", "medium", "wrap", "hormone");

    private final BookView view;
    private final LocalDate asOf;
    private final Tariffs tariffs;
    private final Map<UnitNumber, Spending> known = new HashMap<>();
    private final Map<UnitNumber, UnitFacts> facts = new HashMap<>();
    private boolean coarse;

    Spender(BookView view, LocalDate asOf, Tariffs tariffs) {
        this.view = view;
        this.asOf = asOf;
        this.tariffs = tariffs;
    }

    /** Tell whether any day that was met is known to the month or the year only. */
    boolean isCoarse() {
        return coarse;
    }

    UnitFacts facts(UnitNumber unit) {
        return facts.computeIfAbsent(
                unit, number -> view.facts(number).orElseThrow(() -> new Defect("no facts of unit " + number.value())));
    }

    /** Return the tag that a unit bore on the day. */
    Tag tag(UnitNumber unit) {
        List<UnitFacts.TagUse> uses = facts(unit).tags();
        return uses.stream()
                .filter(use -> !use.day().first().isAfter(asOf))
                .reduce((before, after) -> after)
                .orElse(uses.get(0))
                .tag();
    }

    /** Return what was spent on a unit up to the day. */
    Spending of(UnitNumber unit) {
        Spending spending = known.get(unit);
        if (spending == null) {
            spending = new Walk(unit).walk();
            known.put(unit, spending);
        }
        return spending;
    }

    /** What happened by one entry; the entry itself is missing where it is about other units. */
    private record Moment(long order, LocalDate day, Optional<Event> event) {}

    /** Time on a bench, with what one day of it costs. */
    private record Stay(LocalDate from, LocalDate until, long by, Charge day) {}

    /** Goes through the timeline of one unit. */
    private final class Walk {
        private final UnitNumber unit;
        private final UnitFacts its;
        private final Tag tag;
        private final Spending spending = new Spending();
        private Optional<Stay> stay = Optional.empty();

        private LocalDate now = LocalDate.MIN;
        private int growing;
        private Optional<Place> place = Optional.empty();
        private Optional<String> container = Optional.empty();
        private Optional<String> size = Optional.empty();
        private long stoodBy;

        Walk(UnitNumber unit) {
            this.unit = unit;
            this.its = facts(unit);
            this.tag = tag(unit);
        }

        Spending walk() {
            for (Moment moment : moments()) {
                stand(moment.day());
                pass(moment);
            }
            stand(asOf);
            flush();
            return spending;
        }

        private List<Moment> moments() {
            List<Moment> moments = new ArrayList<>();
            LocalDate last = LocalDate.MIN;
            for (Event event : History.of(view, unit, asOf)) {
                coarse |= !event.day().isExact();
                LocalDate day = event.day().isExact() || event.begins()
                        ? event.day().first()
                        : event.day().last();
                last = latest(last, earliest(day, asOf));
                moments.add(new Moment(event.order(), last, Optional.of(event)));
            }
            Map<Long, LocalDate> others = new TreeMap<>();
            for (Leaving leaving : its.leavings()) {
                boolean own = moments.stream().anyMatch(moment -> moment.order() == leaving.order());
                if (!own && !leaving.day().first().isAfter(asOf)) {
                    others.put(leaving.order(), leaving.day().first());
                }
            }
            others.forEach((order, day) -> {
                int at = 0;
                while (at < moments.size() && !comesAfter(moments.get(at), day)) {
                    at++;
                }
                LocalDate placed =
                        at == 0 ? day : latest(day, moments.get(at - 1).day());
                moments.add(at, new Moment(order, placed, Optional.empty()));
            });
            return moments;
        }

        /** Tell whether a moment comes after a graft failed on a day and gave its rootstock back. */
        private boolean comesAfter(Moment moment, LocalDate day) {
            int byDay = moment.day().compareTo(day);
            return byDay > 0
                    || byDay == 0
                            && moment.event()
                                    .filter(event -> event.entry().kind().rank() > EntryKind.FAILED.rank())
                                    .isPresent();
        }

        private void pass(Moment moment) {
            Optional<Standing> after = its.standings().stream()
                    .filter(standing -> standing.order() == moment.order())
                    .reduce((first, second) -> second);
            boolean begins = moment.event().filter(Event::begins).isPresent();
            if (begins) {
                after.ifPresent(this::setUnits);
                spending.ever = spending.units;
                bring(moment.order());
            }
            List<Leaving> leavings = its.leavings().stream()
                    .filter(leaving -> leaving.order() == moment.order())
                    .toList();
            Pool withThem = new Pool();
            moment.event().ifPresent(event -> charge(event, leavings, withThem));
            if (takesSome(moment)) {
                remember(moment.order());
            }
            leavings.forEach(leaving -> leave(leaving, withThem));
            if (!begins) {
                after.ifPresent(standing -> {
                    flush();
                    Optional<Integer> before = spending.units;
                    setUnits(standing);
                    counted(before);
                });
            }
            its.stays().stream().filter(one -> one.order() == moment.order()).forEach(one -> {
                flush();
                place = Optional.of(one.place());
                stoodBy = moment.order();
            });
            its.pottings().stream().filter(one -> one.order() == moment.order()).forEach(one -> {
                flush();
                container = one.container();
                stoodBy = moment.order();
            });
            moment.event().filter(event -> event.entry() instanceof Graded).ifPresent(event -> {
                flush();
                size = Optional.of(((Graded) event.entry()).size());
            });
            if (begins && stoodBy == 0) {
                stoodBy = moment.order();
            }
        }

        /** Count those who were found, or for the first time all. */
        private void counted(Optional<Integer> before) {
            if (before.isEmpty()) {
                spending.ever = spending.units;
                spending.failures = 0;
            } else if (spending.units.isPresent()) {
                int more = spending.units.get() - before.get();
                spending.ever = spending.ever.map(ever -> ever + more);
            }
        }

        private void setUnits(Standing standing) {
            growing = standing.growing();
            spending.units = standing.pending().map(pending -> pending + standing.growing());
        }

        // ---- what it brings with it ----

        private void bring(long order) {
            int units = spending.units.orElse(0);
            for (Link link : its.links()) {
                if (link.order() != order && link.order() != its.begun().order()) {
                    continue;
                }
                switch (link.act()) {
                    case DRAWN_FROM, SPLIT_FROM, MERGED_FROM ->
                        bring(
                                link.mother(),
                                link.order(),
                                BigFraction.of(link.count().orElse(units)),
                                false);
                    case ROOTSTOCK_OF -> bring(link.mother(), link.order(), BigFraction.of(units), true);
                    case DIVIDED_FROM -> bringPart(link);
                    case ONE_OF -> spend(notKnown(link, "it is one of several, and what they cost before is not its"));
                    default -> {}
                }
            }
        }

        private void bring(UnitNumber from, long order, BigFraction units, boolean isStock) {
            Optional<Pool> each = of(from).perUnit.getOrDefault(order, Optional.of(new Pool()));
            if (each.isEmpty()) {
                spend(new CostLine(
                        tag,
                        order,
                        now,
                        Optional.empty(),
                        Charge.notPriced(
                                Charge.Sort.WORK,
                                "its share of " + tag(from),
                                BigFraction.ZERO,
                                "nobody had counted the units of " + tag(from),
                                List.of())));
            } else if (isStock) {
                spending.spent.add(each.get(), units, from);
                spending.here.add(each.get(), units, from);
            } else {
                spending.spent.add(each.get(), units);
                spending.here.add(each.get(), units);
            }
        }

        /** A division brings an equal part of what its mother carried, if she was used up. */
        private void bringPart(Link link) {
            boolean usedUp = facts(link.mother()).leavings().stream()
                    .anyMatch(leaving -> leaving.order() == link.order() && leaving.reason() == Reason.USED_UP);
            if (usedUp) {
                int all = of(link.mother()).unitsAt.getOrDefault(link.order(), 1);
                int parts = view.entry(link.order())
                        .map(recorded -> recorded.entry().tags().size())
                        .orElse(1);
                bring(link.mother(), link.order(), BigFraction.of(all, parts), false);
            }
        }

        private CostLine notKnown(Link link, String why) {
            return new CostLine(
                    tag,
                    link.order(),
                    now,
                    Optional.empty(),
                    Charge.notPriced(Charge.Sort.WORK, "before it was tagged", BigFraction.ZERO, why, List.of()));
        }

        // ---- what is spent on it ----

        private void spend(CostLine line) {
            spending.spent.add(line);
            spending.here.add(line);
        }

        private void charge(Event event, List<Leaving> leavings, Pool withThem) {
            boolean itself = event.begins() || event.roles().contains(Role.SUBJECT);
            Optional<Integer> units = spending.units;
            if (!itself || units.filter(there -> there <= 0).isPresent()) {
                return;
            }
            boolean sells = event.entry().kind() == EntryKind.SOLD;
            if (sells) {
                units = Optional.of(leavings.stream().mapToInt(Leaving::count).sum())
                        .filter(count -> count > 0);
            }
            List<Charge> charges = new ArrayList<>();
            Map<String, String> texts = texts(event);
            Optional<String> pot = Optional.ofNullable(texts.get("container"));
            Optional<Integer> counted = units;
            Tariff tariff = tariffs.on(now);
            Task.of(event.entry().kind()).ifPresent(task -> charges.addAll(tariff.work(task, pot, counted)));
            if (event.begins()) {
                Task.of(event.entry().kind())
                        .ifPresent(task -> charges.addAll(tariff.visits(task, goings(event.entry()))));
            }
            if (!(event.entry() instanceof Acquired)) {
                for (String column : MATERIALS) {
                    Optional.ofNullable(texts.get(column))
                            .ifPresent(material -> charges.addAll(tariff.material(material, pot, counted)));
                }
            }
            for (Charge charge : charges) {
                CostLine line = new CostLine(tag, event.order(), now, Optional.empty(), charge);
                if (sells) {
                    spending.spent.add(line);
                    withThem.add(line);
                } else {
                    spend(line);
                }
            }
        }

        /** Return the share of the goings to mothers that one tag of an entry carries: all its tags carry them alike. */
        private static BigFraction goings(Entry entry) {
            int mothers = entry instanceof CuttingsStruck struck
                    ? Math.max(1, struck.mothers().size())
                    : 1;
            return BigFraction.of(mothers, Math.max(1, entry.tags().size()));
        }

        private Map<String, String> texts(Event event) {
            Map<String, String> texts = new LinkedHashMap<>();
            for (String column : MATERIALS) {
                Form.write(event.entry(), column).ifPresent(text -> texts.put(column, text));
            }
            return texts;
        }

        /** Let it stand where it stands up to a day. */
        private void stand(LocalDate until) {
            LocalDate from = now;
            now = until;
            boolean stands = !from.equals(LocalDate.MIN)
                    && spending.units.map(units -> units > 0).orElse(true)
                    && its.nature() != Nature.SPORT
                    && !(its.nature() == Nature.LAYER && growing == 0);
            if (!stands) {
                return;
            }
            LocalDate begin = from;
            while (begin.isBefore(until)) {
                LocalDate end = tariffs.changeBetween(begin, until).orElse(until);
                stand(begin, end);
                begin = end;
            }
        }

        /** Go on standing, under the same tariff, where nothing that the cost depends on has changed; else stand anew. */
        private void stand(LocalDate from, LocalDate until) {
            Charge day = tariffs.on(from).bench(place, container, size, spending.units, 1);
            boolean goesOn = stay.filter(known -> known.by() == stoodBy
                            && known.until().equals(from)
                            && known.day().equals(day))
                    .isPresent();
            LocalDate since = goesOn ? stay.orElseThrow().from() : from;
            if (!goesOn) {
                flush();
            }
            stay = Optional.of(new Stay(since, until, stoodBy, day));
        }

        /** Put the time that it stood so far among what was spent, before who carries it changes. */
        private void flush() {
            stay.ifPresent(known -> spend(new CostLine(
                    tag,
                    known.by(),
                    known.from(),
                    Optional.of(known.until()),
                    tariffs.on(known.from())
                            .bench(
                                    place,
                                    container,
                                    size,
                                    spending.units,
                                    known.until().toEpochDay() - known.from().toEpochDay()))));
            stay = Optional.empty();
        }

        // ---- who takes it away ----

        private boolean takesSome(Moment moment) {
            return moment.event()
                    .filter(event -> Set.of(Role.SOURCE, Role.STOCK, Role.MERGED).stream()
                                    .anyMatch(event.roles()::contains)
                            || event.roles().contains(Role.MOTHER) && event.entry() instanceof Divided)
                    .isPresent();
        }

        private void remember(long order) {
            flush();
            spending.units.ifPresent(units -> spending.unitsAt.put(order, units));
            spending.perUnit.put(
                    order,
                    spending.units
                            .filter(units -> units > 0)
                            .map(units -> spending.here.times(BigFraction.of(1, units))));
        }

        private void leave(Leaving leaving, Pool withThem) {
            flush();
            int count = leaving.count();
            if (leaving.reason() == Reason.RETURNED || leaving.reason() == Reason.UNWORKED) {
                Pool back = (leaving.reason() == Reason.RETURNED ? spending.sold : spending.worked).back(count);
                spending.here.add(back, BigFraction.ONE);
                spending.units = spending.units.map(units -> units + count);
                return;
            }
            Pool taken = new Pool();
            if (spending.units.filter(units -> units > 0).isPresent()) {
                int there = spending.units.get();
                taken = spending.here.take(BigFraction.of(Math.min(count, there), there));
                spending.units = Optional.of(Math.max(0, there - count));
            }
            switch (leaving.reason()) {
                case SOLD -> {
                    taken.add(withThem, BigFraction.ONE);
                    spending.sold.add(taken, count);
                }
                case WORKED -> spending.worked.add(taken, count);
                case FAILED, WITHDRAWN, NOT_SEEN -> {
                    spending.failures += count;
                    spending.spent.remove(taken.takeStocks(stock -> cameBack(stock, leaving.order())));
                    spending.failed.add(taken, BigFraction.ONE);
                }
                default -> {}
            }
        }

        private boolean cameBack(UnitNumber stock, long order) {
            return facts(stock).leavings().stream()
                    .anyMatch(leaving -> leaving.order() == order && leaving.reason() == Reason.UNWORKED);
        }
    }

    private static LocalDate latest(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    private static LocalDate earliest(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }
}
