package ortet.line;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
    private final int longestName;

    private Commands(List<MethodCommand> found) {
        for (MethodCommand command : found) {
            put(byName, command.getName(), command);
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

    /** Return the refusal of words that name no command, with the nearest. */
    UsageException unknown(List<String> leading, List<String> all) {
        if (leading.isEmpty()) {
            return all.isEmpty()
                    ? new UsageException("no command; \"help\" lists them")
                    : new UsageException("\"" + all.get(0) + "\" is no command; a line begins with one");
        }
        String first = leading.get(0);
        List<MethodCommand> under = under(first);
        if (leading.size() == 1 && !under.isEmpty()) {
            String next = String.join(
                    ", ",
                    under.stream()
                            .map(command -> command.getName().substring(first.length() + 1))
                            .toList());
            return new UsageException("\"" + first + "\" is not a whole command; it goes on with " + next);
        }
        for (int words = Math.min(leading.size(), longestName); words > 0; words--) {
            String typed = String.join(" ", leading.subList(0, words));
            int length = words;
            List<String> known = names().stream()
                    .filter(name -> name.split(" ").length == length)
                    .toList();
            Optional<String> near = Near.of(typed, known);
            if (near.isPresent()) {
                return new UsageException("no command \"" + typed + "\"; nearest: " + near.get());
            }
        }
        if (!under.isEmpty()) {
            return new UsageException("no command \"" + first + " " + leading.get(1) + "\"; it goes on with "
                    + String.join(
                            ", ",
                            under.stream()
                                    .map(command -> command.getName().substring(first.length() + 1))
                                    .toList()));
        }
        return new UsageException("no command \"" + first + "\"; \"help\" lists them");
    }

    @Override
    public String toString() {
        return Arrays.toString(byName.keySet().toArray());
    }
}
