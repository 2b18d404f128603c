package ortet.neo4j;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.neo4j.configuration.GraphDatabaseSettings;
import org.neo4j.configuration.connectors.BoltConnector;
import org.neo4j.configuration.connectors.BoltConnectorInternalSettings;
import org.neo4j.configuration.helpers.SocketAddress;
import org.neo4j.dbms.api.DatabaseManagementServiceBuilder;

/** A Neo4j server in a process of its own, whose data stay when it is killed. */
final class ServerProcess implements AutoCloseable {
    private static final int SMALL = 512;

    private final Path folder;
    private final int port;
    private final int heapMib;
    private Process process;

    /** Make a server that holds what a test needs. */
    ServerProcess(Path folder) throws IOException {
        this(folder, SMALL);
    }

    /** Make a server with a heap of so many MiB, and an eighth as much for the pages of its files. */
    ServerProcess(Path folder, int heapMib) throws IOException {
        this.folder = folder;
        this.heapMib = heapMib;
        try (ServerSocket free = new ServerSocket(0)) {
            this.port = free.getLocalPort();
        }
    }

    /** Run a server until it is killed: its folder, its port, and the MiB for the pages of its files. */
    public static void main(String[] arguments) throws InterruptedException {
        new DatabaseManagementServiceBuilder(Path.of(arguments[0]))
                .setConfig(BoltConnector.enabled, true)
                .setConfig(BoltConnector.listen_address, new SocketAddress("127.0.0.1", Integer.parseInt(arguments[1])))
                .setConfig(BoltConnectorInternalSettings.enable_local_connector, false)
                .setConfig(BoltConnectorInternalSettings.thread_pool_shutdown_wait_time, Duration.ZERO)
                .setConfig(GraphDatabaseSettings.pagecache_memory, Long.parseLong(arguments[2]) << 20)
                .build();
        Thread.currentThread().join();
    }

    Address address() {
        return Address.of("bolt://127.0.0.1:" + port + "/neo4j");
    }

    /** Start it, and wait until it answers. */
    void start() throws IOException, InterruptedException {
        process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        heapMib > SMALL ? "-XX:+TieredCompilation" : "-XX:TieredStopAtLevel=1",
                        "-Xmx" + heapMib + "m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        ServerProcess.class.getName(),
                        folder.toString(),
                        String.valueOf(port),
                        String.valueOf(heapMib / 8)))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
        long until = System.nanoTime() + TimeUnit.MINUTES.toNanos(3);
        while (!answers()) {
            if (!process.isAlive() || System.nanoTime() > until) {
                throw new AssertionError(Files.readString(folder.resolve("said.txt")));
            }
            TimeUnit.MILLISECONDS.sleep(200);
        }
    }

    private boolean answers() {
        try {
            Server.reach(address(), TestServer.CREDENTIALS).close();
            return true;
        } catch (RuntimeException notYet) {
            return false;
        }
    }

    /** Kill it at once, whatever it is doing. */
    void kill() {
        process.destroyForcibly().onExit().join();
    }

    @Override
    public void close() {
        if (process != null) {
            kill();
        }
    }
}
