package ortet.entry;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Pattern;
import ortet.value.Defect;
import ortet.value.Refused;

/** The identity of an entry (RFC 9562): made once, by whoever writes it down first, and the same in every copy. */
public record EntryId(UUID value) implements Comparable<EntryId> {
    private static final Pattern TEXT =
            Pattern.compile("[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}");

    public EntryId {
        Objects.requireNonNull(value);
    }

    /** Return a new identity. */
    public static EntryId random() {
        return new EntryId(UUID.randomUUID());
    }

    /**
     * Return the identity that stands for a row of a source that has none of its own: the same for the same three, in
     * the form of version 8 of RFC 9562, from SHA-256.
     *
     * @param source the name of the source
     * @param key what tells the row from others in it
     * @param occurrence which of several rows with that key, from 1
     */
    public static EntryId derived(String source, String key, int occurrence) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(source.getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
            digest.update(key.getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
            digest.update(Integer.toString(occurrence).getBytes(StandardCharsets.US_ASCII));
            ByteBuffer bytes = ByteBuffer.wrap(digest.digest());
            long high = bytes.getLong() & 0xFFFFFFFFFFFF0FFFL | 0x8000L;
            long low = bytes.getLong() & 0x3FFFFFFFFFFFFFFFL | 0x8000000000000000L;
            return new EntryId(new UUID(high, low));
        } catch (NoSuchAlgorithmException missing) {
            throw new Defect("this Java has no SHA-256", missing);
        }
    }

    /**
     * Read an identity.
     *
     * @throws Refused when the text is none
     */
    public static EntryId parse(String text) {
        if (!TEXT.matcher(text).matches()) {
            throw Refused.because(
                    "bad-entry-id", "expected an entry's identity of 36 characters, found \"" + text + "\"");
        }
        return new EntryId(UUID.fromString(text));
    }

    /** Order as the text does. */
    @Override
    public int compareTo(EntryId other) {
        return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
