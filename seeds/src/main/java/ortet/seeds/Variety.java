package ortet.seeds;

import java.util.Optional;
import ortet.entry.MakeUp;
import ortet.plant.CultivarName;

/**
 * A cultivar or species of Sallowfield, and how it behaves there.
 *
 * <p>Names and epithets are public facts, written as the ICNCP 2016 asks; 'Sallan' and 'Sallowfield Tide' are invented.
 * How often things take is invented too, near published figures where there are any (University of Florida for the
 * weeks, trials with Ulmus parvifolia 'Emerald Prairie' for its cuttings, Juniperus sabina and J. communis for
 * junipers, Bartlett 1935 for root cuttings of plum); that junipers layer more readily than Japanese maples is common
 * practice.
 */
enum Variety {
    DESHOJO("Acer palmatum 'Deshojo'", 2.4, 0.70, 80, false, 0.42, 0.25, 0, 0, 0.82, 1.25),
    KIYOHIME("Acer palmatum 'Kiyohime'", 1.6, 0.66, 84, false, 0.48, 0.30, 0, 0, 0.80, 1.3),
    SHISHIGASHIRA("Acer palmatum 'Shishigashira'", 1.7, 0.58, 92, false, 0.22, 0.12, 0, 0, 0.84, 1.5),
    ARAKAWA("Acer palmatum 'Arakawa'", 2.6, 0.64, 86, false, 0.20, 0.12, 0, 0, 0.80, 1.4),
    KATSURA("Acer palmatum 'Katsura'", 2.2, 0.68, 82, false, 0.38, 0.24, 0, 0, 0.78, 1.15),
    SALLAN("Acer palmatum 'Sallan'", 2.5, 0.76, 76, false, 0.50, 0.34, 0, 0, 0.84, 1.6),
    MINO_YATSUBUSA("Acer buergerianum 'Mino-yatsubusa'", 1.7, 0.72, 74, false, 0.45, 0.35, 0.10, 0.30, 0.75, 1.5),
    GOSHIKI_KAEDE("Acer buergerianum 'Goshiki-kaede'", 2.0, 0.74, 74, false, 0.44, 0.32, 0.08, 0.20, 0.78, 1.3),
    SEIJU("Ulmus parvifolia 'Seiju'", 2.0, 0.88, 58, false, 0.88, 0.84, 0.10, 0.62, 0.8, 0.95),
    HOKKAIDO("Ulmus parvifolia 'Hokkaido'", 1.2, 0.80, 66, false, 0.78, 0.72, 0.06, 0.40, 0.8, 1.2),
    CATLIN("Ulmus parvifolia 'Catlin'", 2.6, 0.90, 55, false, 0.92, 0.87, 0.09, 0.65, 0.8, 0.85),
    FROSTY("Ulmus parvifolia 'Frosty'", 2.1, 0.86, 60, false, 0.84, 0.78, 0.08, 0.55, 0.8, 1),
    GOBLIN("Zelkova serrata 'Goblin'", 2.0, 0.78, 72, false, 0.58, 0.42, 0.05, 0.45, 0.75, 1.1),
    ITOIGAWA("Juniperus chinensis 'Itoigawa'", 1.5, 0.90, 150, true, 0.40, 0.60, 0.55, 0, 0.85, 1.35),
    KISHU("Juniperus chinensis 'Kishu'", 1.6, 0.89, 150, true, 0.40, 0.58, 0.52, 0, 0.85, 1.3),
    SAN_JOSE("Juniperus chinensis 'San José'", 2.0, 0.86, 140, true, 0.35, 0.52, 0.45, 0, 0.8, 0.9),
    SALLOWFIELD_TIDE("Juniperus chinensis 'Sallowfield Tide'", 1.4, 0.87, 155, true, 0.38, 0.56, 0.50, 0, 0.8, 1.7),
    NANA("Juniperus procumbens 'Nana'", 1.8, 0.92, 120, true, 0.45, 0.66, 0.58, 0, 0.8, 0.85),
    BONIN_ISLES("Juniperus procumbens 'Bonin Isles'", 2.0, 0.90, 125, true, 0.42, 0.62, 0.54, 0, 0.8, 0.9),
    KOTOBUKI("Pinus thunbergii 'Kotobuki'", 1.8, 0.42, 260, true, 0, 0, 0, 0, 0.66, 1.8),
    THUNDERHEAD("Pinus thunbergii 'Thunderhead'", 2.4, 0.38, 270, true, 0, 0, 0, 0, 0.70, 1.5),
    BENI_CHIDORI("Prunus mume 'Beni-chidori'", 2.6, 0.58, 90, false, 0.30, 0.24, 0.12, 0.42, 0.76, 1.2),
    OMOI_NO_MAMA("Prunus mume 'Omoi-no-mama'", 2.5, 0.55, 95, false, 0.26, 0.22, 0.10, 0.40, 0.74, 1.3),
    GOLDEN_HORNET("Malus × zumi 'Golden Hornet'", 3.0, 0.72, 85, false, 0.34, 0.30, 0.26, 0.35, 0.88, 0.9),
    CHOJUBAI("Chaenomeles japonica 'Chojubai'", 1.2, 0.85, 70, false, 0.62, 0.58, 0.20, 0.66, 0.7, 1.4),

