package ortet.neo4j;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * Where a book is on a network: {@code neo4j://host:7687/database}.
 *
 * @param scheme {@code neo4j} (finds the members of a cluster) or {@code bolt} (that very server), with {@code +s} for TLS
 *     and {@code +ssc} for TLS whose certificate nobody vouches for
 * @param host the host
 * @param port the port
 * @param database the database; empty for the server's usual one
 */
public record Address(String scheme, String host, int port, String database) {
    private static final List<String> SCHEMES = List.of("neo4j", "neo4j+s", "neo4j+ssc", "bolt", "bolt+s", "bolt+ssc");
    private static final int USUAL_PORT = 7687;
    private static final Pattern DATABASE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9.-]{2,62}");

    public Address {
        Objects.requireNonNull(scheme);
        Objects.requireNonNull(host);
        Objects.requireNonNull(database);
    }

    /**
     * Read an address.
     *
     * @throws Refused when it is none, or holds a password
     */
    public static Address of(String name) {
        URI uri;
        try {
            uri = new URI(name);
        } catch (URISyntaxException wrong) {
            throw bad(name.replaceAll("//[^/@]*@", "//"), "that is no address");
        }
        if (uri.getRawUserInfo() != null
                || String.valueOf(uri.getRawAuthority()).contains("@")) {
            throw Refused.because(
                    "password-in-address",
                    "an address must not hold a user or a password; give them in the environment or in a file");
        }
        String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
        if (!SCHEMES.contains(scheme)) {
            throw bad(
                    name,
                    "no " + scheme + "://"
                            + Nearest.of(scheme, SCHEMES)
                                    .map(near -> " (nearest: " + near + ")")
                                    .orElse(""));
        }
        if (uri.getHost() == null) {
            throw bad(name, "no host");
        }
        if (uri.getRawQuery() != null || uri.getRawFragment() != null) {
            throw bad(name, "nothing may follow the database");
        }
        String path = uri.getPath() == null ? "" : uri.getPath();
        String database = path.startsWith("/") ? path.substring(1) : path;
        if (!database.isEmpty() && !DATABASE.matcher(database).matches()) {
            throw bad(name, "no database can be called \"" + database + "\"");
        }
        return new Address(
                scheme,
                uri.getHost(),
                uri.getPort() < 0 ? USUAL_PORT : uri.getPort(),
                database.toLowerCase(Locale.ROOT));
    }

    private static Refused bad(String name, String why) {
        return Refused.because(
                "bad-address",
                "\"" + name + "\": " + why + "; expected an address such as neo4j+s://host:7687/database, with one of "
                        + String.join(", ", SCHEMES));
    }

    /** Tell whether what is sent is encrypted. */
    public boolean isEncrypted() {
        return scheme.contains("+");
    }

    /** Tell whether the host is this computer by its name or number alone, without asking a name server. */
    public boolean isLoopback() {
        String name = host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
        if (name.equalsIgnoreCase("localhost")) {
            return true;
        }
        boolean isNumber = name.contains(":") || name.matches("\\d+\\.\\d+\\.\\d+\\.\\d+");
        try {
            return isNumber && InetAddress.getByName(name).isLoopbackAddress();
        } catch (UnknownHostException none) {
            return false;
        }
    }

    /** Return the same address, encrypted. */
    public Address encrypted() {
        return isEncrypted() ? this : new Address(scheme + "+s", host, port, database);
    }

    /** Return the address of the server, without the database. */
    String server() {
        return scheme + "://" + host + ":" + port;
    }

    @Override
    public String toString() {
        return server() + (database.isEmpty() ? "" : "/" + database);
    }
}
