package ortet.neo4j;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import ortet.book.QueryName;
import ortet.book.QueryText;
import ortet.book.QueryText.Language;
import ortet.value.Refused;

/**
 * A question in {@code queries/}, or of the user's own: its header and its Cypher.
 *
 * @param text the header and the Cypher, which fit each other
 */
record Question(QueryText text) {
    private static final Map<QueryName, Question> LOADED = new ConcurrentHashMap<>();

    Question {
        text.requireUses(parameters(text.text()));
    }

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
                        name,
                        wanted ->
                                new Question(QueryText.load(wanted, Language.CYPHER, Question.class.getClassLoader())));
    }

    /**
     * Find the named parameters in Cypher; a dollar in a comment, a string or a quoted name is none.
     *
     * @return each name once
     */
    static Set<String> parameters(String cypher) {
        Set<String> names = new LinkedHashSet<>();
        int at = 0;
        while (at < cypher.length()) {
            char letter = cypher.charAt(at);
            if (cypher.startsWith("//", at)) {
                at = after(cypher, "\n", at + 2);
            } else if (cypher.startsWith("/*", at)) {
                at = after(cypher, "*/", at + 2);
            } else if (letter == '\'' || letter == '"') {
                at = afterText(cypher, letter, at + 1);
            } else if (letter == '`') {
                at = after(cypher, "`", at + 1);
            } else if (letter == '$') {
                int end = at + 1;
                while (end < cypher.length() && Character.isJavaIdentifierPart(cypher.charAt(end))) {
                    end++;
                }
                if (end > at + 1) {
                    names.add(cypher.substring(at + 1, end));
                }
                at = end;
            } else {
                at++;
            }
        }
        return names;
    }

    private static int after(String cypher, String end, int from) {
        int at = cypher.indexOf(end, from);
        return at < 0 ? cypher.length() : at + end.length();
    }

    private static int afterText(String cypher, char quote, int from) {
        int at = from;
        while (at < cypher.length() && cypher.charAt(at) != quote) {
            at += cypher.charAt(at) == '\\' ? 2 : 1;
        }
        return Math.min(at + 1, cypher.length());
    }
}
