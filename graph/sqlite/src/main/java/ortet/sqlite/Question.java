package ortet.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import ortet.book.QueryName;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * A question in {@code queries/}: its header and its SQL.
 *
 * <p>The file begins with {@code -- NAME: what it answers}, {@code -- in: parameters}, {@code -- out: columns} and
 * {@code -- sort: order}; parameters and columns are parted by commas, and {@code none} stands for no parameters. A
 * comment line without such a word goes on from the one before. The header is held against the SQL: the parameters
 * named in it must be the ones declared.
 *
 * @param name the name
 * @param what what it answers
 * @param in the names of the parameters, in the order of the header
 * @param out the names of the columns
 * @param sort how the rows are sorted, in words
 * @param sql the whole text
 * @param places the number by which SQLite knows each parameter: from 1, in the order of first use
 */
record Question(
        QueryName name,
        String what,
        List<String> in,
        List<String> out,
        String sort,
        String sql,
        Map<String, Integer> places) {

    private static final Map<QueryName, Question> LOADED = new ConcurrentHashMap<>();
    private static final String FOLDER = "queries/";

    /**
     * Return the question of that name.
     *
     * @throws Refused when there is none, with the path that was looked for
     */
    static Question named(QueryName name) {
        return LOADED.computeIfAbsent(name, wanted -> {
            String path = FOLDER + wanted + ".sql";
            try (InputStream stream = Question.class.getClassLoader().getResourceAsStream(path)) {
                if (stream == null) {
                    throw Refused.because("unknown-question", "no question " + wanted + "; looked for " + path);
                }
                return of(wanted, new String(stream.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException unreadable) {
                throw new Defect("cannot read " + path, unreadable);
            }
        });
    }

    /** Return the question of that name. */
    static Question named(String name) {
        return named(new QueryName(name));
    }

    /** Read a question from the text of its file. */
    static Question of(QueryName name, String text) {
        Map<String, String> header = header(name, text);
        String what = need(header, name, name.name());
        List<String> in = need(header, name, "in").equals("none") ? List.of() : words(header.get("in"));
        List<String> out = words(need(header, name, "out"));
        String sort = need(header, name, "sort");
        Map<String, Integer> places = parameters(text);
        if (!places.keySet().equals(new HashSet<>(in)) || in.size() != places.size()) {
            throw wrong(name, "declares the parameters " + in + " but uses " + places.keySet());
        }
        return new Question(name, what, in, out, sort, text, places);
    }

    private static Map<String, String> header(QueryName name, String text) {
        Map<String, String> header = new LinkedHashMap<>();
        String last = null;
        for (String line : text.split("\n")) {
            if (!line.startsWith("--")) {
                break;
            }
            String words = line.substring(2).strip();
            Optional<String> key = Arrays.asList(name.name(), "in", "out", "sort").stream()
                    .filter(word -> words.startsWith(word + ":"))
                    .findFirst();
            if (key.isPresent()) {
                last = key.get();
                header.put(last, words.substring(last.length() + 1).strip());
            } else if (last != null) {
                header.merge(last, words, (before, more) -> before + " " + more);
            }
        }
        return header;
    }

    private static String need(Map<String, String> header, QueryName name, String key) {
        String value = header.getOrDefault(key, "");
        if (value.isEmpty()) {
            throw wrong(name, "has no header line \"-- " + key + ": …\"");
        }
        return value;
    }

    private static List<String> words(String list) {
        return Arrays.stream(list.split(",")).map(String::strip).toList();
    }

    /** Return what is wrong with a question, with the path of its file. */
    static Defect wrong(QueryName name, String what) {
        return new Defect(FOLDER + name + ".sql " + what);
    }

    /**
     * Find the named parameters in SQL; a colon in a comment, a string or a quoted name is none.
     *
     * @return each name with its number as SQLite gives it: from 1, in the order of first use
     */
    static Map<String, Integer> parameters(String sql) {
        Map<String, Integer> places = new LinkedHashMap<>();
        int at = 0;
        while (at < sql.length()) {
            char letter = sql.charAt(at);
            if (sql.startsWith("--", at)) {
                at = after(sql, "\n", at + 2);
            } else if (sql.startsWith("/*", at)) {
                at = after(sql, "*/", at + 2);
            } else if (letter == '\'' || letter == '"' || letter == '`') {
                at = after(sql, String.valueOf(letter), at + 1);
            } else if (letter == '[') {
                at = after(sql, "]", at + 1);
            } else if (letter == ':') {
                int end = at + 1;
                while (end < sql.length() && Character.isJavaIdentifierPart(sql.charAt(end))) {
                    end++;
                }
                if (end > at + 1) {
                    places.putIfAbsent(sql.substring(at + 1, end), places.size() + 1);
                }
                at = end;
            } else {
                at++;
            }
        }
        return places;
    }

    private static int after(String sql, String end, int from) {
        int at = sql.indexOf(end, from);
        return at < 0 ? sql.length() : at + end.length();
    }

    /**
     * Refuse parameters that are not the ones declared.
     *
     * @throws Refused with every parameter that is missing or not known
     */
    void check(Set<String> given) {
        List<Fault> faults = new ArrayList<>();
        for (String wanted : in) {
            if (!given.contains(wanted)) {
                faults.add(Fault.of(
                        "missing-parameter", name + ": parameter " + wanted + " is missing; expected " + listed()));
            }
        }
        for (String known : given) {
            if (!in.contains(known)) {
                faults.add(Fault.of("unknown-parameter", name + ": no parameter " + known + "; expected " + listed())
                        .nearest(Nearest.of(known, in)));
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
    }

    private String listed() {
        return in.isEmpty() ? "none" : String.join(", ", in);
    }
}
