package ortet.entry;

import java.util.List;
import ortet.plant.Tag;

/**
 * One thing that somebody did or saw on one day, as it stands in the book.
 *
 * <p>An entry that exists is valid in itself; whether it can be <em>true</em> (is the mother alive? is the tag free?) is
 * for the book to judge. Each kind is a record, and whoever handles entries does so through a {@link Visitor} with one
 * method for each kind and no default, so that a new kind breaks the build wherever it is not handled.
 */
public sealed interface Entry
        permits CultivarListed,
                PlaceListed,
                CostListed,
                PriceListed,
                Acquired,
                LayerSet,
                CuttingsStruck,
                GraftWorked,
                SeedSown,
                Divided,
                SportFound,
                Retagged,
                Redetermined,
                FoundUntagged,
                Checked,
                Reworked,
                Taken,
                Severed,
                Drawn,
                Failed,
                Potted,
                PlantedOut,
                Lifted,
                Moved,
                Measured,
                Seen,
                KeptAsStock,
                LeftLong,
                CutBack,
                Held,
                Cleared,
                Graded,
                Counted,
                Split,
                Reserved,
                Released,
                Noted,
                Merged,
                Closed,
                Sold,
                Returned,
                Culled,
                Lost,
                Corrected,
                CrossedOut {

    /** Return the kind of entry, which gives its word and its rank within a day. */
    EntryKind kind();

    /** Return the tags of the units that the entry is about; empty for kinds that are about no unit. */
    List<Tag> tags();

    /** Call the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** Return every unit that the entry names, with the part it plays. */
    default List<Mention> mentions() {
        return accept(Mentions.VISITOR);
    }

    /** One method for each kind of entry. */
    interface Visitor<R> {
        R cultivarListed(CultivarListed entry);

        R placeListed(PlaceListed entry);

        R costListed(CostListed entry);

        R priceListed(PriceListed entry);

        R acquired(Acquired entry);

        R layerSet(LayerSet entry);

        R cuttingsStruck(CuttingsStruck entry);

        R graftWorked(GraftWorked entry);

        R seedSown(SeedSown entry);

        R divided(Divided entry);

        R sportFound(SportFound entry);

        R retagged(Retagged entry);

        R redetermined(Redetermined entry);

        R foundUntagged(FoundUntagged entry);

        R checked(Checked entry);

        R reworked(Reworked entry);

        R taken(Taken entry);

        R severed(Severed entry);

        R drawn(Drawn entry);

        R failed(Failed entry);

        R potted(Potted entry);

        R plantedOut(PlantedOut entry);

        R lifted(Lifted entry);

        R moved(Moved entry);

        R measured(Measured entry);

        R seen(Seen entry);

        R keptAsStock(KeptAsStock entry);

        R leftLong(LeftLong entry);

        R cutBack(CutBack entry);

        R held(Held entry);

        R cleared(Cleared entry);

        R graded(Graded entry);

        R counted(Counted entry);

        R split(Split entry);

        R reserved(Reserved entry);

        R released(Released entry);

        R noted(Noted entry);

        R merged(Merged entry);

        R closed(Closed entry);

        R sold(Sold entry);

        R returned(Returned entry);

        R culled(Culled entry);

        R lost(Lost entry);

        R corrected(Corrected entry);

        R crossedOut(CrossedOut entry);
    }
}
