package ortet.commands;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Limits;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.QueryText;
import ortet.book.QueryText.Language;
import ortet.book.Rows;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Questions by name: those of the program, and anybody's own in SQL or Cypher. */
public final class AskCommands {
    private static final int USUAL_ROWS = 1000;
    private static final int USUAL_SECONDS = 30;
    private static final int MOST_ROWS = 10_000_000;
    private static final int MOST_SECONDS = 24 * 60 * 60;
    private static final Pattern PARAMETER = Pattern.compile("([A-Za-z_][A-Za-z0-9_]*)=(.*)", Pattern.DOTALL);
    private static final Pattern WHOLE = Pattern.compile("-?\\d{1,18}");

    private final Shelf shelf;

    AskCommands(Shelf shelf) {
        this.shelf = shelf;
    }

    @Command(
            name = "book ask",
            group = "The book",
            description = "put a question by its name, one of ortet's or your own",
            help = """
            A book in a file is asked in SQL (NAME.sql), a book on a server in Cypher (NAME.cypher); docs/schema.md and
            docs/neo4j.md say what there is to ask about. It can read and never write. Digits alone are a whole number; a
            text of digits goes in quotes, key='"12"'; nothing after = stands for no value. Your own files, in a folder that
            --from names, begin with the same lines as those in queries/.
            ortet book ask containers-in-use
            ortet book ask units-at-place place="House 1" as_of=2026-06-15
            ortet book ask my-oldest year=1990 --from my-questions --format csv
            """)
    void ask(
            @Argument(index = 0, description = "the question") @Word("NAME") String name,
            @Arguments @Word(value = "KEY=VALUE", optional = true, description = "what the question wants to know")
                    List<String> parameters,
            @Option(longName = "from", description = "a folder with questions of your own") @Word("FOLDER")
                    Optional<Path> from,
            @Option(longName = "rows", description = "how many rows at most; 1000 unless given") Optional<Integer> rows,
            @Option(longName = "seconds", description = "how long at most; 30 unless given") Optional<Integer> seconds,
            @Option(longName = "format", defaultValue = "table", description = "how to answer") OutputFormat format,
            CommandContext context,
            Screen screen) {
        int mostRows = UsageException.within("book ask", "rows", rows.orElse(USUAL_ROWS), 1, MOST_ROWS);
        int mostSeconds = UsageException.within("book ask", "seconds", seconds.orElse(USUAL_SECONDS), 1, MOST_SECONDS);
        QueryName query = name(name);
        Parameters values = parameters(parameters);
        BookStore store = shelf.open(context);
        QueryText text =
                from.map(folder -> read(folder, query, store.language())).orElseGet(() -> own(query, store));
        // One more than is shown tells whether there are more.
        Rows found = store.ask(text, values, new Limits(mostRows + 1, Duration.ofSeconds(mostSeconds)));
        screen.show(sheet(text, found, mostRows), format);
    }

    private static QueryText own(QueryName query, BookStore store) {
        List<String> names = new ArrayList<>();
        ClassLoader loader = store.getClass().getClassLoader();
        String ending = store.language().ending();
        try {
            for (Resource file : new PathMatchingResourcePatternResolver(loader)
                    .getResources("classpath*:" + QueryText.FOLDER + "*" + ending)) {
                Optional.ofNullable(file.getFilename())
                        .ifPresent(name -> names.add(name.substring(0, name.length() - ending.length())));
            }
        } catch (IOException unreadable) {
            throw new Defect("cannot list the questions", unreadable);
        }
        if (!names.contains(query.name())) {
            throw new Refused(
                    Fault.of("unknown-question", "no question " + query).nearest(Nearest.of(query.name(), names)));
        }
        return QueryText.load(query, store.language(), loader);
    }

    private static QueryName name(String name) {
        try {
            return new QueryName(name);
        } catch (Refused wrong) {
            throw new UsageException("NAME of book ask: \"" + name
                    + "\" can be no question; expected small letters, digits and hyphens");
        }
    }

    /** Read {@code key=value}. */
    private static Parameters parameters(List<String> words) {
        Parameters parameters = Parameters.NONE;
        for (String word : words) {
            Matcher matcher = PARAMETER.matcher(word);
            if (!matcher.matches()) {
                throw new UsageException(
                        "KEY=VALUE of book ask: \"" + word + "\"; expected such as unit=12 or tag=J-1");
            }
            String key = matcher.group(1);
            String value = matcher.group(2);
            if (parameters.values().containsKey(key)) {
                throw new UsageException("KEY=VALUE of book ask: " + key + " is given twice");
            }
            boolean isQuoted = value.length() >= 2 && value.startsWith("\"") && value.endsWith("\"");
            if (value.isEmpty()) {
                parameters = parameters.without(key);
            } else if (isQuoted) {
                parameters = parameters.with(key, value.substring(1, value.length() - 1));
            } else if (WHOLE.matcher(value).matches()) {
                parameters = parameters.with(key, Long.parseLong(value));
            } else {
                parameters = parameters.with(key, value);
            }
        }
        return parameters;
    }

    private static QueryText read(Path folder, QueryName name, Language language) {
        Path file = folder.resolve(name + language.ending());
        if (!Files.isRegularFile(file)) {
            throw new Refused(Fault.of("unknown-question", "no question " + name + "; looked for " + file)
                    .nearest(Nearest.of(name.name(), names(folder, language))));
        }
        try {
            return QueryText.of(name, language, file.toString(), Files.readString(file, StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw Refused.because("unreadable", "cannot read " + file + " as UTF-8");
        }
    }

    private static List<String> names(Path folder, Language language) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(language.ending()))
                    .map(file ->
                            file.substring(0, file.length() - language.ending().length()))
                    .sorted()
                    .toList();
        } catch (IOException none) {
            return List.of();
        }
    }

    private static Sheet sheet(QueryText text, Rows found, int most) {
        List<Column> columns = new ArrayList<>();
        for (int at = 0; at < found.columns().size(); at++) {
            columns.add(column(text, found, at));
        }
        Sheet.Builder sheet = Sheet.titled(text.what(), columns.toArray(Column[]::new));
        for (List<Object> row : found.values().subList(0, Math.min(most, found.size()))) {
            sheet.row(row.stream()
                    .map(value -> value == null ? Optional.empty() : value)
                    .toArray());
        }
        if (found.size() > most) {
            sheet.warning("there are more rows than " + most + "; --rows N shows more");
        }
        return sheet.build();
    }

    private static Column column(QueryText text, Rows found, int at) {
        String name = found.columns().get(at);
        if (!name.matches("[a-z][a-z0-9_]*")) {
            throw text.wrong("has a column " + name + "; expected small letters, digits and underscores");
        }
        String heading = name.replace('_', ' ');
        boolean isWhole = true;
        boolean isNumber = true;
        for (List<Object> row : found.values()) {
            Object value = row.get(at);
            isWhole &= value == null || value instanceof Long;
            isNumber &= value == null || value instanceof Number;
        }
        if (found.size() == 0) {
            return Column.text(name, heading);
        }
        return isWhole
                ? Column.whole(name, heading)
                : isNumber ? Column.number(name, heading, 3) : Column.text(name, heading);
    }
}
