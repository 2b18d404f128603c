package ortet.choice;

/**
 * What the nursery's own means cost it.
 *
 * @param hour money for an hour of work, 0 where wages are paid anyway
 * @param m2Year money for a square metre of bench for a year, 0 where it stands there anyway
 */
public record Costs(double hour, double m2Year) {
    /** Hours and room are limited, but cost nothing more. */
    public static final Costs NONE = new Costs(0, 0);

    public Costs {
        Checks.atLeastZero(hour, "cost of an hour");
        Checks.atLeastZero(m2Year, "cost of a square metre and year");
    }
}
