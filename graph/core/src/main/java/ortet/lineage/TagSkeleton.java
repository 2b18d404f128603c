package ortet.lineage;

import ortet.plant.Tag;

/**
 * Reduces tags to what a tired eye sees of them, so that those that look alike come out the same.
 *
 * <p>Letters that look like digits are read as these (O 0, I l 1, Z 2, S 5, B 8), zeros at the beginning of a number are left
 * out, and so is what parts a letter from a number. What looks alike is common practice, not a published list.
 */
final class TagSkeleton {
    private TagSkeleton() {}

    /** Return what the eye sees: {@code J-0114}, {@code J-O114}, {@code J114} and {@code J-114} are all {@code J114}. */
    static String of(Tag tag) {
        StringBuilder plain = new StringBuilder();
        for (char letter : tag.text().toCharArray()) {
            plain.append(seen(letter));
        }
        StringBuilder skeleton = new StringBuilder();
        for (int at = 0; at < plain.length(); at++) {
            char letter = plain.charAt(at);
            char before = at == 0 ? '-' : plain.charAt(at - 1);
            char after = at + 1 == plain.length() ? '-' : plain.charAt(at + 1);
            boolean parts = letter == '-' && !(isDigit(before) && isDigit(after));
            boolean idle = letter == '0' && !isInNumber(skeleton) && isDigit(after);
            if (!parts && !idle) {
                skeleton.append(letter);
            }
        }
        return skeleton.toString();
    }

    private static boolean isInNumber(StringBuilder skeleton) {
        return skeleton.length() > 0 && isDigit(skeleton.charAt(skeleton.length() - 1));
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    private static char seen(char letter) {
        return switch (letter) {
            case 'O', 'o' -> '0';
            case 'I', 'l' -> '1';
            case 'Z' -> '2';
            case 'S' -> '5';
            case 'B' -> '8';
            case '_', '.', '/', '#' -> '-';
            default -> letter;
        };
    }
}
