package ortet.plant;

import ortet.value.Require;

/** A house, bed or bench of the nursery, by its name, such as {@code House 2 bench 4}. */
public record Place(String name) implements Comparable<Place> {
    public Place {
        name = Require.text(name, "place");
        if (hasWideGap(name)) {
            name = name.replaceAll("\\s+", " ");
        }
        Require.that(name.length() <= 80, "place", "at most 80 characters");
    }

    private static boolean hasWideGap(String name) {
        for (int at = 1; at < name.length(); at++) {
            char letter = name.charAt(at);
            if (letter != ' ' && Character.isWhitespace(letter) || letter == ' ' && name.charAt(at - 1) == ' ') {
                return true;
            }
        }
        return false;
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
