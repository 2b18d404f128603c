package ortet.commands;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import ortet.line.Help;
import ortet.line.Word;
import ortet.screen.Screen;

/** What the program tells of itself. */
public final class HelpCommands {
    private final Help help;

    HelpCommands(Help help) {
        this.help = help;
    }

    @Command(name = "help", group = "Ortet itself", description = "list the commands, or explain one", help = """
            ortet help
            ortet help version
            """)
    void help(
            @Arguments @Word(value = "COMMAND", optional = true, description = "the command, in one word or more")
                    List<String> words,
            Screen screen) {
        screen.page(out -> {
            if (words.isEmpty()) {
                help.all(out);
            } else {
                help.on(words, out);
            }
        });
    }

    @Command(
            name = "version",
            group = "Ortet itself",
            description = "say which ortet this is and what it runs on",
            help = "ortet version")
    void version(Screen screen) throws IOException {
        Properties properties = new Properties();
        try (InputStream in = HelpCommands.class.getResourceAsStream("version.properties")) {
            properties.load(Optional.ofNullable(in).orElseThrow());
        }
        screen.println("ortet " + properties.getProperty("version") + " on Java "
                + Runtime.version().feature());
    }
}
