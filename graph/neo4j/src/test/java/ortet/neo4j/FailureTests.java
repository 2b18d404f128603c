package ortet.neo4j;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.value.OrtetException;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** What goes wrong is told in one line, and the book is as it was. */
class FailureTests {
    private final Neo4jBookStore store = TestServer.create();
    private final String place = TestServer.address().server();

    @AfterEach
    void close() {
        store.close();
    }

    private static String told(Class<? extends OrtetException> kind, Runnable what) {
        OrtetException told = assertThrows(kind, what::run);
        assertEquals(1, told.lines().size());
        assertTrue(told.lines().get(0).lines().count() == 1, told.lines().get(0));
        return told.lines().get(0);
    }

    private static Runnable opening(String address, Credentials credentials) {
        return () -> Neo4jBookStore.open(Address.of(address), credentials).close();
    }

    @Test
    void tellsThatNoServerAnswers() throws IOException {
        int port;
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        assertEquals(
                "no Neo4j server answers at bolt://127.0.0.1:" + port + "; is it running?",
                told(Unavailable.class, opening("bolt://127.0.0.1:" + port, TestServer.CREDENTIALS)));
    }

    @Test
    void tellsThatThePasswordIsWrongAndShowsNone() {
        Credentials wrong = new Credentials("neo4j", "not-this-one");
        assertEquals(place + " does not take this user and password", told(Unavailable.class, opening(place, wrong)));
        assertEquals("neo4j", wrong.toString());
    }

    @Test
    void tellsThatThereIsNoSuchDatabase() {
        assertEquals(
                "there is no database elsewhere on " + place,
                told(Unavailable.class, opening(place + "/elsewhere", TestServer.CREDENTIALS)));
    }

    @Test
    void tellsThatThereIsNoTls() {
        String safe = place.replace("bolt:", "bolt+s:");
        assertEquals(
                "no Neo4j server answers at " + safe + " in a way that can be trusted; is it running,"
                        + " does it speak TLS, and does this computer trust its certificate?",
                told(Unavailable.class, opening(safe, TestServer.CREDENTIALS)));
    }

    @Test
    void tellsThatThereIsNoBook() {
        TestServer.empty();
        assertEquals(
                "there is no book in " + TestServer.address() + "; make one with \"ortet book new\"",
                told(Unavailable.class, () -> TestServer.open().read(BookView::head)));
    }

    @Test
    void tellsThatTheServerIsTooOld() {
        Address address = Address.of("neo4j://example.org");
        assertEquals(
                "the server at neo4j://example.org:7687 is too old: it is Neo4j 4.4.38, and ortet needs Neo4j 5.26 or later",
                told(Unavailable.class, () -> Server.requireRecent(address, "Neo4j/4.4.38")));
        assertEquals(
                "the server at neo4j://example.org:7687 is too old: it is Neo4j 5.9.0, and ortet needs Neo4j 5.26 or later",
                told(Unavailable.class, () -> Server.requireRecent(address, "Neo4j/5.9.0")));
        Server.requireRecent(address, "Neo4j/5.26.10");
        Server.requireRecent(address, "Neo4j/2025.10.1");
    }

    @Test
    void tellsThatTheBookIsOfANewerProgram() {
        Server server = store.server();
        server.tell(session -> session.run("MATCH (s:Schema) SET s.version = 7").consume());
        try {
            assertEquals(
                    "the book " + TestServer.address() + " was made by a newer ortet (schema 7; this one knows up to "
                            + Schema.CURRENT + ")",
                    told(Unavailable.class, opening(TestServer.address().toString(), TestServer.CREDENTIALS)));
        } finally {
            server.tell(session -> session.run("MATCH (s:Schema) SET s.version = " + Schema.CURRENT)
                    .consume());
        }
    }

    @Test
    void mendsAHalfMadeSchema() {
        Server server = store.server();
        server.tell(session -> session.run("DROP INDEX tag_folded").consume());
        assertEquals(List.of("the constraint or index tag_folded is missing"), store.damage());
        server.tell(session -> session.run("MATCH (s:Schema) SET s.version = 0").consume());
        Schema.bringUp(server);
        assertEquals(List.of(), store.damage());
        assertEquals(Schema.CURRENT, Schema.version(server));
    }

    @Test
    void makesNoBookWhereThereIsOne() {
        new Diary(store).write("2015-03-01 acquired K-1");
        assertEquals(
                "there is a book in " + TestServer.address() + " already",
                told(
                        Refused.class,
                        () -> Neo4jBookStore.create(
                                TestServer.address(),
                                TestServer.CREDENTIALS,
                                UUID.randomUUID(),
                                TestServer.ZONE,
                                TestServer.CLOCK)));
        assertEquals(1, store.read(BookView::head).order());
    }

    @Test
    void makesNoBookBesideSomethingElse() {
        TestServer.empty();
        store.server().tell(session -> session.run("CREATE (:Film)").consume());
        assertEquals(
                "something else is in " + TestServer.address() + "; a book needs a database of its own",
                told(
                        Refused.class,
                        () -> Neo4jBookStore.create(
                                TestServer.address(),
                                TestServer.CREDENTIALS,
                                UUID.randomUUID(),
                                TestServer.ZONE,
                                TestServer.CLOCK)));
    }

    @Test
    void hasNoFileToCopy() {
        String told = told(Refused.class, () -> store.backup(java.nio.file.Path.of("copy.ortet")));
        assertEquals(
                "a book on a server has no file to copy; use the server's own tools, or \"ortet book copy "
                        + TestServer.address() + " copy.ortet\"",
                told);
    }

    @Test
    void tellsThatTheBookIsDamaged() {
        Diary diary = new Diary(store);
        diary.write("2015-03-01 acquired K-1");
        store.server()
                .tell(session ->
                        session.run("MATCH (e:Entry) SET e.kind = 'sung'").consume());
        assertEquals(
                "the book " + TestServer.address() + " is damaged; go back to a backup",
                told(Unavailable.class, () -> store.read(view -> view.entry(1))));
    }
}
