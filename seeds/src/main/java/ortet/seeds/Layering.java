package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import ortet.entry.Carrier;
import ortet.entry.Cause;
import ortet.entry.Condition;
import ortet.entry.EntryKind;
import ortet.entry.Remainder;
import ortet.entry.Rest;
import ortet.entry.Rework;
import ortet.entry.Roots;
import ortet.entry.Wound;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.DayBook.Row;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;
import ortet.value.Decimal;
import ortet.value.Strength;

/** Air layers: set in spring, looked at, ringed or wrapped again, severed when there are roots. */
final class Layering {
    /** The year in which the strong hormone had gone off. */
    static final int BAD_YEAR = 2016;

    private static final List<String> BRANCHES = List.of(
            "lowest left branch",
            "lowest right branch",
            "second left branch",
            "second right branch",
            "back branch",
            "front branch",
            "third branch",
            "leader",
            "twin stem");

    private final Nursery nursery;
    private final Growing growing;
    private final Chance chance;
    private final Map<Integer, Double> seasons = new TreeMap<>();

    Layering(Nursery nursery, Growing growing, Chance chance) {
        this.nursery = nursery;
        this.growing = growing;
        this.chance = chance;
    }

    /** A hormone as it stands on the shelf, and what it adds to the log odds. */
    private record Dip(String hormone, Optional<Strength> strength, Optional<Carrier> carrier, double effect) {
        static final Dip NONE = new Dip("", Optional.empty(), Optional.empty(), -0.45);
        static final Dip MILD = new Dip("IBA", Optional.of(Strength.parse("0.3%")), Optional.of(Carrier.POWDER), 0.05);
        static final Dip STRONG =
                new Dip("IBA", Optional.of(Strength.parse("0.8%")), Optional.of(Carrier.LIQUID), 0.35);
        static final Dip GEL = new Dip("IBA", Optional.of(Strength.parse("3000 ppm")), Optional.of(Carrier.GEL), 0.1);
        static final Dip PASTE = new Dip("NAA", Optional.of(Strength.parse("0.2%")), Optional.of(Carrier.PASTE), 0.0);
    }

    /** What is set on one mother on one day. */
    record Session(Unit mother, Hand by, List<Unit> layers, List<Row> rows) {
        List<Unit> on() {
            return layers.stream().filter(layer -> layer.pending == 1).toList();
        }
    }

    /** Return how many layers a mother bears this time: five on a well-branched one is usual (common practice). */
    int usualCount() {
        return chance.happens(0.45) ? 5 : Math.max(2, Math.min(9, (int) StrictMath.round(5.1 + 1.6 * chance.normal())));
    }

    /** Set layers and plan all that follows. */
    Session set(Unit mother, int count) {
        Session session = set(mother, count, nursery.hand(Work.BENCH, chance));
        plan(session);
        return session;
    }

    /** Set layers and leave what follows to whoever asked. */
    Session set(Unit mother, int count, Hand by) {
        List<Unit> layers = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        Dip dip = dip();
        String medium = chance.any("sphagnum moss", "sphagnum moss", "sphagnum moss", "moss and pumice", "coir");
        String wrap = chance.any("black film", "black film", "black film", "clear film and foil", "split pot");
        Wound wound = chance.happens(0.8)
                ? Wound.FULL_RING
                : chance.any(Wound.RING_WITH_BRIDGE, Wound.RING_WITH_BRIDGE, Wound.TONGUE, Wound.TOURNIQUET);
        // nothing is set on a branch below a layer that is still on: it would starve
        List<Unit> there = new ArrayList<>(mother.layersOn());
        List<String> taken = there.stream().map(layer -> layer.branch).toList();
        Deque<String> branches = new ArrayDeque<>(chance.shuffled(BRANCHES));
        branches.removeIf(taken::contains);
        int left = count;
        while (left > 0) {
            int here = Math.min(left, chance.any(1, 1, 2, 2, 3, 4, 5));
            left -= here;
            double most = Math.max(9, Math.min(26, mother.stemMm * 0.62));
            double stem = 6 + (most - 6) * chance.share();
            double ring = stem * (0.95 + 0.55 * chance.share());
            // now and then one more on a branch that bears last year's, further out
            Optional<Unit> lower = there.stream()
                    .filter(layer -> here == 1 && !layer.branch.isEmpty() && chance.happens(0.2))
                    .max(Comparator.comparingInt(layer -> layer.woundMm));
            Optional<Integer> highest = lower.map(low -> mother.layersOn().stream()
                    .filter(layer -> layer.branch.equals(low.branch))
                    .mapToInt(layer -> layer.woundMm)
                    .max()
                    .orElseThrow());
            lower.ifPresent(low -> there.removeIf(layer -> layer.branch.equals(low.branch)));
            String branch = lower.map(low -> low.branch).orElseGet(() -> branches.isEmpty() ? "" : branches.remove());
            int height = highest.map(mm -> mm + 150).orElseGet(() -> 50 * chance.between(4, 24));
            UnaryOperator<Draft> rest = draft -> draft.set("branch", branch)
                    .set("above", lower.map(low -> low.tag))
                    .set("height_mm", height)
                    .set("branch_order", chance.any(1, 1, 1, 2))
                    .set("medium", medium)
                    .set("wrap", wrap);
            int before = layers.size();
            rows.add(set(mother, here, by, stem, ring, wound, dip, rest, layers));
            layers.subList(before, layers.size()).forEach(layer -> {
                layer.branch = branch;
                layer.woundMm = height;
            });
        }
        return new Session(mother, by, layers, rows);
    }

