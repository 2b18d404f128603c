package ortet.sqlite;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import org.sqlite.JDBC;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;
import org.sqlite.core.Codes;
import org.sqlite.core.CoreStatement;
import org.sqlite.core.DB;
import ortet.book.NumberSink;
import ortet.value.Refused;

/**
 * One connection to the file, with the statements that were prepared on it.
 *
 * <p>For one thread at a time. When that thread is interrupted, a statement that takes long ends with an exception; one that
 * is soon done, such as a commit, is done.
 */
final class Session implements AutoCloseable {
    /** How a file is opened. */
    enum Way {
        /** For reading and writing. */
        READ_WRITE,
        /** For reading, beside others who may write. */
        READ_ONLY,
        /** For reading a file that nobody can be writing, for nobody may write beside it. */
        IMMUTABLE
    }

    /** Turns the present row of an answer into a value. */
    @FunctionalInterface
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** How many steps of SQLite's machine, about a millisecond's worth, go by before it is asked whether to stop. */
    private static final int STEPS_BETWEEN_LOOKS = 100_000;

    private final Path file;
    private final Way way;
    private final Connection connection;
    private final Map<Question, PreparedStatement> asked = new IdentityHashMap<>();
    private final Map<String, PreparedStatement> written = new HashMap<>();

    private Session(Path file, Way way, Connection connection) throws SQLException {
        this.file = file;
        this.way = way;
        this.connection = connection;
        ProgressHandler.setHandler(connection, STEPS_BETWEEN_LOOKS, new ProgressHandler() {
            @Override
            protected int progress() {
                return Thread.currentThread().isInterrupted() ? 1 : 0;
            }
        });
    }

    /** Open a file that is there; it is not looked at yet. */
    static Session open(Path file, Way way, int busyMillis) throws SQLException {
        return new Session(file, way, connect(file, way, busyMillis, false));
    }

    /** Make a new, empty file. */
    static Session create(Path file) throws SQLException {
        return new Session(file, Way.READ_WRITE, connect(file, Way.READ_WRITE, 0, true));
    }

    /** Make an empty database in memory, to try something out. */
    static Session scratch() throws SQLException {
        return new Session(
                Path.of("scratch"), Way.READ_WRITE, JDBC.createConnection("jdbc:sqlite::memory:", new Properties()));
    }

