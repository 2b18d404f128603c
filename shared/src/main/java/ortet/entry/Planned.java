package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.When;

/**
 * A plan that was accepted: so many trees fit for sale by a day, and what is to be set for them. A later plan of the same
 * name takes its place.
 *
 * @param name what the plan is called
 * @param cultivar the cultivar, or a botanical name for all that is under it
 * @param method how they are to be raised
 * @param wanted how many trees are wanted, at least 1
 * @param wantedBy the day by which they are wanted
 * @param surePercent how sure that is to be, in percent, from 1 to 99.9
 * @param size the size class that they are wanted in; any when absent
 * @param toSet how many are to be set, at least as many as are wanted
 * @param setFrom the first day of setting
 * @param setTo the last day of setting, not before the first
 * @param expected how many trees were expected of that when it was planned, at least 0
 * @param note anything else worth keeping
 */
public record Planned(
        String name,
        CultivarName cultivar,
        PlannedMethod method,
        int wanted,
        When wantedBy,
        Decimal surePercent,
        Optional<String> size,
        int toSet,
        When setFrom,
        When setTo,
        Decimal expected,
        Optional<String> note)
        implements Entry {
    private static final double SUREST = 99.9;

    public Planned {
        name = Require.text(name, "name");
        Require.present(cultivar, "cultivar");
        Require.present(method, "method");
        Require.atLeast(1, wanted, "wanted");
        Require.present(wantedBy, "wanted_by");
        Require.present(surePercent, "sure_percent");
        double sure = surePercent.value().doubleValue();
        Require.that(sure >= 1 && sure <= SUREST, "sure_percent", "a number from 1 to 99.9");
        size = Require.text(size, "size");
        Require.that(toSet >= wanted, "to_set", "at least as many as are wanted");
        Require.present(setFrom, "set_from");
        Require.present(setTo, "set_to");
        Require.that(!setTo.last().isBefore(setFrom.first()), "set_to", "a day not before set_from");
        Require.that(!wantedBy.last().isBefore(setFrom.first()), "wanted_by", "a day not before set_from");
        Require.present(expected, "expected");
        Require.that(expected.signum() >= 0, "expected", "a number of at least 0");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.PLANNED;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.planned(this);
    }
}
