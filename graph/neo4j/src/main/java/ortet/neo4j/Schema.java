package ortet.neo4j;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Defect;
import ortet.value.Unavailable;

/**
 * The constraints and indexes of a book, in numbered files; each takes a database from the version before to its own.
 *
 * <p>Neo4j makes each of them in a transaction of its own. So every statement does nothing where its work is done, and the
 * version is written last: what was broken off is gone through again.
 */
final class Schema {
    /** The version that this program makes and reads. */
    static final int CURRENT = 1;

    private static final String VERSION = "MATCH (s:Schema {one: 1}) RETURN s.version";
    private static final Pattern NAME = Pattern.compile("CREATE (?:CONSTRAINT|INDEX) (\\w+) ");

    private Schema() {}

    /** Bring a database to the present version. */
    static void bringUp(Server server) {
        int version = version(server);
        requireKnown(server.address(), version);
        for (int next = version + 1; next <= CURRENT; next++) {
            for (String statement : statements(next)) {
                server.tell(session -> session.run(statement).consume());
            }
            server.tell(session -> session.run("CALL db.awaitIndexes(300)").consume());
            int done = next;
            server.tell(session -> session.run("MERGE (s:Schema {one: 1}) SET s.version = " + done)
                    .consume());
        }
    }

    /** Return the version of a database, 0 where there is none. */
    static int version(Server server) {
        return server.number(VERSION).map(Math::toIntExact).orElse(0);
    }

    /** Fail when the database was made by a newer program. */
    static void requireKnown(Address address, int version) {
        if (version > CURRENT) {
            throw new Unavailable("the book " + address + " was made by a newer ortet (schema " + version
                    + "; this one knows up to " + CURRENT + ")");
        }
    }

    /** Return the names of the constraints and indexes that are missing. */
    static Set<String> missing(Server server) {
        Set<String> missing = new TreeSet<>(names());
        missing.removeAll(server.texts("SHOW CONSTRAINTS YIELD name RETURN name"));
        missing.removeAll(server.texts("SHOW INDEXES YIELD name, state WHERE state = 'ONLINE' RETURN name"));
        return missing;
    }

    private static Set<String> names() {
        Set<String> names = new TreeSet<>();
        for (int version = 1; version <= CURRENT; version++) {
            for (String statement : statements(version)) {
                Matcher matcher = NAME.matcher(statement);
                if (matcher.find()) {
                    names.add(matcher.group(1));
                }
            }
        }
        return names;
    }

    private static List<String> statements(int version) {
        String path = String.format("schema/%03d.cypher", version);
        try (InputStream stream = Schema.class.getClassLoader().getResourceAsStream(path)) {
            if (stream == null) {
                throw new Defect("no " + path);
            }
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            List<String> statements = new ArrayList<>();
            Arrays.stream(text.replaceAll("(?m)^//.*$", "").split(";"))
                    .map(String::strip)
                    .filter(statement -> !statement.isEmpty())
                    .forEach(statements::add);
            return statements;
        } catch (IOException unreadable) {
            throw new Defect("cannot read " + path, unreadable);
        }
    }
}
