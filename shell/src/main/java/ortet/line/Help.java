package ortet.line;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.screen.Screen;
import ortet.screen.Style;

/**
 * Tells what can be typed.
 *
 * <p>The {@code help} of a command's annotation holds prose and examples: a line that begins with {@code ortet} is an
 * example, every other line is prose, in which a paragraph ends where a line ends with a full stop.
 */
public final class Help {
    private static final String EXAMPLE = "ortet ";
    private static final int GAP = 2;
    private static final int WIDEST_LABEL = 30;

    private final Commands commands;

    /** Make help on these commands. */
    public Help(Commands commands) {
        this.commands = commands;
    }

    /** Tell of all commands, by group, the groups in the order in which they were wired. */
    public void all(Screen screen) {
        screen.prose("ortet: the book of a nursery that raises trees for bonsai.");
        screen.println();
        heading("usage", screen);
        pairs(
                List.of(
                        List.of("ortet COMMAND …", "do one thing"),
                        List.of("ortet [--book FILE]", "ask for lines one by one"),
                        List.of("ortet [--book FILE] @FILE", "do every line of a file; - for standard input"),
                        List.of(
                                "… --book FILE",
                                "the book that a line is about; else the one in ORTET_BOOK, else book.ortet here")),
                screen);
        Map<String, List<List<String>>> groups = new LinkedHashMap<>();
        commands.groups().forEach(group -> groups.put(group, new ArrayList<>()));
        for (MethodCommand command : commands.all()) {
            if (!command.isHidden()) {
                groups.get(command.getGroup()).add(List.of(command.getName(), command.getDescription()));
            }
        }
        groups.values().removeIf(List::isEmpty);
        groups.forEach((group, lines) -> {
            screen.println();
            heading(group.isEmpty() ? "commands" : group, screen);
            pairs(lines, screen);
        });
        screen.println();
        screen.prose("\"ortet help COMMAND\" or \"ortet COMMAND --help\" tells more of one.");
    }

    /**
     * Tell of one command, or of all that begin with the words.
     *
     * @throws UsageException if there is none
     */
    public void on(List<String> words, Screen screen) {
        String name = String.join(" ", words);
        List<MethodCommand> under = commands.under(name);
        Optional<MethodCommand> found =
                commands.named(name).filter(command -> command.getName().equals(name) || under.isEmpty());
        if (found.isPresent()) {
            on(found.get(), screen);
            return;
        }
        if (under.isEmpty()) {
            throw commands.unknown(words, words);
        }
        pairs(
                under.stream()
                        .map(command -> List.of(command.getName(), command.getDescription()))
                        .toList(),
                screen);
    }

    private static void on(MethodCommand command, Screen screen) {
        screen.prose(command.getName() + ": " + command.getDescription());
        screen.println();
        heading("usage", screen);
        usage(command, screen);
        if (!command.getAliases().isEmpty()) {
            screen.prose("  ", "also: " + String.join(", ", command.getAliases()));
        }
        if (!command.words().isEmpty()) {
            screen.println();
            heading("words", screen);
            pairs(
                    command.words().stream()
                            .map(slot -> List.of(slot.word() + (slot.many() ? "…" : ""), meaning(slot)))
                            .toList(),
                    screen);
        }
        if (!command.options().isEmpty()) {
            screen.println();
            heading("options", screen);
            pairs(
                    command.options().stream()
                            .map(slot -> List.of(label(slot), meaning(slot)))
                            .toList(),
                    screen);
        }
        List<String> examples = examples(command);
        List<String> prose = prose(command);
        if (!prose.isEmpty()) {
            screen.println();
            prose.forEach(screen::prose);
        }
        if (!examples.isEmpty()) {
            screen.println();
            heading("examples", screen);
            examples.forEach(example -> screen.println("  " + EXAMPLE + example));
        }
    }

    private static void usage(MethodCommand command, Screen screen) {
        StringBuilder line = new StringBuilder("  ortet " + command.getName());
        String indent = " ".repeat(Math.min(line.length(), screen.width() / 2) + 1);
        for (String part : command.usageParts()) {
            if (line.length() + 1 + part.length() > screen.width()
                    && !line.toString().isBlank()) {
                screen.println(line);
                line = new StringBuilder(indent).append(part);
            } else {
                line.append(' ').append(part);
            }
        }
        screen.println(line);
    }

    /** Return the examples of a command as lines to type at the prompt. */
    static List<String> examples(MethodCommand command) {
        return command.getHelp()
                .lines()
                .map(String::strip)
                .filter(line -> line.startsWith(EXAMPLE))
                .map(line -> line.substring(EXAMPLE.length()))
                .toList();
    }

    /** Return what is told of a command besides its examples: a paragraph ends where a line ends a sentence. */
    private static List<String> prose(MethodCommand command) {
        List<String> paragraphs = new ArrayList<>();
        StringBuilder paragraph = new StringBuilder();
        for (String line : command.getHelp().lines().map(String::strip).toList()) {
            if (line.isEmpty() || line.startsWith(EXAMPLE)) {
                continue;
            }
            paragraph.append(paragraph.length() == 0 ? "" : " ").append(line);
            if (line.endsWith(".")) {
                paragraphs.add(paragraph.toString());
                paragraph.setLength(0);
            }
        }
        if (paragraph.length() > 0) {
            paragraphs.add(paragraph.toString());
        }
        return paragraphs;
    }

    private static String label(Slot slot) {
        String shortened = slot.shortName().map(letter -> "-" + letter + ", ").orElse("");
        return shortened + "--" + slot.longName() + (slot.word().isEmpty() ? "" : " " + slot.word());
    }

    private static String meaning(Slot slot) {
        List<String> parts = new ArrayList<>();
        if (!slot.description().isEmpty()) {
            parts.add(slot.description());
        }
        if (!slot.allowed().isEmpty()) {
            parts.add("one of " + String.join(", ", slot.allowed()));
        }
        if (slot.isOption() && slot.many()) {
            parts.add(slot.partsAtCommas() ? "several: with commas or given again" : "several: given again");
        }
        if (!slot.defaultValue().isEmpty()) {
            parts.add(slot.defaultValue() + " unless given");
        } else if (slot.isOption() && slot.required()) {
            parts.add("always needed");
        } else if (slot.isWord() && !slot.required()) {
            parts.add("may be left out");
        }
        return String.join("; ", parts);
    }

    private static void heading(String text, Screen screen) {
        screen.println(screen.styled(Style.STRONG, text));
    }

    /** Write labels with their meaning beside them, or below where a label is long. */
    private static void pairs(List<List<String>> pairs, Screen screen) {
        int widest = 0;
        for (List<String> pair : pairs) {
            int length = pair.get(0).length();
            if (length <= WIDEST_LABEL) {
                widest = Math.max(widest, length);
            }
        }
        String indent = " ".repeat(GAP + widest + GAP);
        for (List<String> pair : pairs) {
            String label = " ".repeat(GAP) + pair.get(0);
            if (pair.get(1).isEmpty()) {
                screen.println(label);
            } else if (label.length() + GAP > indent.length()) {
                screen.println(label);
                screen.prose(indent, pair.get(1));
            } else {
                screen.hanging(label + " ".repeat(indent.length() - label.length()), indent, pair.get(1));
            }
        }
    }
}
