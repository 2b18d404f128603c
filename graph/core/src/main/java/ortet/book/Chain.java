package ortet.book;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import ortet.entry.Recorded;
import ortet.value.Defect;

/**
 * Computes the chain of digests that shows whether the entries of a book are as they were written.
 *
 * <p>The digest of an entry is SHA-256 over the 32 bytes of the digest before it and the entry's
 * {@linkplain CanonicalText canonical bytes}. Not safe for use by several threads.
 */
public final class Chain {
    /** What stands before the first entry: 32 zero bytes. */
    public static final Digest START = new Digest("0".repeat(64));

    private final MessageDigest sha256;
    private byte[] last;
    private Instant instant = Instant.MIN;
    private String instantText = "";

    /** Continue a chain after the given digest. */
    public Chain(Digest last) {
        try {
            this.sha256 = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new Defect("this Java has no SHA-256", missing);
        }
        this.last = last.bytes();
    }

    /** Return the entry with its digest, which becomes the last of the chain. */
    public Chained add(Recorded recorded) {
        return add(recorded, CanonicalText.fields(recorded.entry()));
    }

    /** Return the entry, whose fields are known as canonical text, with its digest, which becomes the last. */
    Chained add(Recorded recorded, String fields) {
        sha256.update(last);
        if (!recorded.recordedAt().equals(instant)) {
            instant = recorded.recordedAt();
            instantText = CanonicalText.INSTANT.format(instant);
        }
        sha256.update(CanonicalText.bytes(recorded, instantText, fields));
        last = sha256.digest();
        return new Chained(recorded, Digest.of(last));
    }
}
