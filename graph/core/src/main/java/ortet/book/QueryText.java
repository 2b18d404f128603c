package ortet.book;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.OrtetException;
import ortet.value.Refused;

/**
 * A question as it stands in a file: its header and its text in the language of a store.
 *
 * <p>The file begins with comment lines {@code NAME: what it answers}, {@code in: parameters}, {@code out: columns} and
 * {@code sort: order}; parameters and columns are parted by commas, and {@code none} stands for no parameters. A
 * comment line without such a word goes on from the one before.
 *
 * @param name the name
 * @param what what it answers
 * @param in the names of the parameters, in the order of the header
 * @param out the names of the columns
 * @param sort how the rows are sorted, in words
 * @param language the language
 * @param file the file, for whoever is told what is wrong with it
 * @param isOurs whether it is one of this program's own, so that what is wrong with it is a defect
 * @param text the whole text
 */
public record QueryText(
        QueryName name,
        String what,
        List<String> in,
        List<String> out,
        String sort,
        Language language,
        String file,
        boolean isOurs,
        String text) {
    /** Where the program's own questions are, on the class path. */
    public static final String FOLDER = "queries/";

    /** In which language a question is put. */
    public enum Language {
        /** SQL as SQLite has it. */
        SQL(".sql", "--"),
        /** Cypher. */
        CYPHER(".cypher", "//");

        private final String ending;
        private final String mark;

        Language(String ending, String mark) {
            this.ending = ending;
            this.mark = mark;
        }

        /** Return how the names of its files end. */
        public String ending() {
            return ending;
        }
    }

    public QueryText {
        Objects.requireNonNull(name);
        in = List.copyOf(in);
        out = List.copyOf(out);
    }

    /**
     * Return one of the program's own questions.
     *
     * @param loader finds {@code queries/}
     * @throws Refused when there is none of that name, with the path that was looked for
     */
    public static QueryText load(QueryName name, Language language, ClassLoader loader) {
        String path = FOLDER + name + language.ending;
        try (InputStream stream = loader.getResourceAsStream(path)) {
            if (stream == null) {
                throw Refused.because("unknown-question", "no question " + name + "; looked for " + path);
            }
            return ours(name, language, new String(stream.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new Defect("cannot read " + path, unreadable);
        }
    }

    /** Read one of the program's own questions from the text of its file. */
    public static QueryText ours(QueryName name, Language language, String text) {
        return read(name, language, FOLDER + name + language.ending, true, text);
    }

    /**
     * Read a question of the user's own.
     *
     * @param file the file, as the user knows it
     * @throws Refused when its header is not whole
     */
    public static QueryText of(QueryName name, Language language, String file, String text) {
        return read(name, language, file, false, text);
    }

    private static QueryText read(QueryName name, Language language, String file, boolean isOurs, String text) {
        Map<String, String> header = header(name, language, text);
        for (String key : List.of(name.name(), "in", "out", "sort")) {
            if (header.getOrDefault(key, "").isEmpty()) {
                throw wrong(file, isOurs, "has no header line \"" + language.mark + " " + key + ": …\"");
            }
        }
        return new QueryText(
                name,
                header.get(name.name()),
                header.get("in").equals("none") ? List.of() : words(header.get("in")),
                words(header.get("out")),
                header.get("sort"),
                language,
                file,
                isOurs,
                text);
    }

    private static Map<String, String> header(QueryName name, Language language, String text) {
        Map<String, String> header = new LinkedHashMap<>();
        String last = null;
        for (String line : text.split("\n")) {
            if (!line.startsWith(language.mark)) {
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

    private static List<String> words(String list) {
        return Arrays.stream(list.split(",")).map(String::strip).toList();
    }

    /** Return what to throw for something that is wrong with this question, beginning with its file. */
    public OrtetException wrong(String how) {
        return wrong(file, isOurs, how);
    }

    private static OrtetException wrong(String file, boolean isOurs, String how) {
        return isOurs ? new Defect(file + " " + how) : Refused.because("bad-question", file + " " + how);
    }

    /** Fail when the parameters that the text uses are not those that the header declares. */
    public void requireUses(Set<String> used) {
        if (in.size() != used.size() || !used.containsAll(in)) {
            throw wrong("declares the parameters " + in + " but uses " + used);
        }
    }

    /** Fail when the columns that come back are not those that the header declares. */
    public void requireReturns(List<String> returned) {
        if (!out.equals(returned)) {
            throw wrong("declares the columns " + out + " but returns " + returned);
        }
    }

    /**
     * Refuse parameters that are not the ones declared.
     *
     * @throws Refused with every parameter that is missing or not known
     */
    public void check(Set<String> given) {
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
