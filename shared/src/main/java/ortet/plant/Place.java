package ortet.plant;

import java.util.regex.Pattern;
import ortet.value.Require;

/** A house, bed or bench of the nursery, by its name, such as {@code House 2 bench 4}. */
public record Place(String name) implements Comparable<Place> {
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    public Place {
        name = BLANKS.matcher(Require.text(name, "place")).replaceAll(" ");
        Require.that(name.length() <= 80, "place", "at most 80 characters");
    }

    @Override
    public int compareTo(Place other) {
        return name.compareTo(other.name);
    }

    @Override
    public String toString() {
        return name;
    }
}
