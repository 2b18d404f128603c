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
     * Return this in words that follow the unit's tag and end with that of the other: {@code was layered on 2024-05-03
     * from K-3}.
     *
     * @param other the tag of the unit before it; that of the unit itself where it is what was asked about
     */
    String words(Tag other) {
        String when = day.map(Tie::on).orElse("");
        return switch (kind) {
            case ASKED -> "was asked about";
            case CAME -> "came " + what.orElse("") + when;
            case STOOD -> "stood in " + what.orElse("") + period();
            case SOURCE_OF -> gave(when, other);
            case SAME_CONSIGNMENT ->
                doubt.isPresent()
                        ? "came" + when + " from the same supplier as " + other
                        : "came" + when + " with consignment " + what.orElse("") + ", as did " + other;
            case RAISED_FROM -> came(when, other);
            case BODY_OF -> (act.equals(Optional.of(Act.SPORT_OF)) ? "bears the sport " : "bore the layer ") + other;
            case MAY_BE -> "may be what was found" + when + " without a label, " + other;
            case CAME_BACK -> "came back" + when + " as the rootstock of a graft that failed, " + other;
            case STOOD_WITH ->
                (what.isEmpty() || doubt.equals(Optional.of(Doubt.PLACE_UNKNOWN)) ? "may have stood" : "stood")
                        + what.map(place -> " in " + place).orElse("") + period() + " with " + other;
            case SAME_HAND -> "was worked on by " + what.orElse("") + when + ", as was " + other;
        };
    }

    private static String on(String day) {
        return (day.length() == "2024-05-03".length() ? " on " : " in ") + day;
    }

    private String period() {
        if (day.isPresent() && until.map(LocalDate::toString).equals(day)) {
            return " on " + day.get();
        }
        return day.map(text -> " from " + text).orElse("")
                + until.map(last -> " to " + last).orElse(day.isPresent() ? " on" : "");
    }

    private String gave(String when, Tag other) {
        return switch (act.orElseThrow()) {
            case LAYERED_FROM -> "gave" + when + " the layer " + other;
            case STRUCK_FROM ->
                "gave" + when + (doubt.isPresent() ? ", as others did, cuttings for " : " the cuttings ") + other;
            case LAYERED_BELOW -> "gave" + when + ", from below its union, the layer " + other;
            case STRUCK_BELOW -> "gave" + when + ", from below its union, the cuttings " + other;
            case STOCK_WOOD_OF -> "is the rootstock whose wood gave" + when + " " + other;
            case SCION_OF -> "gave" + when + " the scion of " + other;
            case ROOTSTOCK_OF -> "gave" + when + " the rootstock of " + other;
            case SEED_OF -> "bore the seed sown" + when + " under " + other;
            case POLLEN_OF -> "gave the pollen for the seed sown" + when + " under " + other;
            case DIVIDED_FROM -> "gave" + when + " the division " + other;
            case SPORT_OF -> "bears the sport " + other;
            case DRAWN_FROM -> "is the batch that gave" + when + " " + other;
            case SPLIT_FROM -> "is the batch that gave" + when + " a part, " + other;
            case MERGED_FROM -> "went" + when + " with others into " + other;
            case ONE_OF -> "may be what was found" + when + " without a label, " + other;
        };
    }

    private String came(String when, Tag other) {
        return switch (act.orElseThrow()) {
            case LAYERED_FROM -> "was layered" + when + " from " + other;
            case STRUCK_FROM ->
                "was struck" + when + (doubt.isPresent() ? " from several, one of them " : " from ") + other;
            case LAYERED_BELOW -> "was layered" + when + " from below the union of " + other;
            case STRUCK_BELOW -> "was struck" + when + " from below the union of " + other;
            case STOCK_WOOD_OF -> "was raised" + when + " from wood of the rootstock " + other;
            case SCION_OF -> "was grafted" + when + " with a scion of " + other;
            case ROOTSTOCK_OF -> "was grafted" + when + " on " + other;
            case SEED_OF -> "was sown" + when + " from seed of " + other;
            case POLLEN_OF -> "was sown" + when + " from seed with pollen of " + other;
            case DIVIDED_FROM -> "was divided" + when + " from " + other;
            case SPORT_OF -> "is a sport found" + when + " on " + other;
            case DRAWN_FROM -> "was drawn" + when + " from " + other;
            case SPLIT_FROM -> "was split" + when + " from " + other;
            case MERGED_FROM -> "was merged" + when + " from several, one of them " + other;
            case ONE_OF -> "was found" + when + " without a label and may be " + other;
        };
    }
}
