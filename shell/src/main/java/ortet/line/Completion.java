package ortet.line;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.value.When;

/**
 * Finds what may stand next on a line: words of command names, options not given yet, allowed values, files, and values
 * that the {@link Attendant} knows.
 */
final class Completion {
    /** The most proposals that are shown at once. */
    static final int MOST = 100;

    private static final String BOOK = "book";
    private static final String HELP = "help";

    private final Commands commands;
    private final Attendant attendant;

    Completion(Commands commands, Attendant attendant) {
        this.commands = commands;
        this.attendant = attendant;
    }

    /** Return what may stand next and goes on from what was begun, at most {@value #MOST} of it. */
    List<Suggestion> matching(List<String> before, String begun) {
        return matching(begun, proposals(before, begun));
    }

    /**
     * Return those suggestions that begin with the text, or, where none does, that have it anywhere; case and accents do
     * not matter. Several that share a beginning which is written otherwise than the text become that beginning.
     */
    static List<Suggestion> matching(String begun, List<Suggestion> all) {
        String wanted = plain(begun);
        List<Suggestion> found = all.stream()
                .filter(one -> plain(one.value()).startsWith(wanted))
                .limit(MOST)
                .toList();
        if (found.isEmpty()) {
            return all.stream()
                    .filter(one -> plain(one.value()).contains(wanted))
                    .limit(MOST)
                    .toList();
        }
        String shared = shared(found);
        return found.size() > 1 && shared.length() >= begun.length() && !shared.startsWith(begun)
                ? List.of(Suggestion.begun(shared, ""))
                : found;
    }

