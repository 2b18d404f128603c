package ortet.lineage;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import ortet.book.Act;

/** A way by which a disease may pass between plants that the book knows to be related. */
public enum Route {
    /** Between a mother and her layers, both ways while a layer is on her. */
    LAYERS(Act.LAYERED_FROM, Act.LAYERED_BELOW),
    /** From a mother to cuttings. */
    CUTTINGS(Act.STRUCK_FROM, Act.STRUCK_BELOW),
    /** From a plant to the grafts that it gave scions for. */
    SCIONS(Act.SCION_OF),
    /** From a rootstock to grafts and to what was raised from below their union, and back when it outlived a graft. */
    ROOTSTOCKS(Act.ROOTSTOCK_OF, Act.STOCK_WOOD_OF),
    /** From the plant that bore seed to seedlings. */
    SEED(Act.SEED_OF),
    /** From the plant that gave pollen to seedlings. */
    POLLEN(Act.POLLEN_OF),
    /** From a mother to her divisions. */
    DIVISIONS(Act.DIVIDED_FROM),
    /** Between a plant and a sport on it. */
    SPORTS(Act.SPORT_OF),
    /** From a batch to what was drawn from it. */
    DRAWN(Act.DRAWN_FROM),
    /** From a batch to what was split off it. */
    SPLIT(Act.SPLIT_FROM),
    /** From batches to the one that they were merged into. */
    MERGED(Act.MERGED_FROM),
    /** Between a plant found without a label and each that it may be. */
    LOST_LABELS(Act.ONE_OF),
    /** Between what came with one consignment. */
    CONSIGNMENTS();

    /** Every route. */
    public static final Set<Route> ALL = Collections.unmodifiableSet(EnumSet.allOf(Route.class));

    private final List<Act> acts;

    Route(Act... acts) {
        this.acts = List.of(acts);
    }

    /** Return the route of an act. */
    public static Route of(Act act) {
        return Arrays.stream(values())
                .filter(route -> route.acts.contains(act))
                .findFirst()
                .orElseThrow();
    }
}
