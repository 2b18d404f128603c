package ortet.commands;

import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import java.util.UUID;
import ortet.book.BookStore;
import ortet.neo4j.Address;
import ortet.neo4j.Credentials;
import ortet.neo4j.Neo4jBookStore;
import ortet.value.Unavailable;

/**
 * Opens books on servers. Only this class knows of such a store, so that nothing of it is loaded for a book in a file.
 *
 * <p>{@value #PLAIN} allows what is sent to be read by others on the way.
 */
final class ServerBooks {
    /** The environment variable that allows to speak without encryption with another computer. */
    static final String PLAIN = "ORTET_NEO4J_PLAIN";

    private final Map<String, String> environment;

    ServerBooks(Map<String, String> environment) {
        this.environment = environment;
    }

    BookStore open(Whereabouts place) {
        Address address = address(place);
        return Neo4jBookStore.open(address, credentials(address));
    }

    BookStore create(Whereabouts place, ZoneId zone, Clock clock) {
        Address address = address(place);
        return Neo4jBookStore.create(address, credentials(address), UUID.randomUUID(), zone, clock);
    }

    BookStore openOrCreate(Whereabouts place, ZoneId zone, Clock clock) {
        Address address = address(place);
        return Neo4jBookStore.openOrCreate(address, credentials(address), UUID.randomUUID(), zone, clock);
    }

    private Address address(Whereabouts place) {
        Address address = Address.of(place.name());
        boolean isAllowed = environment.getOrDefault(PLAIN, "").strip().equals("yes");
        if (!address.isEncrypted() && !address.isLoopback() && !isAllowed) {
            throw new Unavailable("what is sent to " + address + " could be read on the way; write "
                    + address.encrypted() + ", or set " + PLAIN + "=yes where the network is your own");
        }
        return address;
    }

    private Credentials credentials(Address address) {
        ServerKeys.Key key = new ServerKeys(environment).of(address.toString());
        return new Credentials(key.user(), key.password());
    }
}
