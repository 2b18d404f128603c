package ortet.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import ortet.sqlite.Session.Way;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Unavailable;

/**
 * The file that a book is in: what it is before it is opened, how it has to be opened, and how a new one comes to be.
 */
final class BookFile {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int HEADER = 100;
    private static final int PAGE_SIZE_AT = 16;
    private static final int PAGES_AT = 28;
    private static final int VERSION_AT = 60;
    private static final int APPLICATION_AT = 68;
    private static final int LARGEST_PAGE = 65_536;

    private final Path path;
    private final Schema schema;
    private final int busyMillis;

    BookFile(Path path, Schema schema, int busyMillis) {
        this.path = path;
        this.schema = schema;
        this.busyMillis = busyMillis;
    }

    Path path() {
        return path;
    }

    /** Fill a file that is made aside. */
    @FunctionalInterface
    interface Filling {
        void fill(Path aside) throws SQLException, IOException;
    }

    /**
     * Make a new file: fill one aside, and when it is whole and on the disk, give it its name.
     *
     * @throws Refused when there is something of that name, or no folder for it
     */
    static void publish(Path target, Filling filling) {
        if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            throw Refused.because("file-exists", target + " is there already; expected the name of a new file");
        }
        Path folder = target.toAbsolutePath().normalize().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw Refused.because("no-folder", "no folder " + folder + " for " + target.getFileName());
        }
        Path aside = folder.resolve("." + target.getFileName() + "." + UUID.randomUUID() + ".new");
        try {
            filling.fill(aside);
            try (FileChannel channel = FileChannel.open(aside, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(aside, target);
            sync(folder);
        } catch (FileAlreadyExistsException overtaken) {
            throw Refused.because("file-exists", target + " is there already; expected the name of a new file");
        } catch (SQLException | IOException trouble) {
            throw new Unavailable(target + " cannot be written: its folder is read-only, or the disk is full", trouble);
        } finally {
            discard(aside);
        }
    }

    /** Put the names in a folder on the disk; not every system can, and then its own way has to do. */
    private static void sync(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException unable) {
            return;
        }
    }

    private static void discard(Path aside) {
        for (String end : List.of("", "-journal", "-wal", "-shm")) {
            try {
                Files.deleteIfExists(aside.resolveSibling(aside.getFileName() + end));
            } catch (IOException stays) {
                // A file aside that cannot be removed harms nobody, and what went wrong before is told already.
                return;
            }
        }
    }

    /** Return what is damaged in the file, or not as this program makes it, in words. */
    List<String> damage(Session session) {
        List<String> damage = new ArrayList<>();
        try {
            session.texts("PRAGMA integrity_check").stream()
                    .filter(line -> !line.equals("ok"))
                    .flatMap(String::lines)
                    .map(line -> "in the file: " + line)
                    .forEach(damage::add);
            session.texts("SELECT \"table\" || ' ' || rowid || ' names a ' || parent || ' that is not there'"
                            + " FROM pragma_foreign_key_check")
                    .forEach(line -> damage.add("in the file: " + line));
            schema.differences(session).forEach(line -> damage.add("in the file: " + line));
        } catch (SQLException trouble) {
            if (!Trouble.isDamage(trouble)) {
                throw Trouble.with(path, trouble);
            }
            damage.add("in the file: it cannot be read through");
        }
        return damage;
    }

    /** Make a new, empty book. */
    void create(UUID bookId, String zone, String created) {
        publish(path, aside -> {
            try (Session session = Session.create(aside)) {
                session.run("PRAGMA application_id = " + Schema.APPLICATION);
                session.run("BEGIN IMMEDIATE");
                schema.migrate(session, 0);
                new Scribe(session).begin(bookId, zone, created);
                session.run("COMMIT");
            }
        });
    }

    /**
     * Look at the file, and tell what it is if it is no book that this program can use.
     *
     * @throws Refused when there is no such file
     * @throws Unavailable when it is something else, damaged, or of a newer program
     */
    void check() {
        if (!Files.exists(path)) {
            throw new Refused(Fault.of("no-book", "no book " + path).nearest(likeNamed()));
        }
        if (Files.isDirectory(path)) {
            throw Trouble.notABook(path, "it is a folder; expected a file", null);
        }
        ByteBuffer header = ByteBuffer.allocate(HEADER);
        long size;
        try (SeekableByteChannel channel = Files.newByteChannel(path)) {
            size = channel.size();
            while (header.hasRemaining() && channel.read(header) >= 0) {
                continue;
            }
        } catch (IOException unreadable) {
            throw new Unavailable("the book " + path + " cannot be read; may you read it and its folder?", unreadable);
        }
        if (size == 0) {
            throw Trouble.notABook(path, "it is empty", null);
        }
        if (header.hasRemaining() || !startsWithMagic(header)) {
            throw Trouble.notABook(path, "it is no SQLite file, or its beginning is damaged", null);
        }
        if (header.getInt(APPLICATION_AT) != Schema.APPLICATION) {
            throw Trouble.notABook(path, "it is an SQLite file of another program", null);
        }
        int version = header.getInt(VERSION_AT);
        if (version > schema.version()) {
            throw new Unavailable("the book " + path + " was written by a newer ortet: its schema is " + version
                    + ", this program knows up to " + schema.version());
        }
        if (version < 1) {
            throw Trouble.damaged(path, null);
        }
        int pageSize = Short.toUnsignedInt(header.getShort(PAGE_SIZE_AT));
        long pages = Integer.toUnsignedLong(header.getInt(PAGES_AT));
        if (!hasLog() && size < pages * (pageSize == 1 ? LARGEST_PAGE : pageSize)) {
            throw new Unavailable("the book " + path + " is damaged: its end is missing; go back to a backup");
        }
    }

    private static boolean startsWithMagic(ByteBuffer header) {
        return header.slice(0, MAGIC.length).equals(ByteBuffer.wrap(MAGIC));
    }

    /** Return other books in the folder whose names are near. */
    private Optional<String> likeNamed() {
        Path name = path.getFileName();
        if (name == null || !Files.isDirectory(folder())) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder())) {
            List<String> books = files.filter(Files::isRegularFile)
                    .map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".ortet"))
                    .toList();
            return Nearest.of(name.toString(), books);
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    /** Tell whether there is a write-ahead log, or a journal of a work that broke off, beside the file. */
    private boolean hasLog() {
        return isBeside("-wal") || isBeside("-journal");
    }

    private boolean isBeside(String end) {
        Path log = beside(end);
        try {
            return Files.exists(log) && Files.size(log) > 0;
        } catch (IOException unreadable) {
            return true;
        }
    }

    /** Tell whether this user can write the file, and beside it, as SQLite has to. */
    boolean isWritable() {
        return Files.isWritable(path) && Files.isWritable(folder());
    }

    private Path folder() {
        return path.toAbsolutePath().normalize().getParent();
    }

    /**
     * What tells one state of a file that nobody is writing from another.
     *
     * @param size its length in bytes
     * @param changed when it was last changed
     * @param hasLog whether somebody is writing it, or was when things broke off
     */
    record Stamp(long size, FileTime changed, boolean hasLog) {}

    /** Return the state of the file now. */
    Stamp stamp() {
        try {
            return new Stamp(Files.size(path), Files.getLastModifiedTime(path), hasLog());
        } catch (IOException gone) {
            throw new Unavailable("the book " + path + " cannot be read; may you read it and its folder?", gone);
        }
    }

    /**
     * Open the book in the way that this user can, and bring it to the schema of this program.
     *
     * <p>Whoever cannot write leaves nothing beside the file either: files of a log that belonged to a reader would keep
     * the writer out.
     */
    Session open() {
        if (isWritable()) {
            return open(Way.READ_WRITE);
        }
        if (!hasLog()) {
            return open(Way.IMMUTABLE);
        }
        if (!Files.exists(beside("-shm"))) {
            throw new Unavailable("the book " + path
                    + " was not closed when it was last written; somebody who may write it has to open it once");
        }
        return open(Way.READ_ONLY);
    }

    private Path beside(String end) {
        return path.resolveSibling(path.getFileName() + end);
    }

    private Session open(Way way) {
        Session session = null;
        boolean done = false;
        try {
            session = Session.open(path, way, busyMillis);
            if (way == Way.READ_WRITE && !session.text("PRAGMA journal_mode").equals(Optional.of("wal"))) {
                session.run("PRAGMA journal_mode = WAL");
            }
            migrate(session, way);
            done = true;
            return session;
        } catch (SQLException trouble) {
            throw Trouble.with(path, trouble);
        } finally {
            if (!done && session != null) {
                close(session);
            }
        }
    }

    private void migrate(Session session, Way way) throws SQLException {
        int version = (int) session.number("PRAGMA user_version");
        if (version == schema.version()) {
            return;
        }
        if (way != Way.READ_WRITE) {
            throw new Unavailable("the book " + path + " is of an older ortet (schema " + version + ", now "
                    + schema.version() + ") and cannot be brought up to date: the file or its folder is read-only");
        }
        session.run("BEGIN IMMEDIATE");
        boolean done = false;
        try {
            schema.migrate(session, (int) session.number("PRAGMA user_version"));
            session.run("COMMIT");
            done = true;
        } finally {
            if (!done) {
                session.run("ROLLBACK");
            }
        }
    }

    private static void close(Session session) {
        try {
            session.close();
        } catch (SQLException trouble) {
            // What went wrong before is on its way already, and the file is as it was.
            return;
        }
    }
}