    /** Return the longest beginning that all values share. */
    static String shared(List<Suggestion> suggestions) {
        String shared = suggestions.isEmpty() ? "" : suggestions.get(0).value();
        for (Suggestion one : suggestions) {
            int at = 0;
            while (at < shared.length()
                    && at < one.value().length()
                    && shared.charAt(at) == one.value().charAt(at)) {
                at++;
            }
            boolean halved = at > 0 && at < shared.length() && Character.isHighSurrogate(shared.charAt(at - 1));
            shared = shared.substring(0, halved ? at - 1 : at);
        }
        return shared;
    }

    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .toLowerCase(Locale.ROOT);
    }

    /** Return all that may stand next, whatever was begun. */
    List<Suggestion> proposals(List<String> before, String begun) {
        if (!before.isEmpty() && Front.isOurName(before.get(0))) {
            return proposals(before.subList(1, before.size()), begun);
        }
        if (!before.isEmpty() && before.get(0).equals(HELP)) {
            return names(before.subList(1, before.size()));
        }
        if (!before.isEmpty() && before.get(before.size() - 1).equals("--" + BOOK)) {
            return files(begun);
        }
        if (before.isEmpty() && begun.startsWith("@")) {
            return files(begun.substring(1)).stream().map(one -> one.after("@")).toList();
        }
        Map<String, Suggestion> proposals = new LinkedHashMap<>();
        names(before).forEach(one -> proposals.putIfAbsent(one.value(), one));
        for (int taken = Math.min(before.size(), commands.longestName()); taken > 0; taken--) {
            Optional<MethodCommand> command = commands.named(String.join(" ", before.subList(0, taken)));
            if (command.isPresent()) {
                inside(command.get(), before.subList(taken, before.size()), begun)
                        .forEach(one -> proposals.putIfAbsent(one.value(), one));
                break;
            }
        }
        return List.copyOf(proposals.values());
    }

    /** Return the words with which names of commands go on. */
    private List<Suggestion> names(List<String> before) {
        Set<String> next = new TreeSet<>();
        for (String name : commands.names()) {
            List<String> words = List.of(name.split(" "));
            if (words.size() > before.size() && words.subList(0, before.size()).equals(before)) {
                next.add(words.get(before.size()));
            }
        }
        String known = String.join(" ", before);
        return next.stream()
                .map(word -> Suggestion.of(
                        word,
                        commands.named((known + " " + word).strip())
                                .map(MethodCommand::getDescription)
                                .orElse("")))
                .toList();
    }

    /** What stands after the name of a command. */
    private static final class Given {
        private final List<String> words = new ArrayList<>();
        private final Map<String, String> options = new LinkedHashMap<>();
        private Optional<Slot> open = Optional.empty();
        private boolean onlyWords;
    }

    private static Given read(MethodCommand command, List<String> rest) {
        Given given = new Given();
        boolean namesBook = false;
        for (String word : rest) {
            if (namesBook) {
                given.options.put(BOOK, word);
                namesBook = false;
            } else if (given.open.isPresent()) {
                given.options.put(given.open.get().longName(), word);
                given.open = Optional.empty();
            } else if (!given.onlyWords && word.equals("--")) {
                given.onlyWords = true;
            } else if (!given.onlyWords && word.equals("--" + BOOK)) {
                namesBook = true;
            } else if (given.onlyWords || !StrictParser.isOption(word)) {
                given.words.add(word);
            } else {
                int equals = word.startsWith("--") ? word.indexOf('=') : -1;
                Optional<Slot> slot = named(command, equals < 0 ? word : word.substring(0, equals));
                if (slot.isPresent()) {
                    given.options.put(slot.get().longName(), equals < 0 ? "" : word.substring(equals + 1));
                    given.open = equals < 0 && slot.get().kind() == Slot.Kind.OPTION ? slot : Optional.empty();
                }
            }
        }
        return given;
    }

    private static Optional<Slot> named(MethodCommand command, String dashed) {
        return command.options().stream()
                .filter(slot -> dashed.equals("--" + slot.longName())
                        || slot.shortName()
                                .filter(letter -> dashed.equals("-" + letter))
                                .isPresent())
                .findFirst();
    }

    private List<Suggestion> inside(MethodCommand command, List<String> rest, String begun) {
        Given given = read(command, rest);
        if (given.open.isPresent()) {
            Slot slot = given.open.get();
            given.options.remove(slot.longName());
            return values(command, slot, given.words, given.options, begun);
        }
        int equals = begun.startsWith("--") && !given.onlyWords ? begun.indexOf('=') : -1;
        if (equals > 0) {
            String before = begun.substring(0, equals + 1);
            return named(command, begun.substring(0, equals))
                    .map(slot -> values(command, slot, given.words, given.options, begun.substring(equals + 1)))
                    .orElse(List.of())
                    .stream()
                    .map(one -> one.after(before))
                    .toList();
        }
        List<Suggestion> proposals = new ArrayList<>();
        if (!begun.startsWith("-")) {
            wordWanted(command, given.words.size())
                    .ifPresent(slot -> proposals.addAll(values(command, slot, given.words, given.options, begun)));
        }
        if (!given.onlyWords && (begun.isEmpty() || begun.startsWith("-"))) {
            command.options().stream()
                    .filter(slot -> slot.many() || !given.options.containsKey(slot.longName()))
                    .sorted(Comparator.comparing(slot -> !slot.required()))
                    .forEach(slot -> proposals.add(Suggestion.of("--" + slot.longName(), slot.description())));
        }
        return proposals;
    }

    private static Optional<Slot> wordWanted(MethodCommand command, int given) {
        List<Slot> words = command.words();
        for (int at = 0; at < words.size(); at++) {
            if (words.get(at).kind() == Slot.Kind.ARGUMENTS || at == given) {
                return Optional.of(words.get(at));
            }
        }
        return Optional.empty();
    }

    /** Return the values that may stand in a slot. */
    List<Suggestion> values(
            MethodCommand command, Slot slot, List<String> words, Map<String, String> options, String begun) {
        int comma = slot.partsAtCommas() && slot.isOption() ? begun.lastIndexOf(',') : -1;
        String before = begun.substring(0, comma + 1);
        String rest = begun.substring(comma + 1);
        Set<String> taken = new TreeSet<>(List.of(before.split(",")));
        List<Suggestion> values = new ArrayList<>();
        if (!slot.allowed().isEmpty()) {
            slot.allowed().stream()
                    .filter(word -> !taken.contains(word))
                    .forEach(word -> values.add(Suggestion.of(word)));
        } else if (slot.element().getType() == Path.class) {
            values.addAll(files(rest));
        } else if (slot.element().getType() == When.class || slot.element().getType() == LocalDate.class) {
            values.add(Suggestion.of("today"));
            values.add(Suggestion.of("yesterday"));
        } else {
            values.addAll(attendant.values(wanted(command, slot, words, options, rest)));
        }
        return values.stream().map(one -> one.after(before)).toList();
    }

    static Wanted wanted(
            MethodCommand command, Slot slot, List<String> words, Map<String, String> options, String begun) {
        return new Wanted(
                command.getName(),
                slot.isOption() ? slot.longName() : "",
                slot.word(),
                slot.element().getType(),
                slot.begins(),
                words,
                options,
                begun);
    }

    /** Return the files and folders that go on from the text. */
    private static List<Suggestion> files(String begun) {
        int slash = begun.lastIndexOf('/');
        String folder = begun.substring(0, slash + 1);
        String start = begun.substring(slash + 1);
        List<Suggestion> found = new ArrayList<>();
        try (DirectoryStream<Path> paths = Files.newDirectoryStream(Path.of(folder.isEmpty() ? "." : folder))) {
            for (Path path : paths) {
                String name = path.getFileName().toString();
                boolean hidden = name.startsWith(".") && !start.startsWith(".")
                        || name.endsWith("-wal")
                        || name.endsWith("-shm");
                if (!hidden && plain(name).startsWith(plain(start))) {
                    found.add(
                            Files.isDirectory(path)
                                    ? Suggestion.begun(folder + name + "/", "")
                                    : Suggestion.of(folder + name));
                }
            }
        } catch (IOException | InvalidPathException none) {
            return List.of();
        }
        return found.stream()
                .sorted(Comparator.comparing(Suggestion::value))
                .limit(MOST)
                .toList();
    }
}
