package ortet.choice;

import java.util.Objects;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Count;
import ortet.figures.Interval;

/**
 * What the book tells of one stage on the way from setting to a tree fit for sale: the rate of a season to come.
 *
 * @param kind which stage
 * @param own what became of the cultivar's own units, of those known
 * @param seasons in how many seasons they were set
 * @param lean what was leaned on besides, because too little is known of its own
 * @param others of how many other cultivars that is, 0 where nothing was leaned on
 * @param helped what became of theirs
 * @param correlation of the luck of two units of one season, 0 to 1
 * @param source from what that was told
 * @param degrees by how many seasons more than cultivars it was told
 * @param shapes the distribution of the rate of a season to come
 * @param interval where that rate lies with a probability of 90 %
 */
public record PlanStage(
        Kind kind,
        Count own,
        int seasons,
        Lean lean,
        int others,
        Count helped,
        double correlation,
        Spread source,
        int degrees,
        Shapes shapes,
        Interval interval) {
    /** The stages. */
    public enum Kind {
        /** Of those set, whether they take. */
        TAKE,
        /** Of those taken, whether they establish. */
        ESTABLISH,
        /** Of those established, whether they are fit for sale in time. */
        FIT
    }

    /** What a rate leans on. */
    public enum Lean {
        /** On what is known of the cultivar itself, alone. */
        OWN,
        /** Also on the other cultivars of its botanical name. */
        TAXON,
        /** Also on all other cultivars. */
        ALL
    }

    /** From what it was told how much seasons differ. */
    public enum Spread {
        /** The cultivar's own seasons. */
        OWN,
        /** The seasons of all cultivars of its botanical name. */
        TAXON,
        /** The seasons of all cultivars. */
        ALL,
        /** Nothing: seasons are taken to be alike. */
        UNTOLD
    }

    public PlanStage {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(own);
        Objects.requireNonNull(lean);
        Objects.requireNonNull(helped);
        Objects.requireNonNull(source);
        Objects.requireNonNull(shapes);
        Objects.requireNonNull(interval);
    }

    /** Return the rate that is expected. */
    public double rate() {
        return shapes.mean();
    }
}
