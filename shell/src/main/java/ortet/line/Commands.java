package ortet.line;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.core.convert.ConversionService;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.annotation.Command;

/** Every command there is, by name and by alias, sorted. Immutable and safe to share. */
public final class Commands {
    private final Map<String, MethodCommand> byName = new TreeMap<>();
    private final Map<String, MethodCommand> byAlias = new TreeMap<>();
    private final CommandRegistry registry;
    private final Set<String> groups = new LinkedHashSet<>();
    private final int longestName;

    private Commands(List<MethodCommand> found) {
        for (MethodCommand command : found) {
            put(byName, command.getName(), command);
            groups.add(command.getGroup());
        }
        for (MethodCommand command : found) {
            for (String alias : command.getAliases()) {
                if (byName.containsKey(alias)) {
                    throw new IllegalStateException("the alias " + alias + " is a command's name");
                }
                put(byAlias, alias, command);
            }
        }
        registry = new CommandRegistry(new LinkedHashSet<>(byName.values()));
        longestName =
                names().stream().mapToInt(name -> name.split(" ").length).max().orElse(0);
    }

    /**
     * Return the commands that beans declare with {@code @Command} methods; no bean is made.
     *
     * @throws IllegalStateException if two commands claim one name or alias
     */
    public static Commands of(ConfigurableListableBeanFactory beans, Supplier<ConversionService> conversions) {
        List<MethodCommand> found = new ArrayList<>();
        for (String bean : beans.getBeanDefinitionNames()) {
            Class<?> type = beans.getType(bean, false);
            if (type == null || !type.getName().startsWith("ortet.")) {
                continue;
            }
            for (Method method : type.getDeclaredMethods()) {
                if (method.isAnnotationPresent(Command.class)) {
                    method.setAccessible(true);
                    found.add(new MethodCommand(method, () -> beans.getBean(bean), conversions));
                }
            }
        }
        return new Commands(found);
    }

    private static void put(Map<String, MethodCommand> map, String name, MethodCommand command) {
        if (name.isBlank() || map.put(name, command) != null) {
            throw new IllegalStateException("two commands are called " + name);
        }
    }

    Collection<MethodCommand> all() {
        return byName.values();
    }

    /** Return the groups, in the order in which their commands were wired. */
    Set<String> groups() {
        return groups;
    }

    Optional<MethodCommand> named(String name) {
        return Optional.ofNullable(byName.getOrDefault(name, byAlias.get(name)));
    }

    /** Return the commands whose name goes on after these words: {@code layer set} under {@code layer}. */
    List<MethodCommand> under(String words) {
        return byName.values().stream()
                .filter(command -> !command.isHidden() && command.getName().startsWith(words + " "))
                .toList();
    }

    CommandRegistry registry() {
        return registry;
    }

    int longestName() {
        return longestName;
    }

    List<String> names() {
        List<String> names = new ArrayList<>();
        byName.forEach((name, command) -> {
            if (!command.isHidden()) {
                names.add(name);
            }
        });
        names.addAll(byAlias.keySet());
        return names;
    }

    /** Return the refusal of words that name no command, with the nearest; it is looked for word by word. */
    UsageException unknown(List<String> leading, List<String> all) {
        if (leading.isEmpty()) {
            return all.isEmpty()
                    ? new UsageException("no command; \"help\" lists them")
                    : new UsageException("\"" + all.get(0) + "\" is no command; a line begins with one");
        }
        String known = "";
        String typed = "";
        for (String word : leading) {
            Set<String> next = next(known);
            typed = (typed + " " + word).strip();
            if (!next.contains(word)) {
                Optional<String> near = Near.of(word, next);
                if (near.isEmpty()) {
                    return new UsageException("no command \"" + typed + "\"; "
                            + (known.isEmpty() ? "\"help\" lists them" : known + " goes on with " + listed(next)));
                }
                return new UsageException("no command \"" + typed + "\"; nearest: "
                        + nearestWhole(
                                (known + " " + near.get()).strip(), leading.subList(words(typed), leading.size())));
            }
            known = (known + " " + word).strip();
        }
        return new UsageException("\"" + known + "\" is not a whole command; it goes on with " + listed(next(known)));
    }

    /**
     * Refuse words that begin with a whole name but were meant for a longer one: {@code plan sho} for {@code plan show}.
     * What has a digit is taken as it is said, since tags have one and names of commands have none.
     *
     * @param said the name or alias that was found
     * @param more the words that follow it, up to the first option
     * @param isAll whether nothing at all follows
     * @throws UsageException as for words that name no command
     */
    void refuseHalfNames(String said, List<String> more, boolean isAll) {
        if (under(said).isEmpty()) {
            return;
        }
        List<String> leading = new ArrayList<>(List.of(said.split(" ")));
        leading.addAll(more);
        if (isAll && !byName.containsKey(said)) {
            throw unknown(leading, leading);
        }
        if (!more.isEmpty()) {
            String word = more.get(0);
            boolean isName = word.codePoints().noneMatch(Character::isDigit);
            if (isName && Near.of(word, next(said)).isPresent()) {
                throw unknown(leading, leading);
            }
        }
    }

    /** Go on from the words found as long as what was typed is near enough. */
    private String nearestWhole(String found, List<String> typed) {
        String whole = found;
        for (String word : typed) {
            Optional<String> near = named(whole).isPresent() ? Optional.empty() : Near.of(word, next(whole));
            if (near.isEmpty()) {
                break;
            }
            whole = whole + " " + near.get();
        }
        return whole;
    }

    /** Return the words with which names go on after these, all first words after none. */
    private Set<String> next(String words) {
        Set<String> next = new TreeSet<>();
        int at = words.isEmpty() ? 0 : words(words);
        for (String name : names()) {
            if (words.isEmpty() || name.startsWith(words + " ")) {
                next.add(name.split(" ")[at]);
            }
        }
        return next;
    }

    private static int words(String name) {
        return name.split(" ").length;
    }

    private static String listed(Set<String> words) {
        return String.join(", ", words);
    }
}
