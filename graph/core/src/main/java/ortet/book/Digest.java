package ortet.book;

import java.util.HexFormat;
import ortet.value.Refused;

/** A SHA-256 digest (FIPS 180-4), written as 64 hexadecimal digits. */
public record Digest(String hex) {
    public Digest {
        if (!isDigest(hex)) {
            throw Refused.because("bad-digest", "expected 64 hexadecimal digits, found \"" + hex + "\"");
        }
    }

    private static boolean isDigest(String hex) {
        boolean good = hex.length() == 64;
        for (int at = 0; good && at < hex.length(); at++) {
            char digit = hex.charAt(at);
            good = digit >= '0' && digit <= '9' || digit >= 'a' && digit <= 'f';
        }
        return good;
    }

    /** Return the digest with these 32 bytes. */
    public static Digest of(byte[] bytes) {
        return new Digest(HexFormat.of().formatHex(bytes));
    }

    /** Return the 32 bytes. */
    public byte[] bytes() {
        return HexFormat.of().parseHex(hex);
    }

    /** Return the first digits, enough to compare by eye. */
    public String brief() {
        return hex.substring(0, 12);
    }

    @Override
    public String toString() {
        return hex;
    }
}
