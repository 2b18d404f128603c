package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A scion joined to a rootstock; without a count each tag is one graft.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param scion the plant that gave the scion, where it is in the book
 * @param stock the rootstock, a plant or a batch, where it is in the book
 * @param stockCultivar the name of a rootstock that is not in the book
 * @param cultivar the name it is said to bear
 * @param graft the kind of graft
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param stockAgeYears age of the stock plant in years
 * @param setUnrecorded yes where nobody recorded it when it was done, and it is written for the lineage alone: it counts in
 *     no rate
 * @param note anything else worth keeping
 */
public record GraftWorked(
        List<Tag> tags,
        Optional<Integer> count,
        Optional<Tag> scion,
        Optional<Tag> stock,
        Optional<CultivarName> stockCultivar,
        Optional<CultivarName> cultivar,
        Optional<GraftKind> graft,
        Optional<Place> place,
        Optional<String> container,
        Optional<Integer> stockAgeYears,
        Optional<Boolean> setUnrecorded,
        Optional<String> note)
        implements Entry {
    public GraftWorked {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(scion, "scion");
        Require.present(stock, "stock");
        Require.present(stockCultivar, "stock_cultivar");
        Require.present(cultivar, "cultivar");
        Require.present(graft, "graft");
        Require.present(place, "place");
        container = Require.text(container, "container");
        Require.present(stockAgeYears, "stock_age_years");
        Require.atLeast(0, stockAgeYears, "stock_age_years");
        Require.present(setUnrecorded, "set_unrecorded");
        note = Require.text(note, "note");
        Require.that(
                stock.isEmpty() || stockCultivar.isEmpty(),
                "stock_cultivar",
                "either a stock in the book or the name of one that is not");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.GRAFT_WORKED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.graftWorked(this);
    }
}
