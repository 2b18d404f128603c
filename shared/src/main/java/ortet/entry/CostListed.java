package ortet.entry;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * What something costs, from the entry's day on; a later listing of the same thing takes its place from its own day on.
 *
 * <p>It lists one of five things, see {@link Sort}, and refuses what has no meaning for that.
 *
 * @param task the act whose work is listed; or, per hour, the act for which the hour is paid so
 * @param material the material, as entries name it: a container, a medium, a wrap, a hormone
 * @param place the bench or ground, with all that is listed within it; everywhere when absent
 * @param container only for what is in, or goes into, this container
 * @param size only for what is graded in this size class
 * @param per what the amount and the hours are for; a unit when absent
 * @param amount money; for work, what it costs besides the hours
 * @param hours hours of work
 * @param unitsPerM2 how many units stand on one square metre
 * @param note anything else worth keeping
 */
public record CostListed(
        Optional<Task> task,
        Optional<String> material,
        Optional<Place> place,
        Optional<String> container,
        Optional<String> size,
        Optional<Per> per,
        Optional<Amount> amount,
        Optional<Decimal> hours,
        Optional<Decimal> unitsPerM2,
        Optional<String> note)
        implements Entry {
    /** The acts that take wood from a mother, so that somebody goes to her. */
    private static final Set<Task> ON_A_MOTHER = Set.of(Task.LAYER_SET, Task.CUTTINGS_STRUCK, Task.GRAFT_WORKED);

    /** What is listed. */
    public enum Sort {
        /** The work of an act: hours, an amount or both, per unit or tag; it may depend on the container. */
        WORK,
        /** A material: an amount per unit or tag; it may depend on the container. */
        MATERIAL,
        /** An hour of work, of one act or of all. */
        HOUR,
        /** A square metre for a year, at one place or everywhere. */
        BENCH,
        /** How many units of a container, a size class or a place stand on a square metre. */
        SPACE
    }

    public CostListed {
        Require.present(task, "task");
        material = Require.text(material, "material");
        Require.present(place, "place");
        container = Require.text(container, "container");
        size = Require.text(size, "size");
        Require.present(per, "per");
        Require.present(amount, "amount");
        Require.present(hours, "hours");
        Require.above(0, hours, "hours");
        Require.present(unitsPerM2, "units_per_m2");
        Require.above(0, unitsPerM2, "units_per_m2");
        note = Require.text(note, "note");
        switch (sort(task, material, per, unitsPerM2)) {
            case WORK -> {
                Require.that(amount.isPresent() || hours.isPresent(), "amount", "an amount, hours or both");
                none(place, "place", "the work of an act");
                none(size, "size", "the work of an act");
                if (per.filter(what -> what == Per.MOTHER).isPresent()) {
                    Require.that(
                            task.filter(ON_A_MOTHER::contains).isPresent(),
                            "per",
                            "mother only for layer-set, cuttings-struck or graft-worked");
                    none(container, "container", "the work for each mother");
                }
            }
            case MATERIAL -> {
                Require.that(amount.isPresent(), "amount", "what the material costs");
                none(task, "task", "a material");
                none(hours, "hours", "a material");
                none(place, "place", "a material");
                none(size, "size", "a material");
            }
            case HOUR -> {
                Require.that(amount.isPresent(), "amount", "what an hour costs");
                none(hours, "hours", "the cost of an hour");
                none(place, "place", "the cost of an hour");
                none(container, "container", "the cost of an hour");
                none(size, "size", "the cost of an hour");
            }
            case BENCH -> {
                Require.that(amount.isPresent(), "amount", "what a square metre costs for a year");
                none(task, "task", "the cost of a bench");
                none(hours, "hours", "the cost of a bench");
                none(container, "container", "the cost of a bench");
                none(size, "size", "the cost of a bench");
            }
            case SPACE -> {
                Require.that(
                        place.isPresent() || container.isPresent() || size.isPresent(),
                        "units_per_m2",
                        "a container, a size or a place that it is true of");
                none(task, "task", "units_per_m2");
                none(material, "material", "units_per_m2");
                none(per, "per", "units_per_m2");
                none(amount, "amount", "units_per_m2");
                none(hours, "hours", "units_per_m2");
            }
        }
    }

    private static Sort sort(
            Optional<Task> task, Optional<String> material, Optional<Per> per, Optional<Decimal> unitsPerM2) {
        if (unitsPerM2.isPresent()) {
            return Sort.SPACE;
        }
        if (material.isPresent()) {
            Require.that(
                    per.filter(what -> what != Per.UNIT && what != Per.TAG).isEmpty(),
                    "per",
                    "unit or tag for a material");
            return Sort.MATERIAL;
        }
        if (per.filter(what -> what == Per.HOUR).isPresent()) {
            return Sort.HOUR;
        }
        if (per.filter(what -> what == Per.M2_YEAR).isPresent()) {
            return Sort.BENCH;
        }
        if (task.isEmpty()) {
            throw Refused.because(
                    "bad-value",
                    "task: expected what it is that costs: a task, a material, per hour, per m2-year, or units_per_m2");
        }
        return Sort.WORK;
    }

    private static void none(Optional<?> value, String column, String what) {
        Require.that(value.isEmpty(), column, "nothing here: " + what + " has none");
    }

    /** Return what is listed. */
    public Sort sort() {
        return sort(task, material, per, unitsPerM2);
    }

    @Override
    public EntryKind kind() {
        return EntryKind.COST_LISTED;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.costListed(this);
    }
}