    private Dip dip() {
        double draw = chance.share();
        return draw < 0.2
                ? Dip.NONE
                : draw < 0.6 ? Dip.MILD : draw < 0.84 ? Dip.STRONG : draw < 0.93 ? Dip.GEL : Dip.PASTE;
    }

    private Row set(
            Unit mother,
            int count,
            Hand by,
            double stemMm,
            double ringMm,
            Wound wound,
            Dip dip,
            UnaryOperator<Draft> more,
            List<Unit> layers) {
        if (!mother.givesWood()) {
            throw new IllegalStateException(mother + " gives no wood");
        }
        boolean spoilt = nursery.year() == BAD_YEAR && dip == Dip.STRONG;
        double odds = Chance.logOdds(mother.variety.layer())
                + mother.vigour
                + by.skill()
                + season(nursery.year())
                + (spoilt ? -2.4 : dip.effect())
                + (wound == Wound.FULL_RING ? 0.1 : wound == Wound.TOURNIQUET ? -0.5 : -0.25);
        List<Unit> those = new ArrayList<>();
        for (Tag tag : nursery.nextTags("L", count)) {
            Unit layer = nursery.unit(Unit.Nature.LAYER, tag, mother.variety);
            layer.pending = 1;
            layer.mother = Optional.of(mother);
            layer.generation = mother.generation + 1;
            layer.vigour = mother.vigour;
            layer.stemMm = stemMm;
            layer.heightMm = 200 + 20 * stemMm * chance.share();
            layer.takes = chance.happens(Chance.probability(odds));
            double days = mother.variety.daysToRoot() * StrictMath.exp(0.22 * chance.normal() - 0.08 * by.skill());
            layer.rootedOn = nursery.today().plusDays(StrictMath.round(days));
            layer.cause = spoilt
                    ? Cause.HORMONE_BURN
                    : chance.any(Cause.NO_ROOTS, Cause.NO_ROOTS, Cause.BARK_BRIDGED, Cause.DRIED, Cause.ROTTED);
            those.add(layer);
        }
        mother.layers.addAll(those);
        layers.addAll(those);
        return more.apply(nursery.row(by, EntryKind.LAYER_SET, those)
                        .set("mother", mother.tag)
                        .mm("stem_mm", stemMm)
                        .set("ring_mm", wound == Wound.TOURNIQUET ? Decimal.of(0) : DayBook.halves(ringMm))
                        .set("wound", wound)
                        .set("hormone", dip.hormone())
                        .set("strength", dip.strength())
                        .set("carrier", dip.carrier())
                        .set("place", mother.place.filter(place -> chance.happens(0.3)))
                        .set("stock_age_years", age(mother).filter(age -> chance.happens(0.5)))
                        .set("hedged", chance.happens(0.08) ? "yes" : chance.happens(0.1) ? "no" : ""))
                .write();
    }

