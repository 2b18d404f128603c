package ortet.commands;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.neo4j.configuration.GraphDatabaseSettings;
import org.neo4j.configuration.connectors.BoltConnectorInternalSettings;
import org.neo4j.driver.AuthTokens;
import org.neo4j.driver.Driver;
import org.neo4j.driver.GraphDatabase;
import org.neo4j.harness.Neo4j;
import org.neo4j.harness.Neo4jBuilders;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import ortet.Desk;

/** A desk that can speak with a server, which lives in this process until it ends. */
final class ServerDesk implements AutoCloseable {
    private static final long ROOM = 2L << 30;

    private static Neo4j server;

    private final Desk desk = Desk.open(BookDesk.Day.class, Keys.class);

    /** Gives the desk what it needs to be let in. */
    @Configuration(proxyBeanMethods = false)
    static class Keys {
        @Bean(destroyMethod = "close")
        @Primary
        Shelf shelfWithKeys(Sitting sitting) {
            return new Shelf(Map.of(ServerKeys.USER, "neo4j", ServerKeys.PASSWORD, ""), sitting);
        }
    }

    private static synchronized Neo4j server() {
        if (server == null) {
            server = Neo4jBuilders.newInProcessBuilder()
                    .withWorkingDir(quickFolder())
                    .withDisabledServer()
                    .withConfig(BoltConnectorInternalSettings.enable_local_connector, false)
                    .withConfig(BoltConnectorInternalSettings.thread_pool_shutdown_wait_time, Duration.ZERO)
                    .withConfig(GraphDatabaseSettings.pagecache_memory, 128L << 20)
                    .build();
            Runtime.getRuntime().addShutdownHook(new Thread(server::close));
        }
        return server;
    }

    /** Return where the server writes: in memory where the system has room for that, since it waits for the disk often. */
    private static Path quickFolder() {
        Path memory = Path.of("/dev/shm");
        return Files.isWritable(memory) && memory.toFile().getUsableSpace() > ROOM
                ? memory
                : Path.of(System.getProperty("java.io.tmpdir"));
    }

    /** Return the address of a book on the server. */
    static String address() {
        return server().boltURI().toString().replaceAll("/$", "") + "/neo4j";
    }

    /** Put a question to the server, and return how many rows came back. */
    static int rows(String cypher) {
        try (Driver driver = GraphDatabase.driver(server().boltURI(), AuthTokens.none())) {
            return driver.executableQuery(cypher).execute().records().size();
        }
    }

    /** Type a line, words parted at blanks outside single quotes, about a book. */
    Desk.Answer type(String book, String line) {
        List<String> words = new ArrayList<>();
        for (String part : line.split(" (?=(?:[^']*'[^']*')*[^']*$)")) {
            words.add(part.startsWith("'") ? part.substring(1, part.length() - 1) : part);
        }
        words.add("--book");
        words.add(book);
        return desk.type(words.toArray(new String[0]));
    }

    /** Type arguments alone. */
    Desk.Answer type(String... arguments) {
        return desk.type(arguments);
    }

    /** Return the name of a file in a folder as a book. */
    static String file(Path folder, String name) {
        return folder.resolve(name).toString();
    }

    /** Return a bean of the wiring. */
    <T> T bean(Class<T> type) {
        return desk.bean(type);
    }

    @Override
    public void close() {
        desk.close();
    }
}