    private static Connection connect(Path file, Way way, int busyMillis, boolean create) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(way != Way.READ_WRITE);
        if (!create) {
            config.resetOpenMode(SQLiteOpenMode.CREATE);
        }
        config.setOpenMode(SQLiteOpenMode.OPEN_URI);
        config.setOpenMode(SQLiteOpenMode.NOMUTEX);
        config.setBusyTimeout(busyMillis);
        config.enforceForeignKeys(true);
        config.enableRecursiveTriggers(true);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setGetGeneratedKeys(false);
        String query = way == Way.IMMUTABLE ? "?immutable=1" : "";
        return JDBC.createConnection("jdbc:sqlite:" + uri(file) + query, config.toProperties());
    }

    /** Return the file as a URI whose path has nothing in it that stands for anything else. */
    private static String uri(Path file) {
        String path = file.toAbsolutePath().normalize().toString().replace('\\', '/');
        StringBuilder uri = new StringBuilder(path.startsWith("/") ? "file:" : "file:/");
        for (byte octet : path.getBytes(StandardCharsets.UTF_8)) {
            boolean plain = octet >= '0' && octet <= '9'
                    || octet >= 'A' && octet <= 'Z'
                    || octet >= 'a' && octet <= 'z'
                    || octet == '/'
                    || octet == '-'
                    || octet == '_'
                    || octet == '.'
                    || octet == ':';
            if (plain) {
                uri.append((char) octet);
            } else {
                uri.append(String.format("%%%02X", octet & 0xff));
            }
        }
        return uri.toString();
    }

    Path file() {
        return file;
    }

    Way way() {
        return way;
    }

    /** Run statements that return nothing, one or several parted by semicolons. */
    void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    /**
     * Make ready for a long work of writing: more memory, no looking up of what the judge has looked up, and, where nobody
     * else has the file open, a rollback journal in place of the log.
     */
    void alone() throws SQLException {
        run("PRAGMA cache_size = -65536");
        run("PRAGMA foreign_keys = OFF");
        long patience = number("PRAGMA busy_timeout");
        text("PRAGMA busy_timeout = 0");
        try {
            text("PRAGMA journal_mode = DELETE");
        } catch (SQLException others) {
            // Somebody else has the book open: the log stays.
            text("PRAGMA journal_mode");
        } finally {
            text("PRAGMA busy_timeout = " + patience);
        }
    }

    /** Copy the whole file as it stands now into a new one. */
    void copyInto(Path copy) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
            statement.setString(1, copy.toAbsolutePath().toString());
            statement.executeUpdate();
        }
    }

    /** Take back what was written in the transaction, if SQLite has not done so itself. */
    void abandon() {
        try {
            run("ROLLBACK");
        } catch (SQLException over) {
            // The transaction is over already; what ended it is on its way to whoever began it.
            return;
        }
    }

    /** Return the text in the first column of the first row. */
    Optional<String> text(String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? Optional.ofNullable(rows.getString(1)) : Optional.empty();
        }
    }

    /** Return the texts in the first column. */
    List<String> texts(String sql) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                texts.add(rows.getString(1));
            }
        }
        return texts;
    }

    /** Return the number in the first column of the first row, 0 where there is none. */
    long number(String sql) throws SQLException {
        return text(sql).map(Long::parseLong).orElse(0L);
    }

    /** Return a statement that writes, prepared once. */
    PreparedStatement write(String sql) throws SQLException {
        PreparedStatement statement = written.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            written.put(sql, statement);
        }
        return statement;
    }

    /** Return a fresh statement that puts a question; whoever asks closes it. */
    PreparedStatement prepare(Question question) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(question.sql());
        int count = statement.getParameterMetaData().getParameterCount();
        if (count != question.places().size()) {
            throw question.text().wrong("has " + count + " parameters for SQLite, but " + question.in() + " declared");
        }
        ResultSetMetaData columns = statement.getMetaData();
        List<String> names = new ArrayList<>();
        for (int at = 1; at <= columns.getColumnCount(); at++) {
            names.add(columns.getColumnLabel(at));
        }
        question.text().requireReturns(names);
        return statement;
    }

    /** Return every row of the answer, read by the given reader; the values are those of the parameters, in order. */
    <T> List<T> list(Question question, Reader<T> reader, Object... values) throws SQLException {
        PreparedStatement statement = asked.get(question);
        if (statement == null) {
            statement = prepare(question);
            asked.put(question, statement);
        }
        bind(statement, question, values);
        List<T> list = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                list.add(read(reader, rows));
            }
        }
        return list;
    }

    /**
     * Hand over the rows of an answer in whole numbers.
     *
     * <p>The first row is fetched by JDBC, which also binds the parameters; the others by the calls that JDBC itself would make,
     * without what it does around each of them: for a million rows that is half of the time.
     */
    void stream(Question question, NumberSink sink, Object... values) throws SQLException {
        long[] numbers = new long[question.out().size()];
        try (PreparedStatement statement = prepare(question)) {
            bind(statement, question, values);
            try (ResultSet rows = statement.executeQuery()) {
                if (rows.next()) {
                    ((CoreStatement) statement).pointer.safeRunConsume((driver, pointer) -> {
                        int code = Codes.SQLITE_ROW;
                        while (code == Codes.SQLITE_ROW) {
                            read(driver, pointer, numbers);
                            sink.row(numbers);
                            code = driver.step(pointer);
                        }
                        if (code != Codes.SQLITE_DONE) {
                            driver.throwex(code);
                        }
                    });
                }
            }
        }
    }

    private static void read(DB driver, long pointer, long[] numbers) throws SQLException {
        for (int at = 0; at < numbers.length; at++) {
            long number = driver.column_long(pointer, at);
            boolean none = number == 0 && driver.column_type(pointer, at) == Codes.SQLITE_NULL;
            numbers[at] = none ? NumberSink.NONE : number;
        }
    }

    /** Return the first row of the answer. */
    <T> Optional<T> first(Question question, Reader<T> reader, Object... values) throws SQLException {
        List<T> list = list(question, reader, values);
        return list.isEmpty() ? Optional.empty() : Optional.of(list.get(0));
    }

    /** Read a row; words that ortet would never have written mean that the file is damaged. */
    <T> T read(Reader<T> reader, ResultSet row) throws SQLException {
        try {
            return reader.read(row);
        } catch (Refused nonsense) {
            throw Trouble.damaged(file, nonsense);
        }
    }

    /** Give a statement the values of a question's parameters, in the order of its header. */
    static void bind(PreparedStatement statement, Question question, Object... values) throws SQLException {
        for (int at = 0; at < values.length; at++) {
            statement.setObject(question.places().get(question.in().get(at)), values[at]);
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