    private Optional<Integer> age(Unit mother) {
        int years = nursery.year() - mother.begun.getYear();
        return Optional.of(years).filter(age -> age > 0);
    }

    private double season(int year) {
        return seasons.computeIfAbsent(
                year, y -> 0.28 * chance.branch("season " + y).normal());
    }

    /** Plan the checks and the severing of a session. */
    void plan(Session session) {
        LocalDate set = nursery.today();
        if (chance.happens(0.7)) {
            nursery.later(set.plusDays(chance.between(42, 64)), () -> check(session));
        }
        boolean longer = session.mother().variety.isSlow() && chance.happens(0.65);
        if (longer) {
            if (chance.happens(0.6)) {
                nursery.later(set.plusDays(chance.between(105, 135)), () -> check(session));
            }
            LocalDate next = LocalDate.of(set.getYear() + 1, 5, 20).plusDays(chance.between(0, 80));
            nursery.later(next, () -> sever(session, false));
            nursery.later(
                    LocalDate.of(set.getYear() + 1, 9, 5).plusDays(chance.between(0, 35)), () -> sever(session, true));
        } else {
            LocalDate late = LocalDate.of(set.getYear(), 8, 24).plusDays(chance.between(0, 62));
            nursery.later(late, () -> sever(session, false));
            nursery.later(
                    LocalDate.of(set.getYear() + 1, 5, 25).plusDays(chance.between(0, 50)), () -> sever(session, true));
        }
    }

    private void check(Session session) {
        Hand by = nursery.hand(Work.BENCH, chance);
        Map<Condition, List<Unit>> seen = new TreeMap<>();
        for (Unit layer : session.on()) {
            seen.computeIfAbsent(look(layer), condition -> new ArrayList<>()).add(layer);
        }
        seen.forEach((condition, layers) -> {
            nursery.row(by, EntryKind.CHECKED, layers)
                    .set("findings", ortet.entry.Words.of(condition))
                    .set("note", remark(condition))
                    .write();
            if (condition == Condition.DEAD) {
                fall(layers);
            }
        });
        List<Unit> dry = seen.getOrDefault(Condition.DRY, List.of());
        if (!dry.isEmpty()) {
            nursery.row(by, EntryKind.REWORKED, dry)
                    .set("rework", Rework.RE_WRAPPED)
                    .set("medium", "sphagnum moss")
                    .set("wrap", "black film")
                    .set("note", chance.happens(0.15) ? "soaked the moss for an hour first" : "")
                    .write();
            dry.forEach(layer -> second(layer, 0.5));
        }
        List<Unit> bridged = session.on().stream()
                .filter(layer -> !layer.takes && layer.cause == Cause.BARK_BRIDGED && chance.happens(0.5))
                .toList();
        if (!bridged.isEmpty()) {
            nursery.row(by, EntryKind.REWORKED, bridged)
                    .set("rework", Rework.RE_RINGED)
                    .mm("ring_mm", bridged.get(0).stemMm * 1.5)
                    .set("hormone", "IBA")
                    .set("strength", "0.3%")
                    .set("carrier", Carrier.POWDER)
                    .write();
            bridged.forEach(layer -> second(layer, 0.65));
        }
    }

    private void second(Unit layer, double probability) {
        if (!layer.takes && chance.happens(probability)) {
            layer.takes = true;
            layer.rootedOn = nursery.today().plusDays(chance.between(45, 90));
        }
    }

    private Condition look(Unit layer) {
        double whole = Math.max(1, layer.rootedOn.toEpochDay() - layer.begun.toEpochDay());
        double part = (nursery.today().toEpochDay() - layer.begun.toEpochDay()) / whole;
        if (!layer.takes) {
            return chance.happens(0.1)
                    ? Condition.DEAD
                    : layer.cause == Cause.DRIED && chance.happens(0.6)
                            ? Condition.DRY
                            : part > 0.5 && chance.happens(0.5) ? Condition.CALLUS : Condition.NOTHING;
        }
        return part < 0.45
                ? Condition.NOTHING
                : part < 1 ? Condition.CALLUS : part < 1.35 ? Condition.ROOTS_SHOWING : Condition.ROOT_BALL_FULL;
    }

