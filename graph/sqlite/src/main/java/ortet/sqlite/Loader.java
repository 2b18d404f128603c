package ortet.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import ortet.book.Chained;
import ortet.book.LoadSink;
import ortet.book.UnitFacts;
import ortet.plant.Person;
import ortet.value.Unavailable;

/**
 * Writes a whole book on a thread of its own while it is judged on another, within the transaction that its connection is
 * in; that connection is the loader's until it is closed.
 */
final class Loader implements LoadSink, AutoCloseable {
    private static final int CHUNK = 512;
    private static final int AHEAD = 16;
    private static final long LOOK_MILLIS = 200;

    /** One thing to write. */
    @FunctionalInterface
    private interface Work {
        void write(Scribe scribe) throws SQLException;
    }

    private final Path file;
    private final Scribe scribe;
    private final BlockingQueue<List<Work>> queue = new ArrayBlockingQueue<>(AHEAD);
    private final Thread writer;
    private List<Work> chunk = new ArrayList<>(CHUNK);
    private List<Person> persons = List.of();
    private volatile boolean isOver;
    private volatile Throwable trouble;

    /** Begin to write with a scribe. */
    Loader(Path file, Scribe scribe) {
        this.file = file;
        this.scribe = scribe;
        this.writer = new Thread(this::write, "writing");
        writer.setDaemon(true);
        writer.start();
    }

    @Override
    public Path scratch() {
        return file.toAbsolutePath().normalize().getParent();
    }

    @Override
    public void entry(Chained chained, String fields) {
        add(with -> with.load(chained, fields));
    }

    @Override
    public void persons(List<Person> all) {
        persons = List.copyOf(all);
    }

    @Override
    public void facts(UnitFacts facts) {
        add(with -> with.load(facts));
    }

    /** Return the persons who were handed over. */
    List<Person> persons() {
        return persons;
    }

    private void add(Work work) {
        chunk.add(work);
        if (chunk.size() == CHUNK) {
            hand();
        }
    }

    private void hand() {
        try {
            while (!queue.offer(chunk, LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                check();
            }
            chunk = new ArrayList<>(CHUNK);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Unavailable("nothing was written into " + file + ": the work was stopped", stopped);
        }
        check();
    }

    private void check() {
        Throwable found = trouble;
        if (found instanceof SQLException sql) {
            throw Trouble.with(file, sql);
        }
        if (found != null) {
            throw new IllegalStateException("the book could not be written", found);
        }
    }

    private void write() {
        try {
            while (true) {
                List<Work> works = queue.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
                if (works == null) {
                    if (isOver) {
                        return;
                    }
                    continue;
                }
                for (Work work : works) {
                    work.write(scribe);
                }
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (SQLException | RuntimeException | Error found) {
            trouble = found;
        }
    }

    /** Wait until all that was handed over is written. */
    void finish() {
        hand();
        close();
        check();
    }

    /** Stop writing; afterwards the connection is the caller's again. */
    @Override
    public void close() {
        isOver = true;
        boolean interrupted = false;
        while (writer.isAlive()) {
            try {
                writer.join();
            } catch (InterruptedException stopped) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
