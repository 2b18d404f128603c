package ortet.choice;

/** What a plan is to do best. */
public enum Aim {
    /** Earn the greatest expected margin: sales less material, hours and room at their costs. */
    MARGIN,
    /** Meet the greatest expected share of all trees asked for; of plans that meet the same, the greatest margin. */
    DEMAND
}
