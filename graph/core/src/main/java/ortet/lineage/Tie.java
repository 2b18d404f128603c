package ortet.lineage;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.book.Act;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * What ties a unit to what was asked about, or to the unit before it on a path from there.
 *
 * @param kind how
 * @param unit the unit
 * @param tag its tag
 * @param act the act that made the one from the other, for {@link Kind#RAISED_FROM}, {@link Kind#SOURCE_OF} and
 *     {@link Kind#BODY_OF}
 * @param what the consignment, supplier, place or person by which they are tied, where it is one of these
 * @param day the day of the act, of the arrival, or the first day together, as far as known: {@code 2019-05}
 * @param until the last day together; absent for a single day and for now
 * @param doubt why it is not sure, where it is not
 */
public record Tie(
        Kind kind,
        UnitNumber unit,
        Tag tag,
        Optional<Act> act,
        Optional<String> what,
        Optional<String> day,
        Optional<LocalDate> until,
        Optional<Doubt> doubt) {
    /** How a unit is tied to the one before it. */
    public enum Kind {
        /** It was asked about by its tag. */
        ASKED,
        /** It came with the consignment, or from the supplier, that was asked about. */
        CAME,
        /** It stood in the place that was asked about. */
        STOOD,
        /** The one before it comes from it: a possible source. */
        SOURCE_OF,
        /** It came with the same consignment as the one before it. */
        SAME_CONSIGNMENT,
        /** It comes from the one before it. */
        RAISED_FROM,
        /** The one before it is, or was then, a part of it. */
        BODY_OF,
        /** It may be the one before it, which was found without a label. */
        MAY_BE,
        /** A rootstock that came back when the graft before it failed. */
        CAME_BACK,
        /** It stood in the same place at the same time. */
        STOOD_WITH,
        /** The same person worked on both on the same day. */
        SAME_HAND
    }

    public Tie {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(act);
        Objects.requireNonNull(what);
        Objects.requireNonNull(day);
        Objects.requireNonNull(until);
        Objects.requireNonNull(doubt);
    }

    /**
     * Return this in words that follow the unit's tag: {@code was layered from K-3 (2024-05-03)}.
     *
     * @param other the tag of the unit before it; that of the unit itself where it is what was asked about
     */
    String words(Tag other) {
        String when = day.map(text -> " (" + text + ")").orElse("");
        return switch (kind) {
            case ASKED -> "was asked about";
            case CAME -> "came " + what.orElse("") + when;
            case STOOD -> "stood in " + what.orElse("") + period();
            case SOURCE_OF -> gave(other) + when;
            case SAME_CONSIGNMENT ->
                (doubt.isPresent()
                                ? "came from the same supplier on the same day as " + other
                                : "came with consignment " + what.orElse("") + ", like " + other)
                        + when;
            case RAISED_FROM -> came(other) + when;
            case BODY_OF ->
                act.equals(Optional.of(Act.SPORT_OF)) ? "bears the sport " + other : "bore the layer " + other;
            case MAY_BE -> "may be " + other + ", which was found without a label" + when;
            case CAME_BACK -> "came back as a rootstock when the graft " + other + " failed" + when;
            case STOOD_WITH ->
                doubt.equals(Optional.of(Doubt.PLACE_UNKNOWN)) || doubt.equals(Optional.of(Doubt.SUSPECT_PLACE_UNKNOWN))
                        ? "may have stood with " + other
                                + what.map(place -> " in " + place).orElse("") + period()
                        : "stood with " + other + " in " + what.orElse("") + period();
            case SAME_HAND -> "was worked on by " + what.orElse("") + when + ", like " + other;
        };
    }

    private String period() {
        if (day.isPresent() && until.map(LocalDate::toString).equals(day)) {
            return " on " + day.get();
        }
        String start = day.map(text -> " from " + text).orElse("");
        return start + until.map(last -> " to " + last).orElse(day.isPresent() ? " on" : "");
    }

    private String gave(Tag other) {
        return switch (act.orElseThrow()) {
            case LAYERED_FROM -> "gave the layer " + other;
            case STRUCK_FROM ->
                (doubt.isPresent() ? "is one of the mothers of the cuttings " : "gave the cuttings ") + other;
            case SCION_OF -> "gave the scion of " + other;
            case ROOTSTOCK_OF -> "gave the rootstock of " + other;
            case SEED_OF -> "bore the seed of " + other;
            case POLLEN_OF -> "gave the pollen of " + other;
            case DIVIDED_FROM -> "gave the division " + other;
            case SPORT_OF -> "bears the sport " + other;
            case DRAWN_FROM -> "is the batch that " + other + " was drawn from";
            case SPLIT_FROM -> "is the batch that " + other + " was split from";
            case MERGED_FROM -> "was merged into " + other;
            case ONE_OF -> "may be " + other + ", which was found without a label";
        };
    }

    private String came(Tag other) {
        return switch (act.orElseThrow()) {
            case LAYERED_FROM -> "was layered from " + other;
            case STRUCK_FROM -> "was struck from " + other + (doubt.isPresent() ? " and others" : "");
            case SCION_OF -> "was grafted with a scion of " + other;
            case ROOTSTOCK_OF -> "was grafted on " + other;
            case SEED_OF -> "was sown from seed of " + other;
            case POLLEN_OF -> "was sown from seed with pollen of " + other;
            case DIVIDED_FROM -> "was divided from " + other;
            case SPORT_OF -> "is a sport found on " + other;
            case DRAWN_FROM -> "was drawn from " + other;
            case SPLIT_FROM -> "was split from " + other;
            case MERGED_FROM -> "was merged from " + other + " and others";
            case ONE_OF -> "was found without a label and may be " + other;
        };
    }
}
