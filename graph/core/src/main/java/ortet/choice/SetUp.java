package ortet.choice;

import java.util.List;
import java.util.Objects;

/**
 * What it takes to go to one mother and do something with her, besides what each unit needs: the walk, the tools, the
 * labels, the entry in the book. Needed once for each mother in each year in which it is done, however many units are set.
 *
 * @param layering to layer her or try her out
 * @param cuttings to take cuttings from her
 * @param cuttingBack to cut her back and throw the wood away
 * @param selling to sell her as a tree; needed besides layering where she is layered and then sold
 */
public record SetUp(Needs layering, Needs cuttings, Needs cuttingBack, Needs selling) {
    /** Nothing at all. */
    public static final SetUp NONE = SetUp.always(Needs.NONE);

    public SetUp {
        Objects.requireNonNull(layering);
        Objects.requireNonNull(cuttings);
        Objects.requireNonNull(cuttingBack);
        Objects.requireNonNull(selling);
    }

    /** The same for whatever is done. */
    public static SetUp always(Needs needs) {
        return new SetUp(needs, needs, needs, needs);
    }

    /** Return what a deed needs; nothing for leaving and resting. */
    List<Needs> of(Deed deed) {
        return switch (deed) {
            case LAYER, TRY_OUT -> List.of(layering);
            case LAYER_AND_SELL -> List.of(layering, selling);
            case TAKE_CUTTINGS -> List.of(cuttings);
            case CUT_BACK -> List.of(cuttingBack);
            case SELL -> List.of(selling);
            case LEAVE_LONG, REST -> List.of();
        };
    }
}
