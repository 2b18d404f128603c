package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.plant.Tag;
import ortet.value.OrtetException;

/** A book that may be read but not written, seen by somebody who owns neither file nor folder. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions are of another kind there")
class ReadOnlyTests {
    @TempDir
    Path folder;

    private Path shelf;
    private Path path;
    private boolean superuser;

    private static final String WAIT = "wait";

    /** Reads a book and tries to write it, saying what happens. */
    static final class Visitor {
        private Visitor() {}

        public static void main(String[] arguments) {
            Path path = Path.of(arguments[0]);
            try (SqliteBookStore store = SqliteBookStore.open(path)) {
                System.out.println("order " + store.read(BookView::head).order());
                List<Tag> tags =
                        store.read(view -> view.tags(view.unit(new Tag("J-1")).orElseThrow()));
                System.out.println(tags);
                if (arguments.length > 1 && arguments[1].equals(WAIT)) {
                    System.out.println(waiting(store));
                } else if (arguments.length > 1) {
                    store.backup(Path.of(arguments[1]));
                    try (SqliteBookStore copy = SqliteBookStore.open(Path.of(arguments[1]))) {
                        System.out.println("copy " + copy.read(BookView::head).order());
                    }
                }
                new Diary(store).write("2020-05-01 seen K-1");
                System.out.println("written");
            } catch (OrtetException told) {
                told.lines().forEach(System.out::println);
            }
        }
    }

    /** Read a book, and let somebody write it meanwhile. */
    private static String waiting(SqliteBookStore store) {
        return store.read(view -> {
            System.out.println("reading");
            try {
                return "order " + view.head().order() + (System.in.read() < 0 ? " alone" : " watched");
            } catch (IOException trouble) {
                throw new UncheckedIOException(trouble);
            }
        });
    }

    @BeforeEach
    void makeABook() throws Exception {
        superuser = Child.isSuperuser(folder);
        assumeTrue(
                !superuser || Child.canBeNobody(),
                "a superuser may write everything, and there is no setpriv here to become somebody else");
        allow(folder, "rwxrwxrwx");
        shelf = Files.createDirectory(folder.resolve("shelf"));
        path = shelf.resolve("book.ortet");
        try (SqliteBookStore store = SqliteBookStore.create(path, UUID.randomUUID(), HandMade.ZONE, Shelf.CLOCK)) {
            new Diary(store).write("2015-03-01 acquired K-1", "2016-05-01 layer-set J-1; mother=K-1");
        }
    }

    @AfterEach
    void allowAll() throws Exception {
        if (shelf != null) {
            allow(shelf, "rwxrwxrwx");
        }
    }

    private static void allow(Path place, String permissions) throws Exception {
        Files.setPosixFilePermissions(place, PosixFilePermissions.fromString(permissions));
    }

    private List<String> visit(String... more) throws Exception {
        String[] arguments =
                Stream.concat(Stream.of(path.toString()), Stream.of(more)).toArray(String[]::new);
        return Child.said(new Child(folder).start(superuser, Visitor.class, arguments));
    }

    private String cannotWrite() {
        return "the book " + path + " can be read but not written: the file or its folder is read-only";
    }

    private List<String> names() throws Exception {
        try (Stream<Path> files = Files.list(shelf)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void readsAReadOnlyFile() throws Exception {
        allow(path, "r--r--r--");
        allow(shelf, "rwxrwxrwx");
        assertEquals(List.of("order 2", "[J-1]", cannotWrite()), visit());
        assertEquals(List.of("book.ortet"), names());
    }

    @Test
    void readsAndCopiesAFileInAReadOnlyFolder() throws Exception {
        allow(path, "rw-rw-rw-");
        allow(shelf, "r-xr-xr-x");
        Path copy = folder.resolve("copy.ortet");
        assertEquals(List.of("order 2", "[J-1]", "copy 2", cannotWrite()), visit(copy.toString()));
        assertEquals(List.of("book.ortet"), names());
    }

    @Test
    void readsAReadOnlyFileInAReadOnlyFolder() throws Exception {
        allow(path, "r--r--r--");
        allow(shelf, "r-xr-xr-x");
        assertEquals(List.of("order 2", "[J-1]", cannotWrite()), visit());
        assertEquals(List.of("book.ortet"), names());
    }

    @Test
    void readsWhatSomebodyElseIsWriting() throws Exception {
        allow(path, "rw-r--r--");
        allow(shelf, "rwxr-xr-x");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            new Diary(store).write("2019-05-01 seen K-1");
            assertTrue(names().contains("book.ortet-wal"));
            assertEquals(List.of("order 3", "[J-1]", cannotWrite()), visit());
        }
    }

    @Test
    void saysThatABookWasWrittenWhileItWasRead() throws Exception {
        allow(path, "r--r--r--");
        Process visitor = new Child(folder).start(superuser, Visitor.class, path.toString(), WAIT);
        BufferedReader said =
                new BufferedReader(new InputStreamReader(visitor.getInputStream(), StandardCharsets.UTF_8));
        assertEquals("order 2", said.readLine());
        assertEquals("[J-1]", said.readLine());
        assertEquals("reading", said.readLine());
        if (!superuser) {
            allow(path, "rw-r--r--");
        }
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            new Diary(store).write("2019-05-01 seen K-1");
        }
        visitor.getOutputStream().write('\n');
        visitor.getOutputStream().close();
        assertEquals("the book " + path + " was written while it was read, try again", said.readLine());
        assertEquals(0, visitor.waitFor());
    }

    @Test
    void saysThatABookWasNotClosed() throws Exception {
        Path log = shelf.resolve("book.ortet-wal");
        Path copy = shelf.resolve("kept");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            new Diary(store).write("2019-05-01 seen K-1");
            Files.copy(log, copy);
        }
        Files.move(copy, log);
        allow(path, "rw-r--r--");
        allow(shelf, "rwxrwxrwx");
        assertEquals(
                List.of("the book " + path + " was not closed when it was last written;"
                        + " somebody who may write it has to open it once"),
                visit());
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            assertEquals(3, store.read(BookView::head).order());
        }
        assertEquals(List.of("order 3", "[J-1]", cannotWrite()), visit());
    }

    @Test
    void saysThatAFileMayNotBeRead() throws Exception {
        allow(path, "---------");
        allow(shelf, "rwxr-xr-x");
        assertEquals(List.of("the book " + path + " cannot be read; may you read it and its folder?"), visit());
    }
}
