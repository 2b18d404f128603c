package ortet.book;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * What follows from the entries about one unit: dated facts alone, nothing that depends on today or on a setting.
 *
 * <p>Worked out by {@link Judge}, kept by stores, dropped and rebuilt at will. All lists are in the order of the unit's
 * timeline.
 *
 * @param unit the unit
 * @param nature what it is
 * @param begun the entry that began it
 * @param tags every tag it bore, the present one last
 * @param entries recorded orders of every entry that names it, crossed-out ones too, amendments not, ascending
 * @param links to the units that it comes from
 * @param names the cultivar that it was said or found to be
 * @param cohort how it counts for take, where it does
 * @param outcomes what became of the units of the cohort
 * @param standings how many units there were after each change
 * @param pottings its containers
 * @param stays its places
 * @param leavings units that left its tag for good, and why
 */
public record UnitFacts(
        UnitNumber unit,
        Nature nature,
        Begun begun,
        List<TagUse> tags,
        List<Long> entries,
        List<Link> links,
        List<Naming> names,
        Optional<Cohort> cohort,
        List<Outcome> outcomes,
        List<Standing> standings,
        List<Potting> pottings,
        List<Stay> stays,
        List<Leaving> leavings) {

    public UnitFacts {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(begun);
        tags = List.copyOf(tags);
        entries = List.copyOf(entries);
        links = List.copyOf(links);
        names = List.copyOf(names);
        Objects.requireNonNull(cohort);
        outcomes = List.copyOf(outcomes);
        standings = List.copyOf(standings);
        pottings = List.copyOf(pottings);
        stays = List.copyOf(stays);
        leavings = List.copyOf(leavings);
    }

    /** Return the tag that the unit bears now. */
    public Tag tag() {
        return tags.get(tags.size() - 1).tag();
    }

    /** What a unit is. */
    public enum Nature {
        /** One plant. */
        PLANT,
        /** A layer; once it is severed it is a plant like any other. */
        LAYER,
        /** Many under one tag. */
        BATCH,
        /** A branch that differs from its plant. */
        SPORT
    }

    /** How units are raised, as far as take is counted. */
    public enum Method {
        /** Air layers. */
        LAYER,
        /** Cuttings. */
        CUTTING,
        /** Grafts. */
        GRAFT,
        /** Seed. */
        SEED
    }

    /**
     * The entry that began a unit.
     *
     * @param order its recorded order
     * @param position which of the entry's tags, as first written, began this unit, from 0; the unit's number less this
     *     is the number of the first unit that the entry began
     * @param day its day
     */
    public record Begun(long order, int position, When day) {}

    /**
     * A tag that a unit bore.
     *
     * @param tag the tag
     * @param day since when
     * @param order by which entry
     */
    public record TagUse(Tag tag, When day, long order) {}

    /**
     * A cultivar that a unit was said or found to be.
     *
     * @param cultivar the name
     * @param isTrue whether it was determined rather than said
     * @param day since when it is known
     * @param order by which entry
     */
    public record Naming(CultivarName cultivar, boolean isTrue, When day, long order) {}

    /**
     * How a unit counts for take.
     *
     * @param method how it is raised
     * @param day when it was set, struck, worked or sown
     * @param order by which entry
     * @param by who did it
     * @param count how many units were set under this tag; absent for seed sown by weight
     * @param root the unit that was first set, of which this one was split off; the unit itself otherwise
     */
    public record Cohort(
            Method method, When day, long order, Optional<PersonNumber> by, Optional<Integer> count, UnitNumber root) {}

    /** What became of units of a cohort. */
    public enum Fate {
        /** Taken. */
        TAKEN,
        /** Failed. */
        FAILED,
        /** Withdrawn before anybody could know. */
        WITHDRAWN,
        /** Nobody could find them. */
        NOT_SEEN,
        /** Went on, not yet known, under another tag, whose cohort counts them. */
        MOVED_ON,
        /** More were there than had been written down: the cohort is larger by these. */
        FOUND_MORE,
        /** Seen and still undecided: not an end, but somebody has looked. */
        STILL_ON
    }

    /**
     * What became of some units of a cohort.
     *
     * @param fate what
     * @param count how many
     * @param cause why they failed, where told
     * @param day when it was seen
     * @param order by which entry
     */
    public record Outcome(Fate fate, int count, Optional<Cause> cause, When day, long order) {}

    /**
     * How many units there are under the tag from a day on.
     *
     * @param pending set, neither taken nor failed; absent when nobody counted
     * @param growing on their own roots
     * @param day from when
     * @param order by which entry
     */
    public record Standing(Optional<Integer> pending, int growing, When day, long order) {}

    /**
     * A container that the unit was put into.
     *
     * @param container the container; absent when planted in open ground
     * @param day when
     * @param order by which entry
     */
    public record Potting(Optional<String> container, When day, long order) {}

    /**
     * A place that the unit stood in.
     *
     * @param place the place
     * @param day from when
     * @param order by which entry
     */
    public record Stay(Place place, When day, long order) {}

    /** Why units left their tag. */
    public enum Reason {
        /** Sold. */
        SOLD,
        /** Come back after a sale; the count is added again. */
        RETURNED,
        /** Lost after they stood on their own roots. */
        LOST,
        /** Culled for quality. */
        CULLED,
        /** Culled as surplus. */
        SURPLUS,
        /** Failed. */
        FAILED,
        /** Withdrawn. */
        WITHDRAWN,
        /** Not seen again. */
        NOT_SEEN,
        /** Drawn, split or merged into others. */
        MOVED_ON,
        /** Worked as a rootstock. */
        WORKED,
        /** A rootstock come back from a graft that failed. */
        UNWORKED,
        /** Nothing is left after it was divided or severed. */
        USED_UP
    }

    /**
     * Units that left the tag.
     *
     * @param reason why
     * @param count how many
     * @param person to whom, where sold
     * @param day when
     * @param order by which entry
     */
    public record Leaving(Reason reason, int count, Optional<PersonNumber> person, When day, long order) {}
}
