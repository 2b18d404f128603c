package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.When;

/**
 * A cultivar as the nursery knows it; the latest listing of a name counts.
 *
 * @param cultivar the name it is said to bear
 * @param tradeDesignation the name it is sold under, where that is not the epithet
 * @param synonyms other names for the same cultivar, separated by semicolons
 * @param makeUp one clone, several clones, or raised from seed
 * @param right whether a breeder's right protects it
 * @param protectedUntil when that right ends
 * @param licence the licence under which the nursery may propagate it
 * @param chimera whether it is a variegated or other chimera, which root cuttings do not keep
 * @param growthMm usual growth of the stem in millimetres a year
 * @param note anything else worth keeping
 */
public record CultivarListed(
        CultivarName cultivar,
        Optional<String> tradeDesignation,
        Optional<String> synonyms,
        Optional<MakeUp> makeUp,
        Optional<Right> right,
        Optional<When> protectedUntil,
        Optional<String> licence,
        Optional<Boolean> chimera,
        Optional<Decimal> growthMm,
        Optional<String> note)
        implements Entry {
    public CultivarListed {
        Require.present(cultivar, "cultivar");
        tradeDesignation = Require.text(tradeDesignation, "trade_designation");
        synonyms = Require.text(synonyms, "synonyms");
        Require.present(makeUp, "make_up");
        Require.present(right, "right");
        Require.present(protectedUntil, "protected_until");
        licence = Require.text(licence, "licence");
        Require.present(chimera, "chimera");
        Require.present(growthMm, "growth_mm");
        Require.above(0, growthMm, "growth_mm");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CULTIVAR_LISTED;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.cultivarListed(this);
    }
}
