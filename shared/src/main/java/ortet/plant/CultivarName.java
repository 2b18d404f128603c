package ortet.plant;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A botanical name with or without a cultivar epithet, such as {@code Acer palmatum 'Deshojo'} or
 * {@code Juniperus × pfitzeriana}.
 *
 * <p>The epithet stands in single quotes (ICNCP 2016, article 14); typographic quotes are read as plain ones, the
 * letter x between genus and species as the hybrid sign, and {@code ×x} and {@code × x} alike (ICN, recommendation
 * H.3A).
 *
 * @param genus with a capital; a hybrid genus begins with {@code × }
 * @param species the rest of the botanical name up to the epithet: {@code palmatum}, {@code × pfitzeriana},
 *     {@code palmatum var. dissectum}; empty where a cultivar is assigned to a genus alone
 * @param epithet the cultivar epithet without its quotes
 */
public record CultivarName(String genus, String species, Optional<String> epithet) implements Comparable<CultivarName> {
    private static final Pattern NAME = Pattern.compile("(?<genus>(?:× )?\\p{Lu}[\\p{Ll}-]+)"
            + "(?<species>(?: (?:× )?\\p{Ll}[\\p{Ll}-]+)?(?: (?:subsp\\.|var\\.|f\\.) \\p{Ll}[\\p{Ll}-]+)*)"
            + "(?: '(?<epithet>[^'\"]+(?:'[^'\"]+)*)')?");

    public CultivarName {
        genus = Require.text(genus, "cultivar");
        species = species.strip();
        epithet = Require.text(epithet, "cultivar");
    }

    /**
     * Read a name.
     *
     * @throws Refused when the text is no botanical name
     */
    public static CultivarName parse(String text) {
        String plain = Require.text(text, "cultivar")
                .replace('\u2018', '\'')
                .replace('\u2019', '\'')
                .replaceAll("\\s+", " ")
                .replaceAll("× ?", "× ")
                .replaceAll("(?<=^|\\s)[xX] (?=\\p{L})", "× ");
        Matcher matcher = NAME.matcher(plain);
        if (!matcher.matches()) {
            throw new Refused(Fault.of(
                    "bad-cultivar",
                    "expected a botanical name such as Acer palmatum 'Deshojo', found \"" + text.strip() + "\""));
        }
        return new CultivarName(
                matcher.group("genus"),
                matcher.group("species").strip(),
                Optional.ofNullable(matcher.group("epithet")));
    }

    /** Return the botanical name without the epithet: the taxon. */
    public String taxon() {
        return species.isEmpty() ? genus : genus + " " + species;
    }

    @Override
    public int compareTo(CultivarName other) {
        return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
        return taxon() + epithet.map(name -> " '" + name + "'").orElse("");
    }
}
