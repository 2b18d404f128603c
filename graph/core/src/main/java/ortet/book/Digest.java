package ortet.book;

import java.util.Arrays;
import java.util.HexFormat;
import ortet.value.Refused;

/** A SHA-256 digest (FIPS 180-4), written as 64 hexadecimal digits. */
public final class Digest {
    private static final int BYTES = 32;
    private static final int BRIEF = 12;

    private final byte[] bytes;

    /**
     * Read a digest.
     *
     * @throws Refused when the text is none
     */
    public Digest(String hex) {
        if (!isDigest(hex)) {
            throw Refused.because("bad-digest", "expected 64 hexadecimal digits, found \"" + hex + "\"");
        }
        this.bytes = HexFormat.of().parseHex(hex);
    }

    private Digest(byte[] bytes) {
        this.bytes = bytes;
    }

    private static boolean isDigest(String hex) {
        boolean good = hex.length() == 2 * BYTES;
        for (int at = 0; good && at < hex.length(); at++) {
            char digit = hex.charAt(at);
            good = digit >= '0' && digit <= '9' || digit >= 'a' && digit <= 'f';
        }
        return good;
    }

    /** Return the digest with these 32 bytes. */
    public static Digest of(byte[] bytes) {
        if (bytes.length != BYTES) {
            throw Refused.because("bad-digest", "expected 32 bytes, found " + bytes.length);
        }
        return new Digest(bytes.clone());
    }

    /** Return the 32 bytes. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Return the 64 digits. */
    public String hex() {
        return HexFormat.of().formatHex(bytes);
    }

    /** Return the first digits, enough to compare by eye. */
    public String brief() {
        return hex().substring(0, BRIEF);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Digest digest && Arrays.equals(bytes, digest.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return hex();
    }
}
