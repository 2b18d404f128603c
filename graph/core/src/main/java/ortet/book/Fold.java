package ortet.book;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.Story.Handed;
import ortet.book.Story.Handing;
import ortet.book.UnitFacts.Cohort;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Method;
import ortet.book.UnitFacts.Naming;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Outcome;
import ortet.book.UnitFacts.Potting;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.book.UnitFacts.Stay;
import ortet.book.UnitFacts.TagUse;
import ortet.entry.*;
import ortet.entry.Mention.Role;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Reads the timeline of one unit from its beginning and works out what becomes of it, objecting to what cannot be true.
 *
 * <p>The rules are those of {@code docs/rules.md}; each objection bears the name of its rule.
 */
final class Fold implements Entry.Visitor<Void> {
    private final Witness others;
    private final UnitNumber unit;
    private final List<Event> events;

    private Event now;
    private When day;
    private long order;
    private Event begun;
    private Nature nature = Nature.PLANT;
    private Optional<Method> method = Optional.empty();
    private boolean pendingKnown = true;
    private int pending;
    private int growing;
    private int sold;
    private int worked;
    private boolean held;
    private Optional<PersonNumber> reservedFor = Optional.empty();
    private int reservedLeft;
    private Tag tag;

    private final List<TagUse> tags = new ArrayList<>();
    private final List<Link> links = new ArrayList<>();
    private final List<Naming> names = new ArrayList<>();
    private Optional<Cohort> cohort = Optional.empty();
    private final List<Outcome> outcomes = new ArrayList<>();
    private final List<Standing> standings = new ArrayList<>();
    private final List<Potting> pottings = new ArrayList<>();
    private final List<Stay> stays = new ArrayList<>();
    private final List<Leaving> leavings = new ArrayList<>();
    private final Map<Handing, Handed> handed = new HashMap<>();
    private final List<UnitNumber> bySplit = new ArrayList<>();
    private final List<Outcome> failures = new ArrayList<>();
    private Optional<String> ending = Optional.empty();

    Fold(Witness others, UnitNumber unit, List<Event> events) {
        this.others = others;
        this.unit = unit;
        this.events = events;
    }

    /** Return the story, or nothing when no entry begins the unit (which is objected to if anything is left of it). */
    Optional<Story> tell(List<Long> entries) {
        begun = events.stream().filter(Event::begins).findFirst().orElse(null);
        if (begun == null) {
            for (Event event : events) {
                others.object(unit, event, "unknown-tag", "nothing in the book begins " + others.oldTag(unit));
            }
            return Optional.empty();
        }
        tag = others.begunTag(unit, begun);
        for (Event event : events) {
            takeBackUpTo(Optional.of(event));
            at(event);
            if (!event.begins() && standings.isEmpty()) {
                refuse(
                        "before-it-began",
                        tag + " began on " + begun.day() + " ("
                                + begun.entry().kind().word() + "), after "
                                + event.entry().kind().word() + " on " + event.day());
                continue;
            }
            apply();
        }
        takeBackUpTo(Optional.empty());
        UnitFacts facts = new UnitFacts(
                unit,
                nature,
                others.begun(unit, begun),
                tags,
                entries,
                links,
                names,
                cohort,
                outcomes,
                standings,
                pottings,
                stays,
                leavings);
        return Optional.of(new Story(facts, handed, ending, bySplit, method));
    }

    private void at(Event event) {
        now = event;
        day = event.day();
        order = event.order();
    }

    private void apply() {
        if (now.begins()) {
            tags.add(new TagUse(tag, now.day(), others.tagOrder(now)));
            now.entry().accept(this);
            if (now.roles().size() > 1) {
                refuse("same-unit", tag + " cannot come from itself");
            }
            stand(true);
            return;
        }
        for (Role role : Role.values()) {
            if (now.roles().contains(role)) {
                play(role);
            }
        }
    }

    private void play(Role role) {
        switch (role) {
            case SUBJECT -> now.entry().accept(this);
            case MOTHER, SCION, SEED_PARENT, POLLEN_PARENT -> giveWood(role);
            case STOCK -> workAsStock();
            case SOURCE -> giveUnits();
            case MERGED -> merge();
            case BEGUN, CANDIDATE, BESIDE -> {}
        }
    }

    // ---- what begins a unit ----

