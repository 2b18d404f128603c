package ortet.choice;

import ortet.value.Require;

/**
 * What share of the established trees becomes saleable in a size class, and when.
 *
 * @param sizeClass as the outlets name it
 * @param years from setting to sale, at least 0
 * @param share of the trees that have established, 0 to 1
 */
public record Grade(String sizeClass, int years, double share) {
    public Grade {
        sizeClass = Require.text(sizeClass, "size class");
        Require.atLeast(0, years, "years to sale");
        Checks.share(share, "share in size class");
    }
}
