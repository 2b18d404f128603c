package ortet.neo4j;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.neo4j.driver.AccessMode;
import org.neo4j.driver.AuthTokens;
import org.neo4j.driver.BookmarkManager;
import org.neo4j.driver.BookmarkManagerConfig;
import org.neo4j.driver.BookmarkManagers;
import org.neo4j.driver.Config;
import org.neo4j.driver.Driver;
import org.neo4j.driver.GraphDatabase;
import org.neo4j.driver.NotificationSeverity;
import org.neo4j.driver.Session;
import org.neo4j.driver.SessionConfig;
import org.neo4j.driver.TransactionConfig;
import org.neo4j.driver.exceptions.Neo4jException;
import org.neo4j.driver.summary.ServerInfo;
import ortet.value.OrtetException;
import ortet.value.Unavailable;

/**
 * The way to one database of one server. Safe for use by several threads.
 *
 * <p>Every session of it knows what the others have written: bookmarks are passed on, so that in a cluster nobody reads
 * from a member that has not heard of it yet.
 */
final class Server implements AutoCloseable {
    private static final Pattern AGENT = Pattern.compile("Neo4j/(\\d+)\\.(\\d+).*");
    private static final int MAJOR = 5;
    private static final int MINOR = 26;
    private static final int CONNECT_SECONDS = 10;
    private static final int POOLED = 40;

    private final Address address;
    private final Driver driver;
    private final BookmarkManager bookmarks;

    private Server(Address address, Driver driver) {
        this.address = address;
        this.driver = driver;
        this.bookmarks =
                BookmarkManagers.defaultManager(BookmarkManagerConfig.builder().build());
    }

    /**
     * Reach a server.
     *
     * @throws Unavailable when there is none, or it takes not these credentials, or is too old
     */
    static Server reach(Address address, Credentials credentials) {
        Driver driver = GraphDatabase.driver(
                address.server(), AuthTokens.basic(credentials.user(), credentials.password()), config());
        Server server = new Server(address, driver);
        boolean isReached = false;
        try {
            ServerInfo info = server.with(
                    AccessMode.READ,
                    session -> session.run("RETURN 1").consume().server());
            requireRecent(address, info.agent());
            isReached = true;
            return server;
        } finally {
            if (!isReached) {
                server.close();
            }
        }
    }

    // What the driver would log is told in one line, or nobody can do anything about it; it has no other way to say so.
    @SuppressWarnings("deprecation")
    private static Config config() {
        return Config.builder()
                .withLogging(org.neo4j.driver.Logging.none())
                .withConnectionTimeout(CONNECT_SECONDS, TimeUnit.SECONDS)
                .withConnectionAcquisitionTimeout(2L * CONNECT_SECONDS, TimeUnit.SECONDS)
                .withMaxTransactionRetryTime(0, TimeUnit.SECONDS)
                .withMaxConnectionPoolSize(POOLED)
                .withMinimumNotificationSeverity(NotificationSeverity.OFF)
                .withTelemetryDisabled(true)
                .withUserAgent("ortet")
                .build();
    }

    /** Fail when what a server says of itself shows that it is too old. */
    static void requireRecent(Address address, String agent) {
        Matcher matcher = AGENT.matcher(agent);
        if (matcher.matches()) {
            int major = Integer.parseInt(matcher.group(1));
            int minor = Integer.parseInt(matcher.group(2));
            if (major < MAJOR || major == MAJOR && minor < MINOR) {
                throw new Unavailable("the server at " + address.server() + " is too old: it is "
                        + agent.replace('/', ' ') + ", and ortet needs Neo4j " + MAJOR + "." + MINOR + " or later");
            }
        }
    }

    Address address() {
        return address;
    }

    /** Return a session, which its user closes. */
    Session session(AccessMode mode, int fetchSize) {
        SessionConfig.Builder config = SessionConfig.builder()
                .withDefaultAccessMode(mode)
                .withFetchSize(fetchSize)
                .withBookmarkManager(bookmarks);
        if (!address.database().isEmpty()) {
            config.withDatabase(address.database());
        }
        return driver.session(config.build());
    }

    Session session(AccessMode mode) {
        return session(mode, 1000);
    }

    /** Something to do with a session. */
    @FunctionalInterface
    interface Work<T> {
        T with(Session session);
    }

    /** Do something in a session that may write, each statement of it in a transaction of its own. */
    <T> T tell(Work<T> work) {
        return with(AccessMode.WRITE, work);
    }

    private <T> T with(AccessMode mode, Work<T> work) {
        try (Session session = session(mode)) {
            return work.with(session);
        } catch (Neo4jException trouble) {
            throw trouble(trouble);
        }
    }

    /** Return what to throw for trouble. */
    OrtetException trouble(Neo4jException trouble) {
        return Trouble.with(address, trouble);
    }

    /** Return how long a transaction may take before the server ends it. */
    static TransactionConfig within(Duration time) {
        return TransactionConfig.builder().withTimeout(time).build();
    }

    /** Return the texts in the first column of an answer. */
    List<String> texts(String cypher) {
        return with(
                AccessMode.READ,
                session -> session.run(cypher).list(row -> row.get(0).asString()));
    }

    /** Return the number in the first column of the first row of an answer. */
    Optional<Long> number(String cypher) {
        return with(AccessMode.READ, session -> session.run(cypher).list(row -> row.get(0))).stream()
                .findFirst()
                .filter(value -> !value.isNull())
                .map(value -> value.asLong());
    }

    @Override
    public void close() {
        driver.close();
    }
}