    @Override
    public Void acquired(Acquired entry) {
        begin(
                entry.count().isPresent() ? Nature.BATCH : Nature.PLANT,
                0,
                entry.count().orElse(1));
        said(entry.cultivar());
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void layerSet(LayerSet entry) {
        begin(Nature.LAYER, 1, 0);
        cohort(Method.LAYER, Optional.of(1), entry.setUnrecorded());
        if (entry.belowUnion().orElse(false)) {
            link(Act.LAYERED_BELOW, entry.mother(), Optional.empty());
            said(ofTheStocks(List.of(entry.mother())));
        } else {
            link(Act.LAYERED_FROM, entry.mother(), Optional.empty());
        }
        stands(entry.place());
        return null;
    }

    @Override
    public Void cuttingsStruck(CuttingsStruck entry) {
        begin(Nature.BATCH, entry.count(), 0);
        cohort(Method.CUTTING, Optional.of(entry.count()), entry.setUnrecorded());
        boolean below = entry.belowUnion().orElse(false);
        for (Share mother : entry.mothers()) {
            link(below ? Act.STRUCK_BELOW : Act.STRUCK_FROM, mother.tag(), mother.count());
        }
        Optional<CultivarName> ofStock =
                below ? ofTheStocks(entry.mothers().stream().map(Share::tag).toList()) : Optional.empty();
        said(entry.cultivar().or(() -> ofStock));
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void graftWorked(GraftWorked entry) {
        int count = entry.count().orElse(1);
        begin(entry.count().isPresent() ? Nature.BATCH : Nature.PLANT, count, 0);
        cohort(Method.GRAFT, Optional.of(count), entry.setUnrecorded());
        entry.scion().ifPresent(scion -> link(Act.SCION_OF, scion, Optional.empty()));
        entry.stock().ifPresent(stock -> link(Act.ROOTSTOCK_OF, stock, Optional.empty()));
        if (entry.scion().isPresent() && entry.scion().equals(entry.stock())) {
            refuse("same-unit", entry.scion().get() + " cannot be worked on itself");
        }
        said(entry.cultivar());
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void seedSown(SeedSown entry) {
        begin(Nature.BATCH, entry.count().orElse(0), 0);
        pendingKnown = entry.count().isPresent();
        cohort(Method.SEED, entry.count(), entry.setUnrecorded());
        entry.seedParent().ifPresent(parent -> link(Act.SEED_OF, parent, Optional.empty()));
        entry.pollenParent().ifPresent(parent -> link(Act.POLLEN_OF, parent, Optional.empty()));
        said(entry.cultivar());
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void divided(Divided entry) {
        begin(Nature.PLANT, 0, 1);
        link(Act.DIVIDED_FROM, entry.mother(), Optional.empty());
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void sportFound(SportFound entry) {
        begin(Nature.SPORT, 0, 1);
        link(Act.SPORT_OF, entry.mother(), Optional.empty());
        said(entry.cultivar());
        return null;
    }

    @Override
    public Void drawn(Drawn entry) {
        begin(
                entry.count().isPresent() ? Nature.BATCH : Nature.PLANT,
                0,
                entry.count().orElse(1));
        link(Act.DRAWN_FROM, entry.source(), Optional.empty());
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void split(Split entry) {
        begin(Nature.BATCH, 0, 0);
        receive(List.of(entry.source()), Act.SPLIT_FROM);
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void merged(Merged entry) {
        begin(Nature.BATCH, 0, 0);
        receive(entry.sources(), Act.MERGED_FROM);
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        return null;
    }

    @Override
    public Void foundUntagged(FoundUntagged entry) {
        begin(Nature.PLANT, 0, 1);
        for (Tag candidate : entry.candidates()) {
            link(Act.ONE_OF, candidate, Optional.empty());
        }
        stands(entry.place());
        return null;
    }

    private void begin(Nature what, int pendingUnits, int growingUnits) {
        nature = what;
        pending = pendingUnits;
        growing = growingUnits;
    }

    /** Count the unit for take, unless nobody recorded the setting when it was done. */
    private void cohort(Method by, Optional<Integer> count, Optional<Boolean> unrecorded) {
        method = Optional.of(by);
        if (!unrecorded.orElse(false)) {
            cohort = Optional.of(new Cohort(by, now.day(), now.order(), now.by(), count, unit));
        }
    }

    /** Link to a mother; one who is named by two of her tags gave what both say, and is linked to once. */
    private void link(Act act, Tag mother, Optional<Integer> count) {
        Optional<UnitNumber> other = others.resolve(mother).filter(found -> !found.equals(unit));
        if (other.isEmpty()) {
            return;
        }
        Optional<Integer> all = count;
        for (Link known : List.copyOf(links)) {
            if (known.act() == act && known.mother().equals(other.get())) {
                all = known.count().flatMap(before -> count.map(more -> before + more));
                links.remove(known);
            }
        }
        links.add(new Link(unit, other.get(), act, now.day(), now.order(), all));
    }

    /**
     * Link wood from below the graft unions of some mothers to their rootstocks, where every one of these is in the book;
     * where none is and all bear one name, return that.
     */
    private Optional<CultivarName> ofTheStocks(List<Tag> mothers) {
        List<Union> unions = new ArrayList<>();
        for (Tag mother : mothers) {
            Union union =
                    others.resolve(mother).map(other -> Union.of(others, other)).orElse(Union.NONE);
            if (!union.mayBe()) {
                refuse("no-graft", mother + " is no graft, so no wood of it is from below a union");
            }
            unions.add(union);
        }
        Union all = Union.of(unions);
        if (all.isWhole()) {
            for (UnitNumber stock : all.stocks()) {
                if (!stock.equals(unit)) {
                    links.add(new Link(unit, stock, Act.STOCK_WOOD_OF, now.day(), now.order(), Optional.empty()));
                }
            }
        }
        return all.name();
    }

    private void receive(List<Tag> sources, Act act) {
        Optional<Method> raised = Optional.empty();
        Optional<Cohort> from = Optional.empty();
        Set<UnitNumber> met = new HashSet<>();
        for (Tag source : sources) {
            Optional<UnitNumber> other = others.resolve(source);
            if (other.isEmpty() || other.get().equals(unit) || !met.add(other.get())) {
                continue;
            }
            Optional<Story> story = others.story(other.get());
            Handed gift = story.map(told -> told.handed().get(new Handing(now.order(), unit.value())))
                    .orElse(new Handed(Optional.of(0), 0));
            growing += gift.growing();
            pending += gift.pending().orElse(0);
            pendingKnown &= gift.pending().isPresent();
            links.add(new Link(
                    unit,
                    other.get(),
                    act,
                    now.day(),
                    now.order(),
                    Optional.of(gift.growing() + gift.pending().orElse(0)).filter(n -> n > 0)));
            if (gift.pending().map(n -> n > 0).orElse(true)) {
                Optional<Cohort> theirs = story.flatMap(told -> told.facts().cohort());
                Optional<Method> way = story.flatMap(Story::method);
                if (raised.isPresent() && !raised.equals(way)) {
                    refuse(
                            "not-alike",
                            source + " is raised another way than the rest: while units are pending, only like can be"
                                    + " merged with like");
                }
                raised = way;
                if (from.isEmpty()
                        || theirs.isPresent()
                                && theirs.get().day().compareTo(from.get().day()) < 0) {
                    from = theirs;
                }
            }
        }
        method = raised;
        Optional<Integer> counted = pendingKnown ? Optional.of(pending) : Optional.empty();
        cohort = from.map(first -> new Cohort(
                first.method(),
                first.day(),
                first.order(),
                first.by(),
                counted,
                act == Act.SPLIT_FROM ? first.root() : unit));
    }

    // ---- what others take from it ----

    private void giveWood(Role role) {
        String what = now.entry().kind().word();
        if (isGone()) {
            refuse(
                    "mother-not-growing",
                    tag + gone() + ", so nothing can come from it by " + what + " on " + now.day());
        } else if (nature == Nature.LAYER && growing == 0) {
            refuse("still-on-mother", tag + " is still on its mother; sever it before anything is taken from it");
        } else if (nature == Nature.SPORT
                && (now.entry() instanceof Divided || role.name().endsWith("PARENT"))) {
            refuse("still-on-mother", tag + " is a branch of its plant: layer it, strike it or graft it");
        } else if (growing == 0) {
            refuse("mother-not-growing", tag + " has not taken yet, so nothing can come from it by " + what);
        } else if (held) {
            refuse("held", tag + " is held for plant health; clear it before anything is taken from it");
        } else if (now.entry() instanceof Divided divided
                && role == Role.MOTHER
                && divided.remainder().filter(rest -> rest == Remainder.USED_UP).isPresent()) {
            int all = growing;
            growing = 0;
            leave(Reason.USED_UP, all, Optional.empty());
            stand(false);
        }
    }

    private void workAsStock() {
        GraftWorked entry = (GraftWorked) now.entry();
        int wanted = entry.tags().size() * entry.count().orElse(1);
        if (refusesToGo("worked") || tooMany(wanted, growing, "growing")) {
            return;
        }
        growing -= wanted;
        worked += wanted;
        leave(Reason.WORKED, wanted, Optional.empty());
        stand(false);
        for (Tag graft : entry.tags()) {
            others.resolve(graft).ifPresent(other -> failures.addAll(others.failures(other)));
        }
        failures.sort(
                Comparator.comparing((Outcome failure) -> failure.day().first()).thenComparingLong(Outcome::order));
    }

    /** Take back the rootstocks of grafts that failed before the next event. */
    private void takeBackUpTo(Optional<Event> next) {
        while (!failures.isEmpty()
                && next.map(event -> comesAfter(event, failures.get(0))).orElse(true)) {
            Outcome failure = failures.remove(0);
            day = failure.day();
            order = failure.order();
            int back = Math.min(failure.count(), worked);
            worked -= back;
            growing += back;
            if (back > 0) {
                leave(Reason.UNWORKED, back, Optional.empty());
                ending = Optional.empty();
                stand(false);
            }
        }
    }

    private static boolean comesAfter(Event event, Outcome failure) {
        int byDay = event.day().first().compareTo(failure.day().first());
        return byDay > 0 || byDay == 0 && event.entry().kind().rank() > EntryKind.FAILED.rank();
    }

    private void giveUnits() {
        if (now.entry() instanceof Drawn entry) {
            draw(entry);
        } else if (now.entry() instanceof Split entry) {
            splitOff(entry);
        }
    }

    private boolean isNoBatch(String act) {
        if (nature == Nature.BATCH) {
            return false;
        }
        refuse("not-a-batch", tag + " is one plant, not a batch: it cannot be " + act);
        return true;
    }

    private void draw(Drawn entry) {
        int wanted = entry.tags().size() * entry.count().orElse(1);
        if (isNoBatch("drawn from") || refusesToGo("drawn from")) {
            return;
        }
        int there = pendingKnown ? growing + pending : Integer.MAX_VALUE;
        if (tooMany(wanted, there, "left")) {
            return;
        }
        int fromGrowing = Math.min(growing, wanted);
        int fresh = wanted - fromGrowing;
        growing -= fromGrowing;
        if (fresh > 0) {
            take(fresh);
            growing -= fresh;
        }
        leave(Reason.MOVED_ON, wanted, Optional.empty());
        stand(false);
    }

    private void splitOff(Split entry) {
        int wanted = entry.tags().size() * entry.count();
        if (isNoBatch("split") || refusesToGo("split")) {
            return;
        }
        if (!pendingKnown) {
            refuse("not-counted", "nobody has counted " + tag + " yet; count it before it is split");
            return;
        }
        if (tooMany(wanted, growing + pending, "left")) {
            return;
        }
        for (Tag child : entry.tags()) {
            int undecided = Math.min(pending, entry.count());
            int rooted = entry.count() - undecided;
            pending -= undecided;
            growing -= rooted;
            if (undecided > 0) {
                outcome(Fate.MOVED_ON, undecided, Optional.empty());
            }
            others.resolve(child).ifPresent(other -> {
                handed.put(new Handing(now.order(), other.value()), new Handed(Optional.of(undecided), rooted));
                bySplit.add(other);
            });
        }
        leave(Reason.MOVED_ON, wanted, Optional.empty());
        stand(false);
    }

    private void merge() {
        Merged entry = (Merged) now.entry();
        if (isNoBatch("merged") || refusesToGo("merged")) {
            return;
        }
        Optional<Integer> undecided = pendingKnown ? Optional.of(pending) : Optional.empty();
        others.resolve(entry.tags().get(0)).ifPresent(other -> {
            if (other.equals(unit)) {
                refuse("same-unit", tag + " cannot be merged into itself; a merged batch gets a new tag");
            } else {
                handed.put(new Handing(now.order(), other.value()), new Handed(undecided, growing));
            }
        });
        if (pending > 0) {
            outcome(Fate.MOVED_ON, pending, Optional.empty());
        }
        leave(Reason.MOVED_ON, Math.max(1, pending + growing), Optional.empty());
        pending = 0;
        growing = 0;
        pendingKnown = true;
        stand(false);
    }

    // ---- outcomes ----

    @Override
    public Void checked(Checked entry) {
        if (isGone()) {
            return nothingLeft();
        }
        int found = entry.findings().stream().mapToInt(f -> f.count().orElse(0)).sum();
        if (pendingKnown && tooMany(found, pending + growing, "there")) {
            return null;
        }
        boolean dead = entry.findings().stream().anyMatch(finding -> finding.condition() == Condition.DEAD);
        if (dead && nature != Nature.BATCH) {
            if (pending == 0) {
                return refuse("has-taken", tag + " stands on its own roots; say that it was lost");
            }
            fail(1, Optional.empty());
        } else if (isPending()) {
            outcome(Fate.STILL_ON, pending, Optional.empty());
        }
        return null;
    }

    @Override
    public Void reworked(Reworked entry) {
        if (isNoLayer("re-worked")) {
            return null;
        }
        if (pending == 0) {
            return decided("it cannot be worked again");
        }
        outcome(Fate.STILL_ON, 1, Optional.empty());
        return null;
    }

    @Override
    public Void taken(Taken entry) {
        if (nature == Nature.LAYER) {
            return refuse("layer-takes-when-severed", tag + " is a layer: it has taken when it is severed with roots");
        }
        if (!isPending()) {
            return decided("it cannot take");
        }
        int wanted = entry.count().orElse(pending);
        if (isSingle(entry.count()) || pendingKnown && tooMany(wanted, pending, "pending")) {
            return null;
        }
        take(wanted);
        stand(false);
        return null;
    }

    @Override
    public Void severed(Severed entry) {
        if (isNoLayer("severed")) {
            return null;
        }
        if (pending == 0) {
            return decided("it cannot be severed");
        }
        if (entry.roots().filter(roots -> roots == Roots.NONE).isPresent()) {
            fail(1, Optional.of(Cause.NO_ROOTS));
            return null;
        }
        take(1);
        stands(entry.place());
        entry.container().ifPresent(this::pot);
        stand(false);
        return null;
    }

    @Override
    public Void failed(Failed entry) {
        if (!isPending()) {
            return decided("it cannot fail");
        }
        int wanted = entry.count().orElse(pending);
        if (isSingle(entry.count()) || pendingKnown && tooMany(wanted, pending, "pending")) {
            return null;
        }
        fail(wanted, entry.cause());
        if (!pendingKnown && entry.count().isEmpty()) {
            pendingKnown = true;
            pending = 0;
            stand(false);
        }
        return null;
    }

    @Override
    public Void closed(Closed entry) {
        if (!isPending()) {
            return decided("there is nothing to close");
        }
        switch (entry.rest()) {
            case FAILED -> fail(pending, entry.cause());
            case STILL_ON -> outcome(Fate.STILL_ON, pending, Optional.empty());
            case NOT_SEEN -> notSeen(pending);
        }
        if (entry.rest() != Rest.STILL_ON) {
            pendingKnown = true;
            pending = 0;
            stand(false);
        }
        return null;
    }

    private void take(int count) {
        pending -= pendingKnown ? count : 0;
        growing += count;
        outcome(Fate.TAKEN, count, Optional.empty());
    }

    private void fail(int count, Optional<Cause> cause) {
        boolean withdrawn = cause.filter(why -> why == Cause.WITHDRAWN).isPresent();
        pending -= pendingKnown ? count : 0;
        if (count > 0) {
            outcome(withdrawn ? Fate.WITHDRAWN : Fate.FAILED, count, cause);
            leave(withdrawn ? Reason.WITHDRAWN : Reason.FAILED, count, Optional.empty());
        }
        stand(false);
    }

    private void notSeen(int count) {
        pending -= pendingKnown ? count : 0;
        if (count > 0) {
            outcome(Fate.NOT_SEEN, count, Optional.empty());
            leave(Reason.NOT_SEEN, count, Optional.empty());
        }
        stand(false);
    }

    // ---- life ----

    @Override
    public Void potted(Potted entry) {
        if (refusesToBeHandled("potted")) {
            return null;
        }
        if (held) {
            return refuse("held", tag + " is held for plant health; clear it before it is potted");
        }
        if (isPending()
                && method.filter(by -> by == Method.CUTTING || by == Method.SEED)
                        .isPresent()) {
            if (pendingKnown) {
                others.remark(
                        now,
                        "potted-pending",
                        tag + ": potted as a whole, so all " + pending + " pending count as taken");
                take(pending);
            }
            stand(false);
        }
        pot(entry.container());
        stands(entry.place());
        return null;
    }

    @Override
    public Void plantedOut(PlantedOut entry) {
        if (refusesToBeHandled("planted out")) {
            return null;
        }
        pottings.add(new Potting(Optional.empty(), now.day(), now.order()));
        stands(Optional.of(entry.place()));
        return null;
    }

    @Override
    public Void lifted(Lifted entry) {
        if (refusesToBeHandled("lifted")) {
            return null;
        }
        entry.container().ifPresent(this::pot);
        stands(entry.place());
        return null;
    }

    @Override
    public Void moved(Moved entry) {
        if (refusesToBeHandled("moved")) {
            return null;
        }
        stands(Optional.of(entry.place()));
        return null;
    }

    @Override
    public Void measured(Measured entry) {
        return isGone() ? nothingLeft() : null;
    }

    @Override
    public Void seen(Seen entry) {
        if (isGone()) {
            return nothingLeft();
        }
        if (isPending()) {
            outcome(Fate.STILL_ON, pending, Optional.empty());
        }
        stands(entry.place());
        return null;
    }

    @Override
    public Void keptAsStock(KeptAsStock entry) {
        kept("kept as stock");
        return null;
    }

    @Override
    public Void leftLong(LeftLong entry) {
        kept("left long");
        return null;
    }

    @Override
    public Void cutBack(CutBack entry) {
        kept("cut back");
        return null;
    }

    @Override
    public Void released(Released entry) {
        if (isGone()) {
            return nothingLeft();
        }
        if (entry.from().filter(from -> from == ReleasedFrom.STOCK).isEmpty()) {
            reservedFor = Optional.empty();
        }
        return null;
    }

    @Override
    public Void held(Held entry) {
        if (isGone()) {
            return nothingLeft();
        }
        held = true;
        return null;
    }

    @Override
    public Void cleared(Cleared entry) {
        if (isGone()) {
            return nothingLeft();
        }
        if (!held) {
            others.remark(now, "not-held", tag + ": cleared, but it was not held");
        }
        held = false;
        return null;
    }

    @Override
    public Void graded(Graded entry) {
        growingOnly("graded");
        return null;
    }

    @Override
    public Void counted(Counted entry) {
        if (isNoBatch("counted")) {
            return null;
        }
        if (isGone()) {
            return nothingLeft();
        }
        int there = entry.count();
        if (!pendingKnown) {
            int fresh = Math.max(0, there - growing);
            if (fresh > 0) {
                take(fresh);
            }
            pendingKnown = true;
            pending = 0;
            growing = there;
        } else if (there < pending + growing) {
            int missing = pending + growing - there;
            int undecided = Math.min(pending, missing);
            int rooted = missing - undecided;
            growing -= rooted;
            if (rooted > 0) {
                leave(Reason.LOST, rooted, Optional.empty());
            }
            if (undecided > 0) {
                notSeen(undecided);
            }
        } else if (there > pending + growing) {
            int more = there - pending - growing;
            if (pending > 0) {
                pending += more;
                outcome(Fate.FOUND_MORE, more, Optional.empty());
            } else {
                growing += more;
            }
        }
        stand(false);
        return null;
    }

    @Override
    public Void reserved(Reserved entry) {
        if (growingOnly("reserved") && !isSingle(entry.count())) {
            if (held) {
                return refuse("held", tag + " is held for plant health; clear it before it is reserved");
            }
            if (!tooMany(entry.count().orElse(1), growing, "growing")) {
                reservedFor = Optional.of(entry.customer());
                reservedLeft = entry.count().orElse(growing);
            }
        }
        return null;
    }

    @Override
    public Void sold(Sold entry) {
        if (!growingOnly("sold") || isSingle(entry.count())) {
            return null;
        }
        if (held) {
            return refuse("held", tag + " is held for plant health; clear it before it is sold");
        }
        if (entry.count().isEmpty() && isPending()) {
            return refuse(
                    "not-taken",
                    tag + " has " + units(pending) + " that have not taken; say how many of the others are sold");
        }
        int wanted = entry.count().orElse(growing);
        if (tooMany(wanted, growing, "growing")) {
            return null;
        }
        if (reservedFor.isPresent() && entry.customer().isPresent() && !reservedFor.equals(entry.customer())) {
            others.remark(
                    now,
                    "reserved-for-another",
                    tag + ": sold to " + others.name(entry.customer().get()) + ", but reserved for "
                            + others.name(reservedFor.get()));
        }
        growing -= wanted;
        sold += wanted;
        if (reservedFor.equals(entry.customer())) {
            reservedLeft -= wanted;
        }
        if (growing == 0 || reservedLeft <= 0) {
            reservedFor = Optional.empty();
        }
        leave(Reason.SOLD, wanted, entry.customer());
        stand(false);
        return null;
    }

    @Override
    public Void returned(Returned entry) {
        int wanted = entry.count().orElse(1);
        if (sold == 0) {
            return refuse("too-many", tag + " was not sold, so it cannot come back");
        }
        if (tooMany(wanted, sold, "sold")) {
            return null;
        }
        sold -= wanted;
        growing += wanted;
        ending = Optional.empty();
        leave(Reason.RETURNED, wanted, entry.customer());
        stands(entry.place());
        stand(false);
        return null;
    }

    @Override
    public Void culled(Culled entry) {
        if (isGone()) {
            return nothingLeft();
        }
        if (isSingle(entry.count())) {
            return null;
        }
        boolean surplus = entry.cull() == CullReason.SURPLUS;
        int there = surplus ? growing + pending : growing;
        if (!surplus && growing == 0) {
            return refuse("not-taken", tag + " has not taken yet: say that it failed, or cull it as surplus");
        }
        int wanted = entry.count().orElse(there);
        if (tooMany(wanted, there, surplus ? "there" : "growing")) {
            return null;
        }
        int rooted = Math.min(growing, wanted);
        if (rooted > 0) {
            growing -= rooted;
            leave(surplus ? Reason.SURPLUS : Reason.CULLED, rooted, Optional.empty());
        }
        if (wanted > rooted) {
            fail(wanted - rooted, Optional.of(Cause.WITHDRAWN));
        }
        stand(false);
        return null;
    }

    @Override
    public Void lost(Lost entry) {
        if (isGone()) {
            return nothingLeft();
        }
        if (isSingle(entry.count())) {
            return null;
        }
        if (growing == 0) {
            return refuse("not-taken", tag + " has not taken yet: say that it failed");
        }
        int wanted = entry.count().orElse(growing);
        if (tooMany(wanted, growing, "growing")) {
            return null;
        }
        growing -= wanted;
        leave(Reason.LOST, wanted, Optional.empty());
        stand(false);
        return null;
    }

    @Override
    public Void noted(Noted entry) {
        return null;
    }

    // ---- identity ----

    @Override
    public Void retagged(Retagged entry) {
        tag = entry.newTag();
        tags.add(new TagUse(tag, now.day(), others.tagOrder(now)));
        return null;
    }

    @Override
    public Void redetermined(Redetermined entry) {
        names.add(new Naming(entry.cultivar(), true, now.day(), now.order()));
        return null;
    }

    // ---- kinds that name no unit ----

    @Override
    public Void cultivarListed(CultivarListed entry) {
        return null;
    }

    @Override
    public Void placeListed(PlaceListed entry) {
        return null;
    }

    @Override
    public Void costListed(CostListed entry) {
        return null;
    }

    @Override
    public Void priceListed(PriceListed entry) {
        return null;
    }

    @Override
    public Void corrected(Corrected entry) {
        return null;
    }

    @Override
    public Void crossedOut(CrossedOut entry) {
        return null;
    }

    // ---- writing facts ----

    private void said(Optional<CultivarName> cultivar) {
        cultivar.ifPresent(name -> names.add(new Naming(name, false, day, order)));
    }

    private void stands(Optional<Place> place) {
        place.ifPresent(where -> stays.add(new Stay(where, day, order)));
    }

    private void pot(String container) {
        pottings.add(new Potting(Optional.of(container), day, order));
    }

    private void outcome(Fate fate, int count, Optional<Cause> cause) {
        if (cohort.isPresent()) {
            outcomes.add(new Outcome(fate, count, cause, day, order));
        }
    }

    private void leave(Reason reason, int count, Optional<PersonNumber> person) {
        leavings.add(new Leaving(reason, count, person, day, order));
        if (reason != Reason.RETURNED && reason != Reason.UNWORKED) {
            ending = Optional.of(words(reason) + " on " + day);
        }
    }

    private static String words(Reason reason) {
        return switch (reason) {
            case SOLD -> "was sold";
            case LOST -> "was lost";
            case CULLED -> "was culled";
            case SURPLUS -> "was culled as surplus";
            case FAILED -> "failed";
            case WITHDRAWN -> "was withdrawn";
            case NOT_SEEN -> "was closed as not seen";
            case MOVED_ON -> "went on under other tags";
            case WORKED -> "was worked as a rootstock";
            case USED_UP -> "was used up";
            case RETURNED -> "came back";
            case UNWORKED -> "came back from a graft";
        };
    }

    private void stand(boolean first) {
        Optional<Integer> undecided = pendingKnown ? Optional.of(pending) : Optional.empty();
        Standing standing = new Standing(undecided, growing, day, order);
        if (!first && !standings.isEmpty()) {
            Standing last = standings.get(standings.size() - 1);
            if (last.order() == standing.order()) {
                standings.remove(standings.size() - 1);
            } else if (last.pending().equals(standing.pending()) && last.growing() == standing.growing()) {
                return;
            }
        }
        standings.add(standing);
    }

    // ---- objections ----

    private Void refuse(String rule, String text) {
        others.object(unit, now, rule, text);
        return null;
    }

    private boolean isPending() {
        return !pendingKnown || pending > 0;
    }

    private boolean isGone() {
        return pendingKnown && pending == 0 && growing == 0;
    }

    private String gone() {
        return " " + ending.orElse("is gone");
    }

    private Void nothingLeft() {
        return refuse("nothing-left", tag + gone() + ", so it cannot be " + past() + " on " + now.day());
    }

    private String past() {
        return now.entry().kind().word().replace('-', ' ');
    }

    private Void decided(String consequence) {
        if (isGone()) {
            boolean failed = leavings.stream().anyMatch(leaving -> leaving.reason() == Reason.FAILED);
            return refuse(failed ? "has-failed" : "nothing-left", tag + gone() + ": " + consequence);
        }
        return refuse("has-taken", tag + " has nothing pending: " + consequence);
    }

    private boolean isNoLayer(String act) {
        if (nature == Nature.LAYER) {
            return false;
        }
        refuse("not-a-layer", tag + " is no layer: it cannot be " + act);
        return true;
    }

    private boolean isSingle(Optional<Integer> count) {
        if (nature != Nature.BATCH && count.filter(n -> n > 1).isPresent()) {
            refuse("single-plant", tag + " is one plant: expected a count of 1 or none, found " + count.get());
            return true;
        }
        return false;
    }

    /** Refuse when more is wanted than there is. */
    private boolean tooMany(int wanted, int there, String what) {
        if (wanted <= there) {
            return false;
        }
        refuse(
                "too-many",
                tag + " has " + there + " " + what + ", so " + wanted + " cannot be " + past() + " on " + now.day());
        return true;
    }

    /** Refuse what is gone or still on its mother. */
    private boolean refusesToBeHandled(String act) {
        if (isGone()) {
            nothingLeft();
            return true;
        }
        if (nature == Nature.LAYER && growing == 0) {
            refuse("still-on-mother", tag + " is still on its mother: it cannot be " + act + " before it is severed");
            return true;
        }
        if (nature == Nature.SPORT) {
            refuse("still-on-mother", tag + " is a branch of its plant: it cannot be " + act);
            return true;
        }
        return false;
    }

    private boolean refusesToGo(String act) {
        if (refusesToBeHandled(act)) {
            return true;
        }
        if (held) {
            refuse("held", tag + " is held for plant health; clear it before it is " + act);
            return true;
        }
        return false;
    }

    private boolean growingOnly(String act) {
        if (refusesToBeHandled(act)) {
            return false;
        }
        if (growing == 0) {
            refuse("not-taken", tag + " has not taken yet: it cannot be " + act);
            return false;
        }
        return true;
    }

    /** Refuse what is not growing; a sport, which grows on its plant, will do. */
    private void kept(String act) {
        if (nature == Nature.SPORT && !isGone()) {
            return;
        }
        growingOnly(act);
    }

    private static String units(int count) {
        return count == 1 ? "1 unit" : count + " units";
    }
}
