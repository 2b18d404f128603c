package ortet.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ortet.value.Defect;

/**
 * The tables of a book, version by version: the file {@code schema/NNN.sql} takes a book from the version before to
 * version NNN.
 */
final class Schema {
    /** The number at the beginning of a file that says it is a book of ortet: the letters "Ort1". */
    static final int APPLICATION = 0x4f727431;

    /** The schema of this program. */
    static final Schema CURRENT = new Schema(numbered(2));

    private final List<String> steps;

    /** Make a schema from what leads to it, the first step making the first version. */
    Schema(List<String> steps) {
        this.steps = List.copyOf(steps);
    }

    private static List<String> numbered(int last) {
        List<String> steps = new ArrayList<>();
        for (int version = 1; version <= last; version++) {
            String path = String.format("schema/%03d.sql", version);
            try (InputStream stream = Schema.class.getClassLoader().getResourceAsStream(path)) {
                if (stream == null) {
                    throw new Defect("no " + path);
                }
                steps.add(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException unreadable) {
                throw new Defect("cannot read " + path, unreadable);
            }
        }
        return steps;
    }

    /** Return the version of this schema. */
    int version() {
        return steps.size();
    }

    /** Return this schema with one more step. */
    Schema then(String step) {
        List<String> more = new ArrayList<>(steps);
        more.add(step);
        return new Schema(more);
    }

    /** Bring a book from a version to this one, within the transaction that the connection is in. */
    void migrate(Session session, int from) throws SQLException {
        for (int version = from; version < steps.size(); version++) {
            session.run(steps.get(version));
        }
        session.run("PRAGMA user_version = " + version());
    }

    /** Return what is missing of this schema in a book, and what is there but not of it, in words. */
    List<String> differences(Session session) throws SQLException {
        Map<String, String> wanted;
        try (Session scratch = Session.scratch()) {
            migrate(scratch, 0);
            wanted = parts(scratch);
        }
        Map<String, String> there = parts(session);
        List<String> differences = new ArrayList<>();
        wanted.forEach((part, sql) -> {
            if (!there.containsKey(part)) {
                differences.add("the " + part + " is missing");
            } else if (!there.get(part).equals(sql)) {
                differences.add("the " + part + " was changed");
            }
        });
        there.keySet().stream()
                .filter(part -> !wanted.containsKey(part))
                .forEach(part -> differences.add("the " + part + " is none of ortet's"));
        return differences;
    }

    /** Return the SQL of every table, index and trigger by its name. */
    private static Map<String, String> parts(Session session) throws SQLException {
        String from = " FROM sqlite_schema WHERE name NOT LIKE 'sqlite%' ORDER BY type, name";
        List<String> names = session.texts("SELECT type || ' ' || name" + from);
        List<String> statements = session.texts("SELECT sql" + from);
        Map<String, String> parts = new TreeMap<>();
        for (int at = 0; at < names.size(); at++) {
            parts.put(names.get(at), statements.get(at));
        }
        return parts;
    }
}
