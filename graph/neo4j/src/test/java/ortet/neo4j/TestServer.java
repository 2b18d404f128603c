package ortet.neo4j;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.UUID;
import org.neo4j.configuration.GraphDatabaseSettings;
import org.neo4j.configuration.connectors.BoltConnectorInternalSettings;
import org.neo4j.driver.AuthTokens;
import org.neo4j.driver.Driver;
import org.neo4j.driver.GraphDatabase;
import org.neo4j.driver.Session;
import org.neo4j.driver.SessionConfig;
import org.neo4j.driver.Values;
import org.neo4j.harness.Neo4j;
import org.neo4j.harness.Neo4jBuilders;
import ortet.book.QuickDisk;

/**
 * One Neo4j server in this process for all tests of a run, spoken with over Bolt; emptied for each book.
 *
 * <p>It is started when first asked for and ends with the process.
 */
final class TestServer {
    static final ZoneId ZONE = ZoneId.of("Europe/Dublin");
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC);
    static final Credentials CREDENTIALS = new Credentials("neo4j", "girdled-and-wrapped");

    private static Neo4j server;

    private TestServer() {}

    private static synchronized Neo4j server() {
        if (server == null) {
            server = builder();
            choosePassword(server.boltURI().toString());
            Runtime.getRuntime().addShutdownHook(new Thread(server::close));
        }
        return server;
    }

    private static void choosePassword(String uri) {
        try (Driver driver = GraphDatabase.driver(uri, AuthTokens.basic("neo4j", "neo4j"));
                Session session = driver.session(SessionConfig.forDatabase("system"))) {
            session.run(
                            "ALTER CURRENT USER SET PASSWORD FROM 'neo4j' TO $password",
                            Values.parameters("password", CREDENTIALS.password()))
                    .consume();
        }
    }

    private static Neo4j builder() {
        return Neo4jBuilders.newInProcessBuilder()
                .withWorkingDir(QuickDisk.folder())
                .withDisabledServer()
                .withConfig(BoltConnectorInternalSettings.enable_local_connector, false)
                .withConfig(BoltConnectorInternalSettings.thread_pool_shutdown_wait_time, Duration.ZERO)
                .withConfig(GraphDatabaseSettings.auth_enabled, true)
                .withConfig(GraphDatabaseSettings.pagecache_memory, 128L << 20)
                .build();
    }

    /** Return the address of the server's database. */
    static Address address() {
        return Address.of(server().boltURI().toString().replaceAll("/$", "") + "/neo4j");
    }

    /** Return a new, empty book in place of whatever there was; its user closes it. */
    static Neo4jBookStore create() {
        empty();
        return Neo4jBookStore.create(address(), CREDENTIALS, UUID.randomUUID(), ZONE, CLOCK);
    }

    /** Empty the database, but for constraints and indexes. */
    static void empty() {
        try (Server way = Server.reach(address(), CREDENTIALS)) {
            way.tell(session ->
                    session.run("MATCH (n) WHERE NOT n:Schema DETACH DELETE n").consume());
        }
    }

    /** Return a second way into the book. */
    static Neo4jBookStore open() {
        return Neo4jBookStore.open(address(), CREDENTIALS);
    }
}
