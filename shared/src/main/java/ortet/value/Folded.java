package ortet.value;

/** Makes words alike that differ in upper and lower case alone, letter by letter as {@link String#equalsIgnoreCase}. */
public final class Folded {
    private Folded() {}

    /** Return the text with every letter in the form that stands for all its cases. */
    public static String of(String text) {
        StringBuilder folded = new StringBuilder(text.length());
        text.codePoints()
                .map(letter -> Character.toLowerCase(Character.toUpperCase(letter)))
                .forEach(folded::appendCodePoint);
        return folded.toString();
    }
}
