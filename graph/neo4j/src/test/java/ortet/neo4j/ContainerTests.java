package ortet.neo4j;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.condition.EnabledIf;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.neo4j.Neo4jContainer;
import ortet.book.BookStore;
import ortet.book.BookStoreContract;

/** The contract on a real server in a container, where there is an engine for it. */
@EnabledIf(value = "isThereAnEngine", disabledReason = "no container engine here: not tried on a real server")
class ContainerTests implements BookStoreContract {
    private static Neo4jContainer container;

    private final List<BookStore> open = new ArrayList<>();

    static boolean isThereAnEngine() {
        return DockerClientFactory.instance().isDockerAvailable();
    }

    @BeforeAll
    static void start() {
        container = new Neo4jContainer("neo4j:5.26-community").withAdminPassword(TestServer.CREDENTIALS.password());
        container.start();
    }

    @AfterAll
    static void stop() {
        container.stop();
    }

    @AfterEach
    void close() {
        open.forEach(BookStore::close);
    }

    private static Address address() {
        return Address.of(container.getBoltUrl());
    }

    private BookStore keep(BookStore store) {
        open.add(store);
        return store;
    }

    @Override
    public BookStore emptyStore() {
        try (Server way = Server.reach(address(), TestServer.CREDENTIALS)) {
            way.tell(session ->
                    session.run("MATCH (n) WHERE NOT n:Schema DETACH DELETE n").consume());
        }
        return keep(Neo4jBookStore.create(
                address(), TestServer.CREDENTIALS, UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK));
    }

    @Override
    public BookStore again(BookStore store) {
        return keep(Neo4jBookStore.open(address(), TestServer.CREDENTIALS));
    }

    @Override
    public Optional<BookStore> backup(BookStore store) {
        return Optional.empty();
    }

    @Override
    public boolean writesWhileReading() {
        return false;
    }
}
