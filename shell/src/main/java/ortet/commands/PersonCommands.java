package ortet.commands;

import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.book.Proposal;
import ortet.entry.Words;
import ortet.line.Word;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Staff, customers and suppliers: entries hold their numbers alone, so that their particulars can be erased. */
public final class PersonCommands {
    private static final String GROUP = "Persons";

    private final Shelf shelf;
    private final Judge judge;
    private final Recording recording;

    PersonCommands(Shelf shelf, Judge judge, Recording recording) {
        this.shelf = shelf;
        this.judge = judge;
        this.recording = recording;
    }

    @Command(name = "person add", group = GROUP, description = "make a person or firm known to the book", help = """
            ortet person add Aoife --role staff
            ortet person add "An Example" --role customer --particulars "by the bridge"
            """)
    void add(
            @Argument(index = 0, description = "what to call them") @Word("NAME") String name,
            @Option(longName = "role", defaultValue = "staff", description = "what they are to the nursery")
                    Person.Role role,
            @Option(longName = "particulars", description = "address, telephone and the like")
                    Optional<String> particulars,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        int last = store.read(view -> view.persons().stream()
                .mapToInt(person -> person.number().value())
                .max()
                .orElse(0));
        Person person = new Person(new PersonNumber(last + 1), Optional.of(name), role, particulars);
        store.append(new Proposal(List.of(), List.of(person)), judge);
        recording.wroteForGood("made a person known", context);
        screen.prose(person.number() + "  " + person.shown() + ", " + Words.of(role));
    }

    @Command(name = "person list", group = GROUP, description = "list the persons in the book", help = """
            ortet person list
            ortet person list --role customer --format csv
            """)
    void list(
            @Option(longName = "role", description = "only these") Optional<Person.Role> role,
            @Option(longName = "format", defaultValue = "table", description = "how to answer") OutputFormat format,
            CommandContext context,
            Screen screen) {
        Sheet.Builder sheet = Sheet.titled(
                "persons",
                Column.text("number", "number"),
                Column.text("name", "name"),
                Column.text("role", "role"),
                Column.text("particulars", "particulars"));
        shelf.open(context).read(view -> {
            view.persons().stream()
                    .filter(person -> role.isEmpty() || role.get() == person.role())
                    .forEach(person -> sheet.row(
                            person.number().toString(),
                            person.name().orElse("(erased)"),
                            Words.of(person.role()),
                            person.particulars()));
            return 0;
        });
        screen.page(out -> out.show(sheet.build(), format));
    }

    @Command(name = "person erase", group = GROUP, description = "erase a person's name and particulars", help = """
            Entries keep the number, so that no record is lost; backups and exports made before still hold the name.
            ortet person erase "An Example"
            """)
    void erase(
            @Argument(index = 0, description = "name or number") @Word("PERSON") String name,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        Person person = Recording.person(store, name, "person");
        store.keep(person.erased());
        recording.wroteForGood("erased a person", context);
        screen.prose("erased name and particulars of " + person.number()
                + "; backups and exports made before still hold them, and so may the lines that the prompt keeps");
    }
}
