package ortet.choice;

import java.util.Objects;

/**
 * How much of something limited a plan uses, and what one more of it would be worth.
 *
 * @param resource what
 * @param used how much is used, in its unit; for a share, trees beyond it, below 0 where there are fewer
 * @param available how much there is; 0 for a share
 * @param worth by how much the plan's worth would grow with one unit more, were parts of mothers' plans possible: the
 *     dual price of the linear relaxation, at least 0
 */
public record ResourceUse(Resource resource, double used, double available, double worth) {
    private static final double ROUNDING = 1e-6;

    public ResourceUse {
        Objects.requireNonNull(resource);
    }

    /** Tell whether the plan needs more than there is: the mothers alone need too much, and none of them can go. */
    public boolean isOverused() {
        return used > available + ROUNDING * Math.max(1, Math.abs(available));
    }
}
