package ortet.neo4j;

import java.util.Optional;
import org.neo4j.driver.exceptions.AuthenticationException;
import org.neo4j.driver.exceptions.AuthorizationExpiredException;
import org.neo4j.driver.exceptions.Neo4jException;
import org.neo4j.driver.exceptions.RetryableException;
import org.neo4j.driver.exceptions.SecurityException;
import org.neo4j.driver.exceptions.ServiceUnavailableException;
import org.neo4j.driver.exceptions.SessionExpiredException;
import ortet.value.Defect;
import ortet.value.OrtetException;
import ortet.value.Unavailable;

/** Tells in one clear line what a server or the way to it says went wrong. */
final class Trouble {
    private Trouble() {}

    /** Tell whether the same may well succeed a moment later. */
    static boolean isPassing(Neo4jException trouble) {
        return trouble instanceof RetryableException && !(trouble instanceof AuthorizationExpiredException);
    }

    /** Tell whether the server could not be spoken with, so that nobody knows what became of what was sent last. */
    static boolean isSilence(Neo4jException trouble) {
        return trouble instanceof ServiceUnavailableException || trouble instanceof SessionExpiredException;
    }

    /** Return what to throw for trouble with the book at an address. */
    static OrtetException with(Address address, Neo4jException trouble) {
        String code = String.valueOf(trouble.code());
        if (trouble instanceof AuthenticationException
                || code.startsWith("Neo.ClientError.Security.AuthenticationRateLimit")) {
            return new Unavailable(
                    address.server() + " does not take this user and password"
                            + (code.endsWith("RateLimit") ? "; it was tried too often, wait a little" : ""),
                    trouble);
        }
        if (code.contains("CredentialsExpired")) {
            return new Unavailable(
                    address.server() + " wants the password of this user changed first; do so with its own tools",
                    trouble);
        }
        if (code.contains("DatabaseNotFound")) {
            return new Unavailable(
                    "there is no database "
                            + (address.database().isEmpty() ? "of the usual name" : address.database()) + " on "
                            + address.server(),
                    trouble);
        }
        if (code.contains("DatabaseUnavailable") || code.contains("DatabaseNotAvailable")) {
            return new Unavailable("the database of " + address + " is stopped or not ready yet, try again", trouble);
        }
        if (code.contains("Security.Forbidden")) {
            return new Unavailable("this user may not do that with " + address + ": " + first(trouble), trouble);
        }
        if (code.contains("TransactionTimedOut") || code.contains("LockAcquisitionTimeout")) {
            return busy(address, trouble);
        }
        if (code.contains("Statement.AccessMode") || code.contains("NotALeader") || code.contains("ReadOnly")) {
            return new Unavailable(address + " can be read but not written", trouble);
        }
        if (trouble instanceof SecurityException) {
            return new Unavailable("no safe connection to " + address.server() + ": " + first(trouble), trouble);
        }
        if (isSilence(trouble)) {
            return silent(address, trouble);
        }
        if (code.startsWith("Neo.TransientError") || code.startsWith("Neo.DatabaseError")) {
            return new Unavailable(
                    "the server of " + address + " cannot do it now: " + first(trouble) + "; nothing was written",
                    trouble);
        }
        return new Defect("the book " + address + ": " + first(trouble), trouble);
    }

    private static Unavailable silent(Address address, Throwable trouble) {
        if (address.isEncrypted()) {
            return new Unavailable(
                    "no Neo4j server answers at " + address.server() + " in a way that can be trusted; is it running,"
                            + " does it speak TLS, and does this computer trust its certificate?",
                    trouble);
        }
        return new Unavailable("no Neo4j server answers at " + address.server() + "; is it running?", trouble);
    }

    static Unavailable busy(Address address, Throwable cause) {
        return new Unavailable("the book is busy: somebody else is writing into " + address + ", try again", cause);
    }

    static Unavailable damaged(Address address, Throwable cause) {
        return new Unavailable("the book " + address + " is damaged; go back to a backup", cause);
    }

    /** Return the first line of what was said. */
    static String first(Throwable trouble) {
        return Optional.ofNullable(trouble.getMessage())
                .flatMap(message -> message.lines().findFirst())
                .orElse("");
    }
}
