package ortet.line;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Supplier;
import org.springframework.core.convert.ConversionException;
import org.springframework.core.convert.ConversionFailedException;
import org.springframework.core.convert.ConversionService;
import org.springframework.core.convert.TypeDescriptor;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandArgument;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.ExitStatus;
import ortet.screen.Screen;

/**
 * A command that is a method: binds the words of a line to its typed parameters and calls it.
 *
 * <p>Parameters are {@code @Option}s, {@code @Argument}s and at most one {@code @Arguments}, and, without annotation,
 * the {@link CommandContext}, the {@link Screen}, the {@link Talk} and records of such parameters. An absent value is its
 * default, an empty {@link Optional}, an empty list or {@code false}; never null. Values of a list part at commas, except text. The bean that holds the method is
 * made when the command is called and not before. The method ends normally when the work is done and throws otherwise;
 * a method that returns an {@link ExitStatus} chooses it.
 */
final class MethodCommand implements Command {
    private final Method method;
    private final org.springframework.shell.core.command.annotation.Command declared;
    private final String name;
    private final Supplier<Object> target;
    private final Supplier<ConversionService> conversions;
    private List<Taking> takings = List.of();

    MethodCommand(Method method, Supplier<Object> target, Supplier<ConversionService> conversions) {
        this.method = method;
        this.declared = method.getAnnotation(org.springframework.shell.core.command.annotation.Command.class);
        this.name = String.join(" ", declared.name().length > 0 ? declared.name() : new String[] {declared.value()});
        this.target = target;
        this.conversions = conversions;
    }

    @Override
    public String getName() {
        return name;
    }

    @Override
    public String getDescription() {
        return declared.description();
    }

    @Override
    public String getHelp() {
        return declared.help();
    }

    @Override
    public String getGroup() {
        return declared.group();
    }

    @Override
    public boolean isHidden() {
        return declared.hidden();
    }

    @Override
    public List<String> getAliases() {
        return List.of(declared.alias());
    }

    @Override
    public List<CommandOption> getOptions() {
        return options().stream()
                .map(slot -> new CommandOption(
                        slot.shortName().orElse(' '),
                        slot.longName(),
                        slot.description(),
                        slot.required(),
                        slot.defaultValue(),
                        "",
                        slot.element().getType()))
                .toList();
    }

    private List<Taking> takings() {
        if (takings.isEmpty()) {
            takings = Taking.of(method);
        }
        return takings;
    }

    List<Slot> slots() {
        return takings().stream().flatMap(taking -> taking.slots().stream()).toList();
    }

    List<Slot> options() {
        return slots().stream().filter(Slot::isOption).toList();
    }

    /** Return the words that it takes, in their order; the rest of the line last. */
    List<Slot> words() {
        return slots().stream()
                .filter(Slot::isWord)
                .sorted(Comparator.comparingInt(slot -> slot.index() < 0 ? Integer.MAX_VALUE : slot.index()))
                .toList();
    }

    /**
     * Return the option of this name.
     *
     * @param dashed {@code --name} or {@code -n}
     * @throws UsageException if there is none, with the nearest or the list
     */
    Slot option(String dashed) {
        List<String> known = new ArrayList<>();
        for (Slot slot : options()) {
            if (dashed.equals("--" + slot.longName())
                    || slot.shortName()
                            .filter(letter -> dashed.equals("-" + letter))
                            .isPresent()) {
                return slot;
            }
            known.add(slot.longName());
        }
        String bare = dashed.substring(dashed.startsWith("--") ? 2 : 1);
        String otherwise = known.isEmpty() ? "; it has none" : "; it has --" + String.join(", --", known);
        String near = Near.of(bare, known).map(name -> "; nearest: --" + name).orElse(otherwise);
        throw new UsageException(name + " has no option " + dashed + near);
    }

    /** Return the line to type, without values: {@code layer set TAG… --on TAG [--count N]}. */
    String usage() {
        return (name + " " + String.join(" ", usageParts())).strip();
    }

    /** Return the parts of the usage after the name, each to be kept on one line: words, needed options, the others. */
    List<String> usageParts() {
        List<Slot> ordered = new ArrayList<>(words());
        options().stream().filter(Slot::required).forEach(ordered::add);
        options().stream().filter(slot -> !slot.required()).forEach(ordered::add);
        return ordered.stream().map(Slot::usage).toList();
    }

    @Override
    public ExitStatus execute(CommandContext context) throws Exception {
        Object[] values = bind(context);
        try {
            Object result = method.invoke(target.get(), values);
            return result instanceof ExitStatus status ? status : ExitStatus.OK;
        } catch (InvocationTargetException e) {
            throw thrownIn(e);
        }
    }

    /** Return what was thrown inside a call; an error is thrown at once. */
    static Exception thrownIn(InvocationTargetException e) {
        if (e.getCause() instanceof Error error) {
            throw error;
        }
        return e.getCause() instanceof Exception cause ? cause : e;
    }

