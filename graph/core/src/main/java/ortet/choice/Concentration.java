package ortet.choice;

import java.util.Objects;

/**
 * No more than a share of one year's setting on one clone, or on the mothers of one place: of the trees expected to
 * establish from what is set in that year.
 *
 * @param on what
 * @param share above 0, to 1
 */
public record Concentration(On on, double share) {
    /** On what too much may not rest. */
    public enum On {
        /** The mothers of one clone. */
        CLONE,
        /** The mothers of one place. */
        PLACE
    }

    public Concentration {
        Objects.requireNonNull(on);
        ortet.value.Require.that(share > 0 && share <= 1, "share", "above 0, at most 1");
    }

    String of(Mother mother) {
        return on == On.CLONE ? mother.ortet() : mother.place();
    }
}
