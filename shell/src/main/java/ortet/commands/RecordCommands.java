package ortet.commands;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import ortet.line.Attendant;
import ortet.line.Commands;
import ortet.line.Front;
import ortet.line.Interview;
import ortet.line.Job;
import ortet.line.Suggestion;
import ortet.line.Talk;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.Screen;
import ortet.value.Nearest;

/** Recording work question by question. */
public final class RecordCommands {
    private final Commands commands;
    private final Attendant attendant;
    private final Front front;

    RecordCommands(Commands commands, Attendant attendant, Front front) {
        this.commands = commands;
        this.attendant = attendant;
        this.front = front;
    }

    @Command(
            name = "record",
            group = "At the prompt",
            description = "record work question by question, for those who do not remember options",
            help = """
            Asks for one thing at a time, proposes at Tab, shows all before it is written, and shows the line that says the
            same, so that it can be typed another time. Without a job it asks for that too.
            ortet record
            ortet record layers set
            """)
    void record(
            @Arguments @Word(value = "JOB", optional = true, description = "what was done") List<String> words,
            Talk talk,
            CommandContext context,
            Screen screen) {
        if (talk == Talk.NOBODY) {
            throw new UsageException(
                    "record asks questions, and nobody is at a terminal to answer; in a file of lines write"
                            + " the command itself (\"help\" lists them)");
        }
        Optional<Job> job = words.isEmpty() ? ask(talk, screen) : Optional.of(named(String.join(" ", words)));
        List<String> book = context.parsedInput().options().stream()
                .filter(option -> option.longName().equals(Shelf.OPTION))
                .map(option -> List.of("--" + Shelf.OPTION, option.value()))
                .findFirst()
                .orElse(List.of());
        job.ifPresent(chosen -> new Interview(commands, attendant)
                .walk(chosen, book, talk, screen, line -> front.words(line, talk, screen) == Front.DONE));
    }

    private static Optional<Job> ask(Talk talk, Screen screen) {
        screen.prose("What was done?");
        for (int at = 0; at < Jobs.ALL.size(); at++) {
            screen.println(String.format(
                    Locale.ROOT, "%4d  %s", at + 1, Jobs.ALL.get(at).name()));
        }
        while (true) {
            screen.flush();
            Optional<String> answer = talk.ask(
                    "  job> ",
                    begun -> Jobs.ALL.stream()
                            .map(job -> Suggestion.of(job.name()))
                            .toList());
            if (answer.isEmpty() || answer.get().isEmpty()) {
                return Optional.empty();
            }
            try {
                return Optional.of(named(answer.get()));
            } catch (UsageException unknown) {
                screen.prose("  " + unknown.getMessage());
            }
        }
    }

    /** Return the job of a name, of its command, or of its number in the list. */
    private static Job named(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        for (int at = 0; at < Jobs.ALL.size(); at++) {
            Job job = Jobs.ALL.get(at);
            if (wanted.equals(job.name()) || wanted.equals(job.command()) || wanted.equals(Integer.toString(at + 1))) {
                return job;
            }
        }
        List<String> names = Jobs.ALL.stream().map(Job::name).toList();
        throw new UsageException("no job \"" + text + "\""
                + Nearest.of(wanted, names)
                        .map(near -> "; nearest: " + near)
                        .orElse("; expected one of " + String.join(", ", names)));
    }
}