    Object[] bind(CommandContext context) throws Exception {
        List<String> given = context.parsedInput().arguments().stream()
                .map(CommandArgument::value)
                .toList();
        int single = (int) words().stream()
                .filter(slot -> slot.kind() == Slot.Kind.ARGUMENT)
                .count();
        boolean rest = words().size() > single;
        if (given.size() > single && !rest) {
            throw new UsageException(
                    "\"" + given.get(single) + "\" is too much for " + name + "; expected: " + usage());
        }
        List<Object> values = new ArrayList<>();
        for (Taking taking : takings()) {
            List<Object> parts = new ArrayList<>();
            for (Slot slot : taking.slots()) {
                parts.add(
                        switch (slot.kind()) {
                            case CONTEXT -> context;
                            case SCREEN -> Screen.on(context.outputWriter());
                            case TALK -> Talk.in(context);
                            case FLAG -> !valuesOf(slot, context).isEmpty();
                            case OPTION -> held(slot, valuesOf(slot, context));
                            case ARGUMENT -> held(slot, wordAt(slot.index(), given));
                            case ARGUMENTS -> rest(slot, given.subList(Math.min(single, given.size()), given.size()));
                        });
            }
            values.add(taking.value(parts));
        }
        return values.toArray();
    }

    /**
     * Refuse values that a slot cannot take.
     *
     * @throws UsageException as it would be for a whole line
     */
    void check(Slot slot, List<String> values) {
        if (slot.kind() == Slot.Kind.ARGUMENTS) {
            rest(slot, values);
        } else if (slot.kind() != Slot.Kind.FLAG) {
            held(slot, values);
        }
    }

    private static List<String> wordAt(int index, List<String> given) {
        return index < given.size() ? List.of(given.get(index)) : List.of();
    }

    private static List<String> valuesOf(Slot slot, CommandContext context) {
        return context.parsedInput().options().stream()
                .filter(option -> option.longName().equals(slot.longName()))
                .map(CommandOption::value)
                .toList();
    }

    private Object held(Slot slot, List<String> given) {
        List<String> words = given;
        if (words.isEmpty() && !slot.defaultValue().isEmpty()) {
            words = List.of(slot.defaultValue());
        }
        if (words.isEmpty() && slot.required()) {
            throw needs(slot);
        }
        if (slot.many()) {
            return list(slot, words);
        }
        if (words.isEmpty()) {
            return nothing(slot.holder());
        }
        Object value = value(slot, words.get(0));
        if (slot.holder() == OptionalInt.class) {
            return OptionalInt.of((Integer) value);
        }
        if (slot.holder() == OptionalLong.class) {
            return OptionalLong.of((Long) value);
        }
        if (slot.holder() == OptionalDouble.class) {
            return OptionalDouble.of((Double) value);
        }
        return slot.holder() == Optional.class ? Optional.of(value) : value;
    }

    private Object rest(Slot slot, List<String> words) {
        if (words.isEmpty() && slot.required()) {
            throw needs(slot);
        }
        if (List.class.isAssignableFrom(slot.holder())) {
            return list(slot, words);
        }
        if (words.isEmpty()) {
            return Optional.empty();
        }
        Object value = convert(slot, new TypedWords(words), slot.element());
        return slot.holder() == Optional.class ? Optional.of(value) : value;
    }

    private List<Object> list(Slot slot, List<String> words) {
        List<Object> values = new ArrayList<>();
        for (String word : words) {
            if (slot.partsAtCommas()) {
                for (String part : word.split(",", -1)) {
                    values.add(value(slot, part.strip()));
                }
            } else {
                values.add(value(slot, word));
            }
        }
        return List.copyOf(values);
    }

    private Object value(Slot slot, String word) {
        if (!slot.allowed().isEmpty()
                && !slot.element().getType().isEnum()
                && !slot.allowed().contains(word)) {
            throw wrong(slot, Conversions.noneOf(word, slot.allowed()));
        }
        return convert(slot, word, slot.element());
    }

    private Object convert(Slot slot, Object source, TypeDescriptor to) {
        try {
            return conversions.get().convert(source, TypeDescriptor.forObject(source), to);
        } catch (ConversionFailedException e) {
            throw wrong(slot, e.getCause() == null ? e : e.getCause());
        } catch (ConversionException e) {
            throw new IllegalStateException(
                    "no converter to " + to.getType().getName() + " for " + slot.said() + " of " + name, e);
        }
    }

    private UsageException wrong(Slot slot, Throwable cause) {
        return new UsageException(slot.said() + " of " + name + ": " + Failure.firstLine(cause), cause);
    }

    private UsageException needs(Slot slot) {
        return new UsageException(name + " needs "
                + (slot.isOption() ? slot.said() + " " + slot.word() : "a " + slot.word()) + "; expected: " + usage());
    }

    private static Object nothing(Class<?> holder) {
        if (holder == OptionalInt.class) {
            return OptionalInt.empty();
        }
        if (holder == OptionalLong.class) {
            return OptionalLong.empty();
        }
        if (holder == OptionalDouble.class) {
            return OptionalDouble.empty();
        }
        return Optional.empty();
    }
}
