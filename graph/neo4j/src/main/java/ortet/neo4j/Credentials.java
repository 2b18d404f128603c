package ortet.neo4j;

import java.util.Objects;

/**
 * Who asks a server; never shown.
 *
 * @param user the user's name
 * @param password the password
 */
public record Credentials(String user, String password) {
    public Credentials {
        Objects.requireNonNull(user);
        Objects.requireNonNull(password);
    }

    /** Return the user alone. */
    @Override
    public String toString() {
        return user;
    }
}
