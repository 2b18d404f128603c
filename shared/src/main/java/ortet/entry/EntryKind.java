package ortet.entry;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The kinds of entry, each with its word in files and commands and its rank.
 *
 * <p>On one day a unit's entries are read in the order of rank, then in recorded order: it begins before anything is
 * done to it, and what ends it comes last.
 */
public enum EntryKind {
    /** A cultivar as the nursery knows it; the latest listing of a name counts. */
    CULTIVAR_LISTED(Phase.REGISTER, 0, CultivarListed.class),
    /** A place of the nursery: a house, bed or bench, within another or on a property. */
    PLACE_LISTED(Phase.REGISTER, 0, PlaceListed.class),
    /** What work, a material, an hour or a bench costs, or how many units stand on a square metre, from the day on. */
    COST_LISTED(Phase.REGISTER, 0, CostListed.class),
    /** What one tree of a size class sells for, from the day on. */
    PRICE_LISTED(Phase.REGISTER, 0, PriceListed.class),
    /** A plant or batch that came from outside: the earliest that the book knows of it, not an ortet. */
    ACQUIRED(Phase.ORIGIN, 1, Acquired.class),
    /** A branch girdled and wrapped on its mother, so that it roots before it is severed. */
    LAYER_SET(Phase.ORIGIN, 2, LayerSet.class),
    /** Cuttings put in to root, one batch for each tag, from one or several mothers. */
    CUTTINGS_STRUCK(Phase.ORIGIN, 2, CuttingsStruck.class),
    /** A scion joined to a rootstock; without a count each tag is one graft. */
    GRAFT_WORKED(Phase.ORIGIN, 2, GraftWorked.class),
    /** Seed sown under one tag, by count or by weight. */
    SEED_SOWN(Phase.ORIGIN, 2, SeedSown.class),
    /** Parts taken from a plant with roots of their own. */
    DIVIDED(Phase.ORIGIN, 2, Divided.class),
    /** A branch that differs from its plant, tagged so that it can be propagated as a clone of its own. */
    SPORT_FOUND(Phase.ORIGIN, 2, SportFound.class),
    /** A new label for the same unit; the old tag stays findable. */
    RETAGGED(Phase.IDENTITY, 3, Retagged.class),
    /** The true cultivar of a unit that was thought to be another. */
    REDETERMINED(Phase.IDENTITY, 3, Redetermined.class),
    /** A plant found without its label and tagged anew: one of several that it may be. */
    FOUND_UNTAGGED(Phase.IDENTITY, 3, FoundUntagged.class),
    /** What was seen when a layer, tray, graft or sowing was looked at. */
    CHECKED(Phase.OUTCOME, 10, Checked.class),
    /** A layer ringed or wrapped again: the same unit, the same cohort. */
    REWORKED(Phase.OUTCOME, 11, Reworked.class),
    /** Units found to have taken and still under their tag. */
    TAKEN(Phase.OUTCOME, 12, Taken.class),
    /** A layer cut from its mother. */
    SEVERED(Phase.OUTCOME, 13, Severed.class),
    /** Plants drawn from a batch, each under its own tag; with a count each tag is a batch. */
    DRAWN(Phase.OUTCOME, 14, Drawn.class),
    /** Units that came to nothing before they stood on their own roots. */
    FAILED(Phase.OUTCOME, 15, Failed.class),
    /** A plant or a whole batch put into a container. */
    POTTED(Phase.LIFE, 20, Potted.class),
    /** Planted in open ground. */
    PLANTED_OUT(Phase.LIFE, 21, PlantedOut.class),
    /** Lifted from open ground. */
    LIFTED(Phase.LIFE, 22, Lifted.class),
    /** Stood in another place. */
    MOVED(Phase.LIFE, 23, Moved.class),
    /** Stem, height and the places where a layer could be set. */
    MEASURED(Phase.LIFE, 24, Measured.class),
    /** Seen alive. */
    SEEN(Phase.LIFE, 25, Seen.class),
    /** Kept on purpose as a source of propagation wood. */
    KEPT_AS_STOCK(Phase.LIFE, 26, KeptAsStock.class),
    /** Branches left long, for layers to come. */
    LEFT_LONG(Phase.LIFE, 27, LeftLong.class),
    /** Branches cut back. */
    CUT_BACK(Phase.LIFE, 28, CutBack.class),
    /** Held for plant health: nothing leaves, nothing is propagated until it is cleared. */
    HELD(Phase.LIFE, 29, Held.class),
    /** Cleared after a hold. */
    CLEARED(Phase.LIFE, 30, Cleared.class),
    /** Graded fit for sale in a size class. */
    GRADED(Phase.LIFE, 31, Graded.class),
    /** A recount of a batch: how many there are. */
    COUNTED(Phase.LIFE, 32, Counted.class),
    /** Units taken from a batch into other batches. */
    SPLIT(Phase.LIFE, 33, Split.class),
    /** Promised to a customer. */
    RESERVED(Phase.LIFE, 34, Reserved.class),
    /** No longer kept as stock, or no longer reserved. */
    RELEASED(Phase.LIFE, 35, Released.class),
    /** A remark. */
    NOTED(Phase.LIFE, 36, Noted.class),
    /** Several batches put together under a new tag; the old tags stay findable. */
    MERGED(Phase.LIFE, 40, Merged.class),
    /** The rest of a cohort settled at one go. */
    CLOSED(Phase.OUTCOME, 41, Closed.class),
    /** Sold and gone. */
    SOLD(Phase.LIFE, 50, Sold.class),
    /** Come back after a sale. */
    RETURNED(Phase.LIFE, 51, Returned.class),
    /** Taken out by choice. */
    CULLED(Phase.LIFE, 52, Culled.class),
    /** Lost after it stood on its own roots. */
    LOST(Phase.LIFE, 53, Lost.class),
    /** One field of another entry put right, for all of its units or for some. */
    CORRECTED(Phase.AMENDMENT, 60, Corrected.class),
    /** Another entry taken back; its words stay readable. */
    CROSSED_OUT(Phase.AMENDMENT, 61, CrossedOut.class);

    /** What part of the story a kind tells. */
    public enum Phase {
        /** What a cultivar or a place is, what a thing costs. */
        REGISTER,
        /** Where a unit comes from. */
        ORIGIN,
        /** What a unit is. */
        IDENTITY,
        /** Whether it took. */
        OUTCOME,
        /** What became of it. */
        LIFE,
        /** What was wrong in another entry. */
        AMENDMENT
    }

    private static final Map<String, EntryKind> BY_WORD =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(EntryKind::word, Function.identity()));

    private final Phase phase;
    private final int rank;
    private final Class<? extends Entry> type;
    private final String word;

    EntryKind(Phase phase, int rank, Class<? extends Entry> type) {
        this.phase = phase;
        this.rank = rank;
        this.type = type;
        this.word = name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Return the word for this kind in files and commands, such as {@code layer-set}. */
    public String word() {
        return word;
    }

    /** Return what part of the story this kind tells. */
    public Phase phase() {
        return phase;
    }

    /** Return the place of this kind within one day of one unit: lower comes first. */
    public int rank() {
        return rank;
    }

    /** Return the record that holds entries of this kind. */
    public Class<? extends Entry> type() {
        return type;
    }

    /** Return the kind with the given word, where there is one. */
    public static Optional<EntryKind> of(String word) {
        return Optional.ofNullable(BY_WORD.get(word));
    }

    /** Return the words of all kinds, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(EntryKind::word).toList();
    }
}
