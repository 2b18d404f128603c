package ortet.neo4j;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** A wire to a server that can be cut just when it matters: after the server has heard "commit", before it is heard. */
final class Wire implements AutoCloseable {
    /** The message "commit" of Bolt, in its frame. */
    private static final byte[] COMMIT = {0, 2, (byte) 0xB0, 0x12, 0, 0};

    private final Address to;
    private final ServerSocket socket;
    private final AtomicInteger cuts = new AtomicInteger();
    private volatile boolean isToBeCut;

    Wire(Address to) throws IOException {
        this.to = to;
        this.socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        daemon(this::accept);
    }

    Address address() {
        return new Address(to.scheme(), "127.0.0.1", socket.getLocalPort(), to.database());
    }

    void cutAfterTheNextCommit() {
        isToBeCut = true;
    }

    int cuts() {
        return cuts.get();
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "wire");
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        try {
            while (true) {
                Socket client = socket.accept();
                Socket server = new Socket(to.host(), to.port());
                daemon(() -> carry(client, server, true));
                daemon(() -> carry(server, client, false));
            }
        } catch (IOException closed) {
            return;
        }
    }

    private void carry(Socket from, Socket into, boolean isThere) {
        try (from;
                into) {
            InputStream in = from.getInputStream();
            OutputStream out = into.getOutputStream();
            byte[] bytes = new byte[65_536];
            for (int read = in.read(bytes); read >= 0; read = in.read(bytes)) {
                boolean cuts = isThere && isToBeCut && endsWithCommit(bytes, read);
                if (cuts) {
                    isToBeCut = false;
                    from.close();
                }
                out.write(bytes, 0, read);
                out.flush();
                if (cuts) {
                    this.cuts.incrementAndGet();
                    // long enough for the server to do it
                    TimeUnit.MILLISECONDS.sleep(500);
                    return;
                }
            }
        } catch (IOException closed) {
            return;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean endsWithCommit(byte[] bytes, int length) {
        return length >= COMMIT.length
                && Arrays.equals(Arrays.copyOfRange(bytes, length - COMMIT.length, length), COMMIT);
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