    private String remark(Condition condition) {
        if (!chance.happens(0.06)) {
            return "";
        }
        return switch (condition) {
            case NOTHING -> chance.any("féach arís i gceann míosa", "too early", "まだ根は見えない");
            case CALLUS -> chance.any("good callus all round", "callus on the lower lip only", "カルスあり");
            case ROOTS_SHOWING -> chance.any("fréamhacha bána", "white roots on the sunny side", "白い根が見える");
            case ROOT_BALL_FULL -> chance.any("ready, sever soon", "réidh le gearradh");
            case DRY -> "the moss had dried out, birds had torn the film";
            case DEAD -> "branch dead above the ring";
        };
    }

    private static void fall(List<Unit> layers) {
        layers.forEach(layer -> layer.pending = 0);
    }

    /** Say that layers have failed. */
    void fail(Hand by, List<Unit> layers, Cause cause, UnaryOperator<Draft> more) {
        fall(layers);
        more.apply(nursery.row(by, EntryKind.FAILED, layers).set("cause", cause))
                .write();
    }

    /**
     * Sever what has roots; say of the rest what can be said.
     *
     * @param lastTime whether nothing is left on after this
     */
    void sever(Session session, boolean lastTime) {
        List<Unit> on = session.on();
        if (on.isEmpty()) {
            return;
        }
        Hand by = nursery.hand(Work.BENCH, chance);
        Map<Roots, List<Unit>> ready = new TreeMap<>();
        Map<Cause, List<Unit>> failed = new TreeMap<>();
        List<Unit> rest = new ArrayList<>();
        for (Unit layer : on) {
            long since = nursery.today().toEpochDay() - layer.rootedOn.toEpochDay();
            if (layer.takes && since >= 3) {
                Roots roots = since < 20 ? Roots.FEW : since < 45 ? Roots.FAIR : Roots.FULL;
                ready.computeIfAbsent(roots, how -> new ArrayList<>()).add(layer);
            } else if (!layer.takes && (lastTime || chance.happens(0.8))) {
                failed.computeIfAbsent(layer.cause, why -> new ArrayList<>()).add(layer);
            } else {
                rest.add(layer);
            }
        }
        failed.forEach((cause, layers) -> {
            if (cause == Cause.NO_ROOTS && chance.happens(0.25)) {
                fall(layers);
                nursery.row(by, EntryKind.SEVERED, layers)
                        .set("roots", Roots.NONE)
                        .set("remainder", Remainder.CUT_BACK)
                        .write();
            } else {
                fail(by, layers, cause, Nursery.PLAIN);
            }
        });
        List<Unit> severed = new ArrayList<>();
        Remainder remainder = chance.any(Remainder.KEPT, Remainder.KEPT, Remainder.CUT_BACK, Remainder.REMOVED);
        ready.forEach((roots, layers) -> {
            sever(by, layers, Optional.of(roots).filter(how -> !chance.happens(0.06)), remainder, Nursery.PLAIN);
            severed.addAll(layers);
        });
        if (lastTime && !rest.isEmpty()) {
            rest.forEach(layer -> layer.pending = 0);
            nursery.row(by, EntryKind.CLOSED, rest)
                    .set("rest", Rest.FAILED)
                    .set("cause", Cause.NO_ROOTS)
                    .write();
        } else if (!rest.isEmpty() && chance.happens(0.3)) {
            nursery.row(by, EntryKind.CLOSED, rest).set("rest", Rest.STILL_ON).write();
        }
        if (!severed.isEmpty()) {
            growing.raise(severed, true);
        }
    }

    /** Cut layers from their mother. */
    void sever(Hand by, List<Unit> layers, Optional<Roots> roots, Remainder remainder, UnaryOperator<Draft> more) {
        layers.forEach(layer -> {
            layer.pending = 0;
            layer.growing = 1;
        });
        boolean atOnce = chance.happens(0.15);
        String container = Nursery.pot(layers.get(0).stemMm);
        if (atOnce) {
            layers.forEach(layer -> layer.container = container);
        }
        more.apply(nursery.row(by, EntryKind.SEVERED, layers)
                        .set("roots", roots)
                        .set("remainder", remainder)
                        .set("place", Optional.of(nursery.grounds.mist).filter(there -> chance.happens(0.4)))
                        .set("container", atOnce ? container : ""))
                .write();
    }
}
