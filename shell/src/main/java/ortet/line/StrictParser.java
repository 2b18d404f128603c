package ortet.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandArgument;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.CommandParser;
import org.springframework.shell.core.command.ParsedInput;

/**
 * Reads a line as a command, its options and its words, and refuses what the command does not know.
 *
 * <p>The command is the longest known name by whole words; a word after it that was probably meant for a longer name is
 * refused. {@code --name value}, {@code --name=value} and {@code -n
 * value} are options wherever they stand; {@code --} ends them; what begins like a negative number is a word.
 * {@code --help} anywhere asks for help instead, and {@code --book FILE} anywhere names the book, for every command.
 */
public final class StrictParser implements CommandParser {
    private static final String BOOK = "book";

    private final Commands commands;

    /** Make a parser for these commands. */
    public StrictParser(Commands commands) {
        this.commands = commands;
    }

    /**
     * Split and read a line.
     *
     * @throws UsageException if it is not a line that a command could run on
     */
    @Override
    public ParsedInput parse(String line) {
        return parse(Splitter.split(line));
    }

    /**
     * Read words that are split already; none is ever glued to another or split again.
     *
     * @throws UsageException if they are not what a command could run on
     */
    public ParsedInput parse(List<String> words) {
        List<String> rest = new ArrayList<>();
        Optional<String> book = takeBook(words, rest);
        ParsedInput input = parseOwn(rest);
        if (book.isEmpty()) {
            return input;
        }
        List<CommandOption> options = new ArrayList<>(input.options());
        options.add(new CommandOption(' ', BOOK, "the book", false, "", book.get(), String.class));
        return new ParsedInput(input.commandName(), input.subCommands(), List.copyOf(options), input.arguments());
    }

    /** Take the book's option out of the words, wherever it stands. */
    private static Optional<String> takeBook(List<String> words, List<String> rest) {
        Optional<String> book = Optional.empty();
        int at = 0;
        while (at < words.size()) {
            String word = words.get(at++);
            if (word.equals("--")) {
                rest.addAll(words.subList(at - 1, words.size()));
                break;
            }
            boolean glued = word.startsWith("--" + BOOK + "=");
            if (!glued && !word.equals("--" + BOOK)) {
                rest.add(word);
                continue;
            }
            if (book.isPresent()) {
                throw new UsageException("--" + BOOK + " is given twice");
            }
            if (!glued && at == words.size()) {
                throw new UsageException("--" + BOOK + " needs a value: FILE");
            }
            book = Optional.of(glued ? word.substring(word.indexOf('=') + 1) : words.get(at++));
            if (book.get().isBlank()) {
                throw new UsageException("--" + BOOK + " needs a value: FILE");
            }
        }
        return book;
    }

    private ParsedInput parseOwn(List<String> words) {
        int leading = 0;
        while (leading < words.size() && !isOption(words.get(leading))) {
            leading++;
        }
        int end = words.indexOf("--");
        List<String> open = end < 0 ? words : words.subList(0, end);
        if (open.contains("--help") || (leading == 0 && open.contains("-h"))) {
            return helpOn(words.subList(0, leading));
        }
        if (leading == 0 && open.contains("--version")) {
            return input("version", List.of(), List.of());
        }
        for (int taken = Math.min(leading, commands.longestName()); taken > 0; taken--) {
            String said = String.join(" ", words.subList(0, taken));
            Optional<MethodCommand> found = commands.named(said);
            if (found.isPresent()) {
                commands.refuseHalfNames(said, words.subList(taken, leading), taken == words.size());
                return read(found.get(), words.subList(taken, words.size()));
            }
        }
        throw commands.unknown(words.subList(0, leading), words);
    }

    private ParsedInput helpOn(List<String> words) {
        for (int taken = Math.min(words.size(), commands.longestName()); taken > 0; taken--) {
            String name = String.join(" ", words.subList(0, taken));
            if (commands.named(name).isPresent()
                    || (taken == words.size() && !commands.under(name).isEmpty())) {
                return input("help", List.of(), arguments(words.subList(0, taken)));
            }
        }
        if (words.isEmpty()) {
            return input("help", List.of(), List.of());
        }
        throw commands.unknown(words, words);
    }

    private static ParsedInput read(MethodCommand command, List<String> words) {
        List<CommandOption> options = new ArrayList<>();
        List<String> rest = new ArrayList<>();
        int at = 0;
        while (at < words.size()) {
            String word = words.get(at);
            at++;
            if (word.equals("--")) {
                rest.addAll(words.subList(at, words.size()));
                break;
            }
            if (!isOption(word)) {
                rest.add(word);
                continue;
            }
            int equals = word.startsWith("--") ? word.indexOf('=') : -1;
            String name = equals < 0 ? word : word.substring(0, equals);
            Slot slot = command.option(name);
            if (!slot.many()
                    && options.stream().anyMatch(given -> given.longName().equals(slot.longName()))) {
                throw new UsageException(slot.said() + " of " + command.getName() + " is given twice");
            }
            if (slot.kind() == Slot.Kind.FLAG) {
                if (equals >= 0) {
                    throw new UsageException(slot.said() + " of " + command.getName() + " takes no value");
                }
                options.add(option(slot, "true"));
            } else if (equals >= 0) {
                options.add(option(slot, word.substring(equals + 1)));
            } else if (at < words.size() && !isOption(words.get(at))) {
                options.add(option(slot, words.get(at)));
                at++;
            } else {
                throw new UsageException(slot.said() + " of " + command.getName() + " needs a value: " + slot.word());
            }
        }
        return input(command.getName(), options, arguments(rest));
    }

    private static ParsedInput input(String name, List<CommandOption> options, List<CommandArgument> arguments) {
        String[] words = name.split(" ");
        return new ParsedInput(words[0], List.of(words).subList(1, words.length), options, arguments);
    }

    private static CommandOption option(Slot slot, String value) {
        return new CommandOption(
                slot.shortName().orElse(' '),
                slot.longName(),
                slot.description(),
                slot.required(),
                slot.defaultValue(),
                value,
                slot.element().getType());
    }

    private static List<CommandArgument> arguments(List<String> words) {
        List<CommandArgument> arguments = new ArrayList<>();
        for (String word : words) {
            arguments.add(new CommandArgument(arguments.size(), word));
        }
        return List.copyOf(arguments);
    }

    static boolean isOption(String word) {
        if (word.length() < 2 || word.charAt(0) != '-') {
            return false;
        }
        char second = word.charAt(1);
        return !(Character.isDigit(second)
                || (second == '.' && word.length() > 2 && Character.isDigit(word.charAt(2))));
    }
}
