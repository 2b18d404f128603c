package ortet.sqlite;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import ortet.book.QueryName;
import ortet.book.QueryText;
import ortet.book.QueryText.Language;
import ortet.value.Refused;

/**
 * A question in {@code queries/}, or of the user's own: its header and its SQL.
 *
 * <p>The header is held against the SQL: the parameters named in it must be the ones declared.
 *
 * @param text the header and the SQL
 * @param places the number by which SQLite knows each parameter: from 1, in the order of first use
 */
record Question(QueryText text, Map<String, Integer> places) {

    private static final Map<QueryName, Question> LOADED = new ConcurrentHashMap<>();

    /**
     * Return the question of that name.
     *
     * @throws Refused when there is none, with the path that was looked for
     */
    static Question named(QueryName name) {
        Question known = LOADED.get(name);
        return known != null
                ? known
                : LOADED.computeIfAbsent(
                        name, wanted -> of(QueryText.load(wanted, Language.SQL, Question.class.getClassLoader())));
    }

    /** Return the question of that name. */
    static Question named(String name) {
        return named(new QueryName(name));
    }

    /** Read one of the program's own questions from the text of its file. */
    static Question of(QueryName name, String text) {
        return of(QueryText.ours(name, Language.SQL, text));
    }

    /** Return a question whose header fits its SQL. */
    static Question of(QueryText text) {
        Map<String, Integer> places = parameters(text.text());
        text.requireUses(places.keySet());
        return new Question(text, places);
    }

    QueryName name() {
        return text.name();
    }

    String what() {
        return text.what();
    }

    List<String> in() {
        return text.in();
    }

    List<String> out() {
        return text.out();
    }

    String sort() {
        return text.sort();
    }

    String sql() {
        return text.text();
    }

    /** Refuse parameters that are not the ones declared. */
    void check(Set<String> given) {
        text.check(given);
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
}