    ACER_PALMATUM("Acer palmatum", 2.6, 0.72, 80, false, 0.40, 0.25, 0, 0, 0.8, 0.8),
    ACER_BUERGERIANUM("Acer buergerianum", 3.0, 0.82, 66, false, 0.55, 0.45, 0.18, 0.45, 0.8, 0.8),
    ULMUS_PARVIFOLIA("Ulmus parvifolia", 2.8, 0.88, 56, false, 0.86, 0.80, 0.08, 0.60, 0.8, 0.75),
    ZELKOVA_SERRATA("Zelkova serrata", 2.6, 0.80, 70, false, 0.55, 0.40, 0.05, 0.50, 0.8, 0.75),
    PINUS_THUNBERGII("Pinus thunbergii", 2.6, 0.40, 265, true, 0, 0, 0, 0, 0.8, 0.9),
    PRUNUS_MUME("Prunus mume", 2.8, 0.56, 90, false, 0.28, 0.22, 0.10, 0.42, 0.8, 0.9),
    MALUS_ZUMI("Malus × zumi", 3.0, 0.70, 85, false, 0.30, 0.26, 0.22, 0.35, 0.8, 0.7);

    private final CultivarName cultivar;
    private final double growthMm;
    private final double layer;
    private final int daysToRoot;
    private final boolean slow;
    private final double softwood;
    private final double semiRipe;
    private final double hardwood;
    private final double root;
    private final double graft;
    private final double dearness;

    Variety(
            String cultivar,
            double growthMm,
            double layer,
            int daysToRoot,
            boolean slow,
            double softwood,
            double semiRipe,
            double hardwood,
            double root,
            double graft,
            double dearness) {
        this.cultivar = CultivarName.parse(cultivar);
        this.growthMm = growthMm;
        this.layer = layer;
        this.daysToRoot = daysToRoot;
        this.slow = slow;
        this.softwood = softwood;
        this.semiRipe = semiRipe;
        this.hardwood = hardwood;
        this.root = root;
        this.graft = graft;
        this.dearness = dearness;
    }

    CultivarName cultivar() {
        return cultivar;
    }

    /** Return the usual growth of the stem in millimetres a year. */
    double growthMm() {
        return growthMm;
    }

    /** Return how often a layer takes. */
    double layer() {
        return layer;
    }

    /** Return the median days from setting a layer to roots in the moss. */
    int daysToRoot() {
        return daysToRoot;
    }

    /** Tell whether layers are often left on for a second summer. */
    boolean isSlow() {
        return slow;
    }

    /** Return how often a cutting of that wood roots, 0 where nobody tries. */
    double cutting(ortet.entry.Wood wood) {
        return switch (wood) {
            case SOFTWOOD, LEAF_BUD -> softwood;
            case SEMI_RIPE, HEEL -> semiRipe;
            case HARDWOOD -> hardwood;
            case ROOT -> root;
        };
    }

    /** Return how often a graft takes. */
    double graft() {
        return graft;
    }

    /** Return what a tree costs beside others of its size. */
    double dearness() {
        return dearness;
    }

    /** Return the species of a cultivar, where Sallowfield has seedlings of it. */
    Optional<Variety> species() {
        for (Variety variety : values()) {
            if (variety.cultivar.epithet().isEmpty() && variety.cultivar.taxon().equals(cultivar.taxon())) {
                return Optional.of(variety);
            }
        }
        return Optional.empty();
    }

    MakeUp makeUp() {
        return cultivar.epithet().isPresent() ? MakeUp.CLONAL : MakeUp.SEED_RAISED;
    }
}
